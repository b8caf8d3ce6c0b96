//! Goods made hot: what dye on them meets, and how warm they are.

use std::sync::Arc;

use tenter_quantity::Figure;

use crate::bench::{Bench, Pass};
use crate::event::EventKind;
use crate::figures::PRACTICE;
use crate::passing::Around;

pub(super) fn hot(bench: &mut Bench<'_>, pass: &Pass<'_>, temperature: Figure, steam: bool) {
    bench.out_of_baths(pass);
    let cover = pass.step.cover.map(|(cover, _)| cover);
    for state in bench.working.clone() {
        if let Some(cover) = cover
            && let Some(goods) = bench.goods_mut(state)
        {
            goods.cover = Some(cover);
        }
        let Some(goods) = bench.goods.get(state).map(Arc::clone) else { continue };
        for (at, zone) in goods.zones.iter().enumerate() {
            if bench.substances.dye(&zone.contents).high <= 0.0 {
                continue;
            }
            if steam && zone.contents.water_mass().best < 0.25 * zone.dry.value.best {
                // Steam condenses on dry cloth until it is as hot: about a quarter of its weight.
                moisten(bench, state, at);
            }
            bench.wets_out(state, at, false);
            if let Some(zone) = bench.zone_mut(state, at) {
                zone.temperature = temperature.clone();
                zone.decarbonated = zone.decarbonated.max(crate::warmth::decarbonated(temperature.value));
            }
            bench.warmed(state, at, steam);
            bench.emit(EventKind::Heated {
                goods: goods.goods,
                zone: zone.key,
                temperature: temperature.clone(),
                cover: goods.cover,
                wet: zone.water_ratio().best > 0.2,
                steam,
            });
        }
    }
    bench.account();
    let time = bench.duration(pass);
    let around = Around { temperature, held: true };
    let open: Vec<_> = bench.working.clone();
    if steam {
        // Nothing dries in steam.
        let before: Vec<_> = open.iter().map(|at| bench.goods.get(*at).and_then(|goods| goods.cover)).collect();
        for state in &open {
            if let Some(goods) = bench.goods_mut(*state) {
                goods.cover = Some(tenter_resolve::recipe::Cover::Covered);
            }
        }
        bench.pass_time(time, Some(&around));
        for (state, cover) in open.iter().zip(before) {
            if let Some(goods) = bench.goods_mut(*state) {
                goods.cover = cover;
            }
        }
    } else {
        bench.pass_time(time, Some(&around));
    }
}

fn moisten(bench: &mut Bench<'_>, state: usize, at: usize) {
    if let Some(zone) = bench.zone_mut(state, at) {
        let wet = crate::figures::share(0.1, 0.25, 0.4, "steam condensed on the cloth", PRACTICE);
        let water = crate::figures::mass(
            "{0} × {1}",
            wet.value * zone.dry.value,
            vec![("", wet), ("dry goods", zone.dry.clone())],
        );
        zone.contents.add_water(water);
    }
}
