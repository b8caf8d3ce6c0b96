//! `store night bottle in jar`, `store tees in bucket for 2 days`
//!
//! Needs a liquor or goods; a vessel where said.
//!
//! Does: a liquor is moved into the vessel with all that is in it, as old as it is, and is found there from now on; goods are
//! taken out of any bath, lie in the vessel, and keep what drips off them.

use tenter_resolve::recipe::{LiquorKind, Substance};

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let mut named = None;
    let mut vessel = pass.step.vessel.map(|(id, _)| id);
    match pass.step.liquor.as_ref().map(|liquor| &liquor.kind) {
        Some(LiquorKind::Mix(id)) => named = Some(*id),
        Some(LiquorKind::Vessel(id)) => vessel = vessel.or(Some(*id)),
        _ => {}
    }
    let mixes = pass.step.applied.iter().filter_map(|ingredient| match ingredient.what {
        Substance::Mix(id) => Some(id),
        Substance::Material(_) => None,
    });
    let named: Vec<_> = named.into_iter().chain(mixes).collect();
    for id in &named {
        let Some(liquor) = bench.standing(*id, 0) else { continue };
        if let Some(state) = bench.liquor_mut(liquor) {
            state.vessel = vessel.or(state.vessel);
            if pass.step.temperature.is_none() {
                state.heated = false;
            }
        }
        if let Some(temperature) = pass.step.temperature.clone() {
            super::set_temperature(bench, liquor, temperature, tenter_quantity::Interval::ZERO);
        }
    }
    if named.is_empty() && pass.step.goods_named {
        bench.out_of_baths(pass);
        let cover = pass.step.cover.map(|(cover, _)| cover);
        for state in bench.working.clone() {
            if let Some(goods) = bench.goods_mut(state) {
                goods.lies_in_vessel |= vessel.is_some();
                goods.cover = cover.or(goods.cover);
            }
        }
    }
    crate::verbs::time_only(bench, pass);
}
