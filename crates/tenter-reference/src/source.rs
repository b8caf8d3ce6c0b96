//! Where a figure comes from, and a figure that carries it.

use serde::Deserialize;

/// How far a source can be trusted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
pub enum SourceKind {
    /// Read in the named publication or library.
    #[serde(rename = "published")]
    Published,
    /// Worked out from other figures here by a stated rule.
    #[serde(rename = "computed")]
    Computed,
    /// A fact of the trade that nobody has published in a form we could read.
    #[serde(rename = "common practice, no source")]
    CommonPractice,
    /// Remembered by whoever wrote the data; nobody has checked it.
    #[serde(rename = "from memory")]
    FromMemory,
}

impl SourceKind {
    /// The words shown to a dyer.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Published => "published",
            Self::Computed => "computed",
            Self::CommonPractice => "common practice, no source",
            Self::FromMemory => "from memory",
        }
    }
}

/// One source: a publication, a rule of the trade, or somebody's memory.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Source {
    /// The id that figures refer to.
    pub id: String,
    /// How far it can be trusted.
    pub kind: SourceKind,
    /// What to look up, or what the remembered value is thought to come from.
    pub citation: String,
}

/// A figure with its spread and its source. The unit is in the name of the field that holds it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sourced {
    /// Lowest value worth reckoning with.
    pub low: f64,
    /// Best single value.
    pub best: f64,
    /// Highest value worth reckoning with.
    pub high: f64,
    /// Where it comes from.
    pub source: &'static Source,
}

/// A word or number (a CAS number, a formula) with its source.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stated<T> {
    /// What is stated.
    pub value: T,
    /// Where it comes from.
    pub source: &'static Source,
}
