//! `rinse`, `wash`, `scour`, `soap off`: fresh liquor takes out what is not fixed.

use std::sync::Arc;

use tenter_quantity::{Figure, Interval};
use tenter_reference::Role;
use tenter_resolve::recipe::{Ingredient, LiquorKind, Substance};

use crate::bench::{Bench, Pass};
use crate::contents::Contents;
use crate::event::EventKind;
use crate::figures::{self, PRACTICE, exact_share, portion, rest, share, worked_share};
use crate::state::LiquorName;

/// `rinse tees in cold water until nearly clear`, `soap off tees in 20 L water at 60 °C with 1 g/L textile detergent, 2 times`.
pub(super) fn wash(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    plain_water(bench, pass, true);
}

/// Water nobody measured, or a bath of its own each time.
pub(super) fn plain_water(bench: &mut Bench<'_>, pass: &Pass<'_>, washing: bool) {
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
    bench.pass_time(time, None);
    let all: f64 = bench.working.iter().filter_map(|at| bench.goods.get(*at)).map(|goods| goods.dry.value.best).sum();
    for state in bench.working.clone() {
        let Some(goods) = bench.goods.get(state).map(Arc::clone) else { continue };
        let pickup = bench.coming_pickup(pass, state);
        let part_of_bath = if all > 0.0 { goods.dry.value.best / all } else { 1.0 };
        let left = remaining(bench, pass, &goods.dry, &pickup, volume.as_ref(), part_of_bath);
        let dye = goods.zones.iter().any(|zone| bench.substances.dye(&zone.contents).high > 0.0);
        if !washing && !dye {
            wet(bench, state, &pickup, &temperature);
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
            rinse_once(bench, state, &left, &pickup, &temperature, soap && washing, dye, round == 0);
        }
        match standing {
            Some(at) => carry_from(bench, state, at, &pickup),
            None => carry(bench, state, &fresh, &pickup, part_of_bath, times),
        }
    }
    if verb == "scour" {
        for state in bench.working.clone() {
            if let Some(goods) = bench.goods_mut(state) {
                goods.wettability = tenter_chemistry::soak::Wettability::Scoured;
            }
        }
    }
}

fn soapy(bench: &Bench<'_>, with: &[Ingredient]) -> bool {
    with.iter().any(|ingredient| match ingredient.what {
        Substance::Material(id) => bench.substances.get(id).is_some_and(|entry| entry.role == Role::Detergent),
        Substance::Mix(_) => false,
    })
}

/// Share of what is loose that one rinse leaves: pickup ÷ (pickup + water), not mixing fully; by the sign where it goes on
/// until the water is clear. Common practice, no source, and wide.
fn remaining(
    bench: &Bench<'_>,
    pass: &Pass<'_>,
    dry: &Figure,
    pickup: &Figure,
    volume: Option<&Figure>,
    part: f64,
) -> Figure {
    let _ = bench;
    if let Some(until) = &pass.step.until {
        return if until.text.contains("nearly") || until.text.contains("almost") {
            share(0.01, 0.05, 0.2, "left after rinsing until nearly clear", PRACTICE)
        } else {
            share(0.003, 0.02, 0.12, "left after rinsing until clear", PRACTICE)
        };
    }
    if let Some(volume) = volume.filter(|volume| volume.value.best > 0.0 && dry.value.best > 0.0) {
        let water = volume.value * (1000.0 * part) / dry.value;
        let held = pickup.value.clamp_low(0.3);
        let at = |h: f64, w: f64| h / (h + w);
        let value = Interval::new(
            at(held.low, water.high),
            (at(held.best, water.best) * 1.5).min(1.0),
            (at(held.high, water.low) * 3.0).min(1.0),
        );
        return worked_share(
            "{0} of {1} to {2} of fresh water, which never mixes fully",
            value,
            vec![("water held", pickup.clone()), ("dry goods", dry.clone()), ("", volume.clone())],
        );
    }
    share(0.04, 0.12, 0.4, "left after one rinse in plenty of water", PRACTICE)
}

