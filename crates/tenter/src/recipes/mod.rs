//! The recipes of a file, chosen and ready to show.

pub mod open;

pub use tenter_account::pick;
