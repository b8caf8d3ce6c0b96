//! Materials other than dyes: water, alkalis, salts, acids, auxiliaries, mordants.

use crate::chemistry::Ions;
use crate::hazard::HazardClaim;
use crate::source::{Sourced, Stated};
use serde::Deserialize;

/// What a material is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Role {
    /// Liquid water.
    Water,
    /// Frozen water.
    Ice,
    /// Raises pH.
    Alkali,
    /// Lowers pH.
    Acid,
    /// Drives dye on to the fibre.
    Salt,
    /// Keeps the cloth wet and helps dye dissolve.
    Humectant,
    /// Makes a paste.
    Thickener,
    /// Takes up hardness and metals.
    Sequestrant,
    /// Helps liquor into cloth.
    WettingAgent,
    /// Washes out unfixed dye.
    Detergent,
    /// Softens the finished cloth.
    Softener,
    /// Reduces (strips, makes vat dyes soluble).
    Reducer,
    /// Oxidises (bleaches, develops vat dyes).
    Oxidiser,
    /// Ties natural dye to the fibre.
    Mordant,
    /// Holds pH.
    Buffer,
    /// A colouring matter.
    Dye,
    /// Anything else.
    Other,
}

/// What a material looks like as bought.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Form {
    /// Fine dry powder.
    Powder,
    /// Crystals or granules.
    Crystals,
    /// Small beads.
    Prills,
    /// Flakes.
    Flakes,
    /// A pure liquid, or a liquid product of no stated strength.
    Liquid,
    /// A substance dissolved in water, of a stated strength.
    Solution,
}

impl Form {
    /// Whether it is measured dry, so that a spoon of it is a heap with air in it.
    pub const fn is_dry(self) -> bool {
        matches!(self, Self::Powder | Self::Crystals | Self::Prills | Self::Flakes)
    }
}

/// How the strength of a solution is counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum StrengthBasis {
    /// Kilograms of substance in a kilogram of solution (w/w).
    MassPerMass,
    /// Kilograms of substance in a litre of solution (w/v): 0.05 is 5 g in 100 mL.
    MassPerVolume,
}

/// Usual strength of a solution when the recipe does not say.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Strength {
    /// Fraction, so 0.05 for 5 %.
    pub fraction: Sourced,
    /// What the fraction is of.
    pub basis: StrengthBasis,
}

/// The substance a hydrate or a grade counts as, and how much of it there is.
#[derive(Debug, Clone, PartialEq)]
pub struct Anhydrous {
    /// Id of the anhydrous material.
    pub id: String,
    /// Kilograms of the anhydrous substance in a kilogram of this one, from the two molar masses.
    pub fraction: f64,
}

/// One material. An absent field means nobody has found it, not that it is nought.
#[derive(Debug, Clone, PartialEq)]
pub struct Material {
    /// Kebab-case id, unique among all entries.
    pub id: String,
    /// The name to show.
    pub name: String,
    /// Other names that mean exactly this.
    pub synonyms: Vec<String>,
    /// What it is for.
    pub role: Role,
    /// What it looks like.
    pub form: Form,
    /// CAS registry number.
    pub cas: Option<Stated<String>>,
    /// Formula, hydrates as `Na2CO3·10H2O`; of the substance dissolved for a solution.
    pub formula: Option<String>,
    /// Molar mass of `formula`, g/mol.
    pub molar_mass_g_per_mol: Option<Sourced>,
    /// What a hydrate or a grade counts as: washing soda as soda ash, ice as water.
    pub anhydrous: Option<Anhydrous>,
    /// Id of the pure substance dissolved in a solution, where that is an entry too.
    pub solute: Option<String>,
    /// Bulk density of a dry material (poured to packed), true density of a liquid, kg/m³.
    pub density_kg_per_m3: Option<Sourced>,
    /// Usual strength of a solution.
    pub strength: Option<Strength>,
    /// Formula by which the chemistry crate knows the solubility of its anhydrous substance.
    pub solubility: Option<String>,
    /// Acid taken up by one mole down to about pH 4.5, mol: 2 for a carbonate, 1 for a hydrogen carbonate or hydroxide.
    pub alkali_equivalents_per_mol: Option<Sourced>,
    /// Acid taken up by one mole while the pH still stays above about 10, mol: 1 for a carbonate or hydroxide, 0 for a
    /// hydrogen carbonate. This is the alkali a reactive dye can use on the cold cloth.
    pub fixation_alkali_per_mol: Option<Sourced>,
    /// Alkali taken up by one mole up to about pH 9, mol: 1 for acetic acid, 3 for citric acid.
    pub acid_equivalents_per_mol: Option<Sourced>,
    /// What one mole brings into solution. Absent where the equilibrium model has no such components.
    pub ions: Option<Ions>,
    /// Hazard statements.
    pub hazards: Vec<HazardClaim>,
    /// Whether handling it dry raises dust that harms.
    pub dust: bool,
    /// Groups of the never-mix table it belongs to.
    pub hazard_groups: Vec<String>,
    /// Plain sentences to show a dyer.
    pub cautions: Vec<String>,
    /// Whether tools that touched it must never go back to food.
    pub never_for_food: bool,
    /// Anything else worth knowing.
    pub note: Option<String>,
}
