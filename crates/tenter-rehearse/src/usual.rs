//! What is taken where the step does not say: how long, how wet. Common practice, no source, all of it, and wide.

use tenter_quantity::{Figure, Interval};

use crate::figures::{PRACTICE, seconds, share};

/// Minutes a verb takes (low, best, high), and whether somebody's hands are on it all that time.
pub(crate) const fn minutes(verb: &str) -> (f64, f64, f64, bool) {
    match verb.as_bytes() {
        b"soak" | b"wet out" => (15.0, 20.0, 30.0, false),
        b"scour" | b"wash" | b"soap off" | b"strip" | b"bleach" => (10.0, 20.0, 45.0, false),
        b"neutralise" | b"soften" => (5.0, 10.0, 20.0, false),
        b"rinse" => (3.0, 8.0, 20.0, true),
        b"dry" => (120.0, 480.0, 1440.0, false),
        b"drip" => (5.0, 15.0, 60.0, false),
        b"boil" | b"simmer" => (10.0, 30.0, 60.0, false),
        b"batch" => (240.0, 1440.0, 2880.0, false),
        b"rest" | b"hold" | b"cool" => (10.0, 30.0, 60.0, false),
        b"steam" => (10.0, 20.0, 60.0, false),
        b"microwave" => (2.0, 4.0, 10.0, true),
        b"raise" | b"heat" => (10.0, 20.0, 45.0, false),
        b"immerse" | b"dye" => (10.0, 30.0, 60.0, false),
        b"dip" => (0.5, 2.0, 10.0, true),
        b"squeeze" | b"spin" => (1.0, 3.0, 8.0, true),
        b"fold" | b"scrunch" | b"bind" => (2.0, 6.0, 15.0, true),
        b"untie" => (0.5, 2.0, 6.0, true),
        b"mark" | b"press" => (1.0, 4.0, 10.0, true),
        b"sprinkle" | b"sift" => (1.0, 3.0, 8.0, true),
        b"squirt" | b"spray" => (1.0, 3.0, 10.0, true),
        b"brush" | b"print" => (2.0, 6.0, 20.0, true),
        b"pour" | b"irrigate" => (1.0, 3.0, 8.0, true),
        b"heap" | b"add" | b"top up" | b"dissolve" | b"paste" => (1.0, 3.0, 8.0, true),
        b"make" => (3.0, 6.0, 15.0, true),
        b"stir" => (1.0, 5.0, 15.0, true),
        b"wear" | b"turn" | b"cover" | b"uncover" | b"lower" | b"lift" | b"drain" | b"weigh" | b"dispose"
        | b"check" => (0.5, 1.0, 4.0, true),
        b"store" => (0.0, 0.0, 0.0, false),
        b"wait" => (0.0, 5.0, 60.0, false),
        _ => (0.0, 0.0, 0.0, true),
    }
}

/// Whether the minutes of a verb count for each piece.
pub(crate) const fn each_piece(verb: &str) -> bool {
    matches!(
        verb.as_bytes(),
        b"fold" | b"scrunch" | b"bind" | b"untie" | b"mark" | b"press" | b"squirt" | b"spray" | b"brush" | b"print"
    )
}

/// The time a verb is taken to need.
pub(crate) fn time(verb: &'static str, value: Interval) -> Figure {
    seconds(value, verb, PRACTICE)
}

/// Water held after a step that does not say, kg/kg dry; the same figures the totals use.
pub(crate) fn pickup(verb: &str) -> Option<Figure> {
    Some(match verb {
        "spin" => {
            share(0.5, 0.6, 0.7, "water held", "spun in a domestic machine: 50 to 70 %; common practice, no source")
        }
        "squeeze" => share(1.0, 1.2, 1.5, "water held", "wrung by hand: 100 to 150 %; common practice, no source"),
        "drip" | "drain" | "lift" => {
            share(1.5, 2.0, 2.5, "water held", "dripping wet: 150 to 250 %; common practice, no source")
        }
        "wet out" | "untie" | "store" | "soak" | "scour" | "wash" | "rinse" | "immerse" | "dip" | "soap off"
        | "neutralise" | "soften" | "strip" | "bleach" | "boil" | "simmer" | "dye" | "lower" => {
            share(1.5, 2.2, 3.0, "water held", "straight out of the water: 150 to 300 %; common practice, no source")
        }
        "dry" => share(0.0, 0.0, 0.05, "water held", "dried; common practice, no source"),
        _ => return None,
    })
}

/// What cotton knit can hold before liquor runs off, kg/kg dry: common practice, no source.
pub(crate) fn capacity(bound: bool) -> Figure {
    if bound {
        share(2.0, 2.5, 3.2, "what bound cloth holds", PRACTICE)
    } else {
        share(2.5, 3.0, 3.5, "what cloth holds", PRACTICE)
    }
}
