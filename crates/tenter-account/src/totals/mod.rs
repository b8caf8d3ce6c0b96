//! What to weigh, pour and pay.

pub mod diff;
pub mod json;
mod number;
pub mod sheet;
mod states;
pub mod text;
