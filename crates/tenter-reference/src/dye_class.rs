//! Classes of dye: what they need and when they fix.

use crate::source::{Sourced, Stated};
use serde::Deserialize;

/// Families that fibres are judged by.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum DyeFamily {
    /// Binds covalently to cellulose in alkali.
    Reactive,
    /// Dyes protein fibres and nylon from an acid bath.
    Acid,
    /// Dyes cellulose from a salt bath without fixing.
    Direct,
    /// Insoluble; goes on reduced in alkali.
    Vat,
    /// Indigo, the best known vat dye.
    Indigo,
    /// Barely soluble; dyes polyester, acetate and nylon with heat.
    Disperse,
    /// Cationic; dyes acrylic.
    Basic,
    /// Plant or insect colour held by a mordant.
    Natural,
    /// Insoluble, stuck on with a binder.
    Pigment,
}

impl DyeFamily {
    /// All families.
    pub const ALL: [Self; 9] = [
        Self::Reactive,
        Self::Acid,
        Self::Direct,
        Self::Vat,
        Self::Indigo,
        Self::Disperse,
        Self::Basic,
        Self::Natural,
        Self::Pigment,
    ];

    /// The word shown to a dyer.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Reactive => "reactive",
            Self::Acid => "acid",
            Self::Direct => "direct",
            Self::Vat => "vat",
            Self::Indigo => "indigo",
            Self::Disperse => "disperse",
            Self::Basic => "basic",
            Self::Natural => "natural with mordant",
            Self::Pigment => "pigment",
        }
    }
}

/// What a class cannot do without.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Needs {
    /// Alkali to fix or dissolve.
    pub alkali: bool,
    /// Acid to go on.
    pub acid: bool,
    /// Salt to exhaust from a long bath (not when laid on directly).
    pub salt: bool,
    /// A reducing agent to dissolve.
    pub reducer: bool,
    /// A mordant to hold.
    pub mordant: bool,
}

/// How long a full batch takes at a stated temperature.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ReferenceBatch {
    /// Hours for a full batch.
    pub hours: Sourced,
    /// Temperature that goes with it, °C.
    pub at_celsius: f64,
}

/// One class of dye.
#[derive(Debug, Clone, PartialEq)]
pub struct DyeClass {
    /// Kebab-case id, such as `reactive-dichlorotriazine`.
    pub id: String,
    /// The name to show, such as `reactive dichlorotriazine`.
    pub name: String,
    /// Other names that mean exactly this.
    pub synonyms: Vec<String>,
    /// The family that fibres are judged by.
    pub family: DyeFamily,
    /// What it cannot do without, and where that is known from.
    pub needs: Stated<Needs>,
    /// Window of temperature in which it fixes, °C.
    pub fixation_celsius: Option<Sourced>,
    /// Length of a full batch at a reference temperature.
    pub reference_batch: Option<ReferenceBatch>,
    /// Window of pH in which it fixes.
    pub ph: Option<Sourced>,
    /// Whether it fixes at room temperature in a day or so.
    pub room_temperature: Option<Stated<bool>>,
    /// Share of the dye that ends up fixed, 0 to 1.
    pub fixation_yield: Option<Sourced>,
    /// Anything else worth knowing.
    pub note: Option<String>,
}
