//! `turn tees`
//!
//! Needs goods.
//!
//! Does: the other side lies up: powder that is strewn without naming a side falls there. Nothing runs off.

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let times = pass.step.repeats.map_or(1, |(count, _)| count);
    if pass.step.interval.is_none() && times % 2 == 1 {
        for state in bench.working.clone() {
            if let Some(goods) = bench.goods_mut(state) {
                goods.back_up = !goods.back_up;
            }
        }
    }
    crate::verbs::time_only(bench, pass);
}
