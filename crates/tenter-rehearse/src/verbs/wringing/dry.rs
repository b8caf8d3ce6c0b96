//! `dry tees`
//!
//! Needs goods; hours where no time is said.
//!
//! Does: the water goes, everything else stays; the goods come to the temperature of the room. For half of the time they are
//! taken as still wet.

use std::sync::Arc;

use tenter_quantity::Interval;

use crate::bench::{Bench, Pass};
use crate::event::EventKind;
use crate::figures::mass;
use crate::passing::Around;
use crate::usual;

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    bench.out_of_baths(pass);
    let time = bench.duration(pass);
    let around = pass.step.temperature.clone().map(|temperature| Around { temperature, held: false });
    bench.pass_time(time * 0.5, around.as_ref());
    let Some(pickup) = usual::pickup("dry") else { return };
    let wet = |state: &usize| bench.goods.get(*state).is_some_and(|goods| goods.water_ratio().best > pickup.value.high);
    if !bench.working.is_empty() && !bench.working.iter().any(wet) {
        bench.no_effect("the goods are dry already");
    }
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
