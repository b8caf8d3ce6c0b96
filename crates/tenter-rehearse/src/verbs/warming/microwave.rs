//! `microwave tees for 2 min in sealed bag`
//!
//! Needs goods; how hot is taken as usual where not said.
//!
//! Does: dye on the goods is wetted by condensing steam and kept hot for the time; nothing dries; bicarbonate turns into
//! carbonate in part.

use crate::bench::{Bench, Pass};
use crate::figures::{PRACTICE, celsius};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let usual = || celsius(70.0, 90.0, 100.0, "wet goods in a microwave oven", PRACTICE);
    let temperature = pass.step.temperature.clone().unwrap_or_else(usual);
    super::hot::hot(bench, pass, temperature, true);
}
