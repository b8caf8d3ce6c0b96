//! Dyes by Colour Index generic name.

use crate::hazard::HazardClaim;
use crate::source::{Sourced, Stated};

/// One dye. Powders as sold hold salt, buffer and dust suppressant, so the molar mass says nothing about strength.
#[derive(Debug, Clone, PartialEq)]
pub struct Dye {
    /// Kebab-case id, such as `reactive-blue-4`.
    pub id: String,
    /// Colour Index generic name, such as `C.I. Reactive Blue 4`.
    pub name: String,
    /// Other names that mean exactly this.
    pub synonyms: Vec<String>,
    /// Id of its dye class, and where that is known from.
    pub class: Stated<String>,
    /// CAS registry number.
    pub cas: Option<Stated<String>>,
    /// Formula of the form named by the CAS number.
    pub formula: Option<Stated<String>>,
    /// Molar mass of `formula`, g/mol.
    pub molar_mass_g_per_mol: Option<Sourced>,
    /// Reactive groups in a molecule.
    pub reactive_groups: Option<Stated<u32>>,
    /// Bulk density of the powder, kg/m³. One wide default unless the entry has its own.
    pub density_kg_per_m3: Sourced,
    /// Whether it is a turquoise, which is large, slow and wants warmth; absent if not known.
    pub turquoise: Option<Stated<bool>>,
    /// Whether it is a black; absent if not known.
    pub black: Option<Stated<bool>>,
    /// Hazard statements of the powder.
    pub hazards: Vec<HazardClaim>,
    /// Whether handling the powder raises dust that harms.
    pub dust: bool,
    /// Groups of the never-mix table the powder belongs to.
    pub hazard_groups: Vec<String>,
    /// Plain sentences to show a dyer.
    pub cautions: Vec<String>,
    /// Anything else worth knowing.
    pub note: Option<String>,
}
