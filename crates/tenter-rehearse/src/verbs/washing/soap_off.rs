//! `soap off tees in 20 L water at 60 °C with 1 g/L textile detergent, 2 times`
//!
//! Needs goods; a hot liquor with detergent, how often.
//!
//! Does: as a rinse, in hot liquor, and each time one soaping is done.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::fresh_liquor(bench, pass, true);
}
