//! `bleach tees in 5 L water with 50 mL sodium hypochlorite for 10 min`
//!
//! Needs a liquor with the bleach.
//!
//! Does: the goods take liquor up and keep some of the bleach until it is rinsed out or destroyed; dye stays in the account, as
//! with `strip`.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::after_dyeing(bench, pass);
}