#[allow(clippy::too_many_arguments)]
fn rinse_once(
    bench: &mut Bench<'_>,
    state: usize,
    left: &Figure,
    pickup: &Figure,
    temperature: &Figure,
    soap: bool,
    dye: bool,
    first_round: bool,
) {
    let Some(goods) = bench.goods.get(state).map(Arc::clone) else { return };
    let alkali: Interval =
        goods.zones.iter().map(|zone| bench.substances.usable_alkali(&zone.contents)).sum::<Interval>()
            * crate::substances::SODA_ASH_MOLAR_MASS;
    let soapings = goods.soapings + u32::from(soap);
    let loose_before = goods.zones.iter().map(|zone| zone.loose).fold(Interval::ZERO, Interval::max);
    if first_round && dye {
        for at in 0..goods.zones.len() {
            if goods.zones.get(at).is_some_and(|zone| zone.powder) {
                bench.wets_out(state, at, false);
            }
        }
        bench.each_account(state, |entry, place| {
            entry.washed.get_or_insert(place);
        });
    }
    bench.emit(EventKind::Rinse {
        goods: goods.goods,
        lot: goods.lot,
        first: dye && !goods.washed_off,
        soap,
        temperature: temperature.clone(),
        alkali_before: alkali,
        left: left.clone(),
        loose_before,
        soapings,
        dye,
        before: goods.clone(),
    });
    let goes = rest(left);
    let mut away = Contents::default();
    for at in 0..goods.zones.len() {
        let table = Arc::clone(&bench.substances);
        let Some(zone) = bench.zone_mut(state, at) else { continue };
        for (id, figure) in &mut zone.contents.parts {
            if !table.is_dye(*id) {
                away.add_part(*id, portion(figure, &goes));
                *figure = portion(figure, left);
            }
        }
        zone.contents.parts.retain(|(_, figure)| figure.value.high > 1e-9);
        zone.contents.water = Some(figures::mass(
            "{0} × {1}",
            pickup.value * zone.dry.value,
            vec![("water held", pickup.clone()), ("dry goods", zone.dry.clone())],
        ));
        zone.loose = zone.loose * left.value;
        zone.temperature = temperature.clone();
        zone.powder = false;
    }
    bench.drained.push(away);
    if let Some(goods) = bench.goods_mut(state) {
        goods.washed_off |= dye;
        goods.soapings = soapings;
        goods.ice = None;
    }
}

/// Plain wetting.
fn wet(bench: &mut Bench<'_>, state: usize, pickup: &Figure, temperature: &Figure) {
    let count = bench.goods.get(state).map_or(0, |goods| goods.zones.len());
    for at in 0..count {
        if let Some(zone) = bench.zone_mut(state, at) {
            zone.contents.water = Some(figures::mass(
                "{0} × {1}",
                pickup.value * zone.dry.value,
                vec![("water held", pickup.clone()), ("dry goods", zone.dry.clone())],
            ));
            zone.temperature = temperature.clone();
        }
    }
}

/// What the fresh liquor holds stays in the goods in the share of their pickup.
fn carry(bench: &mut Bench<'_>, state: usize, fresh: &Contents, pickup: &Figure, part: f64, times: u32) {
    if fresh.parts.is_empty() {
        return;
    }
    let mine = exact_share(part, "share of these goods", "by weight");
    let fresh = fresh.share(&mine);
    for _ in 1..times {
        bench.drained.push(fresh.clone());
    }
    let Some(goods) = bench.goods.get(state).map(Arc::clone) else { return };
    let Some(water) = fresh.water.clone().filter(|water| water.value.best > 0.0) else {
        bench.drained.push(fresh);
        return;
    };
    let carried = worked_share(
        "{0} of {1} out of {2}",
        pickup.value * goods.dry.value / water.value,
        vec![("water held", pickup.clone()), ("dry goods", goods.dry.clone()), ("", water)],
    );
    bench.drained.push(fresh.share(&rest(&carried)));
    for at in 0..goods.zones.len() {
        let Some(zone) = goods.zones.get(at) else { continue };
        let mine = portion(&carried, &zone.share);
        if let Some(zone) = bench.zone_mut(state, at) {
            for (id, figure) in &fresh.parts {
                zone.contents.add_part(*id, portion(figure, &mine));
            }
        }
    }
}

/// The same out of a liquor that stays standing.
fn carry_from(bench: &mut Bench<'_>, state: usize, liquor: usize, pickup: &Figure) {
    let Some(bath) = bench.liquors.get(liquor).map(Arc::clone) else { return };
    let Some(goods) = bench.goods.get(state).map(Arc::clone) else { return };
    let Some(water) = bath.contents.water.clone().filter(|water| water.value.best > 0.0) else { return };
    let carried = worked_share(
        "{0} of {1} out of {2}",
        pickup.value * goods.dry.value / water.value,
        vec![("water held", pickup.clone()), ("dry goods", goods.dry.clone()), ("", water)],
    );
    let Some(bath) = bench.liquor_mut(liquor) else { return };
    let taken = bath.contents.take(&carried);
    bath.volume = bath.volume.as_ref().map(|volume| portion(volume, &rest(&carried)));
    for at in 0..goods.zones.len() {
        let Some(share) = goods.zones.get(at).map(|zone| zone.share.clone()) else { continue };
        if let Some(zone) = bench.zone_mut(state, at) {
            for (id, figure) in &taken.parts {
                zone.contents.add_part(*id, portion(figure, &share));
            }
        }
    }
}
