//! What a mole of each substance brings to the totals.

use super::totals::Totals;

/// A substance that takes part in acid–base balance or adds to the ionic strength.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Substance {
    /// Formula of the anhydrous substance.
    pub formula: &'static str,
    /// Molar mass, kg/mol (standard atomic weights, IUPAC 2021).
    pub molar_mass: f64,
    /// Totals of one mole in a kilogram of water.
    pub per_mole: Totals,
}

impl Substance {
    /// Totals of a mass (kg) of the anhydrous substance in a mass (kg) of water; all zero without
    /// water.
    #[must_use]
    pub fn totals(&self, mass: f64, water_mass: f64) -> Totals {
        if water_mass > 0.0 { self.per_mole.scaled(mass / self.molar_mass / water_mass) } else { Totals::default() }
    }
}

const NONE: Totals = Totals {
    sodium: 0.0,
    potassium: 0.0,
    calcium: 0.0,
    magnesium: 0.0,
    carbonate: 0.0,
    acetate: 0.0,
    citrate: 0.0,
    phosphate: 0.0,
    ammonia: 0.0,
    sulfite: 0.0,
    chloride: 0.0,
    sulfate: 0.0,
    silicate: 0.0,
};

const fn of(formula: &'static str, molar_mass: f64, per_mole: Totals) -> Substance {
    Substance { formula, molar_mass, per_mole }
}

/// The substances, by formula.
pub const SUBSTANCES: &[Substance] = &[
    of("Na2CO3", 0.105_988, Totals { sodium: 2.0, carbonate: 1.0, ..NONE }),
    of("NaHCO3", 0.084_006, Totals { sodium: 1.0, carbonate: 1.0, ..NONE }),
    of("NaOH", 0.039_997, Totals { sodium: 1.0, ..NONE }),
    of("KOH", 0.056_105, Totals { potassium: 1.0, ..NONE }),
    of("K2CO3", 0.138_205, Totals { potassium: 2.0, carbonate: 1.0, ..NONE }),
    of("KHCO3", 0.100_115, Totals { potassium: 1.0, carbonate: 1.0, ..NONE }),
    of("NaCl", 0.058_443, Totals { sodium: 1.0, chloride: 1.0, ..NONE }),
    of("KCl", 0.074_551, Totals { potassium: 1.0, chloride: 1.0, ..NONE }),
    of("Na2SO4", 0.142_04, Totals { sodium: 2.0, sulfate: 1.0, ..NONE }),
    of("K2SO4", 0.174_259, Totals { potassium: 2.0, sulfate: 1.0, ..NONE }),
    of("NaHSO4", 0.120_06, Totals { sodium: 1.0, sulfate: 1.0, ..NONE }),
    of("H2SO4", 0.098_078, Totals { sulfate: 1.0, ..NONE }),
    of("HCl", 0.036_461, Totals { chloride: 1.0, ..NONE }),
    of("Na3PO4", 0.163_94, Totals { sodium: 3.0, phosphate: 1.0, ..NONE }),
    of("Na2HPO4", 0.141_958, Totals { sodium: 2.0, phosphate: 1.0, ..NONE }),
    of("NaH2PO4", 0.119_977, Totals { sodium: 1.0, phosphate: 1.0, ..NONE }),
    of("KH2PO4", 0.136_085, Totals { potassium: 1.0, phosphate: 1.0, ..NONE }),
    of("H3PO4", 0.097_994, Totals { phosphate: 1.0, ..NONE }),
    of("C2H4O2", 0.060_052, Totals { acetate: 1.0, ..NONE }),
    of("NaC2H3O2", 0.082_034, Totals { sodium: 1.0, acetate: 1.0, ..NONE }),
    of("C6H8O7", 0.192_123, Totals { citrate: 1.0, ..NONE }),
    of("Na3C6H5O7", 0.258_07, Totals { sodium: 3.0, citrate: 1.0, ..NONE }),
    of("NH3", 0.017_031, Totals { ammonia: 1.0, ..NONE }),
    of("NH4Cl", 0.053_49, Totals { ammonia: 1.0, chloride: 1.0, ..NONE }),
    of("(NH4)2SO4", 0.132_14, Totals { ammonia: 2.0, sulfate: 1.0, ..NONE }),
    of("NH4HCO3", 0.079_056, Totals { ammonia: 1.0, carbonate: 1.0, ..NONE }),
    of("NH4C2H3O2", 0.077_083, Totals { ammonia: 1.0, acetate: 1.0, ..NONE }),
    of("Na2SO3", 0.126_04, Totals { sodium: 2.0, sulfite: 1.0, ..NONE }),
    of("NaHSO3", 0.104_06, Totals { sodium: 1.0, sulfite: 1.0, ..NONE }),
    // Takes up a molecule of water and becomes two of hydrogen sulfite.
    of("Na2S2O5", 0.190_1, Totals { sodium: 2.0, sulfite: 2.0, ..NONE }),
    of("Na2SiO3", 0.122_06, Totals { sodium: 2.0, silicate: 1.0, ..NONE }),
    of("CaCl2", 0.110_98, Totals { calcium: 1.0, chloride: 2.0, ..NONE }),
    of("CaSO4", 0.136_14, Totals { calcium: 1.0, sulfate: 1.0, ..NONE }),
    of("Ca(OH)2", 0.074_092, Totals { calcium: 1.0, ..NONE }),
    of("Ca(HCO3)2", 0.162_11, Totals { calcium: 1.0, carbonate: 2.0, ..NONE }),
    of("MgCl2", 0.095_21, Totals { magnesium: 1.0, chloride: 2.0, ..NONE }),
    of("MgSO4", 0.120_37, Totals { magnesium: 1.0, sulfate: 1.0, ..NONE }),
    of("CO2", 0.044_009, Totals { carbonate: 1.0, ..NONE }),
];

/// The substance with this formula.
#[must_use]
pub fn substance(formula: &str) -> Option<&'static Substance> {
    SUBSTANCES.iter().find(|s| s.formula == formula)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::equilibrium::solve;

    /// 20 g/L of soda ash at 25 °C reads 11.47 by the reference model.
    #[test]
    fn soda_ash_by_mass() {
        let soda = substance("Na2CO3").unwrap();
        let s = solve(&soda.totals(0.020, 0.998_207), 298.15).unwrap();
        assert!((s.ph - 11.47).abs() < 0.01, "{}", s.ph);
    }

    #[test]
    fn vinegar_and_lye_make_acetate() {
        let acid = substance("C2H4O2").unwrap().per_mole;
        let lye = substance("NaOH").unwrap().per_mole;
        assert_eq!(acid.plus(&lye, 1.0), substance("NaC2H3O2").unwrap().per_mole);
        assert!(substance("XeF6").is_none());
    }
}
