//! How much of a substance water holds at a temperature, and which crystals stand in balance with it.

use crate::hydrate::{Hydrate, find};
use crate::interpolate::logarithmic;
use crate::solubility_tables as tables;
use crate::water::ZERO_CELSIUS;

/// A substance with a table.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Solute {
    /// Sodium carbonate, soda ash.
    SodiumCarbonate,
    /// Sodium bicarbonate.
    SodiumBicarbonate,
    /// Sodium sulfate.
    SodiumSulfate,
    /// Sodium chloride.
    SodiumChloride,
    /// Sodium hydroxide.
    SodiumHydroxide,
    /// Trisodium phosphate.
    TrisodiumPhosphate,
    /// Sodium sulfite.
    SodiumSulfite,
    /// Sodium tetraborate.
    Borax,
    /// Sodium acetate.
    SodiumAcetate,
    /// Copper(II) sulfate.
    CopperSulfate,
    /// Iron(II) sulfate.
    IronSulfate,
    /// Potassium dichromate.
    PotassiumDichromate,
    /// Citric acid.
    CitricAcid,
    /// Urea.
    Urea,
}

/// Every solute, in a fixed order.
pub const SOLUTES: &[Solute] = &[
    Solute::SodiumCarbonate,
    Solute::SodiumBicarbonate,
    Solute::SodiumSulfate,
    Solute::SodiumChloride,
    Solute::SodiumHydroxide,
    Solute::TrisodiumPhosphate,
    Solute::SodiumSulfite,
    Solute::Borax,
    Solute::SodiumAcetate,
    Solute::CopperSulfate,
    Solute::IronSulfate,
    Solute::PotassiumDichromate,
    Solute::CitricAcid,
    Solute::Urea,
];

impl Solute {
    /// Formula of the anhydrous substance.
    #[must_use]
    pub fn formula(self) -> &'static str {
        match self {
            Self::SodiumCarbonate => "Na2CO3",
            Self::SodiumBicarbonate => "NaHCO3",
            Self::SodiumSulfate => "Na2SO4",
            Self::SodiumChloride => "NaCl",
            Self::SodiumHydroxide => "NaOH",
            Self::TrisodiumPhosphate => "Na3PO4",
            Self::SodiumSulfite => "Na2SO3",
            Self::Borax => "Na2B4O7",
            Self::SodiumAcetate => "NaC2H3O2",
            Self::CopperSulfate => "CuSO4",
            Self::IronSulfate => "FeSO4",
            Self::PotassiumDichromate => "K2Cr2O7",
            Self::CitricAcid => "C6H8O7",
            Self::Urea => "CO(NH2)2",
        }
    }

    /// The solute with this formula.
    #[must_use]
    pub fn from_formula(formula: &str) -> Option<Self> {
        SOLUTES.iter().copied().find(|s| s.formula() == formula)
    }

    fn table(self) -> &'static [(f64, f64)] {
        match self {
            Self::SodiumCarbonate => tables::SODIUM_CARBONATE,
            Self::SodiumBicarbonate => tables::SODIUM_BICARBONATE,
            Self::SodiumSulfate => tables::SODIUM_SULFATE,
            Self::SodiumChloride => tables::SODIUM_CHLORIDE,
            Self::SodiumHydroxide => tables::SODIUM_HYDROXIDE,
            Self::TrisodiumPhosphate => tables::TRISODIUM_PHOSPHATE,
            Self::SodiumSulfite => tables::SODIUM_SULFITE,
            Self::Borax => tables::BORAX,
            Self::SodiumAcetate => tables::SODIUM_ACETATE,
            Self::CopperSulfate => tables::COPPER_SULFATE,
            Self::IronSulfate => tables::IRON_SULFATE,
            Self::PotassiumDichromate => tables::POTASSIUM_DICHROMATE,
            Self::CitricAcid => tables::CITRIC_ACID,
            Self::Urea => tables::UREA,
        }
    }

    /// Temperatures the table spans, K.
    #[must_use]
    pub fn range(self) -> (f64, f64) {
        let table = self.table();
        let at = |row: Option<&(f64, f64)>| row.map_or(f64::NAN, |r| r.0 + ZERO_CELSIUS);
        (at(table.first()), at(table.last()))
    }
}

