//! Figures for a table to weigh from: one number to aim at, and how far it may be off.

use tenter_quantity::{Figure, Interval, Unit, show, show_in};

/// Half-width, as a share, above which the bounds are told beside the best value.
const WIDE: f64 = 0.05;

/// The number to aim at, with no more digits than its spread allows.
pub fn aim(figure: &Figure) -> String {
    let value = figure.value;
    if !value.is_bounded() || value.relative_spread() < WIDE {
        return figure.show();
    }
    // As many digits as a number that is just narrow enough to stand alone.
    show(Interval::plus_minus(value.best, value.best.abs() * 0.049), figure.unit)
}

/// The bounds, where they are far enough apart to matter.
pub fn bounds(figure: &Figure) -> String {
    let value = figure.value;
    if value.is_bounded() && value.relative_spread() >= WIDE { figure.show() } else { String::new() }
}

/// In this unit, without the unit's own word: for a column that names it.
pub fn bare(figure: &Figure, unit: &Unit) -> String {
    let text = show_in(figure.value, unit);
    let word = format!(" {}", unit.plural);
    text.strip_suffix(&word).or_else(|| text.strip_suffix(unit.plural)).unwrap_or(&text).to_owned()
}
