//! `neutralise tees in 10 L water with 10 g citric acid`
//!
//! Needs a liquor, with the acid in it.
//!
//! Does: after washing off, alkali left in the goods is thinned and meets the acid of the fresh liquor, which stays in the goods
//! in the share of their pickup; before it, the goods go through the liquor as in a soak.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::after_dyeing(bench, pass);
}
