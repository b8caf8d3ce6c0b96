//! What to weigh, pour and pay.

pub mod json;
mod number;
mod states;
pub mod text;
