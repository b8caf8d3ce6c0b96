//! Fresh liquor takes out what is not fixed.

mod carrying;
pub(super) mod rinse;
mod rinsing;
pub(super) mod scour;
pub(super) mod soap_off;
pub(super) mod wash;

use std::sync::Arc;

use tenter_quantity::Figure;
use tenter_reference::Role;
use tenter_resolve::recipe::{Ingredient, LiquorKind, Substance};

use crate::bench::{Bench, Pass};
use crate::contents::Contents;
use crate::event::EventKind;
use crate::figures::exact_share;
use crate::state::LiquorName;

/// Water nobody measured, or a bath of its own each time.
pub(super) fn fresh_liquor(bench: &mut Bench<'_>, pass: &Pass<'_>, washing: bool) {
    bench.out_of_baths(pass);
    let verb = pass.verb();
    // A mix used as a wash bath is still made, drawn on and handled; its strength counts as the bath's.
    let bath = match pass.step.liquor.as_ref().map(|liquor| &liquor.kind) {
        Some(LiquorKind::Bath(ingredients)) => Some(Some(ingredients)),
        Some(LiquorKind::Mix(_) | LiquorKind::Vessel(_) | LiquorKind::Current) => Some(None),
        _ => None,
    };
    let times = pass.step.repeats.map_or(1, |(count, _)| count).clamp(1, 20);
    let soap = matches!(verb, "soap off" | "wash" | "scour") || soapy(bench, &pass.step.with);
    let mut volume: Option<Figure> = None;
    let mut temperature = bench.water_temperature(pass.step);
    let mut fresh = Contents::default();
    let mut standing = None;
    if let Some(Some(ingredients)) = bath {
        let at = bench.bath_of(pass, ingredients, pass.step.place);
        bench.with(pass, at);
        if let Some(state) = bench.liquors.get(at) {
            volume.clone_from(&state.volume);
            if pass.step.temperature.is_none() {
                temperature = Some(state.temperature.clone());
            }
            fresh = state.contents.clone();
        }
        // What the goods give to it is told by the rinse; poured away it is that and this.
        if let Some(state) = bench.liquors.get(at).map(Arc::clone) {
            bench.emit(EventKind::Discharged { liquor: at, volume: state.volume.clone(), contents: state });
        }
        if let Some(state) = bench.liquor_mut(at) {
            state.contents = Contents::default();
            state.gone = true;
        }
    } else if let Some(None) = bath {
        if let Some(at) = bench.liquor(pass) {
            bench.with(pass, at);
            bench.used_as_bath(at);
            standing = Some(at);
            if let Some(state) = bench.liquors.get(at) {
                volume.clone_from(&state.volume);
                if pass.step.temperature.is_none() {
                    temperature = Some(state.temperature.clone());
                }
                fresh = state.contents.clone();
            }
        }
    } else {
        for ingredient in &pass.step.with {
            let part = bench.take(pass, ingredient);
            fresh.add(part.contents);
        }
    }
    let temperature = temperature.unwrap_or_else(|| bench.tap());
    let time = bench.duration(pass);
    // Fresh water takes alkali and warmth away at once: nothing worth counting reacts from here on.
    let mut before = Vec::new();
    for state in bench.working.clone() {
        if let Some(goods) = bench.goods_mut(state).filter(|goods| washing && !goods.washed_off) {
            goods.washed_off = true;
            before.push(state);
        }
    }
    bench.pass_time(time, None);
    for state in before {
        if let Some(goods) = bench.goods_mut(state) {
            goods.washed_off = false;
        }
    }
    let all: f64 = bench.working.iter().filter_map(|at| bench.goods.get(*at)).map(|goods| goods.dry.value.best).sum();
    for state in bench.working.clone() {
        let Some(goods) = bench.goods.get(state).map(Arc::clone) else { continue };
        let pickup = bench.coming_pickup(pass, state);
        let part_of_bath = if all > 0.0 { goods.dry.value.best / all } else { 1.0 };
        let left = rinsing::remaining(pass, &goods.dry, &pickup, volume.as_ref(), part_of_bath);
        let dye = goods.zones.iter().any(|zone| bench.substances.dye(&zone.contents).high > 0.0);
        if !washing && !dye {
            rinsing::wet(bench, state, &pickup, &temperature);
            if standing.is_none() {
                let mine = exact_share(part_of_bath, "share of these goods", "by weight");
                bench.drained.push(fresh.share(&mine));
            }
            continue;
        }
        if !fresh.parts.is_empty() {
            let mut on_cloth = Contents::default();
            for zone in &goods.zones {
                on_cloth.add(zone.contents.clone());
            }
            let name = Some(LiquorName::InPlace(pass.step.place));
            let (had, came) = (fresh.masses(), on_cloth.masses());
            if !came.is_empty() {
                bench.emit(EventKind::Mixed { liquor: name, had, came, vessel: None });
            }
        }
        for round in 0..times {
            rinsing::rinse_once(bench, state, &left, &pickup, &temperature, soap && washing, dye, round == 0);
        }
        match standing {
            Some(at) => carrying::carry_from(bench, state, at, &pickup),
            None => carrying::carry(bench, state, &fresh, &pickup, part_of_bath, times),
        }
    }
}

fn soapy(bench: &Bench<'_>, with: &[Ingredient]) -> bool {
    with.iter().any(|ingredient| match ingredient.what {
        Substance::Material(id) => bench.substances.get(id).is_some_and(|entry| entry.role == Role::Detergent),
        Substance::Mix(_) => false,
    })
}
