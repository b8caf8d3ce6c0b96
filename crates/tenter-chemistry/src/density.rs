//! Density of solutions.
//!
//! Laliberté & Cooper 2004, J. Chem. Eng. Data 49:1141, with the coefficients of Laliberté 2009,
//! J. Chem. Eng. Data 54:1725, as carried by the PyPI package chemicals 1.5.2: the volumes of water
//! and of each solute add, and a kilogram of solute takes
//! `v = (w + c2 + c3·t)/((c0·w + c1)·exp(10⁻⁶·(t + c4)²))` m³, with `w` the mass share of all
//! solutes and `t` in °C. The fit is good to about 0.2 % in the density inside its range.

use crate::water;

/// A solute with a known volume.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum DensitySolute {
    /// Sodium carbonate, to 21 % by mass.
    SodiumCarbonate,
    /// Sodium bicarbonate, to 12 %.
    SodiumBicarbonate,
    /// Sodium chloride, to 26 %.
    SodiumChloride,
    /// Sodium sulfate, to 32 %.
    SodiumSulfate,
    /// Sodium hydroxide, to 50 %.
    SodiumHydroxide,
    /// Trisodium phosphate, to 30 %.
    TrisodiumPhosphate,
    /// Potassium carbonate, to 36 %.
    PotassiumCarbonate,
    /// Potassium chloride, to 26 %.
    PotassiumChloride,
    /// Ammonium chloride, to 40 %.
    AmmoniumChloride,
    /// Ammonium sulfate, to 43 %.
    AmmoniumSulfate,
    /// Copper(II) sulfate, to 28 %.
    CopperSulfate,
    /// Calcium chloride, to 51 %.
    CalciumChloride,
    /// Acetic acid.
    AceticAcid,
    /// Sodium acetate.
    SodiumAcetate,
    /// Urea: 0.735 L/kg in water, from memory.
    Urea,
    /// Citric acid: 0.61 L/kg in water, from memory.
    CitricAcid,
    /// Anything else that dissolves: 0.5 L/kg, an estimate; 0.2 to 0.8 L/kg covers the bench.
    Other,
}

enum Volume {
    Fit([f64; 5]),
    /// m³/kg: low, best, high.
    Constant(f64, f64, f64),
}

impl DensitySolute {
    /// The solute with this formula (of the anhydrous substance); what has no volume of its own here is
    /// [`DensitySolute::Other`].
    #[must_use]
    pub fn from_formula(formula: &str) -> Self {
        match formula {
            "Na2CO3" => Self::SodiumCarbonate,
            "NaHCO3" => Self::SodiumBicarbonate,
            "NaCl" => Self::SodiumChloride,
            "Na2SO4" => Self::SodiumSulfate,
            "NaOH" => Self::SodiumHydroxide,
            "Na3PO4" => Self::TrisodiumPhosphate,
            "K2CO3" => Self::PotassiumCarbonate,
            "KCl" => Self::PotassiumChloride,
            "NH4Cl" => Self::AmmoniumChloride,
            "(NH4)2SO4" => Self::AmmoniumSulfate,
            "CuSO4" => Self::CopperSulfate,
            "CaCl2" => Self::CalciumChloride,
            "C2H4O2" => Self::AceticAcid,
            "NaC2H3O2" => Self::SodiumAcetate,
            "CH4N2O" => Self::Urea,
            "C6H8O7" => Self::CitricAcid,
            _ => Self::Other,
        }
    }

    /// Room a kilogram takes in solution, m³: low, best, high, for the mass share `w` of all solutes and a
    /// temperature in K.
    #[must_use]
    pub fn specific_volume(self, w: f64, temperature_k: f64) -> (f64, f64, f64) {
        // The fits end near half solute; beyond, the share is held.
        let w = w.clamp(0.0, 0.5);
        let t = (temperature_k - water::ZERO_CELSIUS).clamp(0.0, 100.0);
        match self.volume() {
            Volume::Fit(c) => {
                let spread = t + c[4];
                let v = (w + c[2] + c[3] * t) / ((c[0] * w + c[1]) * libm::exp(1e-6 * spread * spread));
                // 0.2 % of the density at ordinary strengths.
                let v = v.clamp(0.0, 2e-3);
                ((v - 0.01e-3).max(0.0), v, v + 0.01e-3)
            }
            Volume::Constant(low, best, high) => (low, best, high),
        }
    }

