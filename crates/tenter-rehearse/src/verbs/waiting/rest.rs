//! `rest tees for 30 min covered`
//!
//! Needs goods or a bath, and how long.
//!
//! Does: as `batch`; a bath is left to itself, at the temperature said.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::batch::perform(bench, pass);
}
