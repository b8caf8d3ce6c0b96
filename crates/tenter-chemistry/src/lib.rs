//! Chemistry and physics of the dye bench, as plain functions in SI units (K, kg, mol/kg, s, J, Pa).
//!
//! Nothing here knows a recipe, a notation or an interval: callers evaluate at the corners of what
//! they know. Each figure and formula names its source; a figure of the trade is marked
//! `common practice, no source`, and one that was only remembered is marked `from memory`.

pub mod colour;
pub mod density;
pub mod equilibrium;
pub mod heat;
pub mod hydrate;
mod interpolate;
pub mod reaction;
pub mod soak;
pub mod solubility;
mod solubility_tables;
pub mod water;
