//! What the fresh liquor itself leaves in the goods.

use std::sync::Arc;

use tenter_quantity::Figure;

use crate::bench::Bench;
use crate::contents::Contents;
use crate::figures::{exact_share, portion, rest, worked_share};

/// What the fresh liquor holds stays in the goods in the share of their pickup.
pub(super) fn carry(bench: &mut Bench<'_>, state: usize, fresh: &Contents, pickup: &Figure, part: f64, times: u32) {
    if fresh.parts.is_empty() {
        return;
    }
    let mine = exact_share(part, "share of these goods", "by weight");
    let fresh = fresh.share(&mine);
    for _ in 1..times {
        bench.drained.push(fresh.clone());
    }
    let Some(goods) = bench.goods.get(state).map(Arc::clone) else { return };
    let Some(water) = fresh.water.clone().filter(|water| water.value.best > 0.0) else {
        bench.drained.push(fresh);
        return;
    };
    let carried = worked_share(
        "{0} of {1} out of {2}",
        pickup.value * goods.dry.value / water.value,
        vec![("water held", pickup.clone()), ("dry goods", goods.dry.clone()), ("", water)],
    );
    bench.drained.push(fresh.share(&rest(&carried)));
    for at in 0..goods.zones.len() {
        let Some(zone) = goods.zones.get(at) else { continue };
        let mine = portion(&carried, &zone.share);
        if let Some(zone) = bench.zone_mut(state, at) {
            for (id, figure) in &fresh.parts {
                zone.contents.add_part(*id, portion(figure, &mine));
            }
        }
    }
}

/// The same out of a liquor that stays standing.
pub(super) fn carry_from(bench: &mut Bench<'_>, state: usize, liquor: usize, pickup: &Figure) {
    let Some(bath) = bench.liquors.get(liquor).map(Arc::clone) else { return };
    let Some(goods) = bench.goods.get(state).map(Arc::clone) else { return };
    let Some(water) = bath.contents.water.clone().filter(|water| water.value.best > 0.0) else { return };
    let carried = worked_share(
        "{0} of {1} out of {2}",
        pickup.value * goods.dry.value / water.value,
        vec![("water held", pickup.clone()), ("dry goods", goods.dry.clone()), ("", water)],
    );
    let Some(bath) = bench.liquor_mut(liquor) else { return };
    let taken = bath.contents.take(&carried);
    bath.volume = bath.volume.as_ref().map(|volume| portion(volume, &rest(&carried)));
    for at in 0..goods.zones.len() {
        let Some(share) = goods.zones.get(at).map(|zone| zone.share.clone()) else { continue };
        if let Some(zone) = bench.zone_mut(state, at) {
            for (id, figure) in &taken.parts {
                zone.contents.add_part(*id, portion(figure, &share));
            }
        }
    }
}
