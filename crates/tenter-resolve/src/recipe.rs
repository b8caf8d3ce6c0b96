//! The recipe: names bound, units reduced, every number an interval that can say where it came from.
//!
//! All quantities are SI (kg, m³, K, s) inside [`Figure`]s; each keeps the unit to show it in.

use std::sync::Arc;

use tenter_quantity::{Dimension, Figure, Place, Quantity, Unit};
use tenter_reference as reference;

use crate::problem::Problem;
use crate::totals::Totals;

/// A name as written, and where.
#[derive(Clone, Debug, PartialEq)]
pub struct Named {
    /// The spelling of the declaration, blanks tidied.
    pub text: Arc<str>,
    /// Where it is declared.
    pub place: Place,
}

macro_rules! index_type {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub struct $name(pub usize);
    };
}
index_type!(
    /// Index into [`Recipe::goods`].
    GoodsId
);
index_type!(
    /// Index into [`Recipe::materials`].
    MaterialId
);
index_type!(
    /// Index into [`Recipe::mixes`].
    MixId
);
index_type!(
    /// Index into [`Recipe::layouts`].
    LayoutId
);
index_type!(
    /// Index into [`Recipe::vessels`].
    VesselId
);
index_type!(
    /// Index into [`Recipe::groups`].
    GroupId
);

/// One recipe (or one variant of it), or the definitions of a shared file.
#[derive(Clone, Debug)]
pub struct Recipe {
    /// Its name; `None` for a shared file without a `recipe` block.
    pub name: Option<Named>,
    /// Set when this is a variant of the recipe above.
    pub variant: Option<Named>,
    /// What the `recipe` block says.
    pub header: Header,
    /// The goods, in order of declaration.
    pub goods: Vec<Goods>,
    /// Every material declared or used, in order of first appearance.
    pub materials: Vec<Material>,
    /// The mixes, in order of declaration.
    pub mixes: Vec<Mix>,
    /// The layouts.
    pub layouts: Vec<Layout>,
    /// The vessels.
    pub vessels: Vec<Vessel>,
    /// The groups of steps, in order.
    pub groups: Vec<StepGroup>,
    /// What was written down when it was done.
    pub logs: Vec<Log>,
    /// What is in stock.
    pub shelf: Vec<ShelfLine>,
    /// Findings the writer accepts.
    pub acceptances: Vec<Acceptance>,
    /// What could not be read, bound or reckoned.
    pub problems: Vec<Problem>,
    /// Amounts to weigh, water, cost.
    pub totals: Totals,
}

impl Recipe {
    /// The material behind an index.
    pub fn material(&self, id: MaterialId) -> &Material {
        &self.materials[id.0]
    }

    /// The mix behind an index.
    pub fn mix(&self, id: MixId) -> &Mix {
        &self.mixes[id.0]
    }

    /// All steps with the group they stand in, in the order written.
    pub fn steps(&self) -> impl Iterator<Item = (GroupId, &Step)> {
        self.groups
            .iter()
            .enumerate()
            .flat_map(|(index, group)| group.steps.iter().map(move |step| (GroupId(index), step)))
    }

    /// Whether it is something to carry out, not only definitions for other files.
    pub fn is_recipe(&self) -> bool {
        self.name.is_some()
    }
}

/// What the `recipe` block says.
#[derive(Clone, Debug, Default)]
pub struct Header {
    /// Who wrote it.
    pub by: Option<Named>,
    /// Licence.
    pub licence: Option<Named>,
    /// Version.
    pub version: Option<Named>,
    /// What it is.
    pub about: Option<Named>,
    /// What or whom it is for.
    pub purpose: Option<Named>,
    /// Notes of the `recipe` block.
    pub notes: Vec<Named>,
    /// Depth aimed at.
    pub depth: Option<(Depth, Place)>,
    /// Evenness aimed at.
    pub shade: Option<(Evenness, Place)>,
    /// Room temperature, K.
    pub room: Option<Figure>,
    /// Water hardness, kg CaCO₃ per m³.
    pub hardness: Option<Figure>,
    /// Height above the sea, m.
    pub altitude: Option<Figure>,
    /// Country of the measures.
    pub measures: Option<(tenter_quantity::System, Place)>,
}

/// Depth of shade aimed at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs)]
pub enum Depth {
    Pale,
    Medium,
    Dark,
    FullBlack,
}

/// Evenness of the shade aimed at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs)]
pub enum Evenness {
    Level,
    Mottled,
}

