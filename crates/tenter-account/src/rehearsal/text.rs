//! The rehearsal for people: a paragraph a step, what it changed beneath.

use std::collections::BTreeMap;
use std::sync::Arc;

use tenter_rehearse::{Frame, GoodsState, LiquorState, Rehearsal, ZoneKey, ZoneState};
use tenter_resolve::recipe::MaterialId;

use crate::pick::Picked;
use crate::source::Source;
use crate::text::WIDTH;
use crate::text::safe::safe;
use crate::text::wrap::{paragraph, width, wrap};
use crate::{names, words};

/// The account of each recipe or variant.
pub fn text(accounts: &[(&Picked<'_>, Rehearsal)], file: &dyn Source) -> String {
    let mut out = String::new();
    for (number, (picked, rehearsal)) in accounts.iter().enumerate() {
        if number > 0 {
            out.push_str(&format!("\n{}\n\n", "═".repeat(WIDTH)));
        }
        let mut page =
            Page { picked, rehearsal, file, text: String::new(), told: BTreeMap::new(), told_dyes: BTreeMap::new() };
        page.all();
        out.push_str(&page.text);
    }
    out
}

/// Cells of a row.
type Cells = [String; 4];

/// What was last told of a dye on a part: laid and reacted, then what of it is loose.
type DyeWords = (String, String);

pub(super) struct Page<'a> {
    pub(super) picked: &'a Picked<'a>,
    pub(super) rehearsal: &'a Rehearsal,
    pub(super) file: &'a dyn Source,
    pub(super) text: String,
    /// What was last told of each part of each goods, and of each dye there.
    told: BTreeMap<(usize, ZoneKey), Cells>,
    told_dyes: BTreeMap<(usize, ZoneKey, MaterialId), DyeWords>,
}

/// Columns of the state: a part of the goods, then water, alkali, pH and warmth.
const COLUMNS: [usize; 5] = [26, 10, 11, 12, 8];
const INDENT: usize = 4;

impl Page<'_> {
    fn all(&mut self) {
        let title = safe(&self.picked.title()).into_owned();
        self.text.push_str(&paragraph(&title, 0, 0, WIDTH));
        self.text.push_str(&format!("{}\n", "─".repeat(width(&title).min(WIDTH))));
        self.text.push_str(&paragraph(
            &format!(
                "Carried out on paper in a room of {}. Water in % of the dry weight, alkali as g soda ash to a kg of dry \
                 goods.",
                self.rehearsal.room.show()
            ),
            0,
            0,
            WIDTH,
        ));
        let mut before: Option<&Frame> = None;
        for frame in &self.rehearsal.frames {
            let same = before
                .is_some_and(|before| (before.group, before.pass, before.lot) == (frame.group, frame.pass, frame.lot));
            if !same {
                self.group(frame);
            }
            self.step(frame, before);
            before = Some(frame);
        }
        self.end();
    }

    pub(super) fn line(&mut self, indent: usize, text: &str) {
        self.text.push_str(&paragraph(&safe(text), indent, indent + 2, WIDTH));
    }

    fn group(&mut self, frame: &Frame) {
        let group = self.picked.recipe.groups.get(frame.group.0).and_then(|group| group.name.as_ref());
        let mut head = group.map_or_else(|| "Steps".to_owned(), |name| format!("Steps: {}", name.text));
        if frame.pass > 1 {
            head.push_str(&format!(", {}. time", frame.pass));
        }
        if let Some(lot) = frame.lot {
            head.push_str(&format!(", lot {lot}"));
        }
        self.text.push('\n');
        self.line(0, &head);
        self.row("", &["water, %", "soda, g/kg", "pH", "°C"].map(str::to_owned));
    }

    /// A line of the state; a long name takes lines of its own.
    fn row(&mut self, name: &str, cells: &Cells) {
        let [first, rest @ ..] = COLUMNS;
        let names = wrap(&safe(name), first);
        for (number, name) in names.iter().enumerate() {
            let mut line = format!("{}{name}{}", " ".repeat(INDENT), " ".repeat(first.saturating_sub(width(name))));
            if number + 1 == names.len() {
                for (cell, wide) in cells.iter().zip(rest) {
                    line.push_str(&format!("  {}{cell}", " ".repeat(wide.saturating_sub(width(cell)))));
                }
            }
            self.text.push_str(line.trim_end());
            self.text.push('\n');
        }
    }

    fn step(&mut self, frame: &Frame, before: Option<&Frame>) {
        let number = self.picked.line(frame.place, self.file).map(|line| line.to_string()).unwrap_or_default();
        let lines = wrap(&safe(&self.picked.words(frame.place)), WIDTH - 6);
        for (at, line) in lines.iter().enumerate() {
            let number = if at == 0 { number.as_str() } else { "" };
            self.text.push_str(&format!("{number:>4}  {line}\n"));
        }
        self.line(6, &clock(frame));
        for (at, liquor) in frame.liquors.iter().enumerate() {
            let had = before.and_then(|before| before.liquors.get(at));
            if had.is_none_or(|had| !Arc::ptr_eq(had, liquor)) && !(liquor.gone && had.is_none_or(|had| had.gone)) {
                self.liquor(liquor);
            }
        }
        for (at, goods) in frame.goods.iter().enumerate() {
            self.goods(at, frame, goods);
        }
    }

    fn liquor(&mut self, liquor: &LiquorState) {
        let name = names::liquor(self.picked, liquor);
        if liquor.gone {
            self.line(6, &format!("{name}: used up or poured away"));
            return;
        }
        let mut parts = vec![liquor.volume.as_ref().map_or_else(
            || format!("{} g", words::rough(liquor.contents.total_mass() * 1000.0)),
            tenter_quantity::Figure::show,
        )];
        parts.push(liquor.temperature.show());
        parts.extend(liquor.acidity(&self.rehearsal.substances).map(words::ph));
        if let Some(until) = self.rehearsal.useful_until(liquor) {
            parts.push(format!(
                "dye and alkali together: of use until about {} on the clock, gone by {}",
                words::clock(until.best),
                words::clock(until.high)
            ));
        }
        self.line(6, &format!("{name}: {}", parts.join(", ")));
    }

    /// The parts that stand otherwise than they were last told; those that stand alike on one row.
    fn goods(&mut self, at: usize, frame: &Frame, goods: &GoodsState) {
        let name = names::goods(&self.picked.recipe, goods);
        let inside = goods.inside.and_then(|at| frame.liquors.get(at));
        let place = inside.map(|liquor| format!(" in {}", names::liquor(self.picked, liquor))).unwrap_or_default();
        let mut rows: Vec<(Vec<ZoneKey>, Cells)> = Vec::new();
        let mut dyes: Vec<String> = Vec::new();
        for zone in &goods.zones {
            let zone = self.rehearsal.as_held(frame, goods, zone);
            let part = names::part(&self.picked.recipe, zone.key);
            let said = self.dyes(at, goods, &zone).join("; ");
            if !said.is_empty() {
                dyes.push(if part.is_empty() { said } else { format!("{part}: {said}") });
            }
            let cells = self.cells(&zone);
            if self.told.get(&(at, zone.key)) == Some(&cells) {
                continue;
            }
            self.told.insert((at, zone.key), cells.clone());
            match rows.iter_mut().find(|(_, have)| *have == cells) {
                Some((keys, _)) => keys.push(zone.key),
                None => rows.push((vec![zone.key], cells)),
            }
        }
        for (keys, cells) in rows {
            let parts = names::parts(&self.picked.recipe, goods, &keys);
            let gap = if parts.is_empty() { "" } else { ": " };
            self.row(&format!("{name}{place}{gap}{parts}"), &cells);
        }
        for said in dyes {
            self.line(INDENT + 2, &said);
        }
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
