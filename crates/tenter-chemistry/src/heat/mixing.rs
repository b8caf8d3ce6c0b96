//! Mixing without loss of heat: hot water, wet cloth, the vessel and ice brought together.

use crate::water::{HEAT_OF_FUSION, ICE_HEAT_CAPACITY, ZERO_CELSIUS, heat_capacity};

/// A mass at one temperature with one specific heat.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Body {
    /// Mass, kg.
    pub mass: f64,
    /// Specific heat, J/(kg·K).
    pub heat_capacity: f64,
    /// Temperature, K.
    pub temperature: f64,
}

impl Body {
    /// Water at a temperature. Dilute liquors are taken as water: a liquor with 100 g/L of salt
    /// holds about 8 % less heat a kilogram, which matters less than the weighing.
    #[must_use]
    pub fn water(mass: f64, temperature: f64) -> Self {
        Self { mass, heat_capacity: heat_capacity(temperature), temperature }
    }

    fn capacity(&self) -> f64 {
        self.mass.max(0.0) * self.heat_capacity.max(0.0)
    }
}

/// What comes of mixing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mixed {
    /// Common temperature, K.
    pub temperature: f64,
    /// Ice melted, kg.
    pub melted: f64,
    /// Ice left, kg. More than was put in when the ice was so cold that water froze to it.
    pub ice_left: f64,
}

/// Brings bodies and ice (mass in kg, temperature in K at or below freezing) to one temperature with
/// no heat lost. `None` when there is nothing to mix. Each body keeps its specific heat; meltwater
/// has that of water at 0 °C. Heat of fusion 333.43 kJ/kg (IAPWS-06).
#[must_use]
pub fn mix(bodies: &[Body], ice_mass: f64, ice_temperature: f64) -> Option<Mixed> {
    let ice = ice_mass.max(0.0);
    let capacity: f64 = bodies.iter().map(Body::capacity).sum();
    let heat: f64 = bodies.iter().map(|b| b.capacity() * (b.temperature - ZERO_CELSIUS)).sum();
    if ice <= 0.0 {
        return (capacity > 0.0).then(|| Mixed {
            temperature: ZERO_CELSIUS + heat / capacity,
            melted: 0.0,
            ice_left: 0.0,
        });
    }
    let chill = ice * ICE_HEAT_CAPACITY * (ice_temperature.min(ZERO_CELSIUS) - ZERO_CELSIUS);
    let available = heat + chill;
    if available >= ice * HEAT_OF_FUSION {
        let meltwater = heat_capacity(ZERO_CELSIUS);
        let left = available - ice * HEAT_OF_FUSION;
        return Some(Mixed {
            temperature: ZERO_CELSIUS + left / (capacity + ice * meltwater),
            melted: ice,
            ice_left: 0.0,
        });
    }
    let melted = available / HEAT_OF_FUSION;
    Some(Mixed { temperature: ZERO_CELSIUS, melted: melted.max(0.0), ice_left: ice - melted })
}
