//! How long a bottle keeps, with and without alkali.

use super::batch::{Equivalent, Spell, equivalent_time};
use super::classes::DyeClass;

/// State of a bottle of dye with alkali in it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum BottleState {
    /// Within its useful time.
    Fresh,
    /// May have lost strength: results will be paler, by an amount nobody has published.
    Ageing,
    /// So old that it must be taken as spent.
    Spent,
}

/// Useful times of a bottle with alkali at 21 °C, low, best, high.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PotLife {
    /// Surely useful up to here, usually useful up to here, never useful beyond; equivalent seconds
    /// at the reference temperature of the class.
    pub limits: (f64, f64, f64),
}

const HOUR: f64 = 3600.0;
const DAY: f64 = 24.0 * HOUR;

impl PotLife {
    /// For a dichlorotriazine dye with soda ash at 21 °C: about an hour is useful, a few hours lose
    /// strength, a day spends it; common practice, no source. For the other classes, measured at
    /// their own reference temperature, the same shares of their full batch time, which is a guess
    /// by likeness.
    #[must_use]
    pub fn of(class: DyeClass) -> Self {
        let full = class.batch().full_time.1;
        let share = full / (24.0 * HOUR);
        Self { limits: (0.5 * HOUR * share, HOUR * share, 24.0 * HOUR * share) }
    }
}

/// State of a bottle with alkali after a history, at the pessimistic, best and optimistic end:
/// `(worst, best, kindest)`. The kindest reading takes three times the usual useful time and the
/// slowest ageing that the class allows.
#[must_use]
pub fn bottle(class: DyeClass, history: &[Spell]) -> (BottleState, BottleState, BottleState) {
    let Equivalent { low, best, high, .. } = equivalent_time(class, history);
    let limits = PotLife::of(class).limits;
    let state = |time: f64, useful: f64| {
        if time <= useful {
            BottleState::Fresh
        } else if time <= limits.2 {
            BottleState::Ageing
        } else {
            BottleState::Spent
        }
    };
    (state(high, limits.0), state(best, limits.1), state(low, 3.0 * limits.1))
}

/// How long a stock without alkali keeps, s: low and high. Four to seven days at room temperature,
/// five to nine weeks chilled (below 8 °C); common practice, no source.
#[must_use]
pub fn stock_life(temperature_k: f64) -> (f64, f64) {
    if temperature_k < 281.15 { (35.0 * DAY, 63.0 * DAY) } else { (4.0 * DAY, 7.0 * DAY) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_bottle_with_soda_lives_two_days() {
        let class = DyeClass::Dichlorotriazine;
        let at = |hours: f64, celsius: f64| {
            let spell = Spell { seconds: hours * HOUR, temperature: celsius + 273.15, ph: Some(11.2) };
            bottle(class, &[spell])
        };
        assert_eq!(at(0.4, 21.0).0, BottleState::Fresh);
        assert_eq!(at(0.9, 21.0).1, BottleState::Fresh);
        assert_eq!(at(4.0, 21.0).1, BottleState::Ageing);
        assert_eq!(at(48.0, 21.0).2, BottleState::Spent);
        assert_eq!(at(1.0, 38.0).1, BottleState::Ageing);
    }
}
