//! `steam tees for 30 min covered`
//!
//! Needs goods; how hot is taken as usual where not said.
//!
//! Does: dye on the goods is wetted by condensing steam and kept hot for the time; nothing dries; bicarbonate turns into
//! carbonate in part.

use crate::bench::{Bench, Pass};
use crate::figures::{PRACTICE, celsius};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let usual = || celsius(95.0, 99.0, 102.0, "goods in steam", PRACTICE);
    let temperature = pass.step.temperature.clone().unwrap_or_else(usual);
    super::hot::hot(bench, pass, temperature, true);
}
