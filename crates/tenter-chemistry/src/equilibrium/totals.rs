//! What is put in, as total molalities.

/// Total molalities in mol per kg of water. An acid and its salts share one total: a mole of
/// acetic acid is `acetate: 1.0`, a mole of sodium acetate `sodium: 1.0, acetate: 1.0`. Hydrogen and
/// hydroxide are not given: they follow from the balance of charge.
///
/// ```
/// use tenter_chemistry::equilibrium::{Totals, solve};
/// let soda_ash = Totals { sodium: 0.2, carbonate: 0.1, ..Totals::default() };
/// let solution = solve(&soda_ash, 298.15).unwrap();
/// assert!((solution.ph - 11.37).abs() < 0.02);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Totals {
    /// Sodium.
    pub sodium: f64,
    /// Potassium.
    pub potassium: f64,
    /// Calcium.
    pub calcium: f64,
    /// Magnesium.
    pub magnesium: f64,
    /// Carbonate, bicarbonate and carbon dioxide together.
    pub carbonate: f64,
    /// Acetate and acetic acid.
    pub acetate: f64,
    /// Citrate and citric acid.
    pub citrate: f64,
    /// Phosphate and phosphoric acid.
    pub phosphate: f64,
    /// Ammonia and ammonium.
    pub ammonia: f64,
    /// Sulfite, hydrogen sulfite and sulfur dioxide.
    pub sulfite: f64,
    /// Chloride.
    pub chloride: f64,
    /// Sulfate and hydrogen sulfate.
    pub sulfate: f64,
    /// Silicate and silicic acid.
    pub silicate: f64,
}

impl Totals {
    /// The totals in a fixed order, the order of the fields.
    #[must_use]
    pub fn as_array(&self) -> [f64; 13] {
        [
            self.sodium,
            self.potassium,
            self.calcium,
            self.magnesium,
            self.carbonate,
            self.acetate,
            self.citrate,
            self.phosphate,
            self.ammonia,
            self.sulfite,
            self.chloride,
            self.sulfate,
            self.silicate,
        ]
    }

    /// Totals from the fixed order of [`Totals::as_array`].
    #[must_use]
    pub fn from_array(a: [f64; 13]) -> Self {
        let [
            sodium,
            potassium,
            calcium,
            magnesium,
            carbonate,
            acetate,
            citrate,
            phosphate,
            ammonia,
            sulfite,
            chloride,
            sulfate,
            silicate,
        ] = a;
        Self {
            sodium,
            potassium,
            calcium,
            magnesium,
            carbonate,
            acetate,
            citrate,
            phosphate,
            ammonia,
            sulfite,
            chloride,
            sulfate,
            silicate,
        }
    }

    /// These totals with `factor` times `other` added: a mix is built substance by substance from
    /// what one mole of each gives.
    #[must_use]
    pub fn plus(&self, other: &Self, factor: f64) -> Self {
        let mut sum = self.as_array();
        for (x, y) in sum.iter_mut().zip(other.as_array()) {
            *x += factor * y;
        }
        Self::from_array(sum)
    }

    /// These totals times a factor (dilution, or a mass balance over a bath).
    #[must_use]
    pub fn scaled(&self, factor: f64) -> Self {
        Self::default().plus(self, factor)
    }
}
