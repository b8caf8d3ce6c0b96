//! The rehearsal for people: a paragraph a step, what it changed beneath.

use std::sync::Arc;

use tenter_quantity::{Interval, Place};
use tenter_rehearse::{Frame, GoodsState, LiquorState, Rehearsal, ZoneState};

use crate::account::{names, words};
use crate::files::source::SourceFile;
use crate::output::{Output, WIDTH};
use crate::recipes::pick::Picked;
use crate::text::safe::safe;
use crate::text::wrap::{paragraph, width};

/// Prints each recipe or variant.
pub fn show(accounts: &[(&Picked<'_>, Rehearsal)], file: &SourceFile, output: &mut Output) {
    for (number, (picked, rehearsal)) in accounts.iter().enumerate() {
        if number > 0 {
            output.raw(&format!("\n{}\n\n", "═".repeat(WIDTH)));
        }
        let mut page = Page { picked, rehearsal, file, text: String::new() };
        page.all();
        output.raw(&page.text);
    }
}

struct Page<'a> {
    picked: &'a Picked<'a>,
    rehearsal: &'a Rehearsal,
    file: &'a SourceFile,
    text: String,
}

impl Page<'_> {
    fn all(&mut self) {
        let title = safe(&self.picked.title()).into_owned();
        self.text.push_str(&paragraph(&title, 0, 0, WIDTH));
        self.text.push_str(&format!("{}\n", "─".repeat(width(&title).min(WIDTH))));
        self.line(0, &format!("carried out on paper in a room of {}", self.rehearsal.room.show()));
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

    fn line(&mut self, indent: usize, text: &str) {
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
    }

    fn step(&mut self, frame: &Frame, before: Option<&Frame>) {
        let number = self.picked.line(frame.place, self.file).map(|line| line.to_string()).unwrap_or_default();
        let words = self.picked.words(frame.place);
        self.text.push_str(&paragraph(&safe(&format!("{number:>4}  {words}")), 0, 6, WIDTH).replacen(
            number.as_str(),
            &format!("{number:>4} "),
            usize::from(!number.is_empty()),
        ));
        self.line(6, &clock(frame));
        for (at, liquor) in frame.liquors.iter().enumerate() {
            let had = before.and_then(|before| before.liquors.get(at));
            if had.is_none_or(|had| !Arc::ptr_eq(had, liquor)) && !(liquor.gone && had.is_none_or(|had| had.gone)) {
                self.liquor(liquor);
            }
        }
        for (at, goods) in frame.goods.iter().enumerate() {
            let had = before.and_then(|before| before.goods.get(at));
            let bath = |frame: &Frame, goods: &GoodsState| goods.inside.and_then(|at| frame.liquors.get(at).cloned());
            let stirred = before.zip(had).is_none_or(|(before, had)| {
                let (then, now) = (bath(before, had), bath(frame, goods));
                then.zip(now).is_some_and(|(then, now)| !Arc::ptr_eq(&then, &now))
            });
            if stirred || had.is_none_or(|had| !Arc::ptr_eq(had, goods)) {
                self.goods(frame, goods);
            }
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

    fn goods(&mut self, frame: &Frame, goods: &GoodsState) {
        let name = names::goods(&self.picked.recipe, goods);
        let inside = goods.inside.and_then(|at| frame.liquors.get(at));
        let place = inside.map(|liquor| format!(" (in {})", names::liquor(self.picked, liquor))).unwrap_or_default();
        for zone in &goods.zones {
            let zone = self.rehearsal.as_held(frame, goods, zone);
            let part = names::part(&self.picked.recipe, zone.key);
            let gap = if part.is_empty() { "" } else { ", " };
            self.line(6, &format!("{name}{gap}{part}{place}: {}", self.state(&zone)));
            self.dyes(goods, &zone);
        }
    }

    fn state(&self, zone: &ZoneState) -> String {
        let dry = zone.dry.value;
        let water = zone.contents.water_mass();
        let mut parts = Vec::new();
        if water.best > 0.002 * dry.best {
            let mass = zone.contents.water.as_ref().map_or_else(String::new, tenter_quantity::Figure::show);
            parts.push(format!("{mass} water ({} of its dry weight)", words::per_cent(zone.water_ratio())));
        } else {
            parts.push("dry".to_owned());
        }
        if let Some(alkali) = self.rehearsal.alkali(zone).filter(|alkali| alkali.value.high > 1e-5) {
            let strength = words::rough(alkali.value / dry * 1000.0);
            parts.push(format!("alkali as {} soda ash ({strength} g/kg)", alkali.show()));
        }
        parts.extend(zone.acidity(&self.rehearsal.substances).map(words::ph));
        parts.push(zone.temperature.show());
        parts.join(", ")
    }

    fn dyes(&mut self, goods: &GoodsState, zone: &ZoneState) {
        let table = &self.rehearsal.substances;
        for (id, mass) in zone.contents.parts.iter().filter(|(id, _)| table.is_dye(*id)) {
            if mass.value.high < 1e-6 {
                continue;
            }
            let name = self.picked.recipe.materials.get(id.0).map_or("dye", |material| &material.name);
            let mut line = format!("{name}: {} laid", mass.show());
            if zone.powder {
                line.push_str(", dry powder still");
            } else if let Some(reaction) = self.rehearsal.reaction(zone, *id) {
                line.push_str(&format!(", {}", words::batch(&reaction)));
            }
            if goods.washed_off {
                let loose: Interval = self.rehearsal.loose_dye(zone, *id) * 1000.0;
                line.push_str(&format!(", {} g of it loose still", words::rough(loose)));
            }
            self.line(8, &line);
        }
    }

    fn end(&mut self) {
        let clock = self.rehearsal.clock();
        self.text.push('\n');
        let said =
            format!("In all {}, {} of it work.", words::clock(clock.elapsed.best), words::clock(clock.hands_on.best));
        self.line(0, &said);
        if self.rehearsal.cut_short {
            self.line(0, "There are more steps than are carried out; the rest is left out.");
        }
        self.wide();
        let mut told: Vec<(Place, &str)> = Vec::new();
        for note in &self.rehearsal.notes {
            if !told.contains(&(note.place, note.text)) {
                told.push((note.place, note.text));
            }
        }
        if !told.is_empty() {
            self.text.push_str("\nSupposed\n");
        }
        for (place, text) in told {
            let line = self.picked.line(place, self.file).map(|line| format!("line {line}: ")).unwrap_or_default();
            self.line(2, &format!("{line}{text}"));
        }
    }

    /// What to measure where water or alkali of the goods came out too wide to be of use.
    fn wide(&mut self) {
        let mut told: Vec<String> = Vec::new();
        for frame in &self.rehearsal.frames {
            for zone in frame.goods.iter().flat_map(|goods| &goods.zones) {
                let figures = zone.contents.water.iter().cloned().chain(self.rehearsal.alkali(zone));
                for figure in figures.filter(|figure| figure.value.best > 0.002 * zone.dry.value.best) {
                    if let Some(input) = words::measure(&figure, &|place| self.picked.written(place, self.file))
                        && !told.contains(&input)
                    {
                        told.push(input);
                    }
                }
            }
        }
        if !told.is_empty() {
            self.text.push_str("\nWide results: measure to narrow them\n");
        }
        for text in told {
            self.line(2, &text);
        }
    }
}

fn clock(frame: &Frame) -> String {
    let (took, at) = (frame.time.value.best, frame.end.elapsed.best);
    let work = frame.end.hands_on.best - frame.start.hands_on.best;
    let mut text = format!("clock {}", words::clock(at));
    if at - frame.start.elapsed.best >= 30.0 || took >= 30.0 {
        text.push_str(&format!(", {} for this", words::clock(at - frame.start.elapsed.best)));
        if work >= 30.0 {
            text.push_str(&format!(", {} of it work", words::clock(work)));
        }
    }
    text
}
