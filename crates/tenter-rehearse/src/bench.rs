//! The bench the recipe is carried out on: everything that stands there, and the pass through the steps.

use std::sync::Arc;

use tenter_quantity::{Figure, Interval, Place};
use tenter_resolve::Recipe;
use tenter_resolve::recipe::{GoodsId, GroupId, LotsUse, Step, ZoneRef};

use crate::contents::Contents;
use crate::event::{Event, EventKind};
use crate::figures::{self, celsius};
use crate::frame::{Frame, Note, Rehearsal};
use crate::ledger::Accounts;
use crate::reaction::Spell;
use crate::starting::at_start;
use crate::state::{Clock, GoodsState, LiquorState, ZoneState};
use crate::substances::Substances;
use crate::verbs;

/// Steps carried out at most; a recipe that repeats more is cut short.
const MOST_STEPS: usize = 4000;
/// More lots than these are not followed one by one.
const MOST_LOTS: u32 = 200;
/// Groups that repeat groups are followed to this depth.
const DEEPEST: u32 = 4;

/// Protective equipment on.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Worn {
    pub respirator: bool,
    pub gloves: bool,
    pub eyes: bool,
}

/// One performance of one step.
#[derive(Clone, Copy)]
pub(crate) struct Pass<'r> {
    pub step: &'r Step,
    /// Steps that follow in the same group.
    pub next: &'r [Step],
    pub group: GroupId,
    pub number: u32,
    pub lot: Option<u32>,
}

impl<'r> Pass<'r> {
    pub(crate) fn verb(&self) -> &'static str {
        self.step.verb.map_or("", |verb| verb.name)
    }
}

pub(crate) struct Bench<'r> {
    pub recipe: &'r Recipe,
    pub substances: Arc<Substances>,
    pub goods: Vec<Arc<GoodsState>>,
    pub liquors: Vec<Arc<LiquorState>>,
    pub mixes: Vec<Arc<LiquorState>>,
    /// Liquors the step worked with so far.
    pub touched: Vec<usize>,
    /// How often goods were taken through each liquor.
    pub uses: Vec<u32>,
    pub clock: Clock,
    pub worn: Worn,
    pub events: Vec<Event>,
    pub frames: Vec<Frame>,
    pub notes: Vec<Note>,
    pub spells: Vec<Spell>,
    pub room: Figure,
    /// The bath last worked with.
    pub current: Option<usize>,
    /// The bath that the step brings to another temperature, and from which, K.
    pub brought: Option<(usize, Interval)>,
    pub place: Place,
    pub time: Figure,
    pub no_time: Figure,
    pub accounts: Accounts,
    pub working: Vec<usize>,
    /// Whether each goods is worked on its back anywhere.
    pub backs: bool,
    /// What ran off, was rinsed out or poured away, for the balance of masses.
    pub drained: Vec<Contents>,
    /// What came out of each material's jar so far, kg.
    pub introduced: Vec<Interval>,
    cut_short: bool,
}

impl<'r> Bench<'r> {
    pub(crate) fn new(recipe: &'r Recipe) -> Self {
        let room = recipe.header.room.clone().unwrap_or_else(|| {
            celsius(16.0, 20.0, 25.0, "room temperature", "no `room` line; common practice, no source")
        });
        let no_time = figures::seconds(Interval::ZERO, "time", "done in passing");
        let backs = recipe.steps().any(|(_, step)| step.zones.iter().any(|zone| zone.zone == ZoneRef::Back));
        let in_lots = recipe.steps().any(|(_, step)| step.repeats_group.is_some() && step.lots.is_some());
        let mut goods = Vec::with_capacity(recipe.goods.len());
        for (index, entry) in recipe.goods.iter().enumerate() {
            match entry.lots.as_ref().filter(|lots| in_lots && (2..=200).contains(&lots.count)) {
                Some(lots) => {
                    for lot in 1..=lots.count {
                        goods.push(Arc::new(at_start(GoodsId(index), entry, Some((lot, lots.pieces_each)), &room)));
                    }
                }
                None => goods.push(Arc::new(at_start(GoodsId(index), entry, None, &room))),
            }
        }
        let steps = recipe.steps().count();
        Self {
            recipe,
            substances: Arc::new(Substances::of(recipe)),
            goods,
            liquors: Vec::new(),
            mixes: Vec::new(),
            touched: Vec::new(),
            uses: Vec::new(),
            clock: Clock::default(),
            worn: Worn::default(),
            events: Vec::with_capacity(steps * 4),
            frames: Vec::with_capacity(steps),
            notes: Vec::new(),
            spells: Vec::new(),
            room,
            current: None,
            brought: None,
            place: Place { block: 0, start: 0, end: 0 },
            time: no_time.clone(),
            no_time,
            accounts: Accounts::default(),
            working: Vec::new(),
            backs,
            drained: Vec::new(),
            introduced: vec![Interval::ZERO; recipe.materials.len()],
            cut_short: false,
        }
    }

