//! Text for people: made safe, wrapped, set in columns.

pub mod count;
pub mod json;
pub mod safe;
pub mod table;
pub mod wrap;

/// Width everything is laid out for: what a narrow terminal and a printed page hold.
pub const WIDTH: usize = 80;
