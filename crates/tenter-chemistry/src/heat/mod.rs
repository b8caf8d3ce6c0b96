//! Heat: mixing, melting ice, and cooling in still air.

mod cooling;
mod fibre;
mod ice;
mod mixing;

pub use cooling::{Air, Cooled, Exposure, Pace, Wares, cool, cool_range};
pub use fibre::{Fibre, heat_capacity_range};
pub use ice::{heap_surface, melting_time, melting_time_range};
pub use mixing::{Body, Mixed, mix};