/// What is dyed.
#[derive(Clone, Debug)]
pub struct Goods {
    /// Its name.
    pub name: Named,
    /// How many pieces; written or assumed one.
    pub pieces: Figure,
    /// Lots they are done in, if any: count and pieces in each.
    pub lots: Option<Lots>,
    /// Dry weight of one piece, kg.
    pub piece_mass: Option<Figure>,
    /// Dry weight of all, kg.
    pub dry_mass: Option<Figure>,
    /// Fibres and their shares (fraction of the weight), largest first as written.
    pub fibres: Vec<FibreShare>,
    /// Sewing thread, if said.
    pub thread: Option<FibreShare>,
    /// Trim, if said.
    pub trim: Option<Named>,
    /// State at the start.
    pub state: GoodsState,
    /// Colour if dyed before.
    pub colour: Option<([u8; 3], Place)>,
    /// Price of one piece.
    pub price: Option<Figure>,
}

/// Goods split into lots.
#[derive(Clone, Debug, PartialEq)]
pub struct Lots {
    /// How many lots.
    pub count: u32,
    /// Pieces in each.
    pub pieces_each: u32,
    /// Where it is written.
    pub place: Place,
}

/// A fibre and its share.
#[derive(Clone, Debug)]
pub struct FibreShare {
    /// As written.
    pub name: Named,
    /// The reference entry, if known.
    pub fibre: Option<&'static reference::Fibre>,
    /// Share of the weight, 0 to 1.
    pub share: Figure,
}

/// The state goods are in at the start.
#[derive(Clone, Debug, Default)]
pub struct GoodsState {
    /// Where it is written.
    pub place: Option<Place>,
    /// `Some(true)` scoured or prepared for dyeing, `Some(false)` unwashed, `None` not said.
    pub scoured: Option<bool>,
    /// Water held as a share of the dry weight; `None` when only a word (`damp`, `dry`) was given.
    pub pickup: Option<Figure>,
    /// The word for wetness that was given.
    pub wetness: Option<Wetness>,
}

/// Words for wetness.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs)]
pub enum Wetness {
    Dry,
    Damp,
    Wet,
}

/// A dye or chemical: the reference entry, what the file says of it, or both.
#[derive(Clone, Debug)]
pub struct Material {
    /// Name shown: that of the declaration, or the reference entry's.
    pub name: Arc<str>,
    /// Declaration in the file, if any.
    pub declared: Option<Place>,
    /// Place of its first use or declaration.
    pub place: Place,
    /// Reference entry of a chemical.
    pub reference: Option<&'static reference::Material>,
    /// Reference entry of a dye by Colour Index generic name.
    pub dye: Option<&'static reference::Dye>,
    /// Dye class, declared or from the Colour Index name.
    pub class: Option<&'static reference::DyeClass>,
    /// Where the class is written, if it is.
    pub class_place: Option<Place>,
    /// Whether it is a dye at all.
    pub is_dye: bool,
    /// Bulk density of the powder or density of the liquid, kg/m³.
    pub density: Option<Figure>,
    /// Share of active substance by weight, 0 to 1, if said or known (vinegar, bleach, peroxide).
    pub purity: Option<Figure>,
    /// Whether it is measured as a liquid.
    pub liquid: bool,
    /// Price for a kilogram (or a cubic metre for liquids priced by volume).
    pub price: Option<Price>,
    /// Screen colour, if declared.
    pub colour: Option<([u8; 3], Place)>,
}

impl Material {
    /// The role it plays, from the reference entry; a dye is a dye.
    pub fn role(&self) -> reference::Role {
        if self.is_dye {
            reference::Role::Dye
        } else {
            self.reference.map_or(reference::Role::Other, |entry| entry.role)
        }
    }

    /// Whether it is plain water (not ice).
    pub fn is_water(&self) -> bool {
        self.role() == reference::Role::Water
    }

    /// Whether dry handling of it raises dust that harms.
    pub fn dusty(&self) -> bool {
        !self.liquid && (self.is_dye || self.reference.is_some_and(|entry| entry.dust))
    }
}

/// A price.
#[derive(Clone, Debug)]
pub struct Price {
    /// ISO 4217 code.
    pub currency: Arc<str>,
    /// Money per kg or per m³.
    pub rate: Figure,
    /// Per volume instead of per mass.
    pub by_volume: bool,
}

/// A prepared liquor, bottle, paste or dry blend.
#[derive(Clone, Debug)]
pub struct Mix {
    /// Its name.
    pub name: Named,
    /// What goes in, in order.
    pub ingredients: Vec<Ingredient>,
    /// `make up to`.
    pub made_up_to: Option<Figure>,
    /// Water put in (with what other mixes bring), m³; what g/L refers to.
    pub liquid_in: Option<Figure>,
    /// Volume made, m³; `None` for a dry blend.
    pub volume: Option<Figure>,
    /// Mass made, kg.
    pub mass: Option<Figure>,
    /// Temperature of its liquid when made, K, if said.
    pub temperature: Option<Figure>,
    /// `rest for …`, s.
    pub rest: Option<Figure>,
    /// `keep for …`, s.
    pub keep: Option<Figure>,
    /// How many times it is made in the recipe as a whole.
    pub times_made: u32,
    /// Whether the steps make it explicitly (`make night bottle`).
    pub made_by_step: Option<Place>,
    /// Brought by a shared file, or standing before the first recipe of this one.
    pub shared: bool,
    /// What the steps and other mixes take out of it.
    pub draws: Vec<Draw>,
}

