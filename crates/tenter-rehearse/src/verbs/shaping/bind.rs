//! `bind tees with cord`
//!
//! Needs goods; a layout and a vessel where said.
//!
//! Does: as `fold`, and bound: liquor goes in slowly, and the cloth holds less.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::shape(bench, pass, true);
}
