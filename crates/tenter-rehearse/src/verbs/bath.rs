//! Work at a bath: goods in and out, additions, stirring, heating, draining.

use std::sync::Arc;

use tenter_quantity::standard::LITRE;
use tenter_quantity::{Figure, Interval};
use tenter_resolve::recipe::LiquorKind;

use crate::bench::{Bench, Pass};
use crate::event::EventKind;
use crate::figures::{self};
use crate::usual;
use crate::warmth::{capacity, mixed};

/// `immerse tees in dye bath for 30 min at 40 °C`: in, and there they stay until another step takes them out.
pub(super) fn immerse(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let Some(liquor) = bench.liquor(pass).or(bench.current) else {
        bench.note("no bath is named and none stands there");
        return super::protection::time_only(bench, pass);
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
        set(bench, liquor, from, Interval::ZERO);
    }
    let time = bench.duration(pass);
    if let Some(to) = to {
        set(bench, liquor, to, time);
    }
    for state in bench.working.clone() {
        bench.tell_immersed(state, liquor);
    }
    bench.account();
    bench.pass_time(time, None);
}

/// `lift tees from dye bath`.
pub(super) fn lift(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let time = bench.duration(pass);
    bench.pass_time(time, None);
    let pickup =
        |bench: &Bench<'_>, state: usize| pass.step.pickup.clone().unwrap_or_else(|| bench.coming_pickup(pass, state));
    for state in bench.working.clone() {
        let figure = pickup(bench, state);
        bench.leave(state, &figure, Interval::ONE);
    }
}

/// `drain dye bath` pours the bath away; `drain tees on rack` lets goods drip.
pub(super) fn drain(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    if pass.step.goods_named || pass.step.liquor.is_none() {
        return super::wringing::wring(bench, pass);
    }
    let Some(liquor) = bench.liquor(pass) else {
        return super::protection::time_only(bench, pass);
    };
    let inside = bench.liquors.get(liquor).map(|bath| bath.inside.clone()).unwrap_or_default();
    for state in inside {
        let pickup = bench.coming_pickup(pass, state);
        bench.leave(state, &pickup, Interval::ONE);
    }
    let time = bench.duration(pass);
    bench.pass_time(time, None);
    bench.pour_away(liquor);
}

/// `dispose of dye bath`.
pub(super) fn dispose(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let time = bench.duration(pass);
    bench.pass_time(time, None);
    let liquor = match pass.step.liquor.as_ref().map(|liquor| &liquor.kind) {
        Some(LiquorKind::Mix(id)) => bench.standing(*id, 0),
        Some(LiquorKind::Vessel(id)) => bench.in_vessel(*id),
        _ => bench.current,
    };
    match liquor {
        Some(liquor) => bench.pour_away(liquor),
        None => bench.note("nothing stands there to dispose of"),
    }
}

/// `add 40 g/L sodium chloride to dye bath in 3 parts, 10 min apart`, `top up dye bath to 20 L`.
pub(super) fn add(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let liquor = match pass.step.liquor {
        Some(_) => bench.liquor(pass),
        None => bench.current,
    };
    let Some(liquor) = liquor else {
        bench.note("no bath is named and none stands there");
        return super::protection::time_only(bench, pass);
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
        bench.note_together(liquor, now);
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

/// `stir every 5 min for 20 min`: time goes by in the bath, with what `with` brings.
pub(super) fn stir(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let liquor = match pass.step.liquor {
        Some(_) => bench.liquor(pass),
        None => bench.current,
    };
    if let Some(liquor) = liquor {
        bench.with(pass, liquor);
    }
    let time = bench.duration(pass);
    bench.pass_time(time, None);
}

/// `raise dye bath to 60 °C over 20 min`, `hold for 40 min`, `cool dye bath to 30 °C`, `boil`, `simmer`.
pub(super) fn heat(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let liquor = match pass.step.liquor {
        Some(_) => bench.liquor(pass),
        None => bench.current.filter(|at| bench.liquors.get(*at).is_some_and(|bath| !bath.gone)),
    };
    let verb = pass.verb();
    let usual_heat = || match verb {
        "boil" => Some(figures::celsius(95.0, 99.0, 100.0, "the boil", "lower with height above the sea")),
        "simmer" => Some(figures::celsius(85.0, 92.0, 97.0, "a simmer", figures::PRACTICE)),
        _ => None,
    };
    let to = pass.step.to_temperature.clone().or_else(|| pass.step.temperature.clone()).or_else(usual_heat);
    let in_it = liquor.is_some_and(|liquor| {
        !pass.step.goods_named
            || bench.working.iter().any(|at| bench.goods.get(*at).is_some_and(|goods| goods.inside == Some(liquor)))
    });
    let Some(liquor) = liquor.filter(|_| in_it || pass.step.liquor.is_some()) else {
        return super::warming::warm(bench, pass, to);
    };
    if pass.step.goods_named && matches!(verb, "boil" | "simmer") {
        for state in bench.working.clone() {
            bench.enter(state, liquor);
        }
    }
    bench.with(pass, liquor);
    if let Some(from) = pass.step.from_temperature.clone() {
        set(bench, liquor, from, Interval::ZERO);
    }
    let time = bench.duration(pass);
    match to {
        Some(to) => set(bench, liquor, to, time),
        None if verb == "hold" => {
            let now = bench.clock.elapsed;
            if let Some(bath) = bench.liquor_mut(liquor) {
                bath.heated = true;
                bath.temperature_at = now;
            }
        }
        None => {}
    }
    if verb == "cool" {
        let now = bench.clock.elapsed;
        if let Some(bath) = bench.liquor_mut(liquor) {
            bath.heated = false;
            bath.temperature_at = now;
        }
    }
    bench.account();
    bench.pass_time(time, None);
    let _ = usual::each_piece(verb);
}

/// A bath is brought to a temperature and kept there.
fn set(bench: &mut Bench<'_>, liquor: usize, to: Figure, over: Interval) {
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
        bath.temperature = to;
        bath.temperature_at = now;
        bath.heated = true;
    }
}
