//! Liquor is taken out of the goods.

pub(super) mod drain;
pub(super) mod drip;
pub(super) mod dry;
pub(super) mod spin;
pub(super) mod squeeze;

use std::sync::Arc;

use tenter_quantity::Figure;

use crate::bench::{Bench, Pass};
use crate::event::EventKind;
use crate::figures::{mass, portion, rest, worked_share};
use crate::usual;

/// `spin tees to 65% pickup`.
pub(super) fn wring(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let pickup = pass.step.pickup.clone().or_else(|| usual::pickup(pass.verb()));
    // The soak before may have taken this pickup into account already, and some of it may have dried off since.
    let wet =
        |state: &usize| {
            bench.goods.get(*state).zip(pickup.as_ref()).is_none_or(|(goods, pickup)| {
                goods.inside.is_some() || goods.water_ratio().best > 0.9 * pickup.value.best
            })
        };
    if !bench.working.is_empty() && !bench.working.iter().any(wet) {
        bench.no_effect("the goods hold no more liquor than that already");
    }
    bench.out_of_baths(pass);
    let time = bench.duration(pass);
    bench.pass_time(time, None);
    let Some(pickup) = pickup else { return };
    to_pickup(bench, &pickup);
}

fn to_pickup(bench: &mut Bench<'_>, pickup: &Figure) {
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
