//! Figures of the rehearsal as a dyer reads them.

use tenter_quantity::{Figure, Interval, Origin, Place, show_number};
use tenter_rehearse::{Acidity, Reaction, widest_input};

/// Half-width, as a share, from which a result is too wide to be of use.
const USELESS: f64 = 0.3;
/// Half-width of a pH up to which one number with its spread says enough.
const PLAIN_PH: f64 = 0.35;

/// `pH 11.3 ± 0.1`, or `pH 9.6 to 11.2` where it is wide.
pub fn ph(acidity: &Acidity) -> String {
    format!("pH {}", bare_ph(acidity.ph))
}

/// The same without the letters.
pub fn bare_ph(value: Interval) -> String {
    let half = (value.high - value.best).max(value.best - value.low);
    if half <= 0.075 {
        format!("{:.2} ± 0.05", value.best)
    } else if half <= PLAIN_PH {
        format!("{:.1} ± {:.1}", value.best, half.max(0.1))
    } else {
        format!("{:.1} to {:.1}", value.low, value.high)
    }
}

/// A number of a table; next to nothing is nothing.
pub fn rough(value: Interval) -> String {
    let value = value.clamp_low(0.0);
    if value.high < LEAST {
        return "0".to_owned();
    }
    let low = if value.low < LEAST { 0.0 } else { value.low };
    show_number(Interval::new(low, value.best, value.high))
}

/// Less than this is not told.
const LEAST: f64 = 0.05;

/// `22 to 66`, in °C without the unit.
pub fn degrees(figure: &Figure) -> String {
    figure.show().replace(" °C", "")
}

/// `1 h 35 min`, by the best value.
pub fn clock(seconds: f64) -> String {
    let minutes = (seconds / 60.0).round();
    if !minutes.is_finite() {
        return "an unknown time".to_owned();
    }
    let (hours, minutes) = ((minutes / 60.0).floor(), minutes % 60.0);
    match (hours, minutes) {
        (0.0, minutes) => format!("{minutes:.0} min"),
        (hours, 0.0) => format!("{hours:.0} h"),
        (hours, minutes) => format!("{hours:.0} h {minutes:.0} min"),
    }
}

/// `about 80% of a full batch`, with the bounds where they lie apart.
pub fn batch(reaction: &Reaction) -> String {
    let share = reaction.batch_share * 100.0;
    let best = format!("about {:.0}% of a full batch", share.best);
    if share.high - share.low < 5.0 { best } else { format!("{best} ({:.0} to {:.0}%)", share.low, share.high) }
}

/// What to measure, where a result is too wide to be of use.
pub fn measure(figure: &Figure, written: &dyn Fn(Place) -> String) -> Option<String> {
    let input = widest_input(figure, USELESS)?;
    let value = input.show();
    Some(match &*input.origin {
        Origin::Written { place } => format!("{value} ({})", written(*place)),
        Origin::Looked { what, source } => format!("{what}, taken as {value} ({source})"),
        Origin::Assumed { what, why } => format!("{what}, taken as {value} ({why})"),
        Origin::Worked { .. } => value,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_ph_keeps_its_spread() {
        assert_eq!(bare_ph(Interval::new(11.25, 11.3, 11.35)), "11.30 ± 0.05");
        assert_eq!(bare_ph(Interval::new(11.1, 11.3, 11.5)), "11.3 ± 0.2");
        assert_eq!(bare_ph(Interval::new(9.6, 10.9, 11.2)), "9.6 to 11.2");
    }

    #[test]
    fn times_are_told_by_the_clock() {
        for (seconds, told) in [(0.0, "0 min"), (3600.0, "1 h"), (5700.0, "1 h 35 min"), (93_600.0, "26 h")] {
            assert_eq!(clock(seconds), told);
        }
        assert_eq!(clock(f64::INFINITY), "an unknown time");
    }
}
