//! A number written anew, so exactly that the recipe stays what it was.

use tenter_quantity::{Interval, Unit, show_in};

/// What a number may be off by when it is written, as a share of it: less than a kitchen scale shows.
const NEAR: f64 = 2e-4;

/// An SI value in a unit, with as many digits as it needs.
pub(super) fn said(value: Interval, unit: &'static Unit) -> String {
    let number = unit.from_si(value);
    if !value.is_exact() {
        return show_in(value, unit);
    }
    let text = digits(number.best);
    let symbol = if text == "1" { unit.symbol } else { unit.plural };
    if symbol.is_empty() || symbol.starts_with('%') { format!("{text}{symbol}") } else { format!("{text} {symbol}") }
}

/// A bare number with as many digits as it needs, three at least.
pub(super) fn digits(number: f64) -> String {
    let rounded = (2..8).filter_map(|after| format!("{number:.after$e}").parse::<f64>().ok());
    let near = rounded.into_iter().find(|text| (text - number).abs() <= NEAR * number.abs());
    format!("{}", near.unwrap_or(number))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_third_is_written_so_that_it_comes_back() {
        assert_eq!(digits(8000.0 / 6.0), "1333.3");
        assert_eq!(digits(100.0 / 3.0), "33.33");
        assert_eq!(digits(12.5), "12.5");
        assert_eq!(digits(1234.0), "1234");
        assert_eq!(digits(0.0), "0");
        assert_eq!(digits(f64::NAN), "NaN");
        for number in [0.001_234_567, 40.0 / 0.42, 7.0 / 9.0, 12_345.678] {
            let back: f64 = digits(number).parse().unwrap();
            assert!((back / number - 1.0).abs() <= NEAR, "{number} {back}");
        }
    }
}
