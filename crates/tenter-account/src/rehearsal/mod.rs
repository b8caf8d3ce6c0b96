//! The recipe carried out on paper, step by step.

mod ending;
pub mod json;
pub mod text;
