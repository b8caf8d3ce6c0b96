//! What waits for what: when each step could be done at the earliest by one pair of hands, in the order written.
//!
//! The account of the goods takes the steps one after another. Here the waiting of one step (a soak, a batch) runs while the
//! hands go on with steps that need neither its goods nor its liquor.

use tenter_quantity::Interval;

use crate::bench::{Bench, Pass};
use crate::frame::{Frame, Rehearsal};

/// What a step is kept waiting by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Held {
    /// Goods: index into the goods of the frames.
    Goods(usize),
    /// A liquor: index into the liquors of the frames.
    Liquor(usize),
}

/// A wait.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wait {
    /// For what.
    pub held: Held,
    /// The frame whose step holds it.
    pub by: usize,
    /// How long the hands are idle for it, best value, s.
    pub seconds: f64,
}

/// When a step is done.
#[derive(Clone, Debug, PartialEq)]
pub struct Slot {
    /// Its start, s since the first step.
    pub start: Interval,
    /// Its end.
    pub end: Interval,
    /// What it is kept waiting by, the longest wait first.
    pub waits: Vec<Wait>,
}

/// Verbs that need no goods unless the line names them.
const WITHOUT_GOODS: [&str; 21] = [
    "wear", "make", "weigh", "dissolve", "paste", "check", "note", "accept", "repeat", "dispose", "store", "add",
    "top up", "stir", "raise", "heat", "cool", "hold", "boil", "simmer", "drain",
];

/// Verbs of work at the bath last worked with, where none is named.
const AT_THE_BATH: [&str; 10] = ["add", "top up", "stir", "raise", "heat", "cool", "hold", "boil", "simmer", "dispose"];

impl Bench<'_> {
    /// The goods and liquors that are not free while the step just done lasts.
    pub(crate) fn held(&mut self, pass: &Pass<'_>) -> (Vec<usize>, Vec<usize>) {
        let verb = pass.verb();
        let mut liquors = core::mem::take(&mut self.touched);
        if liquors.is_empty() && AT_THE_BATH.contains(&verb) {
            liquors.extend(self.current);
        }
        liquors.sort_unstable();
        liquors.dedup();
        let mut goods =
            if pass.step.goods_named || !WITHOUT_GOODS.contains(&verb) { self.working.clone() } else { Vec::new() };
        for liquor in liquors.iter().filter_map(|at| self.liquors.get(*at)) {
            goods.extend(&liquor.inside);
        }
        goods.sort_unstable();
        goods.dedup();
        (goods, liquors)
    }
}

impl Rehearsal {
    /// When each step can be done at the earliest: one slot a frame. Bounds are those of a day on which everything takes its
    /// shortest, usual, or longest time.
    pub fn schedule(&self) -> Vec<Slot> {
        let mut waits = vec![Vec::new(); self.frames.len()];
        let low = self.day(|time| time.low, None);
        let best = self.day(|time| time.best, Some(&mut waits));
        let high = self.day(|time| time.high, None);
        let one = |at: usize, pick: fn(&(f64, f64)) -> f64| {
            let of = |day: &[(f64, f64)]| day.get(at).map_or(0.0, pick);
            let best = of(&best);
            Interval::new(of(&low).min(best), best, of(&high).max(best))
        };
        waits
            .into_iter()
            .enumerate()
            .map(|(at, waits)| Slot { start: one(at, |slot| slot.0), end: one(at, |slot| slot.1), waits })
            .collect()
    }

    /// Start and end of every step on one day.
    fn day(&self, pick: fn(Interval) -> f64, mut waits: Option<&mut Vec<Vec<Wait>>>) -> Vec<(f64, f64)> {
        let goods = self.frames.iter().map(|frame| frame.goods.len()).max().unwrap_or(0);
        let liquors = self.frames.iter().map(|frame| frame.liquors.len()).max().unwrap_or(0);
        // When it is free again, and the frame that holds it.
        let mut goods_free = vec![(0.0, 0); goods];
        let mut liquors_free = vec![(0.0, 0); liquors];
        let mut hands_free = 0.0_f64;
        let mut day = Vec::with_capacity(self.frames.len());
        for (at, frame) in self.frames.iter().enumerate() {
            let needs = || {
                let goods = frame.holds_goods.iter().map(|index| (Held::Goods(*index), goods_free.get(*index)));
                let liquors = frame.holds_liquors.iter().map(|index| (Held::Liquor(*index), liquors_free.get(*index)));
                goods.chain(liquors).filter_map(|(held, free)| Some((held, *free?)))
            };
            let start = needs().map(|(_, (free, _))| free).fold(hands_free, f64::max);
            if let Some(list) = waits.as_deref_mut().and_then(|waits| waits.get_mut(at)) {
                list.extend(needs().filter(|(_, (free, _))| *free > hands_free + 1.0).map(|(held, (free, by))| Wait {
                    held,
                    by,
                    seconds: free - hands_free,
                }));
                list.sort_by(|a, b| b.seconds.total_cmp(&a.seconds).then(a.held.cmp(&b.held)));
            }
            let (took, work) = lengths(frame, pick);
            let end = start + took;
            hands_free =
                start + if frame.holds_goods.is_empty() && frame.holds_liquors.is_empty() { took } else { work };
            for index in &frame.holds_goods {
                if let Some(slot) = goods_free.get_mut(*index) {
                    *slot = (end, at);
                }
            }
            for index in &frame.holds_liquors {
                if let Some(slot) = liquors_free.get_mut(*index) {
                    *slot = (end, at);
                }
            }
            day.push((start, end));
        }
        day
    }
}

/// How long a step takes and how much of it is work, s.
fn lengths(frame: &Frame, pick: fn(Interval) -> f64) -> (f64, f64) {
    let took = (pick(frame.end.elapsed) - pick(frame.start.elapsed)).max(0.0);
    let work = (pick(frame.end.hands_on) - pick(frame.start.hands_on)).max(0.0);
    (took, work.min(took))
}
