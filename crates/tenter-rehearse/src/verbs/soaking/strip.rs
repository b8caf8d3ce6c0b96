//! `strip tees in 10 L water at 80 °C with 20 g sodium dithionite for 20 min`
//!
//! Needs a liquor with the reducing or oxidising agent.
//!
//! Does: the goods take liquor up; loose dye is thinned as by a rinse. How much fixed dye is destroyed nobody has published:
//! it stays in the account.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::after_dyeing(bench, pass);
}
