//! The Debye–Hückel slope of water on the Pitzer (osmotic) scale.
//!
//! `Aφ = (1/3)·√(2π·N_A·ρ)·(e²/(4π·ε₀·D·k·T))^(3/2)`, with the permittivity `D` of
//! Bradley & Pitzer 1979, J. Phys. Chem. 83:1599 (coefficients as in the public library chempy
//! 0.10.2) and the density of water of Kell 1975, J. Chem. Eng. Data 20:97.

use crate::water::density;

/// Slope `Aφ` in (kg/mol)^½ at a temperature in kelvin and one atmosphere.
#[must_use]
pub fn osmotic_slope(temperature_k: f64) -> f64 {
    let avogadro = 6.02214076e23;
    let charge = 1.602176634e-19;
    let boltzmann = 1.380649e-23;
    let vacuum = 8.8541878128e-12;
    let pi = core::f64::consts::PI;
    let mass_density = density(temperature_k);
    let bjerrum = charge * charge / (4.0 * pi * vacuum * permittivity(temperature_k) * boltzmann * temperature_k);
    libm::sqrt(2.0 * pi * avogadro * mass_density) * bjerrum * libm::sqrt(bjerrum) / 3.0
}

/// Relative permittivity of water at one atmosphere.
fn permittivity(t: f64) -> f64 {
    let pressure_bar = 1.01325;
    let at_1000_bar = 3.4279e2 * libm::exp(t * (-5.0866e-3 + 9.4690e-7 * t));
    let c = -2.0525 + 3.1159e3 / (t - 1.8289e2);
    let b = -8.0325e3 + 4.2142e6 / t + 2.1417 * t;
    at_1000_bar + c * libm::log((b + pressure_bar) / (b + 1000.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Debye–Hückel A on the decimal scale, computed with chempy 0.10.2 and IAPWS-95 density.
    #[test]
    fn slope_agrees_with_the_published_permittivity_and_density() {
        for (celsius, a) in [(0.0, 0.4908), (20.0, 0.5057), (40.0, 0.5241), (60.0, 0.5459), (95.0, 0.5925)] {
            let ours = osmotic_slope(celsius + 273.15) * 3.0 / core::f64::consts::LN_10;
            assert!((ours - a).abs() < 3e-4, "{celsius} °C: {ours} against {a}");
        }
    }
}
