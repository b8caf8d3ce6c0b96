//! Cooling of wet cloth and of baths in still air, as one lump at one temperature.
//!
//! Surface coefficients: convection 3.1 and radiation 4.7 W/(m²·K), evaporation by the Lewis
//! relation, 16.5 K/kPa of vapour pressure times the convection coefficient (ASHRAE Handbook
//! Fundamentals, chapter 9, from memory). Areas are estimates of order of magnitude; the whole is
//! good to about a factor of 1.5 in the rate, which [`Pace`] and [`cool_range`] express.

use crate::water::{heat_of_vaporisation, vapour_pressure};

const CONVECTION: f64 = 3.1;
const RADIATION: f64 = 4.7;
/// Lewis relation, K/Pa.
const LEWIS: f64 = 16.5e-3;

/// How far the rate is set from its best value.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Pace {
    /// Rate divided by 1.5.
    Slow,
    /// Best value.
    Usual,
    /// Rate times 1.5.
    Fast,
}

impl Pace {
    fn factor(self) -> f64 {
        match self {
            Self::Slow => 1.0 / 1.5,
            Self::Usual => 1.0,
            Self::Fast => 1.5,
        }
    }
}

/// How the goods or the bath meet the air.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Exposure {
    /// In a closed bag or under plastic film: no evaporation.
    Sealed,
    /// Folded, tied or heaped, uncovered.
    Bunched,
    /// Hung or spread in one layer.
    Hung,
    /// Open pot, bucket or tray.
    OpenBath,
    /// Pot or bucket with its lid on.
    LiddedBath,
    /// Wrapped or boxed against loss of heat (a cool box, blankets): a fifth of the loss of a
    /// sealed bag; common practice, no source.
    Insulated,
}

/// The air around.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Air {
    /// Temperature, K.
    pub temperature: f64,
    /// Relative humidity, 0–1.
    pub humidity: f64,
}

/// What cools.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wares {
    /// Heat capacity of all of it, J/K.
    pub heat_capacity: f64,
    /// Dry mass of the cloth, or mass of the liquor of a bath, kg; sets the surface.
    pub bulk: f64,
    /// Water that can evaporate, kg.
    pub water: f64,
}

impl Exposure {
    /// Surface that loses heat and surface that evaporates, m², for a bulk in kg.
    #[must_use]
    pub fn surface(self, bulk: f64) -> (f64, f64) {
        let bulk = bulk.max(0.0);
        let two_thirds = {
            let root = libm::cbrt(bulk);
            root * root
        };
        match self {
            // 0.12, 0.25 and 1.0 m² for 0.2 kg of dry cotton.
            Self::Sealed => (0.351 * two_thirds, 0.0),
            Self::Bunched => (0.731 * two_thirds, 0.731 * two_thirds),
            Self::Hung => (5.0 * bulk, 5.0 * bulk),
            Self::Insulated => (0.070 * two_thirds, 0.0),
            // A round pot as wide as the liquor is deep: top π·D²/4, all sides together 6/4 of
            // π·D², of a litre a kilogram.
            Self::OpenBath | Self::LiddedBath => {
                let diameter = libm::cbrt(4.0 * bulk * 1e-3 / core::f64::consts::PI);
                let top = core::f64::consts::FRAC_PI_4 * diameter * diameter;
                (6.0 * top, if self == Self::OpenBath { top } else { 0.0 })
            }
        }
    }
}

/// State after a time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cooled {
    /// Temperature, K.
    pub temperature: f64,
    /// Water lost to the air, kg (never below zero: dew is left out).
    pub evaporated: f64,
}

