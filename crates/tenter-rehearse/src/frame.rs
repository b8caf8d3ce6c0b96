//! The account of the rehearsal: one frame a performed step.

use std::sync::Arc;

use tenter_quantity::{Figure, Interval, Place};
use tenter_resolve::recipe::{GoodsId, GroupId, MaterialId, MixId};

use crate::contents::Contents;
use crate::dyeing::Dyeing;
use crate::event::Event;
use crate::exhaustion::held_by_fibre;
use crate::figures::{PRACTICE, share, worked_share};
use crate::reaction::{Reaction, Spell, Widener, reaction, widened_by};
use crate::state::{Clock, GoodsState, LiquorName, LiquorState, ZoneState};
use crate::substances::Substances;

/// How everything stands after a step. Parts that a step did not touch are shared with the frame before.
#[derive(Clone, Debug)]
pub struct Frame {
    /// The step's line.
    pub place: Place,
    /// The group it stands in.
    pub group: GroupId,
    /// Which pass through the group, from 1.
    pub pass: u32,
    /// The lot it was done for, if for one.
    pub lot: Option<u32>,
    /// The verb; `None` if unknown.
    pub verb: Option<&'static str>,
    /// Clock at the start of the step.
    pub start: Clock,
    /// Clock at its end.
    pub end: Clock,
    /// How long it took, s.
    pub time: Figure,
    /// The goods, each lot by itself.
    pub goods: Vec<Arc<GoodsState>>,
    /// The liquors made so far.
    pub liquors: Vec<Arc<LiquorState>>,
    /// Goods that are not free for anything else while the step lasts: indices into `goods`.
    pub holds_goods: Vec<usize>,
    /// Liquors worked in, drawn from or added to: indices into `liquors`.
    pub holds_liquors: Vec<usize>,
    /// How many entries of [`Rehearsal::drained`] there were at its end.
    pub drained: usize,
    /// Its events: a stretch of [`Rehearsal::events`].
    pub events: core::ops::Range<usize>,
}

/// Something the rehearsal could not do or had to suppose.
#[derive(Clone, Debug, PartialEq)]
pub struct Note {
    /// Where.
    pub place: Place,
    /// What, in a plain sentence.
    pub text: &'static str,
}

/// The recipe carried out on paper.
#[derive(Clone, Debug)]
pub struct Rehearsal {
    /// One frame a performed step, in order.
    pub frames: Vec<Frame>,
    /// What happened, in order.
    pub events: Vec<Event>,
    /// What became of each dye on each zone.
    pub dyeings: Vec<Dyeing>,
    /// Every liquor as it was when made, in order of making.
    pub mixes: Vec<Arc<LiquorState>>,
    /// What was supposed or could not be done.
    pub notes: Vec<Note>,
    /// Histories of reaction, linked backwards.
    pub spells: Vec<Spell>,
    /// What is known of each material.
    pub substances: Arc<Substances>,
    /// Room temperature, K.
    pub room: Figure,
    /// What ran off, was rinsed out, evaporated with nothing in it, or was poured away, in order.
    pub drained: Vec<Contents>,
    /// Steps left out because there were too many.
    pub cut_short: bool,
}

impl Rehearsal {
    /// The last frame of the step at a place (a step may be done several times).
    pub fn frame_at(&self, place: Place) -> Option<&Frame> {
        self.frames.iter().rev().find(|frame| frame.place == place)
    }

    /// All frames of the step at a place, in order.
    pub fn frames_at(&self, place: Place) -> impl Iterator<Item = &Frame> {
        self.frames.iter().filter(move |frame| frame.place == place)
    }

    /// The events of a frame.
    pub fn events_of(&self, frame: &Frame) -> &[Event] {
        self.events.get(frame.events.clone()).unwrap_or(&[])
    }

    /// A mix as it was when first made.
    pub fn mix(&self, id: MixId) -> Option<&Arc<LiquorState>> {
        self.mixes.iter().find(|liquor| liquor.name == LiquorName::Mix(id))
    }

    /// A zone as it would be if its goods were lifted at that moment: in a bath it holds the bath's liquor (150 to 300 % of its
    /// weight; common practice, no source) besides what is on it. Outside a bath it is what it is.
    pub fn as_held(&self, frame: &Frame, goods: &GoodsState, zone: &Arc<ZoneState>) -> Arc<ZoneState> {
        let bath = goods.inside.and_then(|at| frame.liquors.get(at));
        let Some((bath, water)) = bath.and_then(|bath| Some((bath, bath.contents.water.clone()?))) else {
            return Arc::clone(zone);
        };
        let held = share(1.5, 2.2, 3.0, "water held in a bath", PRACTICE);
        let part = worked_share(
            "{0} of {1} out of {2}",
            held.value * zone.dry.value / water.value,
            vec![("", held), ("dry goods", zone.dry.clone()), ("", water)],
        );
        let mut contents = zone.contents.clone();
        contents.add(bath.contents.share(&part));
        Arc::new(ZoneState {
            contents,
            temperature: bath.temperature.clone(),
            decarbonated: bath.decarbonated,
            acidity: std::sync::OnceLock::new(),
            ..(**zone).clone()
        })
    }

    /// Usable alkali of a zone as kg of soda ash, with its story.
    pub fn alkali(&self, zone: &ZoneState) -> Option<Figure> {
        self.substances.alkali_as_soda_ash(&zone.contents)
    }

    /// How far a dye on a zone has reacted by the moment of that state; `None` for what is not a reactive dye.
    pub fn reaction(&self, zone: &ZoneState, dye: MaterialId) -> Option<Reaction> {
        reaction(&self.spells, zone.spell, dye, &self.substances)
    }

    /// What to measure to narrow how far a dye on a zone has reacted; `None` where that is narrow enough to be of use.
    pub fn reaction_widened_by(&self, zone: &ZoneState, dye: MaterialId) -> Option<Widener> {
        widened_by(&self.spells, zone.spell, dye, &self.substances)
    }

    /// How far the dye of an account has reacted in the end.
    pub fn reacted(&self, dyeing: &Dyeing) -> Option<Reaction> {
        reaction(&self.spells, dyeing.spell, dyeing.dye, &self.substances)
    }

    /// Dye on a zone that is not fixed and not washed off, kg: low where the batch went well.
    pub fn loose_dye(&self, zone: &ZoneState, dye: MaterialId) -> Interval {
        let mass = zone.contents.mass(dye);
        let family = self.substances.get(dye).and_then(|substance| substance.family);
        let fixed = match self.reaction(zone, dye) {
            Some(reaction) => reaction.fixed,
            None => family.map_or(Interval::ZERO, held_by_fibre),
        };
        mass * (Interval::ONE - fixed).clamp_low(0.0) * zone.loose
    }

    /// The whole time, s.
    pub fn clock(&self) -> Clock {
        self.frames.last().map_or_else(Clock::default, |frame| frame.end)
    }

    /// The states of goods after the last step.
    pub fn last_goods(&self, id: GoodsId) -> impl Iterator<Item = &Arc<GoodsState>> {
        self.frames.last().into_iter().flat_map(|frame| frame.goods.iter()).filter(move |state| state.goods == id)
    }
}
