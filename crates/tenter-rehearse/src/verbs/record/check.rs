//! `check pH of soda soak with pH paper`
//!
//! Needs nothing.
//!
//! Does: only time goes by.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    crate::verbs::time_only(bench, pass);
}