    /// Carries out every group in order.
    pub(crate) fn run(mut self) -> Rehearsal {
        // A group that is repeated for the other lots is done for the first one where it stands.
        let mut lots_of: Vec<bool> = vec![false; self.recipe.groups.len()];
        for (_, step) in self.recipe.steps() {
            if let (Some(group), Some(_)) = (step.repeats_group, step.lots)
                && let Some(slot) = lots_of.get_mut(group.0)
            {
                *slot = true;
            }
        }
        let mut passes = vec![0_u32; self.recipe.groups.len()];
        for index in 0..self.recipe.groups.len() {
            let lot = lots_of.get(index).copied().unwrap_or(false).then_some(1);
            self.group(GroupId(index), lot, &mut passes, 0);
        }
        self.finish()
    }

    fn group(&mut self, id: GroupId, lot: Option<u32>, passes: &mut [u32], depth: u32) {
        let recipe = self.recipe;
        let Some(group) = recipe.groups.get(id.0) else {
            return;
        };
        let number = passes.get_mut(id.0).map_or(1, |count| {
            *count += 1;
            *count
        });
        for (at, step) in group.steps.iter().enumerate() {
            if self.frames.len() >= MOST_STEPS {
                self.cut_short = true;
                return;
            }
            let next = group.steps.get(at + 1..).unwrap_or(&[]);
            let pass = Pass { step, next, group: id, number, lot };
            if let Some(again) = step.repeats_group {
                self.perform(&pass, None);
                if depth < DEEPEST && again != id {
                    self.again(again, step, passes, depth);
                }
                continue;
            }
            self.perform(&pass, verbs::of(pass.verb()));
        }
    }

    fn again(&mut self, group: GroupId, step: &Step, passes: &mut [u32], depth: u32) {
        match step.lots {
            Some(lots) => {
                let count =
                    self.recipe.goods.iter().filter_map(|goods| goods.lots.as_ref().map(|lots| lots.count)).max();
                // A lot that is named is gone through even where the goods are in none.
                let (first, last) = match (lots, count) {
                    (LotsUse::One(lot), None) => (lot, lot),
                    _ => lots.repeated(count.unwrap_or(1)),
                };
                for lot in first..=last.min(first.saturating_add(MOST_LOTS)) {
                    self.group(group, Some(lot), passes, depth + 1);
                }
            }
            None => {
                for _ in 0..step.repeats.map_or(1, |(count, _)| count).min(200) {
                    self.group(group, None, passes, depth + 1);
                }
            }
        }
    }

    fn perform(&mut self, pass: &Pass<'r>, action: Option<verbs::Action>) {
        let start = self.clock;
        let first_event = self.events.len();
        self.place = pass.step.place;
        self.time = self.no_time.clone();
        self.touched.clear();
        self.working.clear();
        for (index, state) in self.goods.iter().enumerate() {
            let mine = pass.step.goods.contains(&state.goods);
            if mine && (pass.lot.is_none() || state.lot.is_none() || state.lot == pass.lot) {
                self.working.push(index);
            }
        }
        match action {
            Some(action) => action(self, pass),
            None if pass.step.repeats_group.is_some() => {}
            None => self.note("the verb is not known, so nothing happens here"),
        }
        self.account();
        let (holds_goods, holds_liquors) = self.held(pass);
        self.frames.push(Frame {
            place: pass.step.place,
            group: pass.group,
            pass: pass.number,
            lot: pass.lot,
            verb: pass.step.verb.map(|verb| verb.name),
            start,
            end: self.clock,
            time: self.time.clone(),
            goods: self.goods.clone(),
            liquors: self.liquors.clone(),
            holds_goods,
            holds_liquors,
            drained: self.drained.len(),
            events: first_event..self.events.len(),
        });
    }

    fn finish(self) -> Rehearsal {
        Rehearsal {
            frames: self.frames,
            events: self.events,
            dyeings: self.accounts.done(&self.goods),
            mixes: self.mixes,
            notes: self.notes,
            spells: self.spells,
            substances: self.substances,
            room: self.room,
            drained: self.drained,
            cut_short: self.cut_short,
        }
    }

    pub(crate) fn emit(&mut self, kind: EventKind) {
        self.events.push(Event { place: self.place, frame: self.frames.len(), kind });
    }

    pub(crate) fn note(&mut self, text: &'static str) {
        self.notes.push(Note { place: self.place, text });
    }

    /// The step changes nothing, and why.
    pub(crate) fn no_effect(&mut self, why: &'static str) {
        self.emit(EventKind::NoEffect { why });
        self.note(why);
    }

    /// A goods state to change.
    pub(crate) fn goods_mut(&mut self, index: usize) -> Option<&mut GoodsState> {
        self.goods.get_mut(index).map(Arc::make_mut)
    }

    /// A liquor to change; its pH is worked out anew.
    pub(crate) fn liquor_mut(&mut self, index: usize) -> Option<&mut LiquorState> {
        if !self.touched.contains(&index) {
            self.touched.push(index);
        }
        let liquor = Arc::make_mut(self.liquors.get_mut(index)?);
        liquor.acidity = std::sync::OnceLock::new();
        Some(liquor)
    }

    /// A zone to change; its pH is worked out anew.
    pub(crate) fn zone_mut(&mut self, goods: usize, zone: usize) -> Option<&mut ZoneState> {
        let zone = Arc::make_mut(self.goods_mut(goods)?.zones.get_mut(zone)?);
        zone.acidity = std::sync::OnceLock::new();
        Some(zone)
    }
}
