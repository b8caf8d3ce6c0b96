//! `make`, `dissolve`, `paste`, `weigh`: mixes and their clocks.

use tenter_resolve::recipe::{LiquorKind, Substance};

use crate::bench::{Bench, Pass};
use crate::state::LiquorName;

/// `make night bottle`, `make dye bath in tub`.
pub(super) fn make(bench: &mut Bench<'_>, pass: &Pass<'_>) {
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

/// `dissolve 9 g lagoon in 200 mL water`, `dissolve soda ash into dye bath`, `paste 9 g lagoon with 20 mL water`.
pub(super) fn dissolve(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    match pass.step.liquor.as_ref().map(|liquor| &liquor.kind) {
        Some(LiquorKind::Mix(_) | LiquorKind::Vessel(_) | LiquorKind::Current) => {
            return super::bath::add(bench, pass);
        }
        Some(LiquorKind::Bath(ingredients)) => {
            let index = bench.bath_of(pass, ingredients, pass.step.place);
            for ingredient in pass.step.applied.iter().chain(&pass.step.with) {
                let part = bench.take(pass, ingredient);
                if let Some(liquor) = bench.liquor_mut(index) {
                    liquor.contents.add(part.contents);
                }
            }
            bench.current = Some(index);
        }
        _ => {
            let mut contents = crate::contents::Contents::default();
            for ingredient in pass.step.applied.iter().chain(&pass.step.with) {
                contents.add(bench.take(pass, ingredient).contents);
            }
            let room = bench.room.clone();
            bench.stand(LiquorName::InPlace(pass.step.place), contents, None, room, true);
        }
    }
    bench.making_time(pass);
}

/// `weigh 9 g/piece lagoon`: powder is handled, nothing else happens.
pub(super) fn weigh(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    for ingredient in &pass.step.applied {
        if matches!(ingredient.what, Substance::Material(_)) {
            bench.take(pass, ingredient);
        }
    }
    bench.making_time(pass);
}
