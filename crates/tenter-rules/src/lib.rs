//! The rule book: what the recipe's own numbers say is wrong, in words a dyer likes to read.
//!
//! ```text
//! Sheet ──resolve──▶ Recipe ──rehearse──▶ Rehearsal ──check──▶ Findings
//! ```
//!
//! One file a rule in `rules/`, beside the page that explains it. A rule reads what earlier stages worked out and
//! compares; it works out no chemistry. It stays quiet where its inputs are unknown, for another finding tells that
//! already.
//!
//! # How to add a rule
//! 1. `src/rules/my_rule.rs` with a `pub(crate) const RULE: Rule` and its `check`, and `src/rules/my_rule.md` beside it.
//! 2. Name both in `src/rules.rs`, in order of the alphabet.
//! 3. The page's `## Bad` recipe must fire exactly that rule, its `## Good` recipe none: `cargo test -p tenter-rules`.
//! 4. `cargo run -p tenter-rules --example write_spec` writes the reference anew.

mod acceptance;
mod bench;
mod consequences;
mod context;
mod dips;
mod document;
mod finding;
mod levels;
mod page;
mod problems;
mod registry;
mod rule;
mod rules;
mod say;
mod sheet;
mod spec;

pub use context::Context;
pub use document::{Checked, Part, Told, check_document, gather};
pub use finding::{Edit, Finding, Fix, Level, Note};
pub use levels::{Levels, Refused, Verdict};
pub use page::{HEADINGS, Page, PageError};
pub use problems::rule_of;
pub use registry::{RULES, rule};
pub use rule::{Group, Rule};
pub use sheet::{SheetFindings, check, check_sheet};
pub use spec::reference_chapter;
pub use tenter_quantity::Place;
pub use tenter_resolve::Scale;
