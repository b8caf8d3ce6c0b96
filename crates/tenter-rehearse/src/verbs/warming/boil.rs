//! `boil socks in dye bath for 30 min`
//!
//! Needs a bath; goods named go into it.
//!
//! Does: the bath is kept at the boil for the time.

use crate::bench::{Bench, Pass};
use crate::figures::celsius;

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let usual = celsius(95.0, 99.0, 100.0, "the boil", "lower with height above the sea");
    super::bath_or_goods(bench, pass, Some(usual));
}
