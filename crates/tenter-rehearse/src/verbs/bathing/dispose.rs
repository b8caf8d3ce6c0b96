//! `dispose of dye bath`
//!
//! Needs a liquor.
//!
//! Does: it is poured away and gone, with what is in it then.

use tenter_resolve::recipe::LiquorKind;

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let time = bench.duration(pass);
    bench.pass_time(time, None);
    let liquor = match pass.step.liquor.as_ref().map(|liquor| &liquor.kind) {
        Some(LiquorKind::Mix(id)) => bench.standing(*id, 0),
        Some(LiquorKind::Vessel(id)) => bench.in_vessel(*id),
        _ => bench.current,
    };
    match liquor {
        Some(liquor) => bench.pour_away(liquor),
        None => bench.no_effect("nothing stands there to dispose of"),
    }
}
