//! The keys: words that open a line of a block other than steps.

use crate::tree::BlockKind::{
    self, Chemical, Dye, Goods, Layout, Log, Mix, Recipe, Shelf, Steps, Use, Variant, Vessel,
};

/// One key.
#[derive(Clone, Copy, Debug)]
pub struct Key {
    /// Canonical spelling.
    pub name: &'static str,
    /// Other spellings and words for it.
    pub synonyms: &'static [&'static str],
    /// The blocks it may open a line of.
    pub kinds: &'static [BlockKind],
    /// Whether its value is prose, kept as it is written.
    pub prose: bool,
    /// What it says, in a line.
    pub summary: &'static str,
    /// A line that shows it.
    pub example: &'static str,
}

const fn prose(name: &'static str, kinds: &'static [BlockKind], summary: &'static str, example: &'static str) -> Key {
    Key { name, synonyms: &[], kinds, prose: true, summary, example }
}

const fn key(name: &'static str, kinds: &'static [BlockKind], summary: &'static str, example: &'static str) -> Key {
    Key { name, synonyms: &[], kinds, prose: false, summary, example }
}

const fn with(mut key: Key, synonyms: &'static [&'static str]) -> Key {
    key.synonyms = synonyms;
    key
}

/// All keys.
pub const KEYS: &[Key] = &[
    prose("by", &[Recipe], "who wrote the recipe", "by A. Nyland"),
    with(prose("licence", &[Recipe], "under which licence it may be used", "licence CC-BY-4.0"), &["license"]),
    prose("version", &[Recipe], "the version of the recipe", "version 1.2.0"),
    prose("about", &[Recipe, Steps, Variant], "what it is, in a sentence", "about Folded ring tee with a dark back."),
    prose("source", &[Recipe, Dye, Chemical, Goods], "where it comes from", "source bench notes, spring"),
    with(
        prose(
            "note",
            &[Recipe, Goods, Dye, Chemical, Mix, Layout, Vessel, Steps, Variant, Log, Shelf, Use],
            "a remark",
            "note keep out of the sun",
        ),
        &["notes"],
    ),
    prose("for", &[Recipe], "what the recipe is for", "for beginners' evenings"),
    key("depth", &[Recipe], "the depth of shade aimed at", "depth dark"),
    key("shade", &[Recipe], "how even the shade is meant to be", "shade mottled"),
    key("room", &[Recipe, Log], "the temperature of the room", "room 22 °C"),
    with(key("hardness", &[Recipe], "the hardness of the tap water", "hardness 120 ppm"), &["water hardness"]),
    key("altitude", &[Recipe], "height above the sea, which lowers the boiling point", "altitude 1200 m"),
    key("measures", &[Recipe], "whose cups, spoons and gallons are meant", "measures US"),
    key("currency", &[Recipe, Shelf], "the currency of prices without one", "currency EUR"),
    key(
        "accept",
        &[Recipe, Goods, Dye, Chemical, Mix, Layout, Vessel, Variant, Log, Shelf, Use],
        "accepts a finding, with the reason",
        "accept undyeable-share because the stretch is wanted",
    ),
    with(key("pieces", &[Goods], "how many pieces", "pieces 12 in 3 lots of 4"), &["piece"]),
    key("weight", &[Goods], "the dry weight of a piece, or of all", "weight 165 g each"),
    with(
        key("fibre", &[Goods], "the fibres and their shares", "fibre 95% cotton, 5% elastane"),
        &["fiber", "fibres", "fibers"],
    ),
    key("thread", &[Goods], "the sewing thread", "thread polyester"),
    key("trim", &[Goods], "ribs, labels, zips and the like", "trim 3% polyester"),
    key("state", &[Goods], "how the goods come to the first step", "state scoured, dry"),
    with(key("colour", &[Goods, Dye], "a colour", "colour #1d5fa6"), &["color"]),
    key("area", &[Goods], "the area of a piece", "area 1.1 m2 each"),
    key("price", &[Goods, Dye, Chemical, Mix], "what it costs", "price 24 EUR per 500 g"),
    key("class", &[Dye], "the dye class", "class reactive dichlorotriazine"),
    key("index", &[Dye], "the Colour Index generic name", "index C.I. Reactive Blue 4"),
    key("strength", &[Dye, Chemical], "how much of it is the active substance", "strength 5%"),
    with(key("density", &[Dye, Chemical], "bulk density", "density 0.42 to 0.58 g/mL"), &["bulk density"]),
    key("solubility", &[Dye, Chemical], "how much dissolves in water", "solubility 70 g/L at 20 °C"),
    with(key("form", &[Dye, Chemical], "powder, liquid, crystals", "form liquid"), &["state"]),
    key("is", &[Chemical, Dye], "the known material it is", "is sodium carbonate"),
    key("formula", &[Chemical], "its formula", "formula Na2CO3"),
    key("purity", &[Chemical, Dye], "its purity", "purity 98%"),
    key("role", &[Chemical], "what it is used as", "role wetting agent"),
    with(key("hazard", &[Chemical, Dye], "its hazard statements", "hazard H319"), &["hazards"]),
    with(key("make up", &[Mix], "fills up to a volume", "make up to 8 L"), &["top up", "fill up"]),
    key("rest", &[Mix], "how long it stands before use", "rest for 12 h"),
    key("keep", &[Mix], "how and how long it keeps", "keep for 3 days at 5 °C"),
    key("stir", &[Mix], "how it is stirred", "stir until smooth"),
    key("fixed", &[Mix], "amounts do not follow the number of pieces", "fixed"),
    key("zone", &[Layout], "a zone and its share of the area", "zone 45% rim"),
    with(key("folds", &[Layout], "how many layers lie over one another", "folds 8 layers"), &["layers"]),
    key("beside", &[Layout], "zones that touch", "beside rim, middle"),
    key("front", &[Layout], "which zones the front has", "front rim, middle, heart"),
    key("back", &[Layout], "which zones the back has", "back heart"),
    key("holds", &[Vessel], "how much it holds", "holds 5 L"),
    key("material", &[Vessel], "what it is made of", "material steel"),
    key("rated", &[Vessel], "the highest temperature it stands", "rated 100 °C"),
    key("food", &[Vessel], "whether food ever touches it", "food never"),
    key("closed", &[Vessel], "whether it is closed", "closed yes"),
    key("made", &[Log], "how much was made", "made 6 tees"),
    key("weighed", &[Log], "what the scale really said", "weighed 14.2 g lagoon"),
    prose("changed", &[Log], "what was done otherwise", "changed soak for 10 min"),
    prose("found", &[Log], "what came out", "found pale rim, muddy heart"),
    key("took", &[Log], "how long it took", "took 4 h"),
    key("rating", &[Log], "how good it was", "rating 3 of 5"),
    prose("photo", &[Log], "a picture of it", "photo rings-front.jpg"),
    key("in", &[Variant], "the block the lines below belong to", "in steps colour"),
];

/// The keys a block of this kind may have, in table order.
pub fn keys_of(kind: BlockKind) -> impl Iterator<Item = &'static Key> {
    KEYS.iter().filter(move |key| key.kinds.contains(&kind))
}

/// The key of a canonical name in a kind of block.
pub fn key_row(kind: BlockKind, name: &str) -> Option<&'static Key> {
    keys_of(kind).find(|key| key.name == name)
}

pub(crate) fn belongs_to_variant(folded: &str) -> bool {
    keys_of(Variant).any(|key| key.name == folded || key.synonyms.contains(&folded))
}
