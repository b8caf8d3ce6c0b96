//! `raise dye bath to 60 °C over 20 min`
//!
//! Needs a bath and a temperature to reach; the bath worked with last where none is named.
//!
//! Does: the bath comes to the temperature and is kept there; the time counts as spent at the end temperature, which is the
//! warmer.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::bath_or_goods(bench, pass, None);
}
