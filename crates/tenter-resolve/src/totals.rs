//! What has to be weighed out, poured and paid, over the whole recipe.

use std::sync::Arc;

use tenter_quantity::{Figure, Place};

use crate::recipe::{GoodsId, MaterialId, MixId};

/// The sums of a recipe.
#[derive(Clone, Debug, Default)]
pub struct Totals {
    /// Dry weight of all goods, kg.
    pub dry_mass: Option<Figure>,
    /// Pieces in all.
    pub pieces: Option<Figure>,
    /// Each goods.
    pub goods: Vec<GoodsTotal>,
    /// Each material but water, in order of first use.
    pub materials: Vec<MaterialTotal>,
    /// Each mix.
    pub mixes: Vec<MixTotal>,
    /// What each step uses in all, in order of steps.
    pub steps: Vec<StepTotal>,
    /// Water needed in all, m³ (mixes, baths, poured water; running water not counted).
    pub water: Option<Figure>,
    /// Cost in all, one entry a currency.
    pub cost: Vec<Cost>,
    /// Materials used that have no price, when some have.
    pub unpriced: Vec<MaterialId>,
}

/// One goods' sums.
#[derive(Clone, Debug)]
pub struct GoodsTotal {
    /// Which.
    pub goods: GoodsId,
    /// Pieces.
    pub pieces: Figure,
    /// Dry weight of all, kg.
    pub dry_mass: Option<Figure>,
}

/// One material's sums.
#[derive(Clone, Debug)]
pub struct MaterialTotal {
    /// Which.
    pub material: MaterialId,
    /// In all, kg. For liquids without a known density see `volume`.
    pub mass: Option<Figure>,
    /// In all, m³, for what is measured as a liquid.
    pub volume: Option<Figure>,
    /// As written, when every use of it was by spoon or cup: the volume of the powder, m³.
    pub spooned: Option<Figure>,
    /// Share of the dry weight of all goods, 0.02 = 2 % owg.
    pub owg: Option<Figure>,
    /// A piece, kg.
    pub per_piece: Option<Figure>,
    /// Lines it is used on.
    pub uses: Vec<Place>,
    /// What it costs.
    pub cost: Option<Cost>,
}

/// One mix's sums.
#[derive(Clone, Debug)]
pub struct MixTotal {
    /// Which.
    pub mix: MixId,
    /// Made each time, m³ (`None`: dry blend).
    pub volume: Option<Figure>,
    /// Mass made each time, kg.
    pub mass: Option<Figure>,
    /// Times made.
    pub times: u32,
    /// Drawn by measured amounts, m³ or kg like what is made; `None` when nothing is.
    pub drawn: Option<Figure>,
    /// Carried off by goods worked in it, m³, at the pickup written or assumed.
    pub carried: Option<Figure>,
    /// Left over, m³ or kg, never below zero.
    pub left: Option<Figure>,
    /// Share of what was made that is used, 1 = all.
    pub used_share: Option<Figure>,
    /// Materials of one making, kg.
    pub ingredients: Vec<(MaterialId, Option<Figure>)>,
}

/// One step's sums.
#[derive(Clone, Debug)]
pub struct StepTotal {
    /// The step's line.
    pub place: Place,
    /// Material and mass (kg) or, for liquids and mixes, volume (m³).
    pub uses: Vec<StepUse>,
}

/// Something a step uses.
#[derive(Clone, Debug)]
pub struct StepUse {
    /// What, by name.
    pub name: Arc<str>,
    /// How much in all, kg or m³.
    pub amount: Figure,
    /// Share of the dry weight of the goods concerned, for solids.
    pub owg: Option<Figure>,
}

/// Money.
#[derive(Clone, Debug)]
pub struct Cost {
    /// ISO 4217 code.
    pub currency: Arc<str>,
    /// In all.
    pub total: Figure,
    /// A piece.
    pub per_piece: Option<Figure>,
}
