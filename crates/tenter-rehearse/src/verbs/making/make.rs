//! `make night bottle`, `make dye bath in tub`
//!
//! Needs a mix with a name.
//!
//! Does: its parts are put together; it stands there from the end of the step, and its life counts from then.

use tenter_resolve::recipe::{LiquorKind, Substance};

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let vessel = match pass.step.liquor.as_ref().map(|liquor| &liquor.kind) {
        Some(LiquorKind::Vessel(id)) => Some(*id),
        _ => None,
    };
    let mut any = false;
    for ingredient in &pass.step.applied {
        match ingredient.what {
            Substance::Mix(id) if ingredient.amount.is_none() => {
                any = true;
                if let Some(index) = bench.make(id, true, 0)
                    && let Some(vessel) = vessel
                    && let Some(liquor) = bench.liquor_mut(index)
                {
                    liquor.vessel = Some(vessel);
                }
            }
            _ => {
                bench.take(pass, ingredient);
            }
        }
    }
    if let Some(LiquorKind::Mix(id)) = pass.step.liquor.as_ref().map(|liquor| &liquor.kind) {
        any = true;
        bench.make(*id, true, 0);
    }
    if !any {
        bench.note("nothing with a name of its own is made here");
    }
    bench.making_time(pass);
}