    fn volume(self) -> Volume {
        use Volume::{Constant, Fit};
        match self {
            Self::SodiumCarbonate => Fit([
                0.000000545486543455015,
                0.000000172154929405038,
                -0.0825850207323492,
                0.00168822949783412,
                4705.39822185746,
            ]),
            Self::SodiumBicarbonate => Fit([
                0.0377378060615898,
                0.00710029652458366,
                0.0735733388535116,
                0.00168369765511221,
                3291.38382252025,
            ]),
            Self::SodiumChloride => {
                Fit([-0.00324112223655149, 0.0636354335906616, 1.01371399467365, 0.0145951015210159, 3317.34854426537])
            }
            Self::SodiumSulfate => Fit([
                0.00000445025449497252,
                0.00000912086519621226,
                0.0840358370073922,
                0.00465767525381795,
                4349.50513887423,
            ]),
            Self::SodiumHydroxide => {
                Fit([319.020509469838, 528.592358475315, -0.102197896602724, 0.000350420706415566, 765.970470238438])
            }
            Self::TrisodiumPhosphate => {
                Fit([155.804085307097, 251.218167358366, -0.163160740820224, 0.000301220796704921, 1298.06956536295])
            }
            Self::PotassiumCarbonate => {
                Fit([2290.10867876218, 1038.77363895405, 0.109769327294915, 0.000497783340935823, -74.0786862142127])
            }
            Self::PotassiumChloride => {
                Fit([-0.855928945959145, 6.04073571306402, 2.81787416217166, 0.0253924645877338, 2681.61723465886])
            }
            Self::AmmoniumChloride => {
                Fit([16.8882196383907, 318.560293047784, 5.08655606958672, -0.0150616503055142, -1769.12237165588])
            }
            Self::AmmoniumSulfate => {
                Fit([618.24075073611, 966.128116121243, 0.602706202526747, 0.0016279026793269, 667.573420648081])
            }
            Self::CopperSulfate => Fit([
                -0.00000112078294150285,
                0.000000606850590612117,
                -0.118863232463814,
                0.00378050075860551,
                4763.96073964247,
            ]),
            Self::CalciumChloride => {
                Fit([-9.72893747074295, 14.7005352975276, 4.19033341468332, 0.0397403624277021, 2708.12778894614])
            }
            Self::AceticAcid => {
                Fit([647.289243971958, -1054.58226029586, -1.74610768626879, 0.000365566432763641, -822.999507010544])
            }
            Self::SodiumAcetate => {
                Fit([1732.57047592873, 83.5413523305266, 0.0400429680170604, 0.0000471569682646929, -274.927412526629])
            }
            Self::Urea => Constant(0.72e-3, 0.735e-3, 0.76e-3),
            Self::CitricAcid => Constant(0.59e-3, 0.61e-3, 0.64e-3),
            Self::Other => Constant(0.2e-3, 0.5e-3, 0.8e-3),
        }
    }
}

/// One solute of a solution.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Part {
    /// What it is (the anhydrous substance).
    pub solute: DensitySolute,
    /// Mass, kg.
    pub mass: f64,
}

/// Volume of a solution, m³: low, best, high, for kilograms of water and of each solute at a
/// temperature in K.
#[must_use]
pub fn volume_range(water_mass: f64, parts: &[Part], temperature_k: f64) -> (f64, f64, f64) {
    let water_mass = water_mass.max(0.0);
    let solutes: f64 = parts.iter().map(|p| p.mass.max(0.0)).sum();
    let total = water_mass + solutes;
    let base = water_mass / water::density(temperature_k);
    let mut sum = (base, base, base);
    if total <= 0.0 {
        return sum;
    }
    for part in parts {
        let mass = part.mass.max(0.0);
        let (low, best, high) = part.solute.specific_volume(solutes / total, temperature_k);
        sum.0 += mass * low;
        sum.1 += mass * best;
        sum.2 += mass * high;
    }
    sum
}

/// Density of a solution, kg/m³: low, best, high.
#[must_use]
pub fn density_range(water_mass: f64, parts: &[Part], temperature_k: f64) -> (f64, f64, f64) {
    let volume = volume_range(water_mass, parts, temperature_k);
    let mass = water_mass.max(0.0) + parts.iter().map(|p| p.mass.max(0.0)).sum::<f64>();
    if volume.1 <= 0.0 {
        let plain = water::density(temperature_k);
        return (plain, plain, plain);
    }
    (mass / volume.2, mass / volume.1, mass / volume.0.max(1e-12))
}

/// Density of a solution, kg/m³, best value.
#[must_use]
pub fn density(water_mass: f64, parts: &[Part], temperature_k: f64) -> f64 {
    density_range(water_mass, parts, temperature_k).1
}
