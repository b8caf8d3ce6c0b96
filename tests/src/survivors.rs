//! Mutants nobody catches, and why.

/// Why mutants of an operator survive in some recipe, or in all.
pub struct Survivor {
    /// The operator.
    pub operator: &'static str,
    /// The file, or `*`.
    pub file: &'static str,
    /// Words of the change, or empty for every change of the operator there.
    pub change: &'static str,
    /// Why no finding is made of it.
    pub why: &'static str,
}

const SPOONS: &str = "a recipe by the spoon on purpose: by the lightest reading of the powder the soda still serves, and only advice to weigh is given";

const NEARLY: &str = "the ten minutes in which the soda goes into a hot bath give between a fifth and a quarter of a full batch: \
    under the bound of harm, just over that of the rule";

/// The explanations.
pub const SURVIVORS: &[Survivor] = &[
    Survivor {
        operator: "mix-left-out",
        file: "turquoise-shawls.dye",
        change: "",
        why: "the dye that no mix holds any more is told at its own block",
    },
    Survivor {
        operator: "acid-dye-stays-cold",
        file: "roving.dye",
        change: "flame stock",
        why: "only a stock is left to cool less; the steam that follows heats the wool as before",
    },
    Survivor {
        operator: "wool-rinsed-cold-from-the-boil",
        file: "roving.dye",
        change: "flame stock",
        why: "it is a stock that is cooled there, not the wool",
    },
    Survivor {
        operator: "double-dye",
        file: "madder-silk.dye",
        change: "",
        why: "dried roots are taken weight for weight and more: twice as much is another shade of the same red",
    },
    Survivor {
        operator: "dye-decimal-slip-up",
        file: "madder-silk.dye",
        change: "",
        why: "fresh plants are taken at several times the weight of the goods, and nothing says that these are dried",
    },
    Survivor {
        operator: "mix-left-out",
        file: "jar-napkins.dye",
        change: "",
        why: "the other of two dyes still colours the napkins, which is a recipe too",
    },
    Survivor {
        operator: "volume-decimal-slip-down",
        file: "camp-bandanas.dye",
        change: "",
        why: "the bottles say that they keep for days: what is left in them is for another day",
    },
    Survivor {
        operator: "volume-decimal-slip-down",
        file: "permanganate-jeans.dye",
        change: "",
        why: "permanganate is brushed where it is wanted; less of it lightens less",
    },
    Survivor { operator: "fixing-time-left-out", file: "*", change: "", why: NEARLY },
    Survivor { operator: "seconds-for-minutes", file: "*", change: "", why: NEARLY },
    Survivor { operator: "soda-after-the-bath", file: "*", change: "", why: NEARLY },
    Survivor {
        operator: "batch-of-an-hour",
        file: "wax-resist-cold-bath.dye",
        change: "",
        why: "the squares have lain more than two hours with the soda in a salted bath by then, which fixes more than a batch of that length would",
    },
    Survivor {
        operator: "volume-decimal-slip-down",
        file: "quick-quarters.dye",
        change: "from soda water",
        why: "goods that are microwaved are judged by the acid the dye sets free, and the soda left is a little more than that",
    },
    Survivor { operator: "alkali-decimal-slip", file: "spoons-low-water.dye", change: "", why: SPOONS },
    Survivor { operator: "quarter-alkali", file: "spoons-low-water.dye", change: "", why: SPOONS },
    Survivor { operator: "spoon-for-gram", file: "alginate-block-batch.dye", change: "", why: SPOONS },
    Survivor {
        operator: "third-of-elastane",
        file: "stretch-leggings.dye",
        change: "",
        why: "the recipe accepts `undyeable-share` on that very line, for a stretch fibre that is wanted",
    },
    Survivor {
        operator: "seconds-for-minutes",
        file: "vinyl-sulfone-rayon.dye",
        change: "",
        why: "the ten minutes of adding soda at 60 °C and the draining give nearly a quarter of a full batch: just on the harmless side of the rule",
    },
    Survivor {
        operator: "washing-soda-for-soda-ash",
        file: "stitched-shibori-immersed.dye",
        change: "",
        why: "6 g/L of soda ash is left in a long salted bath: more than half of what is usual for that depth by the rule, under half by the stricter bound of harm; the name itself draws advice",
    },
    Survivor {
        operator: "half-polyester-goods",
        file: "stretch-leggings.dye",
        change: "50% polyester",
        why: "the recipe accepts `undyeable-share` on that very line, for a stretch fibre that is wanted: the reason given covers it",
    },
    Survivor {
        operator: "spoon-for-gram",
        file: "immersion-heavy.dye",
        change: "6 to 8 tsp",
        why: "powder can lie so light that these spoons weigh what was meant; only the advice to weigh is given",
    },
    Survivor {
        operator: "volume-decimal-slip-down",
        file: "gradation-six-pots.dye",
        change: "from pot",
        why: "each pot hands half of itself on to the next, so that a little drawn leaves nothing unusual over",
    },
    Survivor {
        operator: "millilitres-for-litres",
        file: "alum-tannin-cotton.dye",
        change: "3 mL",
        why: "the goods come wet from the rinse and bring two litres to the kilogram with them: a bath, by what is written",
    },
];

/// The explanation of a survivor.
pub fn explained(operator: &str, file: &str, change: &str) -> Option<&'static str> {
    SURVIVORS
        .iter()
        .find(|each| {
            each.operator == operator && (each.file == "*" || each.file == file) && change.contains(each.change)
        })
        .map(|each| each.why)
}
