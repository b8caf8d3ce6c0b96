//! Numbers of the published JSON: the dyer's units, bounds and best value.

use serde::Serialize;
use tenter_quantity::{Dimension, Figure, Interval};

/// An open bound is `null`: JSON has no infinity.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Number {
    low: Option<f64>,
    best: Option<f64>,
    high: Option<f64>,
}

const GRAMS_PER_KILOGRAM: f64 = 1e3;
const MILLILITRES_PER_CUBIC_METRE: f64 = 1e6;
const PER_CENT: f64 = 100.0;
const SECONDS_PER_MINUTE: f64 = 60.0;
const ZERO_CELSIUS: f64 = 273.15;

/// A mass in g.
pub fn grams(figure: &Figure) -> Number {
    number(figure, GRAMS_PER_KILOGRAM)
}

/// A mass of so many kg, in g.
pub fn in_grams(mass: Interval) -> Number {
    plain(mass * GRAMS_PER_KILOGRAM)
}

/// A volume in mL.
pub fn millilitres(figure: &Figure) -> Number {
    number(figure, MILLILITRES_PER_CUBIC_METRE)
}

/// A share in per cent.
pub fn per_cent(figure: &Figure) -> Number {
    number(figure, PER_CENT)
}

/// A share of one, in per cent.
pub fn in_per_cent(share: Interval) -> Number {
    plain(share * PER_CENT)
}

/// A time of so many s, in min.
pub fn minutes(seconds: Interval) -> Number {
    plain(seconds / SECONDS_PER_MINUTE)
}

/// A temperature in °C.
pub fn celsius(figure: &Figure) -> Number {
    plain(figure.value - ZERO_CELSIUS)
}

/// The mass, where it is one.
pub fn mass_of(figure: Option<&Figure>) -> Option<Number> {
    figure.filter(|figure| figure.dimension == Dimension::Mass).map(grams)
}

/// The volume, where it is one.
pub fn volume_of(figure: Option<&Figure>) -> Option<Number> {
    figure.filter(|figure| figure.dimension == Dimension::Volume).map(millilitres)
}

/// A figure in SI times a factor.
pub fn number(figure: &Figure, factor: f64) -> Number {
    plain(figure.value * factor)
}

/// A number as it is.
pub fn plain(value: Interval) -> Number {
    let part = |x: f64| Some(clean(x)).filter(|x| x.is_finite());
    Number { low: part(value.low), best: part(value.best), high: part(value.high) }
}

/// To twelve digits: what lies behind them is the noise of binary arithmetic (480.00000000000006).
fn clean(x: f64) -> f64 {
    format!("{x:.11e}").parse().unwrap_or(x)
}
