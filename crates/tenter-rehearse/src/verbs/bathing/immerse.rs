//! `immerse tees in dye bath for 30 min at 40 °C`
//!
//! Needs goods and a bath, by name or the one worked with last.
//!
//! Does: what the goods hold mixes into the bath, and there they stay until another step takes them out; a temperature said is
//! the bath's by the end. Dye goes on to the fibre by liquor ratio, salt and time.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::put_in(bench, pass);
}
