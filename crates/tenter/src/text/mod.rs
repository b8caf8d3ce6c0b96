//! Text for people: made safe, wrapped, set in columns.

pub mod safe;
pub mod table;
pub mod wrap;
