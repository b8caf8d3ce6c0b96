//! The dissolved species the model knows, as positions in one flat array:
//! cations first, then anions, then neutral molecules.

/// Number of cations.
pub const CATIONS: usize = 7;
/// Number of anions.
pub const ANIONS: usize = 17;
/// Number of neutral molecules.
pub const NEUTRALS: usize = 9;
/// Number of ions.
pub const IONS: usize = CATIONS + ANIONS;
/// Number of species in all.
pub const SPECIES: usize = IONS + NEUTRALS;

/// Sodium ion.
pub const NA: usize = 0;
/// Potassium ion.
pub const K: usize = 1;
/// Calcium ion.
pub const CA: usize = 2;
/// Magnesium ion.
pub const MG: usize = 3;
/// Hydrogen ion.
pub const H: usize = 4;
/// Ammonium ion.
pub const NH4: usize = 5;
/// Magnesium hydroxide ion, MgOH⁺.
pub const MGOH: usize = 6;

/// Hydroxide.
pub const OH: usize = 7;
/// Bicarbonate.
pub const HCO3: usize = 8;
/// Carbonate.
pub const CO3: usize = 9;
/// Acetate.
pub const ACETATE: usize = 10;
/// Dihydrogen citrate.
pub const H2CIT: usize = 11;
/// Hydrogen citrate.
pub const HCIT: usize = 12;
/// Citrate.
pub const CIT: usize = 13;
/// Dihydrogen phosphate.
pub const H2PO4: usize = 14;
/// Hydrogen phosphate.
pub const HPO4: usize = 15;
/// Phosphate.
pub const PO4: usize = 16;
/// Hydrogen sulfite.
pub const HSO3: usize = 17;
/// Sulfite.
pub const SO3: usize = 18;
/// Chloride.
pub const CL: usize = 19;
/// Sulfate.
pub const SO4: usize = 20;
/// Hydrogen sulfate.
pub const HSO4: usize = 21;
/// Trihydrogen silicate.
pub const H3SIO4: usize = 22;
/// Dihydrogen silicate.
pub const H2SIO4: usize = 23;

/// Dissolved carbon dioxide, with carbonic acid.
pub const CO2: usize = 24;
/// Acetic acid.
pub const ACETIC: usize = 25;
/// Citric acid.
pub const H3CIT: usize = 26;
/// Phosphoric acid.
pub const H3PO4: usize = 27;
/// Ammonia.
pub const NH3: usize = 28;
/// Dissolved sulfur dioxide, with sulfurous acid.
pub const SO2: usize = 29;
/// Silicic acid.
pub const H4SIO4: usize = 30;
/// Calcium carbonate pair.
pub const CACO3: usize = 31;
/// Magnesium carbonate pair.
pub const MGCO3: usize = 32;

/// Charge of each species.
pub const CHARGE: [f64; SPECIES] = [
    1.0, 1.0, 2.0, 2.0, 1.0, 1.0, 1.0, // cations
    -1.0, -1.0, -2.0, -1.0, -1.0, -2.0, -3.0, -1.0, -2.0, -3.0, -1.0, -2.0, -1.0, -2.0, -1.0, -1.0,
    -2.0, // anions
    0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, // neutrals
];
