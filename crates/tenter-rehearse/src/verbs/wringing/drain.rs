//! `drain dye bath`, `drain tees on rack`
//!
//! Needs a liquor, or goods.
//!
//! Does: a liquor is poured away, and goods in it come out of it with the pickup they are wrung to next; goods by themselves
//! drip.

use tenter_quantity::Interval;

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    if pass.step.goods_named || pass.step.liquor.is_none() {
        return super::wring(bench, pass);
    }
    let Some(liquor) = bench.liquor(pass) else {
        return crate::verbs::time_only(bench, pass);
    };
    let inside = bench.liquors.get(liquor).map(|bath| bath.inside.clone()).unwrap_or_default();
    for state in inside {
        let pickup = bench.coming_pickup(pass, state);
        bench.leave(state, &pickup, Interval::ONE);
    }
    let time = bench.duration(pass);
    bench.pass_time(time, None);
    bench.pour_away(liquor);
}
