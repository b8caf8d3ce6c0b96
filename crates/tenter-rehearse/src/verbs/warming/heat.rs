//! `heat dye bath to 60 °C`, `heat tees to 60 °C`
//!
//! Needs a bath or goods, and a temperature.
//!
//! Does: as `raise`; goods by themselves are at the temperature at once.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::bath_or_goods(bench, pass, None);
}
