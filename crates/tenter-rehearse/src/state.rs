//! What everything is like at one moment: goods zone by zone, liquors, the clock.

use std::sync::{Arc, OnceLock};

use tenter_chemistry::soak::{Packing, Wettability};
use tenter_quantity::{Figure, Interval, Place};
use tenter_resolve::recipe::{Cover, GoodsId, LayoutId, MaterialId, MixId, VesselId};

use crate::acidity::{Acidity, acidity};
use crate::contents::Contents;
use crate::substances::Substances;

/// A side of the goods.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs)]
pub enum Face {
    Front,
    Back,
}

/// Which part of the goods.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default)]
pub struct ZoneKey {
    /// Zone of a layout; `None` for the whole piece.
    pub layout: Option<(LayoutId, usize)>,
    /// The side, where the recipe works the back by itself.
    pub face: Option<Face>,
}

/// A part of the goods: what it holds and how warm it is.
#[derive(Clone, Debug)]
pub struct ZoneState {
    /// Which.
    pub key: ZoneKey,
    /// Share of the dry weight of the goods.
    pub share: Figure,
    /// Dry weight of this part, kg.
    pub dry: Figure,
    /// Liquor, powder and dye on it. Dye stays in this account until rinsed goods are looked at through `loose`.
    pub contents: Contents,
    /// How warm it is, K.
    pub temperature: Figure,
    /// Share left after washing of all that is not fixed; one before the first rinse.
    pub loose: Interval,
    /// Share of bicarbonate on it that heat has turned into carbonate.
    pub decarbonated: Interval,
    /// Whether dye on it lies as dry powder still.
    pub powder: bool,
    /// The last spell of its history of reaction: index into [`crate::Rehearsal::spells`].
    pub spell: Option<u32>,
    pub(crate) acidity: OnceLock<Option<Acidity>>,
}

impl ZoneState {
    /// pH of the liquor in it, worked out on first call.
    pub fn acidity(&self, substances: &Substances) -> Option<&Acidity> {
        let wet = self.contents.water_mass().best > 0.05 * self.dry.value.best;
        self.acidity
            .get_or_init(|| acidity(&self.contents, substances, self.temperature.value, self.decarbonated))
            .as_ref()
            .filter(|_| wet)
    }

    /// Usable alkali, mol, with what heat has made of bicarbonate.
    pub fn usable(&self, substances: &Substances) -> Interval {
        substances.usable_after(&self.contents, self.decarbonated)
    }

    /// Water held for each kg of dry goods, kg/kg.
    pub fn water_ratio(&self) -> Interval {
        (self.contents.water_mass() / self.dry.value).clamp_low(0.0)
    }
}

/// Ice lying over or under the goods, with what is strewn on it.
#[derive(Clone, Debug, Default)]
pub struct Ice {
    /// Ice not yet melted, kg.
    pub mass: Option<Figure>,
    /// Ice heaped in all, kg.
    pub heaped: Option<Figure>,
    /// Powder on it, kg.
    pub powder: Contents,
    /// Whether the goods stand on it.
    pub under: bool,
}

/// Goods, or one lot of them.
#[derive(Clone, Debug)]
pub struct GoodsState {
    /// Which.
    pub goods: GoodsId,
    /// Which lot, where they are worked in lots.
    pub lot: Option<u32>,
    /// How many pieces.
    pub pieces: Interval,
    /// Dry weight, kg.
    pub dry: Figure,
    /// Whether the weight was only assumed.
    pub weight_assumed: bool,
    /// The parts; one until folded or named apart.
    pub zones: Vec<Arc<ZoneState>>,
    /// The layout the zones belong to.
    pub layout: Option<LayoutId>,
    /// How it lies.
    pub packing: Packing,
    /// How it is covered.
    pub cover: Option<Cover>,
    /// How readily it takes water.
    pub wettability: Wettability,
    /// The liquor it is in: index into the liquors.
    pub inside: Option<usize>,
    /// When it went in, s.
    pub inside_since: Interval,
    /// Turned over: the back lies up.
    pub back_up: bool,
    /// It lies in a tub or tray that keeps what the cloth cannot hold.
    pub lies_in_vessel: bool,
    /// Ice on it.
    pub ice: Option<Arc<Ice>>,
    /// Whether it was ever rinsed or washed after dye was laid.
    pub washed_off: bool,
    /// Soapings done.
    pub soapings: u32,
}

