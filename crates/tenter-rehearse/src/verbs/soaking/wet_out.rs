//! `wet out tees in warm water for 10 min`
//!
//! Needs water, measured or not.
//!
//! Does: dry goods take up water to their pickup; what is loose in goods that were washed off before is thinned as by a
//! rinse.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::after_dyeing(bench, pass);
}
