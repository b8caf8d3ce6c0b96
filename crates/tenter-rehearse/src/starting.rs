//! Goods as they are before the first step.

use tenter_chemistry::soak::{Packing, Wettability};
use tenter_quantity::standard::GRAM;
use tenter_quantity::{Figure, Interval};
use tenter_resolve::recipe::{Goods, GoodsId, Wetness};

use crate::contents::Contents;
use crate::figures::{self, exact_share, share};
use crate::state::{GoodsState, ZoneKey, ZoneState};
use std::sync::Arc;

pub(crate) fn at_start(id: GoodsId, goods: &Goods, lot: Option<(u32, u32)>, room: &Figure) -> GoodsState {
    let all = goods.pieces.value;
    let pieces = lot.map_or(all, |(_, each)| Interval::exact(f64::from(each)));
    let part = lot.filter(|_| all.best > 0.0).map(|(_, each)| {
        exact_share(f64::from(each) / all.best, "share of the pieces in a lot", "as the lots are written")
    });
    let weight_assumed = goods.dry_mass.is_none();
    let whole = goods.dry_mass.clone().unwrap_or_else(|| {
        let each = Interval::new(0.11, 0.165, 0.23);
        figures::assumed(each * all, GRAM, "weight of the goods", "110 to 230 g a piece; common practice, no source")
    });
    let dry = part.map_or(whole.clone(), |part| figures::portion(&whole, &part));
    let ratio = match (&goods.state.pickup, goods.state.wetness) {
        (Some(pickup), _) => Some(pickup.clone()),
        (None, Some(Wetness::Damp)) => {
            Some(share(0.3, 0.6, 1.0, "water held", "damp: 30 to 100 %; common practice, no source"))
        }
        (None, Some(Wetness::Wet)) => {
            Some(share(1.0, 1.8, 3.0, "water held", "wet: 100 to 300 %; common practice, no source"))
        }
        (None, Some(Wetness::Dry) | None) => None,
    };
    let mut contents = Contents::default();
    if let Some(ratio) = ratio {
        let inputs = vec![("water held", ratio.clone()), ("dry goods", dry.clone())];
        contents.add_water(figures::mass("{0} × {1}", ratio.value * dry.value, inputs));
    }
    let one = exact_share(1.0, "share of the goods", "the whole of them");
    let zone = ZoneState {
        key: ZoneKey::default(),
        share: one,
        dry: dry.clone(),
        contents,
        temperature: room.clone(),
        loose: Interval::ONE,
        decarbonated: Interval::ZERO,
        powder: false,
        spell: None,
        acidity: std::sync::OnceLock::new(),
    };
    GoodsState {
        goods: id,
        lot: lot.map(|(lot, _)| lot),
        pieces,
        dry,
        weight_assumed,
        zones: vec![Arc::new(zone)],
        layout: None,
        packing: Packing::Loose,
        cover: None,
        wettability: match goods.state.scoured {
            Some(true) => Wettability::Scoured,
            Some(false) | None => Wettability::Washed,
        },
        inside: None,
        inside_since: Interval::ZERO,
        back_up: false,
        lies_in_vessel: false,
        ice: None,
        washed_off: false,
        soapings: 0,
    }
}
