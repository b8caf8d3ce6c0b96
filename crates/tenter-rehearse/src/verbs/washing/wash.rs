//! `wash tees in 20 L water at 40 °C with 1 g/L textile detergent, 2 times`
//!
//! Needs goods; water measured or not, how often.
//!
//! Does: each fresh liquor leaves its share of alkali and loose dye (water held ÷ (water held + water)); counts as a soaping.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::fresh_liquor(bench, pass, true);
}
