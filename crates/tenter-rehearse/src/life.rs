//! How long bottles, baths and stocks are of use.

use tenter_chemistry::reaction::{self as chemistry, DyeClass, PotLife, equivalent_time, stock_life};
use tenter_quantity::Interval;

use crate::bench::Bench;
use crate::frame::Rehearsal;
use crate::state::LiquorState;
use crate::warmth::Cooling;

impl Bench<'_> {
    /// Reactive dye and alkali are both in a liquor since some moment, if they are.
    pub(crate) fn note_together(&mut self, liquor: usize, since: Interval) {
        let Some(state) = self.liquors.get(liquor) else { return };
        if !self.together(&state.contents) {
            return;
        }
        let warm = state.temperature.value;
        let older = state.alkali_with_dye.is_none_or(|have| since.best < have.best);
        if older && let Some(state) = self.liquor_mut(liquor) {
            state.alkali_with_dye = Some(since);
            state.warm_then = Some(warm);
        }
    }

    /// A mix is finished: its age, and the life of dye with alkali in it, count from now, not from when its first part was
    /// taken in hand. What was drawn from an older bottle stays as old as that.
    pub(crate) fn finished(&mut self, liquor: usize) {
        let now = self.clock.elapsed;
        let Some(state) = self.liquor_mut(liquor) else { return };
        if state.alkali_with_dye == Some(state.made_at) {
            state.alkali_with_dye = Some(now);
        }
        state.made_at = now;
        state.temperature_at = now;
        let name = state.name;
        if let Some(finished) = self.liquors.get(liquor)
            && let Some(made) = self.mixes.iter_mut().rfind(|made| made.name == name)
        {
            *made = std::sync::Arc::clone(finished);
        }
    }
}

impl Rehearsal {
    /// Until when a liquor with dye and alkali is of use, s since the start: surely, usually, never beyond. Counted from when the
    /// two came together, as it cools to the room, or kept at its heat. `None` for others.
    pub fn useful_until(&self, liquor: &LiquorState) -> Option<Interval> {
        let since = liquor.alkali_with_dye?;
        let class = self.class_of(liquor)?;
        let start = liquor.warm_then.unwrap_or(liquor.temperature.value);
        let kg = liquor.made_volume.as_ref().map_or(liquor.contents.water_mass(), |volume| volume.value * 1000.0);
        let cooling = (!liquor.heated).then(|| Cooling::of_bath(kg.clamp_low(0.05), self.room.value));
        let limits = PotLife::of(class).limits;
        let aim = cooling.map_or(start, |cooling| cooling.aim);
        let tau = cooling.map_or(Interval::ONE, |cooling| cooling.tau);
        // Warmth kept longer spends it sooner; below the room it is the other way round, and hardly matters.
        let fast = lasts(class, limits.0, (start.high, aim.high, tau.high), |speed| speed.high);
        let usual = lasts(class, limits.1, (start.best, aim.best, tau.best), |speed| speed.best);
        let slow = lasts(class, limits.2, (start.low, aim.low, tau.low), |speed| speed.low);
        Some(Interval::new(since.low + fast, since.best + usual, since.high + slow))
    }

    /// Until when a stock of reactive dye without alkali keeps its strength, s since the start. `None` for others.
    pub fn keeps_until(&self, liquor: &LiquorState) -> Option<Interval> {
        if liquor.alkali_with_dye.is_some() || liquor.contents.water_mass().best <= 0.0 {
            return None;
        }
        self.class_of(liquor)?;
        let (low, high) = stock_life(liquor.temperature.value.best);
        Some(liquor.made_at + Interval::range(low, high))
    }

    /// The reactive class of the first reactive dye in a liquor.
    fn class_of(&self, liquor: &LiquorState) -> Option<DyeClass> {
        liquor.contents.parts.iter().find_map(|(id, _)| self.substances.get(*id)?.reactive)
    }
}

/// Slices of a cooling.
const SLICES: u32 = 24;

/// Time until an equivalent time is spent, s, by a liquor going from `start` toward `aim` (K) with a time constant (s).
fn lasts(
    class: DyeClass,
    limit: f64,
    (start, aim, tau): (f64, f64, f64),
    pick: fn(chemistry::Equivalent) -> f64,
) -> f64 {
    let speed = |kelvin: f64| {
        let one = chemistry::Spell { seconds: 1.0, temperature: kelvin, ph: None };
        pick(equivalent_time(class, &[one])).max(1e-9)
    };
    let slice = 4.0 * tau / f64::from(SLICES);
    let mut spent = 0.0;
    for number in 0..SLICES {
        let middle = (f64::from(number) + 0.5) * slice;
        let now = speed(aim + (start - aim) * libm::exp(-middle / tau.max(1e-9)));
        if spent + now * slice >= limit {
            return f64::from(number) * slice + (limit - spent) / now;
        }
        spent += now * slice;
    }
    4.0 * tau + (limit - spent) / speed(aim)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Half an hour, an hour and a day at 21 °C (common practice, no source); a bottle made at 40 °C is spent sooner, and no
    /// sooner than one kept at 40 °C.
    #[test]
    fn a_warm_bottle_is_spent_sooner() {
        let class = DyeClass::Dichlorotriazine;
        let (_, hour, _) = PotLife::of(class).limits;
        let last =
            |start: f64, aim: f64| lasts(class, hour, (start + 273.15, aim + 273.15, 3600.0), |speed| speed.best);
        assert!((last(21.0, 21.0) - 3600.0).abs() < 1.0);
        let (cooling, kept) = (last(40.0, 21.0), last(40.0, 40.0));
        assert!(kept < cooling && cooling < 3600.0, "{kept} {cooling}");
        assert!(kept > 200.0 && kept < 600.0, "{kept}");
    }
}
