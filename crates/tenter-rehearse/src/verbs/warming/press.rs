//! `press tees`
//!
//! Needs goods.
//!
//! Does: an iron heats them for moments; dye not yet washed off is told as heated. What dries meanwhile is left out.

use std::sync::Arc;

use crate::bench::{Bench, Pass};
use crate::event::EventKind;
use crate::figures::{PRACTICE, celsius};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let iron = pass.step.temperature.clone().unwrap_or_else(|| celsius(110.0, 150.0, 200.0, "an iron", PRACTICE));
    for state in bench.working.clone() {
        let Some(goods) = bench.goods.get(state).map(Arc::clone) else { continue };
        let cover = goods.cover;
        for zone in &goods.zones {
            if bench.substances.dye(&zone.contents).high > 0.0 && !goods.washed_off {
                bench.emit(EventKind::Heated {
                    goods: goods.goods,
                    zone: zone.key,
                    temperature: iron.clone(),
                    cover,
                    wet: zone.water_ratio().best > 0.2,
                    steam: false,
                });
            }
        }
    }
    let time = bench.duration(pass);
    bench.pass_time(time, None);
}
