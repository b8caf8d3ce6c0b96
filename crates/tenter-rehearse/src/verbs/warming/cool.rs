//! `cool dye bath to 30 °C`
//!
//! Needs a bath or goods.
//!
//! Does: the bath comes to the temperature said and is left to itself from there on.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::bath_or_goods(bench, pass, None);
}
