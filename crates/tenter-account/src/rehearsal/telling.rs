//! The rehearsal in words: a paragraph a step, what it changed beneath, whatever draws them.

use std::collections::BTreeMap;
use std::sync::Arc;

use serde::Serialize;
use tenter_rehearse::{Frame, GoodsState, LiquorState, Rehearsal, ZoneKey, ZoneState};
use tenter_resolve::recipe::MaterialId;

use crate::number::{Number, minutes};
use crate::pick::Picked;
use crate::rehearsal::ending::{Ending, ending};
use crate::rehearsal::waiting;
use crate::source::Source;
use crate::text::safe::safe;
use crate::{names, words};

/// A recipe or variant carried out on paper. All of its words are safe to show.
#[derive(Debug, Serialize)]
pub struct Account {
    /// The recipe's name, with the variant's.
    pub title: String,
    /// What holds for all of it.
    pub about: String,
    /// Each pass through a group of steps.
    pub groups: Vec<Group>,
    /// What stands under the last step.
    pub ending: Ending,
}

/// One pass through a group of steps.
#[derive(Debug, Serialize)]
pub struct Group {
    /// Its name, the pass and the lot.
    pub heading: String,
    /// The steps done.
    pub steps: Vec<Step>,
}

/// A step done.
#[derive(Debug, Serialize)]
pub struct Step {
    /// The line of the file, from 1.
    pub line: Option<u32>,
    /// What is written there.
    pub text: String,
    /// When it was done with, and how long it took.
    pub clock: String,
    /// When it began, min.
    pub start_min: Number,
    /// When it was done with, min.
    pub end_min: Number,
    /// How much of that was work, min.
    pub work_min: Number,
    /// What it waits for, and when it can be done while other work is left to itself.
    pub waits: Vec<String>,
    /// The liquors it changed.
    pub liquors: Vec<String>,
    /// The goods it changed.
    pub goods: Vec<Goods>,
}

/// What a step changed about one goods.
#[derive(Debug, Serialize)]
pub struct Goods {
    /// A part of the goods, and how it stands: the columns of [`COLUMNS`].
    pub rows: Vec<(String, Cells)>,
    /// What is new about the dyes.
    pub dyes: Vec<String>,
}

/// Cells of a row.
pub type Cells = [String; 4];

/// What the cells hold.
pub const COLUMNS: [&str; 4] = ["water, %", "soda, g/kg", "pH", "°C"];

/// What was last told of a dye on a part: laid and reacted, then what of it is loose.
type DyeWords = (String, String);

/// The account of a recipe.
pub fn account(picked: &Picked<'_>, rehearsal: &Rehearsal, file: &dyn Source) -> Account {
    let mut teller = Teller { picked, rehearsal, file, told: BTreeMap::new(), told_dyes: BTreeMap::new() };
    let mut groups: Vec<Group> = Vec::new();
    let mut before: Option<&Frame> = None;
    let slots = rehearsal.schedule();
    for (at, frame) in rehearsal.frames.iter().enumerate() {
        let same = before
            .is_some_and(|before| (before.group, before.pass, before.lot) == (frame.group, frame.pass, frame.lot));
        let mut step = teller.step(frame, before);
        step.waits = waiting::waits(picked, rehearsal, &slots, at, file);
        match groups.last_mut().filter(|_| same) {
            Some(group) => group.steps.push(step),
            None => groups.push(Group { heading: teller.heading(frame), steps: vec![step] }),
        }
        before = Some(frame);
    }
    Account {
        title: safe(&picked.title()).into_owned(),
        about: format!(
            "Carried out on paper in a room of {}. Water in % of the dry weight, alkali as g soda ash to a kg of dry \
             goods.",
            rehearsal.room.show()
        ),
        groups,
        ending: ending(picked, rehearsal, &slots, file),
    }
}

struct Teller<'a> {
    picked: &'a Picked<'a>,
    rehearsal: &'a Rehearsal,
    file: &'a dyn Source,
    /// What was last told of each part of each goods, and of each dye there.
    told: BTreeMap<(usize, ZoneKey), Cells>,
    told_dyes: BTreeMap<(usize, ZoneKey, MaterialId), DyeWords>,
}