/// Temperature and water lost after `seconds` in the air, starting at `start` K. Goes to the wet-bulb
/// balance below room temperature where water evaporates, and to room temperature where not (or where
/// the water has run out).
#[must_use]
pub fn cool(wares: &Wares, exposure: Exposure, start: f64, air: &Air, seconds: f64, pace: Pace) -> Cooled {
    let (surface, wet_surface) = exposure.surface(wares.bulk);
    let capacity = wares.heat_capacity.max(1e-9);
    let vapour = air.humidity.clamp(0.0, 1.0) * vapour_pressure(air.temperature);
    let mut temperature = start;
    let mut evaporated = 0.0;
    let mut left = if seconds.is_finite() { seconds.max(0.0) } else { 0.0 };
    // Each step goes an exact exponential toward the balance of the rate as it stands, so that
    // long steps cannot overshoot; evaporation is linearised about the present temperature.
    for _ in 0..4000 {
        if left <= 0.0 {
            break;
        }
        let wet = evaporated < wares.water;
        let (dry_loss, dry_slope) = {
            let h = (CONVECTION + RADIATION) * surface * pace.factor();
            (h * (temperature - air.temperature), h)
        };
        let (wet_loss, wet_slope) = if wet && wet_surface > 0.0 {
            let h = CONVECTION * LEWIS * wet_surface * pace.factor();
            let pressure = vapour_pressure(temperature);
            let slope = (vapour_pressure(temperature + 0.5) - pressure) / 0.5;
            (h * (pressure - vapour), h * slope)
        } else {
            (0.0, 0.0)
        };
        let slope = (dry_slope + wet_slope).max(1e-12);
        let tau = capacity / slope;
        let step = left.min((0.1 * tau).max(1.0)).max(left / 4000.0);
        let aim = temperature - (dry_loss + wet_loss) / slope;
        let before = temperature;
        temperature = aim + (temperature - aim) * libm::exp(-step / tau);
        if wet_loss > 0.0 {
            let mean = wet_loss + wet_slope * 0.5 * (temperature - before);
            let lost = mean.max(0.0) * step / heat_of_vaporisation(before);
            evaporated = (evaporated + lost).min(wares.water.max(0.0));
        }
        left -= step;
    }
    Cooled { temperature, evaporated }
}

/// Temperature (K) after a time: low, best, high over a factor of 1.5 either way in the rate.
#[must_use]
pub fn cool_range(wares: &Wares, exposure: Exposure, start: f64, air: &Air, seconds: f64) -> (f64, f64, f64) {
    let at = |pace| cool(wares, exposure, start, air, seconds, pace).temperature;
    let (slow, best, fast) = (at(Pace::Slow), at(Pace::Usual), at(Pace::Fast));
    (slow.min(best).min(fast), best, slow.max(best).max(fast))
}

#[cfg(test)]
mod tests {
    use super::*;

    const ROOM: Air = Air { temperature: 293.15, humidity: 0.5 };

    /// 0.2 kg of dry cotton with its own weight (or 1.5 times) of water, in still air at 20 °C and
    /// 50 % humidity: temperatures computed separately from the same lumped model.
    #[test]
    fn wet_garment_in_still_air() {
        let garment =
            |pickup: f64| Wares { heat_capacity: 0.2 * 1290.0 + 0.2 * pickup * 4182.0, bulk: 0.2, water: 0.2 * pickup };
        let cases: [(Exposure, f64, f64, [f64; 4]); 4] = [
            (Exposure::Hung, 1.0, 40.0, [16.0, 16.0, 16.0, 16.0]),
            (Exposure::Bunched, 1.0, 40.0, [23.0, 19.0, 16.0, 16.0]),
            (Exposure::Sealed, 1.0, 40.0, [35.5, 32.0, 24.0, 21.0]),
            (Exposure::Sealed, 1.5, 50.0, [45.0, 41.0, 30.0, 23.0]),
        ];
        for (exposure, pickup, start, expected) in cases {
            for (minutes, celsius) in [5.0, 10.0, 30.0, 60.0].iter().zip(expected) {
                let after = cool(&garment(pickup), exposure, start + 273.15, &ROOM, minutes * 60.0, Pace::Usual);
                let ours = after.temperature - 273.15;
                assert!(
                    (ours - celsius).abs() < 1.0,
                    "{exposure:?} from {start} °C after {minutes} min: {ours:.1}, not {celsius}"
                );
            }
        }
        let hour = cool(&garment(1.0), Exposure::Hung, 313.15, &ROOM, 3600.0, Pace::Usual);
        assert!((hour.evaporated / 0.2 - 0.27).abs() < 0.05, "{}", hour.evaporated);
    }

    #[test]
    fn the_range_holds_the_best_and_stops_at_the_room() {
        let wares = Wares { heat_capacity: 10.0 * 4182.0, bulk: 10.0, water: 10.0 };
        let (low, best, high) = cool_range(&wares, Exposure::LiddedBath, 333.15, &ROOM, 1800.0);
        assert!(low < best && best < high && high < 333.15 && low > 293.15);
        let days = cool(&wares, Exposure::LiddedBath, 333.15, &ROOM, 1e6, Pace::Usual);
        assert!((days.temperature - 293.15).abs() < 0.01);
        let forever = cool(&wares, Exposure::OpenBath, 333.15, &ROOM, f64::INFINITY, Pace::Usual);
        assert!((forever.temperature - 333.15).abs() < 1e-9);
    }
}
