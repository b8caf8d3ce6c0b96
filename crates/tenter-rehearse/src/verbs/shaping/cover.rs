//! `cover tees with plastic`
//!
//! Needs goods or a vessel.
//!
//! Does: from here on the goods do not dry, and cool more slowly.

use tenter_resolve::recipe::Cover;

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let cover = pass.step.cover.map_or(Cover::Covered, |(cover, _)| cover);
    super::covered(bench, pass, cover, "the goods are covered like that already");
}
