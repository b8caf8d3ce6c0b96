//! Properties of water.

/// placeholder
pub fn kell_density(temperature_k: f64) -> f64 {
    let t = temperature_k - 273.15;
    let top = 999.83952
        + t * (16.945176
            + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 - t * 280.54253e-12))));
    top / (1.0 + 16.879850e-3 * t)
}
/// placeholder
pub fn vapour_pressure(_t: f64) -> f64 {
    0.0
}
