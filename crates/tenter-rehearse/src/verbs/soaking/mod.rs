//! Goods go through a liquor and carry some of it away.

pub(super) mod bleach;
pub(super) mod dip;
pub(super) mod neutralise;
pub(super) mod soak;
pub(super) mod soften;
pub(super) mod strip;
pub(super) mod wet_out;

use crate::bench::{Bench, Pass};

/// Into the liquor named, the time of the step, and out again; plain water where none is named.
fn through(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let Some(liquor) = bench.liquor(pass) else {
        return super::washing::fresh_liquor(bench, pass, false);
    };
    bench.with(pass, liquor);
    bench.used_as_bath(liquor);
    hold_temperature(bench, pass, liquor);
    bench.bathe(pass, liquor, None);
    bench.step_out_of_place(pass, liquor);
}

/// The same for work that comes after washing off: what is loose in the goods goes into the liquor, as in a rinse.
fn after_dyeing(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let washed = bench.working.iter().filter_map(|at| bench.goods.get(*at)).any(|goods| goods.washed_off);
    if washed { super::washing::fresh_liquor(bench, pass, true) } else { through(bench, pass) }
}

/// A written temperature is that of the bath from here on, and kept.
fn hold_temperature(bench: &mut Bench<'_>, pass: &Pass<'_>, liquor: usize) {
    let Some(figure) = pass.step.temperature.clone() else { return };
    let now = bench.clock.elapsed;
    if let Some(bath) = bench.liquor_mut(liquor) {
        bath.temperature = figure;
        bath.temperature_at = now;
        bath.heated = true;
    }
}
