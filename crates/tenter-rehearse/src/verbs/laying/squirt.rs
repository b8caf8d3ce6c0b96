//! `squirt 60 mL/piece from night bottle on back`
//!
//! Needs liquor, and goods; zones or a side where said.
//!
//! Does: it goes on to the zones in the share of their weight, wets powder there, warms or cools the cloth by its heat, and what
//! the cloth cannot hold runs off with part of what is dissolved.

use tenter_quantity::Interval;

use crate::bench::{Bench, Pass};

/// Share of its warmth lost on the way from a bottle; common practice, no source.
const LOST: Interval = Interval { low: 0.05, best: 0.15, high: 0.4 };

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::lay(bench, pass, LOST);
}
