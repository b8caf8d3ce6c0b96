//! `simmer socks in dye bath for 30 min`
//!
//! Needs a bath; goods named go into it.
//!
//! Does: the bath is kept at just under the boil for the time.

use crate::bench::{Bench, Pass};
use crate::figures::{PRACTICE, celsius};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let usual = celsius(85.0, 92.0, 97.0, "a simmer", PRACTICE);
    super::bath_or_goods(bench, pass, Some(usual));
}
