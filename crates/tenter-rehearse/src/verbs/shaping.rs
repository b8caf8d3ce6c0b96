//! `fold`, `scrunch`, `bind`, `untie`, `cover`, `uncover`: how goods lie.

use std::sync::Arc;

use tenter_chemistry::soak::Packing;
use tenter_resolve::recipe::{Cover, LiquorKind};

use crate::bench::{Bench, Pass};
use crate::event::EventKind;

/// `fold tees as rings`, `bind tees`, `scrunch tees in tray`.
pub(super) fn shape(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    bench.out_of_baths(pass);
    let bound = pass.verb() == "bind";
    let in_vessel = matches!(pass.step.liquor.as_ref().map(|liquor| &liquor.kind), Some(LiquorKind::Vessel(_)));
    for state in bench.working.clone() {
        if let Some(layout) = pass.step.layout {
            bench.divide(state, Some(layout));
        }
        let Some(goods) = bench.goods.get(state).map(Arc::clone) else { continue };
        bench.emit(EventKind::Shaped {
            goods: goods.goods,
            layout: pass.step.layout.or(goods.layout),
            bound: bound || goods.packing == Packing::Bound,
            water_ratio: goods.water_ratio(),
        });
        if let Some(goods) = bench.goods_mut(state) {
            goods.packing = if bound || goods.packing == Packing::Bound { Packing::Bound } else { Packing::Folded };
            goods.lies_in_vessel |= in_vessel;
        }
    }
    let time = bench.duration(pass);
    bench.pass_time(time, None);
}

/// `untie tees`: they lie open; what is on each part stays there.
pub(super) fn untie(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let time = bench.duration(pass);
    bench.pass_time(time, None);
    for state in bench.working.clone() {
        if let Some(goods) = bench.goods_mut(state) {
            goods.packing = Packing::Loose;
            goods.cover = None;
        }
    }
}

/// `cover tees with plastic`, `uncover tees`.
pub(super) fn cover(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let cover = match pass.verb() {
        "uncover" => Some(Cover::Uncovered),
        _ => pass.step.cover.map_or(Some(Cover::Covered), |(cover, _)| Some(cover)),
    };
    for state in bench.working.clone() {
        if let Some(goods) = bench.goods_mut(state) {
            goods.cover = cover;
        }
    }
    let time = bench.duration(pass);
    bench.pass_time(time, None);
}
