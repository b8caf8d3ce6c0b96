//! `add 40 g/L sodium chloride to dye bath in 3 parts, 10 min apart`
//!
//! Needs something to add, and a bath by name or the one worked with last.
//!
//! Does: it goes into the bath, with its own warmth; portions take the time between them. Alkali that comes to reactive dye starts
//! the life of the bath.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::put_to(bench, pass);
}
