//! Reference data: what materials, dyes, dye classes and fibres are, and how we know.
//!
//! Everything lives in `data/*.toml`, plain text that a dyer can correct. The files are built into the program,
//! read once, and never change while it runs. Nothing here knows a recipe or does chemistry: it answers
//! "what is soda ash" and "where is that figure from".
//!
//! ```
//! use tenter_reference::{Entry, Reference};
//! let reference = Reference::bundled();
//! let Some(Entry::Material(soda)) = reference.find("Sodium Carbonate") else { panic!("soda ash is known") };
//! assert_eq!(soda.id, "soda-ash");
//! ```
//!
//! # How to add a material
//! 1. Add a `[[material]]` entry to `data/materials.toml`. Give it an `id` (kebab case), a `name`, a `role` and a `form`;
//!    every other field is optional: leave out what nobody has found rather than guess.
//! 2. Every figure is a small table with a `source`, which is an id of `data/sources.toml`. A fact of the trade takes
//!    `common-practice`, a value only remembered takes `memory`. Add a source if the figure comes from somewhere new.
//! 3. A plain chemical name means the anhydrous substance. A hydrate is an entry of its own with its own names and
//!    says `anhydrous = "the-id"`; the fraction is worked out from the two molar masses.
//! 4. For a solution (`form = "solution"`), `formula`, `molar_mass_g_per_mol`, `ions` and the equivalents belong to the
//!    substance dissolved, and `strength` says how much of it there is.
//! 5. `cargo test -p tenter-reference` says which file and entry is wrong if a name is taken, a source is missing, a
//!    molar mass does not follow from its formula, or the ions do not add up to it.
//!
//! Dyes, fibres and classes work the same way. Names are matched as [`fold`] describes.

mod chemistry;
mod convert;
mod dye;
mod dye_class;
mod fibre;
mod files;
mod fold;
mod formula;
mod hazard;
mod index;
mod load;
mod material;
mod names;
mod nearest;
mod raw;
mod reference;
mod source;

pub use chemistry::{ION_NAMES, Ions};
pub use dye::Dye;
pub use dye_class::{DyeClass, DyeFamily, Needs, ReferenceBatch};
pub use fibre::{Dyeability, Fibre, FibreFamily, MoistureAllowance, Uptake};
pub use files::Files;
pub use fold::{Folded, fold};
pub use formula::{ATOMIC_WEIGHTS, Formula, FormulaError};
pub use hazard::{Group, GroupKind, HazardClaim, HazardStatement, NeverMix, Place, Severity};
pub use load::LoadError;
pub use material::{Anhydrous, Form, Material, Role, Strength, StrengthBasis};
pub use names::{Entry, Kind};
pub use reference::Reference;
pub use source::{Source, SourceKind, Sourced, Stated};
