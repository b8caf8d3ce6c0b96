//! Checks that span crates, and the measure of the checker: how often it is silent over good recipes and how often
//! it speaks when one is spoiled.
//!
//! ```text
//! good recipe ──operator──▶ mutant ──check──▶ caught, or a survivor with its explanation
//! ```
//!
//! `cargo run -p tenter-tests --example suite` prints both figures.

pub mod good;
pub mod harm;
pub mod judge;
pub mod mutant;
pub mod numbers;
pub mod operators;
pub mod report;
pub mod slips;
pub mod survivors;
