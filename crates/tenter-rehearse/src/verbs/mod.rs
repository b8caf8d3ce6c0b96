//! What each verb needs and does, one file a kind of work, and the table from verb to function.

mod batch;
mod bath;
mod heap;
mod laying;
mod making;
mod powder;
mod protection;
mod shaping;
mod soak;
mod warming;
mod washing;
mod wringing;

use crate::bench::{Bench, Pass};

/// What a verb does.
pub(crate) type Action = fn(&mut Bench<'_>, &Pass<'_>);

/// The function of a verb; `None` for a verb nobody knows.
pub(crate) fn of(verb: &str) -> Option<Action> {
    Some(match verb {
        "wear" => protection::wear,
        "soak" | "wet out" | "strip" | "bleach" | "neutralise" | "soften" => soak::soak,
        "dip" => soak::dip,
        "scour" | "wash" | "soap off" | "rinse" => washing::wash,
        "dry" => wringing::dry,
        "squeeze" | "spin" | "drip" => wringing::wring,
        "drain" => bath::drain,
        "lift" => bath::lift,
        "immerse" | "lower" | "dye" => bath::immerse,
        "add" | "top up" => bath::add,
        "dissolve" | "paste" => making::dissolve,
        "stir" => bath::stir,
        "raise" | "heat" | "cool" | "hold" | "boil" | "simmer" => bath::heat,
        "store" | "check" | "mark" | "wait" => protection::time_only,
        "dispose" => bath::dispose,
        "weigh" => making::weigh,
        "make" => making::make,
        "sprinkle" | "sift" => powder::lay,
        "squirt" | "spray" | "pour" | "brush" | "print" | "irrigate" => laying::lay,
        "heap" => heap::heap,
        "fold" | "scrunch" | "bind" => shaping::shape,
        "untie" => shaping::untie,
        "turn" => protection::time_only,
        "cover" | "uncover" => shaping::cover,
        "press" => warming::press,
        "batch" | "rest" => batch::batch,
        "steam" | "microwave" => warming::steam,
        _ => return None,
    })
}
