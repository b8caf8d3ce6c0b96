//! `untie tees`
//!
//! Needs goods.
//!
//! Does: they lie open and uncovered; what is on each part stays there. Opened in water, they are rinsed by it.

use tenter_chemistry::soak::Packing;

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let loose = |state: &usize| bench.goods.get(*state).is_some_and(|goods| goods.packing == Packing::Loose);
    if !bench.working.is_empty() && bench.working.iter().all(loose) {
        bench.no_effect("nothing has folded or bound the goods");
    }
    for state in bench.working.clone() {
        if let Some(goods) = bench.goods_mut(state) {
            goods.packing = Packing::Loose;
            goods.cover = None;
        }
    }
    if pass.step.liquor.is_some() {
        crate::verbs::washing::fresh_liquor(bench, pass, true);
    } else {
        crate::verbs::time_only(bench, pass);
    }
}
