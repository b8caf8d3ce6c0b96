//! Heat: what comes of pouring, and how goods and baths cool, in closed form so that it costs nothing.
//!
//! Surface coefficients as in the chemistry crate (convection 3.1, radiation 4.7 W/(m²·K); ASHRAE Handbook Fundamentals,
//! chapter 9, from memory), good to about a factor of 1.5 in the rate.

use std::sync::Arc;

use tenter_chemistry::heat::Exposure;
use tenter_quantity::standard::{MINUTE, PER_CENT};
use tenter_quantity::{Dimension, Figure, Interval};
use tenter_resolve::recipe::Cover;

use crate::figures::{PRACTICE, assumed, temperature, worked_share};

/// Specific heat of water near room temperature, J/(kg·K): IAPWS-95 gives 4179 to 4195 from 10 to 70 °C.
const WATER: f64 = 4182.0;
/// Specific heat of dry cotton, J/(kg·K) (Morton & Hearle, Table 6.1: 1220 to 1350); other fibres lie within 1000 to 1600.
pub(crate) const FIBRE: Interval = Interval { low: 1000.0, best: 1290.0, high: 1600.0 };

/// Heat capacity of water and fibre, J/K.
pub(crate) fn capacity(water: Interval, dry: Interval) -> Interval {
    water * WATER + dry * FIBRE
}

/// Temperature of two bodies brought together without loss: the second moved toward the first by its share of the heat
/// capacity. Ends are taken at the ends of that share, so that a narrower input never gives a wider result.
pub(crate) fn mixed(hot: (&Figure, Interval), cold: (&Figure, Interval)) -> Figure {
    let ((hot, c_hot), (cold, c_cold)) = (hot, cold);
    if c_hot.high <= 0.0 {
        return cold.clone();
    }
    if c_cold.high <= 0.0 {
        return hot.clone();
    }
    let share = |a: f64, b: f64| if a + b > 0.0 { a / (a + b) } else { 0.0 };
    let (least, best, most) =
        (share(c_hot.low, c_cold.high), share(c_hot.best, c_cold.best), share(c_hot.high, c_cold.low));
    let toward = |from: f64, to: f64, w: f64| from + (to - from) * w;
    let (h, c) = (hot.value, cold.value);
    let low = toward(c.low, h.low, least).min(toward(c.low, h.low, most));
    let high = toward(c.high, h.high, least).max(toward(c.high, h.high, most));
    let value = Interval::new(low, toward(c.best, h.best, best), high);
    let part = worked_share(
        "heat capacity of the first ÷ that of both, a gram of water taking 4.18 J/K and of fibre 1.0 to 1.6",
        Interval::new(least, best, most),
        vec![],
    );
    temperature(
        "{1} + {2} × ({0} − {1}), brought together",
        value,
        vec![("", hot.clone()), ("", cold.clone()), ("of the heat capacity", part)],
    )
}

/// One temperature for parts of different warmth and heat capacity; parts at one temperature share one figure.
pub(crate) fn lumped<'a>(parts: impl Iterator<Item = (&'a Figure, Interval)>) -> Option<Figure> {
    let mut sum: Option<(Figure, Interval)> = None;
    for (warm, capacity) in parts {
        sum = Some(match sum {
            None => (warm.clone(), capacity),
            Some((have, c)) if Arc::ptr_eq(&have.origin, &warm.origin) => (have, c + capacity),
            Some((have, c)) => (mixed((warm, capacity), (&have, c)), c + capacity),
        });
    }
    sum.map(|(figure, _)| figure)
}

/// Share of bicarbonate that turns into carbonate at a temperature: none below 50 °C, half to all of it in steam or at the
/// boil; common practice, no source (dry bicarbonate goes from about 50 °C, fully by 100 °C: from memory).
pub(crate) fn decarbonated(kelvin: Interval) -> Interval {
    let at = |t: f64, full: f64| ((t - 323.15) / 45.0).clamp(0.0, 1.0) * full;
    Interval::new(at(kelvin.low, 0.5), at(kelvin.best, 0.8), at(kelvin.high, 1.0))
}

/// What a hot liquid loses on its way, as a share of what it is warmer than the room.
pub(crate) fn arriving(liquid: &Figure, room: &Figure, lost: Interval) -> Figure {
    if (liquid.value.best - room.value.best).abs() < 3.0 && liquid.value.is_exact() {
        return liquid.clone();
    }
    let kept = Interval::ONE - lost;
    let value = Interval::new(
        between(room.value.low, liquid.value.low, kept).low,
        room.value.best + (liquid.value.best - room.value.best) * kept.best,
        between(room.value.high, liquid.value.high, kept).high,
    );
    let lost = assumed(lost, PER_CENT, "lost on the way of what it is warmer than the room", PRACTICE);
    temperature("{0} − {2} × ({0} − {1})", value, vec![("", liquid.clone()), ("around", room.clone()), ("", lost)])
}

fn between(room: f64, liquid: f64, kept: Interval) -> Interval {
    let (a, b) = (room + (liquid - room) * kept.low, room + (liquid - room) * kept.high);
    Interval::range(a, b)
}

/// How something cools: toward `aim` (K) with a time constant `tau` (s).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cooling {
    /// Temperature it goes toward, K.
    pub aim: Interval,
    /// Time constant, s.
    pub tau: Interval,
}

