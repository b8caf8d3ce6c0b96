//! `soak tees in soda soak for 20 min`
//!
//! Needs a liquor (else plain water); how long and how wet the goods come out are taken as usual where not said.
//!
//! Does: the water in the goods mixes into the bath; the goods carry off liquor up to the pickup they are wrung to next, so
//! far as it has gone through in the time; the bath is poorer by that.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::through(bench, pass);
}