impl Mix {
    /// Whether it holds no liquid.
    pub fn is_dry(&self) -> bool {
        self.volume.is_none()
    }
}

/// Something taken out of a mix.
#[derive(Clone, Debug)]
pub struct Draw {
    /// Where it is written (the line).
    pub place: Place,
    /// Volume, m³ (or mass, kg, of a dry blend or paste), all pieces together; `None`: used as a bath, goods carry off their pickup.
    pub amount: Option<Figure>,
    /// The same weighed, kg, where it is written as a weight: a paste is weighed out, whatever room it takes.
    pub weighed: Option<Figure>,
    /// Used whole, as a bath or emptied into one.
    pub whole: bool,
}

/// One amount of one material (or mix) in a mix or step.
#[derive(Clone, Debug)]
pub struct Ingredient {
    /// The whole phrase, amount and name.
    pub place: Place,
    /// What.
    pub what: Substance,
    /// Where its name stands.
    pub name_place: Place,
    /// How much; `None` when left out.
    pub amount: Option<Amount>,
    /// Its temperature, K, if said.
    pub temperature: Option<Figure>,
    /// Does not scale.
    pub fixed: bool,
}

/// What an amount is an amount of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs)]
pub enum Substance {
    Material(MaterialId),
    Mix(MixId),
}

/// An amount, as written and as resolved.
#[derive(Clone, Debug)]
pub struct Amount {
    /// Where number and unit stand.
    pub place: Place,
    /// As written: SI value, dimension, basis.
    pub written: Quantity,
    /// Unit it was written in.
    pub unit: &'static Unit,
    /// Measured by a spoon, cup or other volume although it is a solid.
    pub by_volume_of_solid: bool,
    /// Absolute mass in all, kg.
    pub mass: Option<Figure>,
    /// Absolute volume in all, m³ (liquids; bulk volume of a spooned powder).
    pub volume: Option<Figure>,
}

impl Amount {
    /// Dimension as written.
    pub fn dimension(&self) -> Dimension {
        self.written.dimension
    }
}

/// How goods are folded or bound, and the zones that gives.
#[derive(Clone, Debug)]
pub struct Layout {
    /// Its name.
    pub name: Named,
    /// Zones with their shares.
    pub zones: Vec<Zone>,
    /// Pairs of zones that lie side by side (indices into `zones`).
    pub beside: Vec<(usize, usize)>,
}

/// A part of the piece.
#[derive(Clone, Debug)]
pub struct Zone {
    /// Its name.
    pub name: Named,
    /// Share of the area, 0 to 1, if said.
    pub share: Option<Figure>,
}

/// A pot, tub, bottle, sprayer.
#[derive(Clone, Debug)]
pub struct Vessel {
    /// Its name.
    pub name: Named,
    /// What it holds, m³.
    pub holds: Option<Figure>,
    /// Material, as written.
    pub material: Option<Named>,
    /// Hottest it is rated for, K.
    pub rated: Option<Figure>,
    /// Whether food ever touches it, if said.
    pub food: Option<(bool, Place)>,
    /// Whether it is closed while in use.
    pub closed: Option<Place>,
}

/// A named group of steps.
#[derive(Clone, Debug)]
pub struct StepGroup {
    /// Its name, if it has one.
    pub name: Option<Named>,
    /// The header's place.
    pub place: Place,
    /// The steps.
    pub steps: Vec<Step>,
}

