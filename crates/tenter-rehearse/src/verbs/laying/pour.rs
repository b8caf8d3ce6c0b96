//! `pour 2 L soda soak over tees`
//!
//! Needs liquor, and goods; zones or a side where said.
//!
//! Does: it goes on to the zones in the share of their weight, wets powder there, warms or cools the cloth by its heat, and what
//! the cloth cannot hold runs off with part of what is dissolved. Poured into a bath it is an addition to that.

use tenter_quantity::Interval;

use crate::bench::{Bench, Pass};

/// Share of its warmth lost on the way from a jug held close; common practice, no source.
const LOST: Interval = Interval { low: 0.03, best: 0.08, high: 0.2 };

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::lay(bench, pass, LOST);
}
