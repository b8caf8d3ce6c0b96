//! The result of a solution.

use super::species::{CHARGE, SPECIES};

/// Something about a solution that a reader of its pH must know.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Caution {
    /// More dissolved than the activity model was fitted to (ionic strength above 6 mol/kg).
    BeyondModel,
    /// A part of the answer rests on coefficients taken by likeness (citrate, sulfite, silicate,
    /// phosphoric acid), not on published ones.
    Estimated,
    /// Carbon dioxide and steam together exceed one atmosphere: the solution fizzes, and the pH
    /// climbs as the gas leaves.
    Fizzes,
    /// Carbon dioxide above the solution is more than ten times that of air: an open vessel slowly
    /// loses it and the pH climbs.
    LosesCarbonDioxide,
    /// Calcium carbonate can come out of solution.
    ChalkForms,
}

/// A solved solution.
#[derive(Debug, Clone, PartialEq)]
pub struct Speciation {
    /// pH on the MacInnes convention, which agrees with the NIST standards.
    pub ph: f64,
    /// pH with the activity of hydrogen unscaled (the Pitzer convention).
    pub ph_unscaled: f64,
    /// Hydroxide, mol/kg.
    pub oh_molality: f64,
    /// Hydrogen ion, mol/kg.
    pub h_molality: f64,
    /// Bicarbonate, mol/kg.
    pub bicarbonate: f64,
    /// Carbonate, mol/kg.
    pub carbonate: f64,
    /// Dissolved carbon dioxide, mol/kg.
    pub carbon_dioxide: f64,
    /// Dissolved (un-ionised) ammonia, mol/kg.
    pub ammonia: f64,
    /// Ionic strength, mol/kg.
    pub ionic_strength: f64,
    /// Activity of water, 1 for pure water.
    pub water_activity: f64,
    /// Pressure of carbon dioxide in balance with the solution, Pa.
    pub carbon_dioxide_pressure: f64,
    /// Logarithm to base ten of the degree of saturation with calcite; `None` without calcium or
    /// carbonate.
    pub calcite_saturation_index: Option<f64>,
    /// Cautions, sorted.
    pub cautions: Vec<Caution>,
    /// Rounds of the activity model it took.
    pub rounds: u32,
    /// pK of water at this temperature.
    pub pk_water: f64,
    /// pK of the two steps of carbonic acid at this temperature.
    pub pk_carbonic: [f64; 2],
    pub(super) molality: [f64; SPECIES],
    pub(super) ln_gamma: [f64; SPECIES],
    /// Natural logarithm of the MacInnes scale for one unit of charge.
    pub(super) scale: f64,
}

impl Speciation {
    /// Molality of one species, by its position in [`super::species`]; zero for an unknown one.
    #[must_use]
    pub fn molality(&self, species: usize) -> f64 {
        self.molality.get(species).copied().unwrap_or(0.0)
    }

    /// Activity coefficient of one species on the scale of [`Speciation::ph`], so that the pH can be
    /// followed by hand: `pH = pK2 + log10(m(CO₃)·γ(CO₃)/(m(HCO₃)·γ(HCO₃)))`.
    #[must_use]
    pub fn activity_coefficient(&self, species: usize) -> f64 {
        match (self.ln_gamma.get(species), CHARGE.get(species)) {
            (Some(ln_gamma), Some(charge)) => libm::exp(ln_gamma + charge * self.scale),
            _ => 1.0,
        }
    }
}

/// Why there is no answer.
#[derive(Debug, Clone, PartialEq)]
pub enum NotSolved {
    /// A total is negative, infinite or not a number.
    BadTotal,
    /// The temperature (kelvin) is outside 273.15–373.15 K.
    Temperature(f64),
    /// A total above 50 mol per kg of water: no longer a solution in water.
    TooConcentrated(f64),
    /// The rounds ran out; the last change of a logarithm of an activity coefficient.
    NoConvergence(f64),
}

impl core::fmt::Display for NotSolved {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            Self::BadTotal => write!(f, "an amount is negative or not a number"),
            Self::Temperature(t) => {
                write!(f, "{:.1} °C is outside the range of the model, 0 to 100 °C", t - 273.15)
            }
            Self::TooConcentrated(m) => {
                write!(f, "{m:.0} mol of one substance per kg of water is no longer a solution in water")
            }
            Self::NoConvergence(change) => {
                write!(f, "the activity model does not settle for this mixture (last change {change:.1e})")
            }
        }
    }
}

impl core::error::Error for NotSolved {}
