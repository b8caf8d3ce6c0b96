//! What one fresh liquor leaves in the goods.

use std::sync::Arc;

use tenter_quantity::{Figure, Interval};

use crate::bench::{Bench, Pass};
use crate::contents::Contents;
use crate::event::EventKind;
use crate::figures::{self, PRACTICE, portion, rest, share, worked_share};

/// Share of what is loose that one rinse leaves: pickup ÷ (pickup + water), not mixing fully; by the sign where it goes on
/// until the water is clear. Common practice, no source, and wide.
pub(super) fn remaining(pass: &Pass<'_>, dry: &Figure, pickup: &Figure, volume: Option<&Figure>, part: f64) -> Figure {
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
pub(super) fn rinse_once(
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
        // A last microgram goes with the water.
        let (parts, traces) =
            core::mem::take(&mut zone.contents.parts).into_iter().partition(|(_, figure)| figure.value.high > 1e-9);
        zone.contents.parts = parts;
        away.add(Contents { water: None, parts: traces });
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
pub(super) fn wet(bench: &mut Bench<'_>, state: usize, pickup: &Figure, temperature: &Figure) {
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