impl GoodsState {
    /// Water held, kg for each kg of dry goods.
    pub fn water_ratio(&self) -> Interval {
        let water: Interval = self.zones.iter().map(|zone| zone.contents.water_mass()).sum();
        (water / self.dry.value).clamp_low(0.0)
    }

    /// A zone by its key.
    pub fn zone(&self, key: ZoneKey) -> Option<&Arc<ZoneState>> {
        self.zones.iter().find(|zone| zone.key == key)
    }
}

/// What a liquor is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LiquorName {
    /// A mix by name.
    Mix(MixId),
    /// What is in a vessel.
    Vessel(VesselId),
    /// A bath written in a step, by the step's place.
    InPlace(Place),
}

/// A mix made, or a bath.
#[derive(Clone, Debug)]
pub struct LiquorState {
    /// What it is.
    pub name: LiquorName,
    /// What is in it now, goods' liquor included while goods are in it.
    pub contents: Contents,
    /// How much of it there is now, m³; `None` for a dry blend.
    pub volume: Option<Figure>,
    /// How much was made, m³.
    pub made_volume: Option<Figure>,
    /// Temperature when last looked at, K.
    pub temperature: Figure,
    /// When that was, s since the start.
    pub temperature_at: Interval,
    /// Share of bicarbonate in it that heat has turned into carbonate.
    pub decarbonated: Interval,
    /// Kept at that temperature by a fire.
    pub heated: bool,
    /// When it was made, s since the start.
    pub made_at: Interval,
    /// The step that made it, or used it first.
    pub made_by: Place,
    /// Whether a step says `make`.
    pub made_by_step: bool,
    /// When alkali and reactive dye came together in it, s since the start: when the mix was finished, when the alkali went
    /// in, or, for what was drawn from another bottle, when it happened there.
    pub alkali_with_dye: Option<Interval>,
    /// How warm it was then, K.
    pub warm_then: Option<Interval>,
    /// Goods in it: indices into the goods of the frame.
    pub inside: Vec<usize>,
    /// Warmest it was since goods went into it, K.
    pub warmest: Option<Interval>,
    /// Where it stands, if said.
    pub vessel: Option<VesselId>,
    /// Gone: emptied, drained or disposed of.
    pub gone: bool,
    pub(crate) acidity: OnceLock<Option<Acidity>>,
}

impl LiquorState {
    /// Strength of one material, kg/m³.
    pub fn strength(&self, id: MaterialId) -> Option<Interval> {
        let volume = self.volume.as_ref()?.value;
        (volume.best > 0.0).then(|| self.contents.mass(id) / volume)
    }

    /// What a litre of it weighs: everything in it together over its volume, kg/m³. `None` for powder with no water to it.
    pub fn density(&self) -> Option<Interval> {
        if self.contents.water.as_ref().is_some_and(|water| water.value.high <= 0.0) {
            return None;
        }
        let volume = self.volume.as_ref()?.value;
        (volume.low > 0.0).then(|| self.contents.total_mass() / volume)
    }

    /// pH at its temperature, worked out on first call.
    pub fn acidity(&self, substances: &Substances) -> Option<&Acidity> {
        self.acidity
            .get_or_init(|| acidity(&self.contents, substances, self.temperature.value, self.decarbonated))
            .as_ref()
    }
}

/// Time since the first step began, s.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Clock {
    /// By the clock on the wall.
    pub elapsed: Interval,
    /// Spent working, the rest being waiting.
    pub hands_on: Interval,
}
