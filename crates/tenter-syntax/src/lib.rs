//! Reads the notation: a text becomes a [`Document`] of blocks and lines that keeps every byte and cannot fail.
//!
//! ```text
//! text ──split──▶ blocks ──prepare──▶ one line a line ──grammar──▶ pairs ──lower──▶ Document
//! ```
//!
//! This crate knows shapes and the tables of verbs, keys and connecting words. It knows no units and no chemistry.

mod block;
mod chars;
mod document;
mod fold;
mod format;
mod grammar;
mod heads;
mod keys;
mod kinds;
mod line_index;
mod lower;
mod physical;
mod prepare;
mod split;
mod tree;
mod verbs;

pub use block::parse_block;
pub use fold::{fold_name, fold_name_cow};
pub use format::{LineEdit, edits as format_edits, format};
pub use grammar::{GRAMMAR, pest_only};
pub use keys::{KEYS, Key, key_row, keys_of};
pub use kinds::{KINDS, Kind, kind_row, lookup_kind};
pub use line_index::{Encoding, LineIndex, Position};
pub use tree::{
    Block, BlockKind, Clause, Connector, Document, Head, Item, Line, Number, NumberForm, Oddity, OddityKind,
    PlacedBlock, Qualifier, Span,
};
pub use verbs::{ClauseUse, Expect, Verb, verb_row, verbs};
