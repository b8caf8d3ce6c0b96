//! `dissolve 9 g lagoon in 200 mL water`, `dissolve soda ash into dye bath`
//!
//! Needs something to dissolve, and a liquid or a bath.
//!
//! Does: into a bath it is an addition; else it stands there as a liquor of its own, which later steps work with.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::stir_up(bench, pass);
}
