//! `weigh 9 g/piece lagoon into cup`
//!
//! Needs a material and an amount.
//!
//! Does: the powder is handled; it is left out of the account of masses until a later step lays or adds it.

use tenter_resolve::recipe::Substance;

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    for ingredient in &pass.step.applied {
        if matches!(ingredient.what, Substance::Material(_)) {
            bench.take(pass, ingredient);
        }
    }
    crate::verbs::time_only(bench, pass);
}
