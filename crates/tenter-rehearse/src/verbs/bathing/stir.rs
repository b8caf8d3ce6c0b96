//! `stir tees every 5 min for 20 min`, `stir dye bath`
//!
//! Needs a bath, by name or the one worked with last.
//!
//! Does: what `with` brings goes into the bath, and time goes by in it; baths are taken as even without it.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let liquor = match pass.step.liquor {
        Some(_) => bench.liquor(pass),
        None => bench.current,
    };
    if let Some(liquor) = liquor {
        bench.with(pass, liquor);
    }
    let time = bench.duration(pass);
    bench.pass_time(time, None);
}
