//! `scour tees in 10 L water at 90 °C with 2 g/L soda ash for 30 min`
//!
//! Needs goods and a hot liquor.
//!
//! Does: washes like `wash`; from here on the goods take water readily, and keep the liquor's alkali in the share of their pickup.

use tenter_chemistry::soak::Wettability;

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    super::fresh_liquor(bench, pass, true);
    for state in bench.working.clone() {
        if let Some(goods) = bench.goods_mut(state) {
            goods.wettability = Wettability::Scoured;
        }
    }
}
