//! `lower tees into dye bath`
//!
//! Needs goods and a bath.
//!
//! Does: as `immerse`; goods that are in the bath already go on lying in it.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::put_in(bench, pass);
}