impl Teller<'_> {
    fn heading(&self, frame: &Frame) -> String {
        let group = self.picked.recipe.groups.get(frame.group.0).and_then(|group| group.name.as_ref());
        let mut head = group.map_or_else(|| "Steps".to_owned(), |name| format!("Steps: {}", safe(&name.text)));
        if frame.pass > 1 {
            head.push_str(&format!(", {}. time", frame.pass));
        }
        if let Some(lot) = frame.lot {
            head.push_str(&format!(", lot {lot}"));
        }
        head
    }

    fn step(&mut self, frame: &Frame, before: Option<&Frame>) -> Step {
        let liquors = frame.liquors.iter().enumerate().filter_map(|(at, liquor)| {
            let had = before.and_then(|before| before.liquors.get(at));
            let new = had.is_none_or(|had| !Arc::ptr_eq(had, liquor));
            let told = new && !(liquor.gone && had.is_none_or(|had| had.gone));
            told.then(|| self.liquor(liquor))
        });
        Step {
            line: self.picked.line(frame.place, self.file),
            text: safe(&self.picked.words(frame.place)).into_owned(),
            clock: clock(frame),
            start_min: minutes(frame.start.elapsed),
            end_min: minutes(frame.end.elapsed),
            work_min: minutes(frame.end.hands_on - frame.start.hands_on),
            waits: Vec::new(),
            liquors: liquors.collect(),
            goods: frame.goods.iter().enumerate().map(|(at, goods)| self.goods(at, frame, goods)).collect(),
        }
    }

    fn liquor(&self, liquor: &LiquorState) -> String {
        let name = names::liquor(self.picked, liquor);
        if liquor.gone {
            return safe(&format!("{name}: used up or poured away")).into_owned();
        }
        let mut parts = vec![liquor.volume.as_ref().map_or_else(
            || format!("{} g", words::rough(liquor.contents.total_mass() * 1000.0)),
            tenter_quantity::Figure::show,
        )];
        parts.push(liquor.temperature.show());
        parts.extend(liquor.acidity(&self.rehearsal.substances).map(words::ph));
        // Goods in it take what there is; when it is spent for others stands at the end.
        if let Some(until) = self.rehearsal.useful_until(liquor).filter(|_| liquor.inside.is_empty()) {
            parts.push(format!(
                "dye and alkali together: of use until about {} on the clock, gone by {}",
                words::clock(until.best),
                words::clock(until.high)
            ));
        }
        safe(&format!("{name}: {}", parts.join(", "))).into_owned()
    }

    /// The parts that stand otherwise than they were last told; those that stand alike on one row.
    fn goods(&mut self, at: usize, frame: &Frame, goods: &GoodsState) -> Goods {
        let name = names::goods(&self.picked.recipe, goods);
        let inside = goods.inside.and_then(|at| frame.liquors.get(at));
        let place = inside.map(|liquor| format!(" in {}", names::liquor(self.picked, liquor))).unwrap_or_default();
        let mut alike: Vec<(Vec<ZoneKey>, Cells)> = Vec::new();
        let mut dyes: Vec<String> = Vec::new();
        for zone in &goods.zones {
            let zone = self.rehearsal.as_held(frame, goods, zone);
            let part = names::part(&self.picked.recipe, zone.key);
            let said = self.dyes(at, goods, &zone).join("; ");
            if !said.is_empty() {
                dyes.push(safe(&if part.is_empty() { said } else { format!("{part}: {said}") }).into_owned());
            }
            let cells = self.cells(&zone);
            if self.told.get(&(at, zone.key)) == Some(&cells) {
                continue;
            }
            self.told.insert((at, zone.key), cells.clone());
            match alike.iter_mut().find(|(_, have)| *have == cells) {
                Some((keys, _)) => keys.push(zone.key),
                None => alike.push((vec![zone.key], cells)),
            }
        }
        let row = |(keys, cells): (Vec<ZoneKey>, Cells)| {
            let parts = names::parts(&self.picked.recipe, goods, &keys);
            let gap = if parts.is_empty() { "" } else { ": " };
            (safe(&format!("{name}{place}{gap}{parts}")).into_owned(), cells)
        };
        Goods { rows: alike.into_iter().map(row).collect(), dyes }
    }

    fn cells(&self, zone: &ZoneState) -> Cells {
        let alkali = self.rehearsal.alkali(zone).map(|alkali| alkali.value / zone.dry.value * 1000.0);
        let acidity = zone.acidity(&self.rehearsal.substances);
        [
            words::rough(zone.water_ratio() * 100.0),
            alkali.map_or_else(|| "0".to_owned(), words::rough),
            acidity.map_or_else(|| "-".to_owned(), |acidity| words::bare_ph(acidity.ph)),
            words::degrees(&zone.temperature),
        ]
    }

    /// What is new about the dyes of a part.
    fn dyes(&mut self, at: usize, goods: &GoodsState, zone: &ZoneState) -> Vec<String> {
        let rehearsal = self.rehearsal;
        let table = &rehearsal.substances;
        let mut said = Vec::new();
        for (id, mass) in zone.contents.parts.iter().filter(|(id, mass)| table.is_dye(*id) && mass.value.high > 1e-6) {
            let name = self.picked.recipe.materials.get(id.0).map_or("dye", |material| &material.name);
            let mut laid = format!("{name} {}", mass.show());
            if zone.powder {
                laid.push_str(", dry powder still");
            } else if let Some(reaction) = rehearsal.reaction(zone, *id) {
                laid.push_str(&format!(", {}", words::batch(&reaction)));
            }
            let loose = match rehearsal.loose_dye(zone, *id).high * 1000.0 {
                _ if !goods.washed_off => String::new(),
                high if high < 0.05 => "hardly any loose".to_owned(),
                high => format!("at most {high:.1} g loose"),
            };
            let before = self.told_dyes.insert((at, zone.key, *id), (laid.clone(), loose.clone()));
            let (same, as_loose) = before.map_or((false, false), |(then, was)| (then == laid, was == loose));
            match (same, as_loose || loose.is_empty()) {
                (true, true) => {}
                (true, false) => said.push(format!("{name} {loose}")),
                (false, true) => said.push(laid),
                (false, false) => said.push(format!("{laid}, {loose}")),
            }
        }
        said
    }
}

fn clock(frame: &Frame) -> String {
    let (took, at) = (frame.time.value.best, frame.end.elapsed.best);
    let work = frame.end.hands_on.best - frame.start.hands_on.best;
    let mut text = format!("clock {}", words::clock(at));
    if at - frame.start.elapsed.best >= 30.0 || took >= 30.0 {
        text.push_str(&format!(", {} for this", words::clock(at - frame.start.elapsed.best)));
        if work >= 30.0 {
            let (work, whole) = (words::clock(work), words::clock(at - frame.start.elapsed.best));
            let all = work == whole;
            text.push_str(&if all { ", all of it work".to_owned() } else { format!(", {work} of it work") });
        }
    }
    text
}
