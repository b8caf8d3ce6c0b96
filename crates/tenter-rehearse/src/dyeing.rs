//! What became of one dye on one part of the goods: the account that rules on alkali, heat and time read.

use std::sync::Arc;

use tenter_quantity::{Figure, Interval, Place};
use tenter_resolve::recipe::{Cover, GoodsId, MaterialId};

use crate::event::Medium;
use crate::state::{LiquorState, ZoneKey, ZoneState};

/// One dye on one zone, from laying to washing off.
#[derive(Clone, Debug)]
pub struct Dyeing {
    /// The goods.
    pub goods: GoodsId,
    /// Index of the goods' state in the frames.
    pub state: usize,
    /// The lot.
    pub lot: Option<u32>,
    /// The zone.
    pub zone: ZoneKey,
    /// The dye.
    pub dye: MaterialId,
    /// The steps that laid it.
    pub laid: Vec<Place>,
    /// Most there was of it, kg (of the whole bath in a bath).
    pub mass: Figure,
    /// All dyes there together, kg.
    pub all_dye: Interval,
    /// Laid as dry powder.
    pub dry: bool,
    /// Where it met its alkali.
    pub medium: Medium,
    /// Most usable alkali there was with it, mol.
    pub usable: Interval,
    /// Alkali of any kind then, mol of acid it takes up.
    pub base: Interval,
    /// Acid there then, mol of alkali it takes up.
    pub acid: Interval,
    /// The zone at that moment; pH on demand.
    pub zone_then: Option<Arc<ZoneState>>,
    /// The bath at that moment.
    pub bath_then: Option<Arc<LiquorState>>,
    /// Warmest the wet dye was, K, and the step.
    pub warmest: Option<(Figure, Place)>,
    /// Ever steamed or microwaved.
    pub steamed: bool,
    /// Longest step it was left to react in, and how it was covered.
    pub batch: Option<(Figure, Option<Cover>, Place)>,
    /// Whether it ever got wet.
    pub wetted: bool,
    /// Not laid here, but come through from the other side.
    pub came_through: bool,
    /// The step that first washed it off.
    pub washed: Option<Place>,
    /// The goods were divided anew, and other accounts go on from here.
    pub superseded: bool,
    /// Last spell of its history.
    pub spell: Option<u32>,
}
