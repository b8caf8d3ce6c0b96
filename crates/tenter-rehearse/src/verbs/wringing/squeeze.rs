//! `squeeze tees to 80% pickup`
//!
//! Needs wet goods; where no pickup is said they come to 100 to 150 % of their dry weight.
//!
//! Does: what they hold above the pickup goes, with what is dissolved in it; goods in a bath are taken out of it first.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::wring(bench, pass);
}