impl Cooling {
    /// Goods of a dry mass and water a piece, kg, in air at `air`.
    pub(crate) fn of_goods(dry: f64, water: Interval, cover: Option<Cover>, air: Interval) -> Self {
        let (surface, aim, loss) = match cover {
            Some(Cover::SealedBag | Cover::UnderPlastic | Cover::Covered) => {
                (Exposure::Sealed.surface(dry).0, air, Interval::new(5.2, 7.8, 11.7))
            }
            _ if water.best < 0.1 * dry => (Exposure::Hung.surface(dry).0, air, Interval::new(5.2, 7.8, 11.7)),
            // Evaporation takes wet cloth a few degrees below the room and roughly doubles the loss.
            _ => (
                Exposure::Bunched.surface(dry).0,
                Interval::new(air.low - 6.0, air.best - 4.0, air.high),
                Interval::new(5.2, 18.0, 30.0),
            ),
        };
        let heat = capacity(water, Interval::exact(dry));
        Self { aim, tau: heat / (loss * surface.max(1e-6)) }
    }

    /// A bath of so many kg of liquor in an open vessel.
    pub(crate) fn of_bath(kg: Interval, air: Interval) -> Self {
        let (surface, _) = Exposure::LiddedBath.surface(kg.best);
        Self { aim: air, tau: kg * WATER / (Interval::new(5.2, 9.0, 18.0) * surface.max(1e-6)) }
    }

    /// The temperature after a time with the line of arithmetic it rests on: `from`, in surroundings of `around`, for `time`.
    pub(crate) fn figure(&self, from: &Figure, around: &Figure, time: &Figure, left: Interval) -> Figure {
        let tau =
            Figure::worked("heat capacity ÷ (loss to the air × surface)", self.tau, Dimension::Time, MINUTE, vec![]);
        let part = worked_share("e^−({0} ÷ {1})", left, vec![("", time.clone()), ("time constant", tau)]);
        let value = self.after(from.value, left);
        let below = around.value.best - self.aim.best;
        if below.abs() < 1e-9 {
            let inputs = vec![("", from.clone()), ("around", around.clone()), ("", part)];
            return temperature("{1} + {2} × ({0} − {1})", value, inputs);
        }
        let aim =
            temperature("{0} less 0 to 6 °C, where open wet cloth settles", self.aim, vec![("around", around.clone())]);
        temperature("{1} + {2} × ({0} − {1})", value, vec![("", from.clone()), ("", aim), ("", part)])
    }

    /// Share of the difference that is left after a time: low, best, high.
    pub(crate) fn left(&self, time: Interval) -> Interval {
        let part = |t: f64, tau: f64| if tau > 0.0 { libm::exp(-t / tau) } else { 0.0 };
        Interval::new(part(time.high, self.tau.low), part(time.best, self.tau.best), part(time.low, self.tau.high))
    }

    /// Temperature after a time, given [`Cooling::left`] of it.
    pub(crate) fn after(&self, start: Interval, left: Interval) -> Interval {
        let at = |s: f64, a: f64, k: f64| a + (s - a) * k;
        let low = at(start.low, self.aim.low, left.low).min(at(start.low, self.aim.low, left.high));
        let high = at(start.high, self.aim.high, left.low).max(at(start.high, self.aim.high, left.high));
        Interval::new(low, at(start.best, self.aim.best, left.best), high)
    }
}

#[cfg(test)]
mod tests {
    use tenter_chemistry::heat::{Body, mix};

    use super::*;
    use crate::figures::celsius;

    /// Heat is conserved: the same bodies mixed by the chemistry crate, and what one gains the other loses.
    #[test]
    fn mixing_conserves_heat() {
        for (hot, water, cold, held, dry) in
            [(82.0, 0.7, 20.0, 0.165, 0.165), (40.0, 8.0, 18.0, 0.6, 1.0), (10.0, 2.0, 35.0, 0.2, 0.2)]
        {
            let warm = celsius(hot, hot, hot, "", "");
            let cool = celsius(cold, cold, cold, "", "");
            let (a, b) = (
                capacity(Interval::exact(water), Interval::ZERO),
                capacity(Interval::exact(held), Interval::exact(dry)),
            );
            let ours = mixed((&warm, a), (&cool, b)).value.best;
            let gained = b.best * (ours - cool.value.best);
            let lost = a.best * (warm.value.best - ours);
            assert!((gained - lost).abs() < 1e-6 * gained.abs().max(1.0));
            let theirs = mix(
                &[
                    Body::water(water, hot + 273.15),
                    Body::water(held, cold + 273.15),
                    Body { mass: dry, heat_capacity: 1290.0, temperature: cold + 273.15 },
                ],
                0.0,
                273.15,
            );
            assert!((theirs.unwrap().temperature - ours).abs() < 0.2, "{ours}");
        }
    }

    /// The closed form of cooling against the step-by-step model of the chemistry crate, 0.2 kg of cotton with its weight of
    /// water from 40 °C in a room of 20 °C: sealed 32 °C after 10 min and 24 °C after 30 min there.
    #[test]
    fn closed_form_follows_the_lumped_model() {
        let cooling = Cooling::of_goods(0.2, Interval::exact(0.2), Some(Cover::SealedBag), Interval::exact(293.15));
        for (minutes, celsius) in [(5.0, 35.5), (10.0, 32.0), (30.0, 24.0), (60.0, 21.0)] {
            let left = cooling.left(Interval::exact(minutes * 60.0));
            let after = cooling.after(Interval::exact(313.15), left);
            assert!((after.best - 273.15 - celsius).abs() < 1.0, "{minutes} min: {after:?}");
            assert!(after.low <= after.best && after.best <= after.high);
        }
        let open = Cooling::of_goods(0.2, Interval::exact(0.2), Some(Cover::Uncovered), Interval::exact(293.15));
        let left = open.left(Interval::exact(1800.0));
        let after = open.after(Interval::exact(313.15), left).best - 273.15;
        assert!((after - 16.0).abs() < 2.0, "{after}");
    }
}
