//! `make night bottle`, `make dye bath in tub`
//!
//! Needs a mix with a name.
//!
//! Does: its parts are put together; it stands there from the end of the step, and its age and the life of dye with alkali in it
//! count from then, before any rest the mix is given.

use tenter_quantity::Interval;
use tenter_resolve::recipe::{LiquorKind, MixId, Substance};

use crate::bench::{Bench, Pass};
use crate::event::EventKind;

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let mut wanted: Vec<MixId> = Vec::new();
    for ingredient in &pass.step.applied {
        match ingredient.what {
            Substance::Mix(id) if ingredient.amount.is_none() => wanted.push(id),
            _ => {
                bench.take(pass, ingredient);
            }
        }
    }
    let vessel = match pass.step.liquor.as_ref().map(|liquor| &liquor.kind) {
        Some(LiquorKind::Vessel(id)) => Some(*id),
        Some(LiquorKind::Mix(id)) => {
            wanted.push(*id);
            None
        }
        _ => None,
    };
    let vessel = vessel.or(pass.step.vessel.map(|(id, _)| id));
    if wanted.is_empty() {
        bench.no_effect("nothing with a name of its own is made here");
    }
    let made: Vec<(MixId, usize)> = wanted.into_iter().filter_map(|id| Some((id, bench.make(id, true, 0)?))).collect();
    let time = bench.duration(pass);
    bench.pass_time(time, None);
    for (mix, liquor) in &made {
        if let Some(vessel) = vessel
            && let Some(state) = bench.liquor_mut(*liquor)
        {
            state.vessel = Some(vessel);
        }
        bench.finished(*liquor);
        let at = bench.clock.elapsed;
        bench.emit(EventKind::Made { liquor: *liquor, mix: *mix, implied: false, at });
    }
    let recipe = bench.recipe;
    let rests = made.iter().filter_map(|(mix, _)| recipe.mixes.get(mix.0)?.rest.as_ref());
    let rest = rests.map(|rest| rest.value.clamp_low(0.0)).fold(Interval::ZERO, Interval::max);
    if rest.high > 0.0 {
        bench.clock.elapsed += rest;
        bench.pass_time(rest, None);
    }
}
