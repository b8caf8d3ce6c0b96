//! `wait for 10 min`
//!
//! Needs how long.
//!
//! Does: only time goes by, for everything.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    crate::verbs::time_only(bench, pass);
}
