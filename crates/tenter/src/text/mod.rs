//! Text for people: made safe, wrapped, set in columns.

pub mod count;
pub mod json;
pub mod safe;
pub mod table;
pub mod wrap;
