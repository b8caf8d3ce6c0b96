//! Properties of water from 0 to 100 °C, and boiling at altitude.

use crate::interpolate::linear;

/// Zero of the Celsius scale, K.
pub const ZERO_CELSIUS: f64 = 273.15;
/// Standard atmosphere, Pa.
pub const ATMOSPHERE: f64 = 101_325.0;
/// Heat of fusion of ice at 0 °C, J/kg (IAPWS-06, with the PyPI package iapws 1.5.5).
pub const HEAT_OF_FUSION: f64 = 333_430.0;
/// Specific heat of ice at 0 °C, J/(kg·K) (same).
pub const ICE_HEAT_CAPACITY: f64 = 2_097.0;
/// Density of ice at 0 °C, kg/m³ (same).
pub const ICE_DENSITY: f64 = 916.7;

/// Specific heat by temperature in °C, kJ/(kg·K): IAPWS-95 at saturation or one atmosphere.
const HEAT_CAPACITY: [(f64, f64); 21] = [
    (0.01, 4.2194),
    (5.0, 4.2050),
    (10.0, 4.1952),
    (15.0, 4.1885),
    (20.0, 4.1841),
    (25.0, 4.1813),
    (30.0, 4.1798),
    (35.0, 4.1793),
    (40.0, 4.1794),
    (45.0, 4.1801),
    (50.0, 4.1813),
    (55.0, 4.1830),
    (60.0, 4.1850),
    (65.0, 4.1873),
    (70.0, 4.1901),
    (75.0, 4.1932),
    (80.0, 4.1968),
    (85.0, 4.2007),
    (90.0, 4.2052),
    (95.0, 4.2102),
    (99.9, 4.2156),
];

/// Heat of vaporisation by temperature in °C, kJ/kg: IAPWS-97.
const VAPORISATION: [(f64, f64); 7] =
    [(0.01, 2500.9), (20.0, 2453.5), (40.0, 2406.0), (60.0, 2357.7), (80.0, 2308.1), (90.0, 2282.6), (99.9, 2256.7)];

/// Density of water at one atmosphere, kg/m³, temperature in K. Kell 1975, J. Chem. Eng. Data 20:97
/// (coefficients from memory; agrees with IAPWS-95 within 0.02 kg/m³, which the tests check).
#[must_use]
pub fn density(temperature_k: f64) -> f64 {
    let t = (temperature_k - ZERO_CELSIUS).clamp(-10.0, 110.0);
    let top = 999.83952
        + t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 - t * 280.54253e-12))));
    top / (1.0 + 16.879850e-3 * t)
}

/// Specific heat of water, J/(kg·K); held at its end values outside 0–100 °C.
#[must_use]
pub fn heat_capacity(temperature_k: f64) -> f64 {
    1000.0 * linear(&HEAT_CAPACITY, temperature_k - ZERO_CELSIUS)
}

/// Heat of vaporisation, J/kg.
#[must_use]
pub fn heat_of_vaporisation(temperature_k: f64) -> f64 {
    1000.0 * linear(&VAPORISATION, temperature_k - ZERO_CELSIUS)
}

/// Vapour pressure of water, Pa. Wagner & Pruss 1993, J. Phys. Chem. Ref. Data 22:783 (IAPWS
/// SR1-86; coefficients from memory, agreement with IAPWS-97 checked in the tests).
#[must_use]
pub fn vapour_pressure(temperature_k: f64) -> f64 {
    let critical = 647.096;
    let t = temperature_k.clamp(223.15, 640.0);
    let x = 1.0 - t / critical;
    let half = x.sqrt();
    let cube = x * x * x;
    let sum = -7.85951783 * x
        + 1.84408259 * x * half
        + cube * (-11.7866497 + 22.6807411 * half)
        + x * cube * (-15.9618719 + 1.80122502 * cube * half);
    22.064e6 * libm::exp(critical / t * sum)
}

/// Pressure of the air at an altitude in metres, Pa: ICAO standard atmosphere.
#[must_use]
pub fn pressure_at_altitude(metres: f64) -> f64 {
    let share = (1.0 - 2.25577e-5 * metres.clamp(-500.0, 11_000.0)).max(0.0);
    ATMOSPHERE * libm::pow(share, 5.25588)
}

/// Temperature at which water boils under a pressure in Pa, K.
#[must_use]
pub fn boiling_point(pressure: f64) -> f64 {
    let (mut low, mut high) = (ZERO_CELSIUS, 473.15);
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if vapour_pressure(middle) < pressure {
            low = middle;
        } else {
            high = middle;
        }
    }
    0.5 * (low + high)
}

/// Temperature at which water boils at an altitude in metres, K.
#[must_use]
pub fn boiling_point_at_altitude(metres: f64) -> f64 {
    boiling_point(pressure_at_altitude(metres))
}
