//! `wear`: equipment is on from here to the end. `mark`, `turn`, `check`, `wait`, `store`: only time goes by.

use crate::bench::{Bench, Pass};
use crate::event::EventKind;

/// `wear dust mask, gloves, goggles`.
pub(super) fn wear(bench: &mut Bench<'_>, pass: &Pass<'_>) {
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

/// Nothing but time: `wait for 10 min`, `turn tees`, `mark tees with chalk`, `check pH of soda soak`.
pub(super) fn time_only(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let time = bench.duration(pass);
    bench.pass_time(time, None);
}