/// Solubility in pure water: kg of the anhydrous substance per kg of water. The end values outside
/// the table (urea below 20 °C: the table starts there, so the figure is then a little high).
#[must_use]
pub fn solubility(solute: Solute, temperature_k: f64) -> f64 {
    0.01 * logarithmic(solute.table(), temperature_k - ZERO_CELSIUS)
}

/// How full a solution is: 1 when saturated. `content` is kg of the anhydrous substance per kg of
/// water.
#[must_use]
pub fn saturation(solute: Solute, content: f64, temperature_k: f64) -> f64 {
    content / solubility(solute, temperature_k)
}

/// The coolest temperature (K, steps of 0.5 °C) at which `content` (kg per kg of water) dissolves
/// fully; `None` when no temperature of the table will do.
#[must_use]
pub fn dissolving_temperature(solute: Solute, content: f64) -> Option<f64> {
    let (low, high) = solute.range();
    let mut t = low;
    while t <= high + 1e-9 {
        if solubility(solute, t) >= content {
            return Some(t);
        }
        t += 0.5;
    }
    None
}

/// The crystals that come out of a saturated solution at a temperature. Transition temperatures:
/// sodium carbonate 32.0 and 35.4 °C, sodium sulfate 32.4 °C (seen); citric acid 36.6 °C and
/// trisodium phosphate from memory. Substances without hydrates in the table give their dry form.
#[must_use]
pub fn stable_crystals(solute: Solute, temperature_k: f64) -> Option<Hydrate> {
    let celsius = temperature_k - ZERO_CELSIUS;
    let waters = match solute {
        Solute::SodiumCarbonate if celsius < 32.0 => 10,
        Solute::SodiumCarbonate if celsius < 35.4 => 7,
        Solute::SodiumCarbonate => 1,
        Solute::SodiumSulfate if celsius < 32.4 => 10,
        Solute::CitricAcid if celsius < 36.6 => 1,
        Solute::TrisodiumPhosphate if celsius < 55.0 => 12,
        Solute::CopperSulfate => 5,
        Solute::IronSulfate if celsius < 56.6 => 7,
        Solute::Borax if celsius < 60.0 => 10,
        Solute::SodiumAcetate if celsius < 58.0 => 3,
        _ => 0,
    };
    find(solute.formula(), waters)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hydrates_change_at_their_transitions() {
        let waters = |solute, celsius: f64| stable_crystals(solute, celsius + ZERO_CELSIUS).map(|h| h.waters);
        assert_eq!(waters(Solute::SodiumCarbonate, 20.0), Some(10.0));
        assert_eq!(waters(Solute::SodiumCarbonate, 34.0), Some(7.0));
        assert_eq!(waters(Solute::SodiumCarbonate, 60.0), Some(1.0));
        assert_eq!(waters(Solute::SodiumSulfate, 20.0), Some(10.0));
        assert_eq!(waters(Solute::SodiumSulfate, 40.0), Some(0.0));
        assert_eq!(waters(Solute::SodiumChloride, 40.0), None);
    }

    #[test]
    fn a_strong_soak_dissolves_warm_and_not_cold() {
        let content = 0.25;
        assert!(saturation(Solute::SodiumCarbonate, content, 283.15) > 1.5);
        assert!(saturation(Solute::SodiumCarbonate, content, 303.15) < 1.0);
        let t = dissolving_temperature(Solute::SodiumCarbonate, content).unwrap();
        assert!((293.15..298.15).contains(&t), "{t}");
        assert_eq!(dissolving_temperature(Solute::SodiumCarbonate, 0.6), None);
    }
}
