//! `soften tees in 10 L water with 10 g fabric softener`
//!
//! Needs a liquor with the softener in it.
//!
//! Does: the softener stays in the goods in the share of their pickup (how much goes on to the fibre is left out); what is
//! loose is thinned as by a rinse.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::after_dyeing(bench, pass);
}
