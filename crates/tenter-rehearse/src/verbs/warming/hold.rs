//! `hold for 40 min`, `hold dye bath at 60 °C`
//!
//! Needs a bath or goods, and how long.
//!
//! Does: the bath is kept at the temperature it has, or the one said, for the time.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::bath_or_goods(bench, pass, None);
}
