//! `fold tees as rings`
//!
//! Needs goods; a layout and a vessel where said.
//!
//! Does: the goods lie in the zones of the layout; what they held is spread over the zones evenly.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::shape(bench, pass, false);
}
