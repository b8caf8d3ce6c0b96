//! Hazard statements, and pairs that must never meet.

use crate::source::Source;
use serde::Deserialize;

/// A hazard or supplemental statement with its official wording.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HazardStatement {
    /// Code, such as `H319` or `EUH031`.
    pub code: String,
    /// Official wording.
    pub text: String,
    /// Where the wording comes from.
    pub source: &'static Source,
}

/// A statement that applies to a material.
#[derive(Debug, Clone, PartialEq)]
pub struct HazardClaim {
    /// Code of the statement.
    pub code: String,
    /// Mass fraction in percent from which it applies, if it is limited to strong solutions.
    pub at_least_percent: Option<f64>,
    /// Mass fraction in percent below which it applies, if a heavier statement takes over there.
    pub below_percent: Option<f64>,
    /// Anything else about when it applies.
    pub note: Option<String>,
    /// Where the classification comes from.
    pub source: &'static Source,
}

/// What a group of the never-mix table is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum GroupKind {
    /// Materials that carry the group among their `hazard_groups`.
    Material,
    /// Vessels or tools of a stuff or kind; a recipe names them.
    Vessel,
    /// A circumstance that only the dyer can see.
    Circumstance,
}

/// A group of the never-mix table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Group {
    /// Kebab-case id.
    pub id: String,
    /// Words to show a dyer.
    pub name: String,
    /// What belongs to it.
    pub kind: GroupKind,
    /// For a vessel group, the stuffs its vessels are made of.
    pub words: Vec<String>,
}

/// How bad it is when a pair meets.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Severity {
    /// Spoils the work or surprises.
    Note,
    /// Heat, spatter, pressure: can hurt.
    Warning,
    /// Poisonous gas, fire or explosion.
    Danger,
}

/// Where a pair can meet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Place {
    /// In one mix.
    Mix,
    /// In one step or bath.
    Step,
    /// On the cloth, one carried into the other without a rinse.
    Cloth,
    /// Between a liquor and what it stands in.
    Vessel,
    /// In storage or handling, before any recipe step.
    Store,
}

/// Two groups that must never meet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NeverMix {
    /// One group.
    pub a: String,
    /// The other group.
    pub b: String,
    /// What happens, in a plain sentence.
    pub what_happens: String,
    /// What to do instead.
    pub instead: String,
    /// How bad it is.
    pub severity: Severity,
    /// Where they can meet.
    pub places: Vec<Place>,
    /// Where it comes from.
    pub source: &'static Source,
}
