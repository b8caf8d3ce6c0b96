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

const PRINT_GOES_ON: &str = "a print that ends with steaming and drying may be one part of a longer work, as in the \
    specification's own example; only goods dried unfixed, or neither dried nor washed, are told";

/// The explanations.
pub const SURVIVORS: &[Survivor] = &[
    Survivor {
        operator: "half-polyester-goods",
        file: "stretch-leggings.dye",
        change: "50% polyester",
        why: "the recipe accepts `undyeable-share` on that very line, for a stretch fibre that is wanted: the reason given covers it",
    },
    Survivor {
        operator: "dye-decimal-slip-up",
        file: "tide-mark.dye",
        change: "240 g",
        why: "a dip carries off only the bath it takes up: ten times as strong it is a dark hem, not a spoiled one, and no depth is named",
    },
    Survivor {
        operator: "dye-hundredth",
        file: "tide-mark.dye",
        change: "0.24 g",
        why: "0.4 g to the kilogram in the bath: still a tint by the bound of the rule, and dips are judged by their bath",
    },
    Survivor { operator: "wash-off-left-out", file: "block-border.dye", change: "", why: PRINT_GOES_ON },
    Survivor { operator: "wash-off-left-out", file: "print-paste-pale.dye", change: "", why: PRINT_GOES_ON },
    Survivor { operator: "wash-off-left-out", file: "print-paste-strong.dye", change: "", why: PRINT_GOES_ON },
    Survivor { operator: "wash-off-left-out", file: "printed-fern.dye", change: "", why: PRINT_GOES_ON },
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
