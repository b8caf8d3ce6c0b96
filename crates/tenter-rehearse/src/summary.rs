//! One line on a zone, a mix or the clock, built when it is shown.

use tenter_quantity::{Figure, Interval};

use crate::frame::Rehearsal;
use crate::state::{Clock, ZoneState};

fn number(value: f64, digits: usize) -> String {
    format!("{value:.digits$}")
}

fn spread(value: Interval, digits: usize) -> String {
    let (low, high) = (number(value.low, digits), number(value.high, digits));
    if low == high { low } else { format!("{low} to {high}") }
}

/// "holds 0.65 L water/kg, 39 g soda ash/kg, pH 11.2 ± 0.1, 24 °C".
pub fn zone_line(rehearsal: &Rehearsal, zone: &ZoneState) -> String {
    let dry = zone.dry.value;
    let mut parts = vec![format!("holds {} L water/kg", spread(zone.water_ratio(), 2))];
    let alkali = rehearsal.substances.usable_alkali(&zone.contents) * crate::SODA_ASH_MOLAR_MASS * 1000.0;
    if alkali.high > 0.0 {
        parts.push(format!("{} g soda ash/kg", spread(alkali / dry, 0)));
    }
    let dye = rehearsal.substances.dye(&zone.contents) * 1000.0;
    if dye.high > 0.0 {
        parts.push(format!("{} g dye/kg", spread(dye / dry, 1)));
    }
    if let Some(acidity) = zone.acidity(&rehearsal.substances) {
        parts.push(format!("pH {:.1} ± {:.1}", acidity.ph.best, (acidity.ph.width() / 2.0).max(0.05)));
    }
    parts.push(format!("{} °C", spread(zone.temperature.value - 273.15, 0)));
    parts.join(", ")
}

/// The input to measure when a result is too wide to be of use: of all that it rests on and that was written, looked up or
/// assumed, the one with the widest spread for its size. `None` where the result is narrower than `share` (0.3: ±30 %).
pub fn widest_input(figure: &Figure, share: f64) -> Option<Figure> {
    if figure.value.relative_spread() <= share {
        return None;
    }
    let mut widest: Option<Figure> = None;
    figure.walk(|input| {
        let wider = widest.as_ref().is_none_or(|have| input.value.relative_spread() > have.value.relative_spread());
        if input.inputs().is_empty() && input.value.relative_spread() > 0.0 && wider {
            widest = Some(input.clone());
        }
    });
    widest
}

/// "1 h 35 min, 40 min of it work".
pub fn clock_line(clock: &Clock) -> String {
    format!("{}, {} of it work", hours(clock.elapsed.best), hours(clock.hands_on.best))
}

fn hours(seconds: f64) -> String {
    let minutes = (seconds / 60.0).round() as i64;
    match (minutes / 60, minutes % 60) {
        (0, minutes) => format!("{minutes} min"),
        (hours, 0) => format!("{hours} h"),
        (hours, minutes) => format!("{hours} h {minutes} min"),
    }
}
