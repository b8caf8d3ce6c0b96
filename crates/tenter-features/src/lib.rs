//! What an editor asks of a recipe, answered without any protocol: plain byte positions in, plain answers out.
//!
//! ```text
//! Workspace ──snapshot──▶ Snapshot ──feature(path, offset)──▶ answer
//! ```
//!
//! A [`Workspace`] owns the texts, a [`Snapshot`] is a cheap picture of them that features read. A sheet whose blocks
//! did not change is never worked out again. Numbers and findings come from the same calls as the command line's.

pub mod actions;
mod analysis;
mod cursor;
mod file;
mod names;
mod outline;
mod state;
mod text;
mod workspace;

pub mod calls;
pub mod colours;
pub mod completion;
pub mod diagnostics;
pub mod folding;
pub mod formatting;
pub mod hints;
pub mod hover;
pub mod lenses;
pub mod links;
pub mod navigation;
pub mod rename;
pub mod renamed_files;
pub mod selection;
pub mod sheets;
pub mod signature;
pub mod symbols;
pub mod tokens;
pub mod types;

pub use analysis::FileAnalysis;
pub use file::File;
pub use names::SymbolKind;
pub use outline::Outline;
pub use text::{Edit, Location, Range, apply};
pub use workspace::{Snapshot, Workspace};
