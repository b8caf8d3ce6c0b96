//! `lift tees from dye bath`
//!
//! Needs goods that are in a bath.
//!
//! Does: they come out with the pickup said, else that of the next step that wrings them, and of each dye with what has gone
//! on to the fibre.

use tenter_quantity::Interval;

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let time = bench.duration(pass);
    bench.pass_time(time, None);
    // Dipped goods are out of the bath at the end of the dip, and lifting them says so.
    let wet = |state: &usize| {
        bench.goods.get(*state).is_some_and(|goods| goods.inside.is_some() || goods.water_ratio().best > 0.5)
    };
    if !bench.working.is_empty() && !bench.working.iter().any(wet) {
        return bench.no_effect("the goods are in no bath");
    }
    let pickup =
        |bench: &Bench<'_>, state: usize| pass.step.pickup.clone().unwrap_or_else(|| bench.coming_pickup(pass, state));
    for state in bench.working.clone() {
        let figure = pickup(bench, state);
        bench.leave(state, &figure, Interval::ONE);
    }
}
