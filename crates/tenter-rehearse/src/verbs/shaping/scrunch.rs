//! `scrunch tees in tray`
//!
//! Needs goods; a layout and a vessel where said.
//!
//! Does: as `fold`; in a tray nothing runs off.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::shape(bench, pass, false);
}
