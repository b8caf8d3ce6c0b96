//! How goods lie.

pub(super) mod bind;
pub(super) mod cover;
pub(super) mod fold;
pub(super) mod mark;
pub(super) mod scrunch;
pub(super) mod turn;
pub(super) mod uncover;
pub(super) mod untie;

use std::sync::Arc;

use tenter_chemistry::soak::Packing;
use tenter_resolve::recipe::{Cover, LiquorKind};

use crate::bench::{Bench, Pass};
use crate::event::EventKind;

/// `fold tees as rings`, `bind tees`, `scrunch tees in tray`.
fn shape(bench: &mut Bench<'_>, pass: &Pass<'_>, bound: bool) {
    bench.out_of_baths(pass);
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

/// A covering put on or taken off.
fn covered(bench: &mut Bench<'_>, pass: &Pass<'_>, cover: Cover, why: &'static str) {
    let bare = |cover: Option<Cover>| matches!(cover, None | Some(Cover::Uncovered));
    let mut idle = pass.step.liquor.is_none() && !bench.working.is_empty();
    for state in bench.working.clone() {
        if let Some(goods) = bench.goods_mut(state) {
            idle &= goods.cover == Some(cover) || bare(goods.cover) && bare(Some(cover));
            goods.cover = Some(cover);
        }
    }
    if idle {
        bench.no_effect(why);
    }
    let time = bench.duration(pass);
    bench.pass_time(time, None);
}
