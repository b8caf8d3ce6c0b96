//! Equivalent batch time over a history of temperatures.

use super::classes::DyeClass;

/// A spell at one temperature.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spell {
    /// How long, s.
    pub seconds: f64,
    /// Temperature, K.
    pub temperature: f64,
    /// pH as it would read at 25 °C; `None` when not known, taken as inside the window.
    pub ph: Option<f64>,
}

/// Equivalent time at the reference temperature of a class, s.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Equivalent {
    /// Least.
    pub low: f64,
    /// Best.
    pub best: f64,
    /// Most.
    pub high: f64,
    /// Time spent outside the pH window of the class, s (clock time).
    pub outside_window: f64,
}

/// No history runs away: the speeding-up is held between these.
const SLOWEST: f64 = 1e-6;
const FASTEST: f64 = 1e6;

/// How much faster than at the reference temperature: twice at `halving` above it, and on from there as a reaction with one
/// activation energy goes (Arrhenius), which rises less steeply in the heat than halving again and again.
fn speed(kelvin: f64, reference: f64, halving: f64) -> f64 {
    let steepness = core::f64::consts::LN_2 / (1.0 / reference - 1.0 / (reference + halving));
    libm::exp(steepness * (1.0 / reference - 1.0 / kelvin.max(1.0))).clamp(SLOWEST, FASTEST)
}

/// Adds up a history. Within the pH window a spell counts in full; below it the reaction slows about
/// tenfold for each unit of pH (from memory; threefold to thirtyfold for high and low); above it the
/// spell counts in full, but the dye is lost to the water rather than won by the cloth, and the time
/// is added to `outside_window`.
#[must_use]
pub fn equivalent_time(class: DyeClass, history: &[Spell]) -> Equivalent {
    let batch = class.batch();
    let mut sum = Equivalent::default();
    for spell in history {
        let time = spell.seconds;
        if !(time.is_finite() && time > 0.0 && spell.temperature.is_finite()) {
            continue;
        }
        let at = |halving: f64| speed(spell.temperature, batch.reference_temperature, halving);
        let (one, other) = (at(batch.halving.0), at(batch.halving.2));
        let deficit = spell.ph.map_or(0.0, |ph| (batch.ph_window.0 - ph).max(0.0));
        let excess = spell.ph.map_or(0.0, |ph| (ph - batch.ph_window.1).max(0.0));
        if deficit > 0.0 || excess > 0.0 {
            sum.outside_window += time;
        }
        let slowed = |unit: f64| if deficit > 0.0 { libm::exp(-libm::log(unit) * deficit) } else { 1.0 };
        sum.low += time * one.min(other) * slowed(30.0);
        sum.best += time * at(batch.halving.1) * slowed(10.0);
        sum.high += time * one.max(other) * slowed(3.0);
    }
    sum
}

/// How much of a full batch an equivalent time makes, 0–1: low, best, high. Full at one, however
/// long.
#[must_use]
pub fn batch_share(class: DyeClass, time: &Equivalent) -> (f64, f64, f64) {
    let full = class.batch().full_time;
    let share = |time: f64, full: f64| (time / full).clamp(0.0, 1.0);
    (share(time.low, full.2), share(time.best, full.1), share(time.high, full.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn spell(hours: f64, celsius: f64) -> Spell {
        Spell { seconds: hours * 3600.0, temperature: celsius + 273.15, ph: None }
    }

    /// 24 h at 21 °C, halved for each 5–6 °C: common practice, no source.
    #[test]
    fn the_rule_of_the_trade_for_dichlorotriazine() {
        let class = DyeClass::Dichlorotriazine;
        let full = batch_share(class, &equivalent_time(class, &[spell(24.0, 21.0)]));
        assert!((full.1 - 1.0).abs() < 1e-9);
        let warm = batch_share(class, &equivalent_time(class, &[spell(12.0, 26.5)]));
        assert!((warm.1 - 1.0).abs() < 1e-9, "{warm:?}");
        let cold = batch_share(class, &equivalent_time(class, &[spell(24.0, 10.0)]));
        assert!(cold.1 < 0.3 && cold.2 < 0.6, "{cold:?}");
        let short = batch_share(class, &equivalent_time(class, &[spell(4.0, 21.0)]));
        assert!((short.1 - 4.0 / 24.0).abs() < 1e-9);
        assert!(short.0 <= short.1 && short.1 <= short.2);
    }

    /// Hydrolysis of C.I. Reactive Red 24, a monochlorotriazine dye, at pH 13: 0.0101 at 70 °C and
    /// 0.0599 at 90 °C (the abstract also says 95 °C), Dyestuffs and Coloration 2004(6):331. Our
    /// speeding-up with warmth must hold both readings.
    #[test]
    fn published_hydrolysis_of_a_monochlorotriazine_dye() {
        let class = DyeClass::Monochlorotriazine;
        let ratio = 0.0599 / 0.0101;
        for warmer in [90.0, 95.0] {
            let cool = equivalent_time(class, &[spell(1.0, 80.0)]);
            let warm = equivalent_time(class, &[spell(1.0, 80.0 + warmer - 70.0)]);
            let (least, most) = (warm.low / cool.best, warm.high / cool.best);
            assert!((least..=most).contains(&ratio), "{least} {ratio} {most}");
        }
    }

    #[test]
    fn a_weak_alkali_slows_the_batch() {
        let class = DyeClass::Dichlorotriazine;
        let good = Spell { ph: Some(11.0), ..spell(24.0, 21.0) };
        let weak = Spell { ph: Some(8.5), ..spell(24.0, 21.0) };
        let (good, weak) = (equivalent_time(class, &[good]), equivalent_time(class, &[weak]));
        assert!(weak.best < 0.02 * good.best);
        assert!(weak.outside_window > 0.0 && good.outside_window == 0.0);
    }
}
