//! Fibres: what they weigh when damp with air, how they warm up, what dyes them.

use crate::dye_class::DyeFamily;
use crate::source::{Source, Sourced};
use serde::Deserialize;
use std::collections::BTreeMap;

/// What a fibre is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum FibreFamily {
    /// Plant fibre or regenerated cellulose.
    Cellulose,
    /// Wool, silk, hair.
    Protein,
    /// Cellulose that has been made into an ester.
    CelluloseEster,
    /// Made from oil.
    Synthetic,
}

/// How well a dye family takes on a fibre.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Uptake {
    /// Dyes properly.
    Yes,
    /// Tints, dyes pale, needs another method, or washes out.
    Weak,
    /// Stays undyed.
    No,
}

/// How a dye family takes on a fibre, and how we know.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Dyeability {
    /// How well it takes.
    pub uptake: Uptake,
    /// A condition or warning.
    pub note: Option<String>,
    /// Where it comes from.
    pub source: &'static Source,
}

/// Commercial moisture allowance: water counted in the trade weight, % of the oven-dry mass.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MoistureAllowance {
    /// Regulation (EU) No 1007/2011, Annex IX.
    pub eu_percent: Option<Sourced>,
    /// ASTM D1909.
    pub astm_percent: Option<Sourced>,
}

/// One fibre.
#[derive(Debug, Clone, PartialEq)]
pub struct Fibre {
    /// Kebab-case id.
    pub id: String,
    /// The name to show.
    pub name: String,
    /// Other names that mean exactly this.
    pub synonyms: Vec<String>,
    /// What it is made of.
    pub family: FibreFamily,
    /// Commercial moisture allowance.
    pub moisture_allowance: MoistureAllowance,
    /// Specific heat capacity of the dry fibre, J/(kg·K).
    pub specific_heat_j_per_kg_k: Option<Sourced>,
    /// How each dye family takes on it; every family is present.
    pub dyeability: BTreeMap<DyeFamily, Dyeability>,
    /// Anything else worth knowing.
    pub note: Option<String>,
}

impl Fibre {
    /// How a dye family takes on this fibre.
    pub fn takes(&self, family: DyeFamily) -> Option<&Dyeability> {
        self.dyeability.get(&family)
    }
}
