//! Figures made here: shares, sums and products that keep their story.

use std::sync::Arc;

use tenter_quantity::standard::{CELSIUS, GRAM, LITRE, MINUTE, PER_CENT};
use tenter_quantity::{Dimension, Figure, Interval, Unit};

/// Said of a fact of the trade.
pub(crate) const PRACTICE: &str = "common practice, no source";

/// Something taken because nobody said, without building text twice.
pub(crate) fn assumed(value: Interval, unit: &'static Unit, what: &'static str, why: &'static str) -> Figure {
    Figure::assumed(value, unit.dimension, unit, what, why)
}

/// A temperature in °C taken because nobody said.
pub(crate) fn celsius(low: f64, best: f64, high: f64, what: &'static str, why: &'static str) -> Figure {
    let value = Interval::new(low + 273.15, best + 273.15, high + 273.15);
    Figure::assumed(value, Dimension::Temperature, CELSIUS, what, why)
}

/// A share taken because nobody said.
pub(crate) fn share(low: f64, best: f64, high: f64, what: &'static str, why: &'static str) -> Figure {
    assumed(Interval::new(low, best, high), PER_CENT, what, why)
}

/// A mass worked out, kg.
pub(crate) fn mass(formula: &'static str, value: Interval, inputs: Vec<(&'static str, Figure)>) -> Figure {
    Figure::worked(formula, value.clamp_low(0.0), Dimension::Mass, GRAM, inputs)
}

/// A volume worked out, m³.
pub(crate) fn volume(formula: &'static str, value: Interval, inputs: Vec<(&'static str, Figure)>) -> Figure {
    Figure::worked(formula, value.clamp_low(0.0), Dimension::Volume, LITRE, inputs)
}

/// A share worked out, 0 to 1 and no further.
pub(crate) fn worked_share(formula: &'static str, value: Interval, inputs: Vec<(&'static str, Figure)>) -> Figure {
    let value = value.clamp_low(0.0).min(Interval::ONE);
    Figure::worked(formula, value, Dimension::PerCent, PER_CENT, inputs)
}

/// A temperature worked out, K.
pub(crate) fn temperature(formula: &'static str, value: Interval, inputs: Vec<(&'static str, Figure)>) -> Figure {
    Figure::worked(formula, value, Dimension::Temperature, CELSIUS, inputs)
}

/// A time worked out or taken, s.
pub(crate) fn seconds(value: Interval, what: &'static str, why: &'static str) -> Figure {
    Figure::assumed(value, Dimension::Time, MINUTE, what, why)
}

/// An amount times a share; the amount itself when the share is all of it.
pub(crate) fn portion(amount: &Figure, share: &Figure) -> Figure {
    if share.value == Interval::ONE {
        return amount.clone();
    }
    let inputs = vec![("", amount.clone()), ("", share.clone())];
    Figure::worked("{0} × {1}", amount.value * share.value, amount.dimension, amount.unit, inputs)
}

/// What is left of one when a share is gone.
pub(crate) fn rest(share: &Figure) -> Figure {
    worked_share("1 − {0}", Interval::ONE - share.value, vec![("", share.clone())])
}

/// A number known exactly: a count.
pub(crate) fn exact_share(value: f64, what: impl Into<Arc<str>>, why: &'static str) -> Figure {
    Figure::assumed(Interval::exact(value), Dimension::PerCent, PER_CENT, what, why)
}
