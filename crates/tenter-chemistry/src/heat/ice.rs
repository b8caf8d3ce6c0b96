//! How long a heap of ice takes to melt on cloth in still air.

use crate::water::{HEAT_OF_FUSION, ZERO_CELSIUS, vapour_pressure};

/// Convection and radiation to the heap, W/(m²·K), and dew by the Lewis relation: as for cooling.
const CONVECTION: f64 = 3.1;
const RADIATION: f64 = 4.7;
const LEWIS: f64 = 16.5e-3;
/// Bulk density of cubes and crushed ice, kg/m³; common practice, no source.
const BULK_DENSITY: f64 = 550.0;

/// Surface a heap shows to the air, m²: a half sphere.
#[must_use]
pub fn heap_surface(mass: f64) -> f64 {
    let volume = mass.max(0.0) / BULK_DENSITY;
    let radius = libm::cbrt(1.5 * volume / core::f64::consts::PI);
    2.0 * core::f64::consts::PI * radius * radius
}

/// Time for a heap of ice at 0 °C to melt, s; infinite in freezing air. `surface` in m² (see
/// [`heap_surface`]; ice spread over cloth shows more), air temperature in K, humidity 0–1, `rate`
/// multiplies the flow of heat. The surface shrinks with the ice as the 2/3 power of its mass, which
/// makes the time three times that of the first rate kept up.
#[must_use]
pub fn melting_time(mass: f64, surface: f64, air: f64, humidity: f64, rate: f64) -> f64 {
    let dew = (humidity.clamp(0.0, 1.0) * vapour_pressure(air) - vapour_pressure(ZERO_CELSIUS)).max(0.0);
    let flux = (CONVECTION + RADIATION) * (air - ZERO_CELSIUS) + CONVECTION * LEWIS * dew;
    if flux <= 0.0 || surface <= 0.0 || rate <= 0.0 {
        return if mass > 0.0 { f64::INFINITY } else { 0.0 };
    }
    3.0 * mass.max(0.0) * HEAT_OF_FUSION / (flux * surface * rate)
}

/// Melting time of a heap, s: low, best, high. The spread is a factor of two: shape, draught, lid and
/// the salt in the dye all count.
#[must_use]
pub fn melting_time_range(mass: f64, air: f64, humidity: f64) -> (f64, f64, f64) {
    // Meltwater drains heat from the cloth and rack below as well, which the half sphere leaves out:
    // the best figure takes twice the flow through the open surface.
    let surface = heap_surface(mass);
    let at = |rate| melting_time(mass, surface, air, humidity, rate);
    (at(4.0), at(2.0), at(1.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_heap_melts_overnight_and_not_in_frost() {
        let (low, best, high) = melting_time_range(1.0, 293.15, 0.5);
        assert!(low < best && best < high);
        // Ice-dyed goods are left overnight, 8 to 24 h: common practice, no source.
        assert!((4.0 * 3600.0..24.0 * 3600.0).contains(&best), "{} h", best / 3600.0);
        assert!(melting_time(1.0, 0.05, 268.15, 0.5, 1.0).is_infinite());
        let (_, warmer, _) = melting_time_range(1.0, 303.15, 0.5);
        assert!(warmer < best);
        let (_, more, _) = melting_time_range(2.0, 293.15, 0.5);
        assert!(more > best);
    }
}
