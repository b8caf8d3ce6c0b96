//! `paste 9 g lagoon with 20 mL water`
//!
//! Needs something to dissolve, and a liquid or a bath.
//!
//! Does: into a bath it is an addition; else it stands there as a liquor of its own, which later steps work with.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::stir_up(bench, pass);
}
