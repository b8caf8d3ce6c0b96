//! `soak`, `wet out`, `neutralise`, `soften`, `strip`, `bleach`, `dip`: goods go through a liquor and carry some of it away.

use tenter_resolve::recipe::ZoneRef;

use crate::bench::{Bench, Pass};

/// `soak tees in soda soak for 20 min`.
pub(super) fn soak(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let dyed = bench.working.iter().filter_map(|at| bench.goods.get(*at)).any(|goods| goods.washed_off);
    if dyed && matches!(pass.verb(), "neutralise" | "soften" | "strip" | "bleach" | "wet out") {
        return super::washing::plain_water(bench, pass, true);
    }
    let Some(liquor) = bench.liquor(pass) else {
        return super::washing::plain_water(bench, pass, false);
    };
    bench.with(pass, liquor);
    bench.used_as_bath(liquor);
    hold_temperature(bench, pass, liquor);
    bench.bathe(pass, liquor, None);
    bench.step_out_of_place(pass, liquor);
}

/// `dip shirts in dip bath to hem for 5 min`: only the zones named, or those from the first listed to it, go in.
pub(super) fn dip(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let deep = pass
        .step
        .zones
        .iter()
        .filter_map(|zone| match zone.zone {
            ZoneRef::Of(layout, at) => Some((layout, at)),
            _ => None,
        })
        .max_by_key(|(_, at)| *at);
    let Some(liquor) = bench.liquor(pass) else {
        bench.note("no liquor to dip into is named");
        return super::protection::time_only(bench, pass);
    };
    bench.with(pass, liquor);
    bench.used_as_bath(liquor);
    let Some((layout, depth)) = deep else {
        bench.bathe(pass, liquor, None);
        return;
    };
    for state in bench.working.clone() {
        bench.divide(state, Some(layout));
    }
    bench.dip_zones(pass, liquor, layout, depth);
}

/// A written temperature is that of the bath from here on, and kept.
pub(super) fn hold_temperature(bench: &mut Bench<'_>, pass: &Pass<'_>, liquor: usize) {
    let Some(figure) = pass.step.temperature.clone() else { return };
    let now = bench.clock.elapsed;
    if let Some(bath) = bench.liquor_mut(liquor) {
        bath.temperature = figure;
        bath.temperature_at = now;
        bath.heated = true;
    }
}