/// One step.
#[derive(Clone, Debug)]
pub struct Step {
    /// The whole line.
    pub place: Place,
    /// The verb, as a row of the table; `None` if unknown.
    pub verb: Option<&'static tenter_syntax::Verb>,
    /// Where the verb stands.
    pub verb_place: Place,
    /// The goods concerned: those named, else those folded as its zones say, else all.
    pub goods: Vec<GoodsId>,
    /// Whether the line names goods.
    pub goods_named: bool,
    /// Amounts applied directly: `9 g/piece lagoon`, `700 mL/piece water`, `from night bottle`.
    pub applied: Vec<Ingredient>,
    /// Where they go.
    pub zones: Vec<ZoneUse>,
    /// The liquor or vessel worked in (`in …`), added to (`to/into …`).
    pub liquor: Option<Liquor>,
    /// Vessel or mix drawn from (`from …`).
    pub source: Option<Source>,
    /// Vessel that the liquor stands in or goes into (`soak … in soda soak in tub`, `store bottle in jar`).
    pub vessel: Option<(VesselId, Place)>,
    /// Ingredients of `with` when the step has a bath, and what they are put into.
    pub with: Vec<Ingredient>,
    /// Layout named by `as`.
    pub layout: Option<LayoutId>,
    /// Group named by `repeat`.
    pub repeats_group: Option<GroupId>,
    /// Lots it is for.
    pub lots: Option<LotsUse>,
    /// How long, s.
    pub duration: Option<Figure>,
    /// Interval of `every` or between portions, s.
    pub interval: Option<Figure>,
    /// Delay of `after`, s.
    pub delay: Option<Figure>,
    /// Temperature held, K.
    pub temperature: Option<Figure>,
    /// Temperature started from, K.
    pub from_temperature: Option<Figure>,
    /// Temperature aimed at (`to 60 °C`), K.
    pub to_temperature: Option<Figure>,
    /// Water held aimed at, share of dry weight.
    pub pickup: Option<Figure>,
    /// Fresh liquor this many times.
    pub repeats: Option<(u32, Place)>,
    /// Added in this many portions.
    pub portions: Option<(u32, Place)>,
    /// How it is covered.
    pub cover: Option<(Cover, Place)>,
    /// `until …`.
    pub until: Option<Named>,
    /// Words kept as text: protective equipment, tools.
    pub words: Vec<Named>,
}

/// Where on the goods.
#[derive(Clone, Debug, PartialEq)]
pub struct ZoneUse {
    /// Where it is written.
    pub place: Place,
    /// Which.
    pub zone: ZoneRef,
}

/// A zone everybody has, or one of a layout.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[allow(missing_docs)]
pub enum ZoneRef {
    Front,
    Back,
    BothSides,
    AllOver,
    /// On the ice lying over the goods.
    Ice,
    /// Zone of a layout.
    Of(LayoutId, usize),
}

/// What goods are worked in.
#[derive(Clone, Debug)]
pub struct Liquor {
    /// Where it is written.
    pub place: Place,
    /// What it is.
    pub kind: LiquorKind,
}

/// Kinds of liquor.
#[derive(Clone, Debug)]
pub enum LiquorKind {
    /// A mix by its name.
    Mix(MixId),
    /// Written in place.
    Bath(Vec<Ingredient>),
    /// A vessel and what is in it.
    Vessel(VesselId),
    /// Tap water by a word: cold, warm, hot, boiling; temperature assumed.
    Water(Figure),
    /// The liquor the goods are in already: `to bath`.
    Current,
    /// Running or unnamed, as words.
    Words,
}

/// What is drawn from.
#[derive(Clone, Debug, PartialEq)]
#[allow(missing_docs)]
pub enum Source {
    Mix(MixId),
    Vessel(VesselId),
}

/// Lots a step or repetition is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs)]
pub enum LotsUse {
    Each,
    One(u32),
    /// That lot and all after it: the last lot as written, in a recipe scaled to other lots.
    From(u32),
}

impl LotsUse {
    /// First and last lot a repetition goes through, of so many in all; none where the first is beyond the last.
    #[must_use]
    pub const fn repeated(self, count: u32) -> (u32, u32) {
        match self {
            // The first pass is where the group stands.
            Self::Each => (2, count),
            Self::One(lot) if lot > count => (lot, 0),
            Self::One(lot) => (lot, lot),
            Self::From(lot) => (lot, count),
        }
    }
}

/// How goods are covered while they wait.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs)]
pub enum Cover {
    Covered,
    UnderPlastic,
    SealedBag,
    Uncovered,
}

/// One time it was really done.
#[derive(Clone, Debug)]
pub struct Log {
    /// The date as written.
    pub date: Named,
    /// Its lines: key and text.
    pub entries: Vec<(Arc<str>, Named)>,
}

/// What is in stock.
#[derive(Clone, Debug)]
pub struct ShelfLine {
    /// The line.
    pub place: Place,
    /// What and how much.
    pub item: Ingredient,
    /// Bought on (ISO date), if said.
    pub bought: Option<Named>,
    /// Paid in all.
    pub paid: Option<(Arc<str>, Figure)>,
}

/// `accept RULE because REASON`.
#[derive(Clone, Debug)]
pub struct Acceptance {
    /// The line.
    pub place: Place,
    /// Rule named, folded.
    pub rule: Named,
    /// The reason, if given.
    pub reason: Option<Named>,
    /// What it is about.
    pub scope: Scope,
}

/// What an acceptance covers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Scope {
    /// The line above it.
    Line(Place),
    /// The block it stands first in.
    Block(u32),
    /// The recipe.
    Recipe,
}
