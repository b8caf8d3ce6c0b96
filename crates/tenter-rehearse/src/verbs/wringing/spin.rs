//! `spin tees to 65% pickup`
//!
//! Needs wet goods; where no pickup is said they come to 50 to 70 % of their dry weight.
//!
//! Does: what they hold above the pickup goes, with what is dissolved in it; goods in a bath are taken out of it first.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::wring(bench, pass);
}
