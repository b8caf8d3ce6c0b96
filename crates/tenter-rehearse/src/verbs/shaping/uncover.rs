//! `uncover tees`
//!
//! Needs goods.
//!
//! Does: from here on the goods dry, and cool in open air.

use tenter_resolve::recipe::Cover;

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::covered(bench, pass, Cover::Uncovered, "nothing covers the goods");
}
