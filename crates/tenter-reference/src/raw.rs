//! The data files as they are written, before sources are looked up.

use crate::chemistry::Ions;
use crate::dye_class::DyeFamily;
use crate::fibre::{FibreFamily, Uptake};
use crate::hazard::{GroupKind, Place, Severity};
use crate::material::{Form, Role, StrengthBasis};
use crate::source::SourceKind;
use serde::Deserialize;
use std::collections::BTreeMap;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Source {
    pub(crate) id: String,
    pub(crate) kind: SourceKind,
    pub(crate) citation: String,
}

/// A figure: `{ value = 8.5, source = "…" }` or `{ low = 500, best = 600, high = 750, source = "…" }`.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Figure {
    pub(crate) value: Option<f64>,
    pub(crate) low: Option<f64>,
    pub(crate) best: Option<f64>,
    pub(crate) high: Option<f64>,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Stated<T> {
    pub(crate) value: T,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Statement {
    pub(crate) code: String,
    pub(crate) text: String,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Claim {
    pub(crate) code: String,
    pub(crate) at_least_percent: Option<f64>,
    pub(crate) below_percent: Option<f64>,
    pub(crate) note: Option<String>,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Group {
    pub(crate) id: String,
    pub(crate) name: String,
    pub(crate) kind: GroupKind,
    #[serde(default)]
    pub(crate) words: Vec<String>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Pair {
    pub(crate) a: String,
    pub(crate) b: String,
    pub(crate) what_happens: String,
    pub(crate) instead: String,
    pub(crate) severity: Severity,
    #[serde(rename = "where")]
    pub(crate) places: Vec<Place>,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Needs {
    #[serde(default)]
    pub(crate) alkali: bool,
    #[serde(default)]
    pub(crate) acid: bool,
    #[serde(default)]
    pub(crate) salt: bool,
    #[serde(default)]
    pub(crate) reducer: bool,
    #[serde(default)]
    pub(crate) mordant: bool,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Batch {
    pub(crate) hours: Figure,
    pub(crate) at_celsius: f64,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct DyeClass {
    pub(crate) id: String,
    pub(crate) name: String,
    #[serde(default)]
    pub(crate) synonyms: Vec<String>,
    pub(crate) family: DyeFamily,
    pub(crate) needs: Needs,
    pub(crate) fixation_celsius: Option<Figure>,
    pub(crate) reference_batch: Option<Batch>,
    pub(crate) ph: Option<Figure>,
    pub(crate) room_temperature: Option<Stated<bool>>,
    pub(crate) fixation_yield: Option<Figure>,
    pub(crate) note: Option<String>,
}

/// What every dye powder shares unless its entry says otherwise.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Powder {
    pub(crate) density_kg_per_m3: Figure,
    pub(crate) dust: bool,
    #[serde(default)]
    pub(crate) hazard_groups: Vec<String>,
    #[serde(default)]
    pub(crate) hazards: Vec<Claim>,
    #[serde(default)]
    pub(crate) cautions: Vec<String>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Dye {
    pub(crate) id: String,
    pub(crate) name: String,
    #[serde(default)]
    pub(crate) synonyms: Vec<String>,
    pub(crate) class: Stated<String>,
    pub(crate) cas: Option<Stated<String>>,
    pub(crate) formula: Option<Stated<String>>,
    pub(crate) molar_mass_g_per_mol: Option<Figure>,
    pub(crate) reactive_groups: Option<Stated<u32>>,
    pub(crate) density_kg_per_m3: Option<Figure>,
    pub(crate) turquoise: Option<Stated<bool>>,
    pub(crate) black: Option<Stated<bool>>,
    pub(crate) note: Option<String>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Dyeability {
    pub(crate) uptake: Uptake,
    pub(crate) note: Option<String>,
    pub(crate) source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Fibre {
    pub(crate) id: String,
    pub(crate) name: String,
    #[serde(default)]
    pub(crate) synonyms: Vec<String>,
    pub(crate) family: FibreFamily,
    pub(crate) moisture_eu_percent: Option<Figure>,
    pub(crate) moisture_astm_percent: Option<Figure>,
    pub(crate) specific_heat_j_per_kg_k: Option<Figure>,
    pub(crate) dyeability: BTreeMap<DyeFamily, Dyeability>,
    pub(crate) note: Option<String>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Strength {
    pub(crate) basis: StrengthBasis,
    pub(crate) fraction: Figure,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Material {
    pub(crate) id: String,
    pub(crate) name: String,
    #[serde(default)]
    pub(crate) synonyms: Vec<String>,
    pub(crate) role: Role,
    pub(crate) form: Form,
    pub(crate) cas: Option<Stated<String>>,
    pub(crate) formula: Option<String>,
    pub(crate) molar_mass_g_per_mol: Option<Figure>,
    pub(crate) anhydrous: Option<String>,
    pub(crate) solute: Option<String>,
    pub(crate) density_kg_per_m3: Option<Figure>,
    pub(crate) strength: Option<Strength>,
    pub(crate) solubility: Option<String>,
    pub(crate) alkali_equivalents_per_mol: Option<Figure>,
    pub(crate) fixation_alkali_per_mol: Option<Figure>,
    pub(crate) acid_equivalents_per_mol: Option<Figure>,
    pub(crate) ions: Option<Ions>,
    #[serde(default)]
    pub(crate) hazards: Vec<Claim>,
    #[serde(default)]
    pub(crate) dust: bool,
    #[serde(default)]
    pub(crate) hazard_groups: Vec<String>,
    #[serde(default)]
    pub(crate) cautions: Vec<String>,
    #[serde(default)]
    pub(crate) never_for_food: bool,
    pub(crate) note: Option<String>,
}
