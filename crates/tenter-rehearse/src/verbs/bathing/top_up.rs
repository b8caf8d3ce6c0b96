//! `top up dye bath to 20 L`
//!
//! Needs a bath and a volume, or an amount of water.
//!
//! Does: water for what is missing of the volume goes into the bath.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::put_to(bench, pass);
}
