//! `steam`, `microwave`, `heat tees`, `press`: goods are made hot.

use std::sync::Arc;

use tenter_quantity::Figure;

use crate::bench::{Bench, Pass};
use crate::event::EventKind;
use crate::figures::{PRACTICE, celsius};
use crate::passing::Around;

/// `steam tees for 30 min covered`, `microwave tees for 2 min in sealed bag`.
pub(super) fn steam(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let temperature = pass.step.temperature.clone().unwrap_or_else(|| match pass.verb() {
        "microwave" => celsius(70.0, 90.0, 100.0, "wet goods in a microwave oven", PRACTICE),
        _ => celsius(95.0, 99.0, 102.0, "goods in steam", PRACTICE),
    });
    hot(bench, pass, temperature, true);
}

/// `heat tees to 60 °C`, `hold tees at 40 °C`.
pub(super) fn warm(bench: &mut Bench<'_>, pass: &Pass<'_>, to: Option<Figure>) {
    match to {
        Some(to) => hot(bench, pass, to, false),
        None => {
            let time = bench.duration(pass);
            bench.pass_time(time, None);
        }
    }
}

/// `press tees`: dry heat for moments; wet goods dry.
pub(super) fn press(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let iron = pass.step.temperature.clone().unwrap_or_else(|| celsius(110.0, 150.0, 200.0, "an iron", PRACTICE));
    for state in bench.working.clone() {
        let Some(goods) = bench.goods.get(state).map(Arc::clone) else { continue };
        let cover = goods.cover;
        for zone in &goods.zones {
            if bench.substances.dye(&zone.contents).high > 0.0 && !goods.washed_off {
                bench.emit(EventKind::Heated {
                    goods: goods.goods,
                    zone: zone.key,
                    temperature: iron.clone(),
                    cover,
                    wet: zone.water_ratio().best > 0.2,
                    steam: false,
                });
            }
        }
    }
    let time = bench.duration(pass);
    bench.pass_time(time, None);
}

fn hot(bench: &mut Bench<'_>, pass: &Pass<'_>, temperature: Figure, steam: bool) {
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
