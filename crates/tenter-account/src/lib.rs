//! What a recipe comes to and how its rehearsal went, laid out to be shown: shared by the command, the server and the
//! page in a browser, so that all of them show the same figures in the same words.
//!
//! Nothing is worked out here, nothing is read and nothing is printed: recipes go in, texts and JSON come out.

pub mod names;
pub mod number;
pub mod pick;
pub mod rehearsal;
pub mod source;
pub mod text;
pub mod totals;
pub mod words;

pub use pick::{Picked, pick};
pub use source::Source;
