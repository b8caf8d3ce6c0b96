//! Crystals that carry water: how much of the anhydrous substance a mass of them holds.

/// Molar mass of water, kg/mol (standard atomic weights, IUPAC 2021, as are all below).
pub const WATER_MOLAR_MASS: f64 = 0.018_015;

/// A crystal form of a substance.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hydrate {
    /// Formula of the anhydrous substance.
    pub formula: &'static str,
    /// Molecules of water for each formula.
    pub waters: f64,
    /// Molar mass of the anhydrous substance, kg/mol.
    pub anhydrous_molar_mass: f64,
}

impl Hydrate {
    /// Molar mass with its water, kg/mol.
    #[must_use]
    pub fn molar_mass(&self) -> f64 {
        self.anhydrous_molar_mass + self.waters * WATER_MOLAR_MASS
    }

    /// Share of the mass that is the anhydrous substance, 0–1.
    #[must_use]
    pub fn anhydrous_share(&self) -> f64 {
        self.anhydrous_molar_mass / self.molar_mass()
    }

    /// Anhydrous substance in a mass of crystals, kg.
    #[must_use]
    pub fn anhydrous_mass(&self, crystals_kg: f64) -> f64 {
        crystals_kg * self.anhydrous_share()
    }

    /// Mass of crystals that holds a mass of the anhydrous substance, kg.
    #[must_use]
    pub fn crystal_mass(&self, anhydrous_kg: f64) -> f64 {
        anhydrous_kg / self.anhydrous_share()
    }
}

const fn hydrate(formula: &'static str, waters: f64, anhydrous_molar_mass: f64) -> Hydrate {
    Hydrate { formula, waters, anhydrous_molar_mass }
}

/// The crystal forms met at the bench.
pub const HYDRATES: &[Hydrate] = &[
    hydrate("Na2CO3", 0.0, 0.105_988),
    hydrate("Na2CO3", 1.0, 0.105_988),
    hydrate("Na2CO3", 7.0, 0.105_988),
    hydrate("Na2CO3", 10.0, 0.105_988),
    hydrate("Na2SO4", 0.0, 0.142_04),
    hydrate("Na2SO4", 10.0, 0.142_04),
    hydrate("Na3PO4", 0.0, 0.163_94),
    hydrate("Na3PO4", 12.0, 0.163_94),
    hydrate("C6H8O7", 0.0, 0.192_123),
    hydrate("C6H8O7", 1.0, 0.192_123),
    hydrate("Na3C6H5O7", 0.0, 0.258_07),
    hydrate("Na3C6H5O7", 2.0, 0.258_07),
    hydrate("NaC2H3O2", 0.0, 0.082_034),
    hydrate("NaC2H3O2", 3.0, 0.082_034),
    hydrate("Na2B4O7", 0.0, 0.201_22),
    hydrate("Na2B4O7", 10.0, 0.201_22),
    hydrate("CuSO4", 0.0, 0.159_61),
    hydrate("CuSO4", 5.0, 0.159_61),
    hydrate("FeSO4", 0.0, 0.151_91),
    hydrate("FeSO4", 7.0, 0.151_91),
    hydrate("MgSO4", 0.0, 0.120_37),
    hydrate("MgSO4", 7.0, 0.120_37),
    hydrate("CaCl2", 0.0, 0.110_98),
    hydrate("CaCl2", 2.0, 0.110_98),
    hydrate("KAl(SO4)2", 0.0, 0.258_21),
    hydrate("KAl(SO4)2", 12.0, 0.258_21),
    hydrate("Na2SiO3", 0.0, 0.122_06),
    hydrate("Na2SiO3", 5.0, 0.122_06),
];

/// The crystal form with this formula and this many molecules of water.
#[must_use]
pub fn find(formula: &str, waters: u32) -> Option<Hydrate> {
    HYDRATES.iter().find(|h| h.formula == formula && h.waters == f64::from(waters)).copied()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Molar masses of the CRC Handbook, 98th ed., g/mol (from memory).
    #[test]
    fn molar_masses_of_the_crystals() {
        for (formula, waters, grams) in [
            ("Na2CO3", 10, 286.14),
            ("Na2CO3", 1, 124.00),
            ("Na2SO4", 10, 322.19),
            ("CuSO4", 5, 249.69),
            ("FeSO4", 7, 278.01),
            ("C6H8O7", 1, 210.14),
            ("Na2B4O7", 10, 381.37),
            ("Na3PO4", 12, 380.12),
        ] {
            let h = find(formula, waters).unwrap();
            assert!((h.molar_mass() * 1000.0 - grams).abs() < 0.03, "{formula}·{waters}");
        }
        let washing_soda = find("Na2CO3", 10).unwrap();
        assert!((washing_soda.anhydrous_share() - 0.3704).abs() < 1e-4);
        assert!((washing_soda.crystal_mass(washing_soda.anhydrous_mass(0.1)) - 0.1).abs() < 1e-12);
    }
}
