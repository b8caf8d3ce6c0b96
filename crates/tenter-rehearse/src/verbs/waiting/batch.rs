//! `batch tees for 24 h at 24 °C covered`
//!
//! Needs goods; how long, where not said, is taken very wide.
//!
//! Does: the goods are left so that dye reacts: they come to the temperature around them, dry where nothing covers them, and
//! powder takes up the damp of the cloth.

use std::sync::Arc;

use tenter_resolve::recipe::LiquorKind;

use crate::bench::{Bench, Pass};
use crate::event::EventKind;
use crate::passing::Around;
use crate::state::ZoneState;

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    if let (false, Some(LiquorKind::Mix(_) | LiquorKind::Current)) =
        (pass.step.goods_named, pass.step.liquor.as_ref().map(|liquor| &liquor.kind))
    {
        return crate::verbs::warming::bath_or_goods(bench, pass, None);
    }
    let surroundings = pass.step.temperature.clone().unwrap_or_else(|| bench.room.clone());
    let cover = pass.step.cover.map(|(cover, _)| cover);
    let mut before = Vec::new();
    for state in bench.working.clone() {
        if let Some(cover) = cover
            && let Some(goods) = bench.goods_mut(state)
        {
            goods.cover = Some(cover);
        }
        let Some(goods) = bench.goods.get(state).map(Arc::clone) else { continue };
        for (at, zone) in goods.zones.iter().enumerate() {
            // Powder on damp cloth takes up its water by itself.
            if zone.powder && zone.contents.water_mass().best > 0.05 * zone.dry.value.best {
                bench.wets_out(state, at, false);
            }
        }
        before.push((state, goods));
    }
    bench.account();
    let time = bench.duration(pass);
    let around = Around { temperature: surroundings.clone(), held: false };
    bench.pass_time(time, Some(&around));
    for (state, old) in before {
        let Some(goods) = bench.goods.get(state).map(Arc::clone) else { continue };
        let Some(dyed) = old.zones.iter().max_by(|a, b| {
            let dye = |zone: &ZoneState| bench.substances.dye(&zone.contents).best;
            dye(a).total_cmp(&dye(b))
        }) else {
            continue;
        };
        let figure = bench.time.clone();
        let cover = goods.cover;
        let dye = old.zones.iter().any(|zone| bench.substances.dye(&zone.contents).high > 0.0)
            || old.ice.as_ref().is_some_and(|ice| bench.substances.dye(&ice.powder).high > 0.0);
        let alkali = old.zones.iter().any(|zone| bench.substances.usable_alkali(&zone.contents).high > 0.0);
        bench.each_account(state, |entry, place| {
            if entry.washed.is_none()
                && entry.batch.as_ref().is_none_or(|(have, _, _)| have.value.best < figure.value.best)
            {
                entry.batch = Some((figure.clone(), cover, place));
            }
        });
        bench.emit(EventKind::Batch {
            goods: goods.goods,
            lot: goods.lot,
            time: bench.time.clone(),
            surroundings: surroundings.clone(),
            from: dyed.temperature.clone(),
            cover,
            water_before: old.water_ratio(),
            water_after: goods.water_ratio(),
            dye,
            alkali,
        });
    }
}
