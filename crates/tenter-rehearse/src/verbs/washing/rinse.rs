//! `rinse tees in cold water until nearly clear`
//!
//! Needs goods; water measured or not, how often, or a sign to look for.
//!
//! Does: each fresh liquor leaves its share of alkali and loose dye; the goods take on the temperature of the water. With a detergent
//! in it, it counts as a soaping.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::fresh_liquor(bench, pass, true);
}
