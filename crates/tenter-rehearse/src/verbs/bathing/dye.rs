//! `dye socks in dye bath at 80 °C for 40 min`
//!
//! Needs goods and a bath.
//!
//! Does: as `immerse`: the goods stay in it until another step takes them out.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::put_in(bench, pass);
}
