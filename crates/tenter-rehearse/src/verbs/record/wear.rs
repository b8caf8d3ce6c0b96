//! `wear dust mask, gloves, goggles`
//!
//! Needs the names of what is worn.
//!
//! Does: it is on from here to the end.

use crate::bench::{Bench, Pass};
use crate::event::EventKind;

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    for word in &pass.step.words {
        let text = word.text.to_lowercase();
        let has = |needles: &[&str]| needles.iter().any(|needle| text.contains(needle));
        bench.worn.respirator |= has(&["mask", "respirator", "ffp", "n95", "p100"]);
        bench.worn.gloves |= has(&["glove", "gauntlet"]);
        bench.worn.eyes |= has(&["goggle", "glasses", "eye", "visor", "face shield"]);
        bench.emit(EventKind::Worn { what: word.clone() });
    }
    let time = bench.duration(pass);
    bench.pass_time(time, None);
}
