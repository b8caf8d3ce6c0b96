//! `store night bottle in jar`, `store tees in bucket for 2 days`
//!
//! Needs a liquor or goods; a vessel where said.
//!
//! Does: a liquor is moved into the vessel, with what is in it and its age, and stands there from now on; goods lie in the vessel,
//! out of any bath, and what drips off them stays with them.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    crate::verbs::time_only(bench, pass);
}
