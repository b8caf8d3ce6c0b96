//! The recipe carried out on paper, step by step.

pub mod ending;
pub mod json;
pub mod telling;
pub mod text;
mod waiting;
