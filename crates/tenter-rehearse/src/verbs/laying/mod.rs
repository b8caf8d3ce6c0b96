//! Liquor or paste on zones.

pub(super) mod brush;
pub(super) mod irrigate;
pub(super) mod pour;
pub(super) mod print;
pub(super) mod spray;
pub(super) mod squirt;

use std::sync::Arc;

use tenter_chemistry::soak::Packing;
use tenter_quantity::{Figure, Interval};
use tenter_resolve::recipe::LiquorKind;

use crate::bench::{Bench, Pass};
use crate::drawing::Portion;
use crate::event::EventKind;
use crate::figures::{PRACTICE, share};
use crate::usual;
use crate::warmth::{arriving, capacity, mixed};

/// Lays all that the step applies. `lost` is what a hot liquid loses between its vessel and the cloth, as a share of what it
/// is warmer than the room.
fn lay(bench: &mut Bench<'_>, pass: &Pass<'_>, lost: Interval) {
    // `pour 2 L soda soak to dye bath` is an addition.
    if let Some(LiquorKind::Mix(_) | LiquorKind::Current) = pass.step.liquor.as_ref().map(|liquor| &liquor.kind)
        && pass.step.zones.is_empty()
        && !pass.step.goods_named
    {
        return super::bathing::put_to(bench, pass);
    }
    bench.out_of_baths(pass);
    let targets = bench.targets(pass.step, true);
    for ingredient in pass.step.applied.iter().chain(&pass.step.with) {
        let part = bench.take(pass, ingredient);
        let from = part.temperature.clone().or_else(|| pass.step.temperature.clone()).unwrap_or_else(|| bench.tap());
        let arrives = arriving(&from, &bench.room, lost);
        for target in &targets {
            let mine = Portion {
                contents: part.contents.share(&target.share),
                volume: None,
                temperature: None,
                mix: part.mix,
                alkali_with_dye: part.alkali_with_dye,
            };
            for (at, weight) in &target.zones {
                wet(bench, target.state, *at, &mine, weight, &arrives);
            }
        }
    }
    let time = bench.duration(pass);
    bench.pass_time(time, None);
}

fn wet(bench: &mut Bench<'_>, state: usize, at: usize, part: &Portion, weight: &Figure, arrives: &Figure) {
    let Some(goods) = bench.goods.get(state).map(Arc::clone) else { return };
    let Some(zone) = goods.zones.get(at).map(Arc::clone) else { return };
    let came = part.contents.share(weight);
    let had = zone.contents.masses();
    let ids = came.masses();
    if !ids.is_empty() {
        bench.emit(EventKind::Mixed { liquor: None, had, came: ids, vessel: None });
    }
    for (id, mass) in &came.parts {
        if bench.substances.is_dye(*id) {
            bench.laid(state, zone.key, *id, mass, false);
            bench.emit(EventKind::DyeLaid {
                goods: goods.goods,
                lot: goods.lot,
                zone: zone.key,
                dye: *id,
                mass: mass.clone(),
                dry: came.water.is_none() && bench.holds_powder(&came),
                ice: false,
            });
        }
    }
    let before = zone.water_ratio();
    let heat = capacity(came.water_mass(), Interval::ZERO);
    let has = capacity(zone.contents.water_mass(), zone.dry.value);
    let becomes = mixed((arrives, heat), (&zone.temperature, has));
    let water = came.water.clone();
    if let Some(zone) = bench.zone_mut(state, at) {
        zone.contents.add(came);
        zone.temperature = becomes.clone();
    }
    if let Some(water) = water {
        let room_for = usual::capacity(goods.packing == Packing::Bound);
        bench.emit(EventKind::LiquorLaid {
            goods: goods.goods,
            zone: zone.key,
            mix: part.mix,
            water,
            before,
            capacity: room_for.value,
            temperature: arrives.clone(),
            becomes,
            dry: zone.dry.clone(),
        });
        bench.wets_out(state, at, false);
        bench.warmed(state, at, false);
        let mixing = share(0.2, 0.6, 1.0, "how far what runs off has mixed with what the cloth held", PRACTICE);
        bench.run_off(state, at, &mixing);
    }
}
