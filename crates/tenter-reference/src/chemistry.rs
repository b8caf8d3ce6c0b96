//! What one mole of a material brings into solution, in the components of the equilibrium model.

use serde::Deserialize;

/// Names of the components, in the order of [`Ions::amounts`].
pub const ION_NAMES: [&str; 14] = [
    "sodium",
    "potassium",
    "calcium",
    "magnesium",
    "carbonate",
    "acetate",
    "citrate",
    "phosphate",
    "ammonia",
    "sulfite",
    "chloride",
    "sulfate",
    "silicate",
    "hypochlorite",
];

/// Moles of each component in one mole. Each anion counts in its fully deprotonated form (carbonate CO3, citrate
/// C6H5O7, phosphate PO4, silicate SiO3, sulfite SO3), ammonia as NH3. Hydrogen and hydroxide are not listed: they follow
/// from the balance of charge.
#[derive(Debug, Clone, Copy, PartialEq, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Ions {
    /// Na⁺.
    pub sodium: f64,
    /// K⁺.
    pub potassium: f64,
    /// Ca²⁺.
    pub calcium: f64,
    /// Mg²⁺.
    pub magnesium: f64,
    /// CO₃²⁻ and what it turns into.
    pub carbonate: f64,
    /// CH₃COO⁻ and its acid.
    pub acetate: f64,
    /// C₆H₅O₇³⁻ and its acids.
    pub citrate: f64,
    /// PO₄³⁻ and its acids.
    pub phosphate: f64,
    /// NH₃ and ammonium.
    pub ammonia: f64,
    /// SO₃²⁻ and its acids.
    pub sulfite: f64,
    /// Cl⁻.
    pub chloride: f64,
    /// SO₄²⁻.
    pub sulfate: f64,
    /// SiO₃²⁻ and its acids.
    pub silicate: f64,
    /// ClO⁻ and its acid.
    pub hypochlorite: f64,
}

impl Ions {
    /// Amounts in the order of [`ION_NAMES`].
    pub const fn amounts(&self) -> [f64; 14] {
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
            self.hypochlorite,
        ]
    }

    /// Charge of the listed components in one mole. What is missing to nought is hydrogen (if negative) or hydroxide.
    pub fn charge(&self) -> f64 {
        const CHARGES: [f64; 14] = [1.0, 1.0, 2.0, 2.0, -2.0, -1.0, -3.0, -3.0, 0.0, -2.0, -1.0, -2.0, -2.0, -1.0];
        self.amounts().iter().zip(CHARGES).map(|(amount, charge)| amount * charge).sum()
    }
}
