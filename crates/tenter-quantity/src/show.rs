//! Numbers for people: as many digits as the spread allows, never more.
//!
//! * An exact number is shown to four digits if they are all of it, else to three; a narrow one (within 5 % either way) as `about 480 g`, rounded to its
//!   own spread; a wide one as `410 to 560 g`.
//! * Temperatures are judged in degrees, for a share of a temperature means nothing.
//! * Money has the decimals of its currency.

use crate::currency::decimals;
use crate::dimension::Dimension;
use crate::interval::Interval;
use crate::standard as units;
use crate::unit::Unit;

/// Half-width, as a share, below which a spread is only the noise of arithmetic.
const NOISE: f64 = 1e-9;
/// Half-width, as a share, below which a number is shown plain: finer than a kitchen scale.
const PLAIN: f64 = 0.005;
/// Half-width, as a share, up to which one number with `about` says enough.
const NARROW: f64 = 0.05;

/// An SI value in the unit that reads best: as [`show_in`], with g turned to kg, mL to L, min to h and back where
/// the number would be awkward.
pub fn show(value: Interval, unit: &Unit) -> String {
    show_in(value, handier(value, unit))
}

/// An SI value in this unit.
pub fn show_in(value: Interval, unit: &Unit) -> String {
    render(unit.from_si(value), unit, unit.dimension)
}

/// An SI difference of temperatures in the degrees of this unit.
pub fn show_difference(value: Interval, unit: &Unit) -> String {
    render(value / unit.factor, unit, Dimension::TemperatureDifference)
}

fn render(number: Interval, unit: &Unit, dimension: Dimension) -> String {
    let number = if dimension == Dimension::LiquorRatio && number.low > 0.0 {
        let text = show_number(number);
        return match text.strip_prefix("about ") {
            Some(rest) => format!("about 1:{rest}"),
            None => format!("1:{}", text.replace(" to ", " to 1:")),
        };
    } else {
        number
    };
    let text = match dimension {
        Dimension::Temperature => temperature(number),
        Dimension::Money | Dimension::MoneyPerMass | Dimension::MoneyPerVolume => {
            with_decimals(number, decimals(unit.symbol))
        }
        _ => show_number(number),
    };
    let symbol = if text == "1" { unit.symbol } else { unit.plural };
    if symbol.is_empty() {
        text
    } else if symbol.starts_with(['%', '‰']) {
        format!("{text}{symbol}")
    } else {
        format!("{text} {symbol}")
    }
}

/// A number without a unit.
pub fn show_number(number: Interval) -> String {
    if let Some(text) = unbounded(number, plain) {
        return text;
    }
    let spread = number.relative_spread();
    if spread < NOISE {
        return plain(number.best);
    }
    let width = number.width();
    let greatest = number.low.abs().max(number.high.abs());
    // Rounded to the leading digit of the spread, within two to three digits of the number: nobody reads more off a
    // jug.
    if spread < NARROW {
        let step = exponent(width).clamp(exponent(number.best) - 2, exponent(number.best) - 1);
        let text = rounded(number.best, step);
        return if spread < PLAIN { text } else { format!("about {text}") };
    }
    let step = (exponent(width) - 1).max(exponent(greatest) - 2);
    let end = |x: f64| {
        // A small lower end keeps two digits of its own: 0.3 to 100, not 0 to 100.
        let own = if x == 0.0 { step } else { exponent(x) - 1 };
        rounded(x, step.min(own.max(step - 2)))
    };
    let (low, high) = (end(number.low), end(number.high));
    if low == high { format!("about {low}") } else { format!("{low} to {high}") }
}

fn unbounded(number: Interval, show: impl Fn(f64) -> String) -> Option<String> {
    match (number.low.is_finite(), number.high.is_finite()) {
        (true, true) => None,
        (true, false) => Some(format!("at least {}", show(number.low))),
        (false, true) => Some(format!("at most {}", show(number.high))),
        (false, false) => Some("an unknown number of".to_owned()),
    }
}

fn temperature(degrees: Interval) -> String {
    if let Some(text) = unbounded(degrees, plain) {
        return text;
    }
    let half = degrees.width() / 2.0;
    if half < 1e-6 {
        rounded(degrees.best, -1)
    } else if half <= 0.5 {
        rounded(degrees.best, 0)
    } else if half <= 2.0 {
        format!("about {}", rounded(degrees.best, 0))
    } else {
        format!("{} to {}", rounded(degrees.low, 0), rounded(degrees.high, 0))
    }
}

fn with_decimals(number: Interval, places: usize) -> String {
    let money = |x: f64| signed(format!("{x:.places$}"));
    if let Some(text) = unbounded(number, money) {
        return text;
    }
    let (low, best, high) = (money(number.low), money(number.best), money(number.high));
    let spread = number.relative_spread();
    if low == high || spread < PLAIN {
        best
    } else if spread < NARROW {
        format!("about {best}")
    } else {
        format!("{low} to {high}")
    }
}

/// To four digits where that is all there is of the number (1.625), else to three (6.67, not 6.667); whole numbers
/// below a million in full.
fn plain(x: f64) -> String {
    if libm::round(x) == x && x.abs() < 1e6 {
        return rounded(x, 0);
    }
    let scale = libm::pow(10.0, f64::from(3 - exponent(x)));
    let ends = (libm::round(x * scale) / scale - x).abs() <= x.abs() * NOISE;
    rounded(x, exponent(x) - if ends { 3 } else { 2 })
}

/// The power of ten of the leading digit; that of one for zero.
fn exponent(x: f64) -> i32 {
    if x == 0.0 || !x.is_finite() {
        return 0;
    }
    // Through text: exact at powers of ten, where a logarithm may fall short by one.
    let text = format!("{:e}", x.abs());
    text.split_once('e').and_then(|(_, power)| power.parse().ok()).unwrap_or(0)
}

/// Rounded to a power of ten, without idle zeroes after the point.
fn rounded(x: f64, step: i32) -> String {
    if step > 0 {
        let unit = power_of_ten(step);
        return signed(format!("{:.0}", libm::round(x / unit) * unit));
    }
    let places = usize::try_from(-step).unwrap_or(0).min(15);
    let text = format!("{x:.places$}");
    signed(if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_owned() } else { text })
}

fn power_of_ten(power: i32) -> f64 {
    format!("1e{power}").parse().unwrap_or(1.0)
}

/// With a true minus sign, and none before zero.
fn signed(text: String) -> String {
    match text.strip_prefix('-') {
        Some(size) if size.bytes().all(|byte| matches!(byte, b'0' | b'.')) => size.to_owned(),
        Some(size) => format!("−{size}"),
        None => text,
    }
}

/// The unit of the family in which the number reads best.
fn handier(value: Interval, unit: &Unit) -> &Unit {
    let size = value.best.abs();
    if size == 0.0 || !size.is_finite() {
        return unit;
    }
    match unit.symbol {
        "mg" | "g" | "kg" => match size {
            s if s >= 1.0 => units::KILOGRAM,
            s if s >= 1e-5 => units::GRAM,
            _ => units::MILLIGRAM,
        },
        "mL" | "L" => match size {
            s if s >= 1e-3 => units::LITRE,
            _ => units::MILLILITRE,
        },
        "s" | "min" | "h" | "day" => match size {
            s if s >= 4.0 * 86_400.0 => units::DAY,
            s if s >= 7_200.0 => units::HOUR,
            s if s >= 120.0 => units::MINUTE,
            s if s >= 30.0 && unit.symbol != "s" => units::MINUTE,
            _ => units::SECOND,
        },
        _ => unit,
    }
}
