//! Work at a bath: goods in and out, additions, stirring.

pub(super) mod add;
pub(super) mod dispose;
pub(super) mod dye;
pub(super) mod immerse;
pub(super) mod lift;
pub(super) mod lower;
pub(super) mod stir;
pub(super) mod store;
pub(super) mod top_up;

use std::sync::Arc;

use tenter_quantity::standard::LITRE;
use tenter_quantity::{Figure, Interval};

use crate::bench::{Bench, Pass};
use crate::event::EventKind;
use crate::warmth::{capacity, mixed};

/// `immerse tees in dye bath for 30 min at 40 °C`: in, and there they stay until another step takes them out.
fn put_in(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let Some(liquor) = bench.liquor(pass).or(bench.current) else {
        bench.no_effect("no bath is named and none stands there");
        return super::time_only(bench, pass);
    };
    bench.with(pass, liquor);
    if bench.working.iter().all(|at| bench.goods.get(*at).is_some_and(|goods| goods.inside != Some(liquor))) {
        bench.used_as_bath(liquor);
    }
    for state in bench.working.clone() {
        bench.enter(state, liquor);
    }
    let to = pass.step.to_temperature.clone().or_else(|| pass.step.temperature.clone());
    if let Some(from) = pass.step.from_temperature.clone() {
        set_temperature(bench, liquor, from, Interval::ZERO);
    }
    let time = bench.duration(pass);
    if let Some(to) = to {
        set_temperature(bench, liquor, to, time);
    }
    for state in bench.working.clone() {
        bench.tell_immersed(state, liquor);
    }
    bench.account();
    bench.pass_time(time, None);
}

/// `add 40 g/L sodium chloride to dye bath in 3 parts, 10 min apart`, `top up dye bath to 20 L`.
pub(super) fn put_to(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let liquor = match pass.step.liquor {
        Some(_) => bench.liquor(pass),
        None => bench.current,
    };
    let Some(liquor) = liquor else {
        bench.no_effect("no bath is named and none stands there");
        return super::time_only(bench, pass);
    };
    let portions = pass.step.portions.map_or(1, |(count, _)| count).max(1);
    for ingredient in pass.step.applied.iter().chain(&pass.step.with) {
        let part = bench.take(pass, ingredient);
        let came = part.materials();
        let Some(state) = bench.liquors.get(liquor).map(Arc::clone) else { return };
        if !came.is_empty() {
            let had = state.contents.masses();
            bench.emit(EventKind::Mixed { liquor: Some(state.name), had, came, vessel: state.vessel });
        }
        let inside = !state.inside.is_empty();
        let dye_in_bath = bench.substances.dye(&state.contents);
        let since = state.inside.iter().filter_map(|at| bench.goods.get(*at)).map(|goods| goods.inside_since).next();
        let levelling =
            since.filter(|_| dye_in_bath.high > 0.0).map(|since| (bench.clock.elapsed - since).clamp_low(0.0));
        for (material, mass) in &part.contents.parts {
            bench.emit(EventKind::Added {
                liquor,
                material: *material,
                mass: mass.clone(),
                portions,
                goods_inside: inside,
                dye_in_bath,
                levelling_time: levelling,
                temperature: state.temperature.clone(),
            });
        }
        let warm = part.temperature.clone();
        let heat = capacity(part.contents.water_mass(), Interval::ZERO);
        let now = bench.clock.elapsed;
        if let Some(bath) = bench.liquor_mut(liquor) {
            if let Some(warm) = warm
                && heat.high > 0.0
                && !bath.heated
            {
                let have = capacity(bath.contents.water_mass(), Interval::ZERO);
                bath.temperature = mixed((&warm, heat), (&bath.temperature, have));
                bath.temperature_at = now;
            }
            bath.contents.add(part.contents);
            if let Some(more) = part.volume {
                bath.volume = Some(match bath.volume.take() {
                    Some(have) => Figure::sum(vec![have, more], LITRE),
                    None => more,
                });
            }
        }
        bench.note_together(liquor, part.alkali_with_dye.unwrap_or(now));
    }
    // Half the portions are in for half the time; the last goes in at the end.
    let gaps = f64::from(portions - 1);
    if let (Some(apart), None) = (&pass.step.interval, &pass.step.duration) {
        let time = (apart.value * gaps).clamp_low(0.0);
        bench.clock.elapsed += time;
        bench.clock.hands_on += Interval::exact(60.0 * f64::from(portions));
        bench.time = apart.clone();
        bench.account();
        bench.pass_time(time, None);
    } else {
        let time = bench.duration(pass);
        bench.account();
        bench.pass_time(time, None);
    }
}

/// A bath is brought to a temperature and kept there.
pub(super) fn set_temperature(bench: &mut Bench<'_>, liquor: usize, to: Figure, over: Interval) {
    let now = bench.clock.elapsed;
    let Some(state) = bench.liquors.get(liquor).map(Arc::clone) else { return };
    bench.emit(EventKind::BathTemperature {
        liquor,
        from: state.temperature.clone(),
        to: to.clone(),
        over,
        goods_inside: !state.inside.is_empty(),
    });
    if let Some(bath) = bench.liquor_mut(liquor) {
        bath.decarbonated = bath.decarbonated.max(crate::warmth::decarbonated(to.value));
        if !bath.inside.is_empty() {
            bath.warmest = Some(bath.warmest.map_or(to.value, |have| have.max(to.value)));
        }
        bath.temperature = to;
        bath.temperature_at = now;
        bath.heated = true;
    }
}
