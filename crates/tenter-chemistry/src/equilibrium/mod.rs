//! Acid–base balance in water from 0 to 100 °C, with a Pitzer activity model good for strong soaks.
//!
//! [`solve`] takes [`Totals`] (mol per kg of water) and a temperature in kelvin and gives a
//! [`Speciation`]. [`Model`] holds everything that depends on temperature alone, for many solutions
//! at one temperature. All solutions are taken as closed: no carbon dioxide comes in or goes out.

pub mod activity;
mod balance;
pub mod coefficients;
pub mod electrostatic;
pub mod equilibrium_constants;
mod model;
pub mod parameters;
mod speciation;
pub mod species;
mod spread;
mod substance;
mod totals;
pub mod water_slope;

pub use model::{Model, solve};
pub use speciation::{Caution, NotSolved, Speciation};
pub use spread::realistic_spread;
pub use substance::{SUBSTANCES, Substance, substance};
pub use totals::Totals;
