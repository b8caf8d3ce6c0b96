//! Dry powder on zones, or on the ice that lies over them.

pub(super) mod sift;
pub(super) mod sprinkle;

use std::sync::Arc;

use tenter_resolve::recipe::ZoneRef;

use crate::bench::{Bench, Pass};
use crate::contents::Contents;
use crate::event::EventKind;
use crate::figures::portion;
use crate::state::{Ice, ZoneKey};

/// Lays every material of the step.
fn lay(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    bench.out_of_baths(pass);
    let on_ice = pass.step.zones.iter().any(|zone| zone.zone == ZoneRef::Ice);
    let targets = bench.targets(pass.step, false);
    for ingredient in pass.step.applied.iter().chain(&pass.step.with) {
        let part = bench.take(pass, ingredient);
        for target in &targets {
            let mine = part.contents.share(&target.share);
            if on_ice && bench.goods.get(target.state).is_some_and(|goods| goods.ice.is_some()) {
                strew_ice(bench, target.state, mine);
                continue;
            }
            for (at, weight) in &target.zones {
                strew(bench, target.state, *at, mine.share(weight), on_ice);
            }
        }
    }
    let time = bench.duration(pass);
    bench.pass_time(time, None);
}

fn strew_ice(bench: &mut Bench<'_>, state: usize, powder: Contents) {
    let Some(goods) = bench.goods.get(state).map(Arc::clone) else { return };
    let zone = ZoneKey::default();
    for (id, mass) in &powder.parts {
        let event = if bench.substances.is_dye(*id) {
            EventKind::DyeLaid {
                goods: goods.goods,
                lot: goods.lot,
                zone,
                dye: *id,
                mass: mass.clone(),
                dry: true,
                ice: true,
            }
        } else {
            EventKind::PowderLaid {
                goods: goods.goods,
                zone,
                material: *id,
                mass: mass.clone(),
                water_ratio: goods.water_ratio(),
                ice: true,
                with_dye_powder: goods.ice.as_ref().is_some_and(|ice| bench.substances.dye(&ice.powder).high > 0.0),
            }
        };
        bench.emit(event);
        if bench.substances.is_dye(*id) {
            // The account belongs to the zones the melt will carry it to.
            for zone in &goods.zones {
                bench.laid(state, zone.key, *id, &portion(mass, &zone.share), true);
            }
        }
    }
    if let Some(goods) = bench.goods_mut(state) {
        let mut ice: Ice = goods.ice.as_deref().cloned().unwrap_or_default();
        ice.powder.add(powder);
        goods.ice = Some(Arc::new(ice));
    }
}

fn strew(bench: &mut Bench<'_>, state: usize, at: usize, powder: Contents, ice: bool) {
    let Some(goods) = bench.goods.get(state).map(Arc::clone) else { return };
    let Some(zone) = goods.zones.get(at).map(Arc::clone) else { return };
    let had = zone.contents.masses();
    let came = powder.masses();
    bench.emit(EventKind::Mixed { liquor: None, had, came, vessel: None });
    let mut dyed = false;
    for (id, mass) in &powder.parts {
        if bench.substances.is_dye(*id) {
            dyed = true;
            bench.laid(state, zone.key, *id, mass, true);
            bench.emit(EventKind::DyeLaid {
                goods: goods.goods,
                lot: goods.lot,
                zone: zone.key,
                dye: *id,
                mass: mass.clone(),
                dry: true,
                ice,
            });
        } else {
            bench.emit(EventKind::PowderLaid {
                goods: goods.goods,
                zone: zone.key,
                material: *id,
                mass: mass.clone(),
                water_ratio: zone.water_ratio(),
                ice,
                with_dye_powder: zone.powder,
            });
        }
    }
    if let Some(zone) = bench.zone_mut(state, at) {
        zone.contents.add(powder);
        zone.powder |= dyed;
    }
}
