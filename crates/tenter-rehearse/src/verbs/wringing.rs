//! `squeeze`, `spin`, `drip`: goods are brought to a pickup. `dry`: to next to nothing.

use std::sync::Arc;

use tenter_quantity::{Figure, Interval};

use crate::bench::{Bench, Pass};
use crate::event::EventKind;
use crate::figures::{mass, portion, rest, worked_share};
use crate::passing::Around;
use crate::usual;

/// `spin tees to 65% pickup`.
pub(super) fn wring(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    bench.out_of_baths(pass);
    let time = bench.duration(pass);
    bench.pass_time(time, None);
    let Some(pickup) = pass.step.pickup.clone().or_else(|| usual::pickup(pass.verb())) else { return };
    to_pickup(bench, pass, &pickup);
}

pub(super) fn to_pickup(bench: &mut Bench<'_>, _pass: &Pass<'_>, pickup: &Figure) {
    for state in bench.working.clone() {
        let Some(goods) = bench.goods.get(state).map(Arc::clone) else { continue };
        let before = goods.water_ratio();
        for (at, zone) in goods.zones.iter().enumerate() {
            let Some(water) = zone.contents.water.clone() else { continue };
            let wanted = pickup.value * zone.dry.value;
            // The soak before took this pickup into account already, or there is less water than that.
            let same = (wanted.best - water.value.best).abs() < 1e-9 * water.value.best.max(1e-9);
            if same || water.value.best <= wanted.best {
                continue;
            }
            let inputs =
                vec![("water kept", pickup.clone()), ("dry goods", zone.dry.clone()), ("water held", water.clone())];
            let kept = worked_share("{0} × {1} ÷ {2}", wanted / water.value, inputs);
            let goes = rest(&kept);
            let inputs = vec![("water kept", pickup.clone()), ("dry goods", zone.dry.clone())];
            let stays = mass("{0} × {1}", wanted.min(water.value), inputs);
            let Some(zone) = bench.zone_mut(state, at) else { continue };
            let away = zone.contents.share(&goes);
            zone.contents.water = Some(stays);
            for (_, figure) in &mut zone.contents.parts {
                *figure = portion(figure, &kept);
            }
            bench.drained.push(away);
        }
        bench.emit(EventKind::Wrung { goods: goods.goods, before, after: pickup.clone() });
    }
}

/// `dry tees`: the water goes, everything else stays.
pub(super) fn dry(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    bench.out_of_baths(pass);
    let time = bench.duration(pass);
    let around = pass.step.temperature.clone().map(|temperature| Around { temperature, held: false });
    bench.pass_time(time * 0.5, around.as_ref());
    let Some(pickup) = usual::pickup("dry") else { return };
    for state in bench.working.clone() {
        let Some(goods) = bench.goods.get(state).map(Arc::clone) else { continue };
        let alkali = goods.zones.iter().map(|zone| bench.substances.usable_alkali(&zone.contents)).sum::<Interval>()
            * crate::substances::SODA_ASH_MOLAR_MASS;
        let dye = goods.zones.iter().any(|zone| bench.substances.dye(&zone.contents).high > 0.0);
        bench.emit(EventKind::Dried { goods: goods.goods, unwashed_dye: dye && !goods.washed_off, alkali });
        for at in 0..goods.zones.len() {
            let room = bench.room.clone();
            if let Some(zone) = bench.zone_mut(state, at) {
                let value = pickup.value * zone.dry.value;
                zone.contents.water = zone.contents.water.is_some().then(|| {
                    mass("{0} × {1}", value, vec![("water held", pickup.clone()), ("dry goods", zone.dry.clone())])
                });
                zone.temperature = room;
            }
        }
    }
}
