//! Everyday words for vessels and coverings that need no declaration.

use crate::recipe::Cover;

/// Things goods stand in or on: nothing is reckoned with them unless a `vessel` block says more.
const VESSELS: [&str; 44] = [
    "rack",
    "tray",
    "bucket",
    "pot",
    "sink",
    "machine",
    "basin",
    "tub",
    "colander",
    "grid",
    "table",
    "bowl",
    "jug",
    "jar",
    "bottle",
    "pan",
    "kettle",
    "can",
    "bag",
    "box",
    "bath",
    "line",
    "grille",
    "mesh",
    "cup",
    "beaker",
    "drum",
    "washer",
    "vat",
    "tank",
    "sieve",
    "strainer",
    "floor",
    "ground",
    "hanger",
    "rail",
    "shade",
    "dark",
    "sun",
    "oven",
    "steamer",
    "microwave",
    "dryer",
    "iron",
];

/// Whether unknown words name an everyday vessel or spot: `washing machine`, `wire rack`.
pub(crate) fn is_everyday(folded: &str) -> bool {
    folded
        .rsplit(' ')
        .next()
        .is_some_and(|last| VESSELS.contains(&last) || last.strip_suffix('s').is_some_and(|one| VESSELS.contains(&one)))
}

/// Words for the goods in work, whatever their name.
pub(crate) fn means_the_goods(folded: &str) -> bool {
    ["them", "it", "everything", "goods", "all goods", "pieces", "all pieces", "cloth", "fabric", "garments"]
        .contains(&folded)
}

/// Words for the liquor the goods are in.
pub(crate) fn is_current_bath(folded: &str) -> bool {
    ["bath", "same bath", "dye bath", "dyebath", "liquor", "same liquor", "pot", "vat"].contains(&folded)
}

/// A covering said with `in` or `under`: `in sealed bag`, `under plastic`.
pub(crate) fn cover(folded: &str) -> Option<Cover> {
    let says = |word: &str| folded.split(' ').any(|part| part == word);
    if says("sealed") || (says("closed") && says("bag")) || says("zip") {
        Some(Cover::SealedBag)
    } else if says("plastic") || says("film") || says("foil") || says("sheet") || says("sheeting") {
        Some(Cover::UnderPlastic)
    } else if says("lid") || says("cover") || says("cloth") || says("towel") {
        Some(Cover::Covered)
    } else {
        None
    }
}
