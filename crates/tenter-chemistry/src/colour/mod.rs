//! Colour: conversions of the CIE, differences, and what happens where two dyes meet.

mod difference;
mod mixing;
mod space;

pub use difference::{chroma_difference, delta_e_2000};
pub use mixing::{Layer, chroma_lost, mix};
pub use space::{Lab, Lch, Rgb, Xyz};
