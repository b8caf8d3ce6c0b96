//! Baths and goods are brought to a temperature.

pub(super) mod boil;
pub(super) mod cool;
pub(super) mod heat;
pub(super) mod hold;
mod hot;
pub(super) mod microwave;
pub(super) mod press;
pub(super) mod raise;
pub(super) mod simmer;
pub(super) mod steam;

use tenter_quantity::{Figure, Interval};

use crate::bench::{Bench, Pass};
use crate::verbs::bathing::set_temperature;

/// A bath brought to a temperature, or kept at it; goods by themselves where no bath is meant.
pub(super) fn bath_or_goods(bench: &mut Bench<'_>, pass: &Pass<'_>, usual: Option<Figure>) {
    let verb = pass.verb();
    let liquor = match pass.step.liquor {
        Some(_) => bench.liquor(pass),
        None => bench.current.filter(|at| bench.liquors.get(*at).is_some_and(|bath| !bath.gone)),
    };
    let to = pass.step.to_temperature.clone().or_else(|| pass.step.temperature.clone()).or(usual);
    let in_it = liquor.is_some_and(|liquor| {
        !pass.step.goods_named
            || bench.working.iter().any(|at| bench.goods.get(*at).is_some_and(|goods| goods.inside == Some(liquor)))
    });
    let Some(liquor) = liquor.filter(|_| in_it || pass.step.liquor.is_some()) else {
        return warm(bench, pass, to);
    };
    if pass.step.goods_named && matches!(verb, "boil" | "simmer") {
        for state in bench.working.clone() {
            bench.enter(state, liquor);
        }
    }
    bench.with(pass, liquor);
    if let Some(from) = pass.step.from_temperature.clone() {
        set_temperature(bench, liquor, from, Interval::ZERO);
    }
    let time = bench.duration(pass);
    idle(bench, liquor, verb, pass.step.to_temperature.as_ref());
    match to {
        Some(to) => {
            let from = bench.liquors.get(liquor).map(|bath| bath.temperature.value);
            set_temperature(bench, liquor, to, time);
            if matches!(verb, "raise" | "heat" | "cool") {
                bench.brought = from.map(|from| (liquor, from));
            }
        }
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
    bench.brought = None;
}

/// Heated to what it is, cooled to what it is.
fn idle(bench: &mut Bench<'_>, liquor: usize, verb: &str, to: Option<&Figure>) {
    let Some(now) = bench.liquors.get(liquor).map(|bath| bath.temperature.value) else { return };
    let Some(to) = to.map(|to| to.value) else { return };
    match verb {
        "raise" | "heat" if to.high <= now.low + 1e-9 => bench.no_effect("the bath is as warm as that already"),
        "cool" if to.low >= now.high - 1e-9 => bench.no_effect("the bath is as cool as that already"),
        _ => {}
    }
}

/// `heat tees to 60 °C`, `hold tees at 40 °C`.
fn warm(bench: &mut Bench<'_>, pass: &Pass<'_>, to: Option<Figure>) {
    match to {
        Some(to) => hot::hot(bench, pass, to, false),
        None => {
            let time = bench.duration(pass);
            bench.pass_time(time, None);
        }
    }
}
