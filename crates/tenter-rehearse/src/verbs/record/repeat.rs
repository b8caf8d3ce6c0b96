//! `repeat steps colour for lot 2`, `repeat steps dip, 3 times`
//!
//! Needs a group of steps by name.
//!
//! Does: nothing itself. The steps of the group are carried out again where it stands: for the lot named or each of the others,
//! or so many times more. Without a group nothing happens.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    if pass.step.repeats_group.is_none() {
        bench.no_effect("no group of steps is named");
    }
}
