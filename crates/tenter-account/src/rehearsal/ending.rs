//! What stands under the last step: the whole time, what to measure, what was supposed.

use tenter_quantity::Place;

use crate::rehearsal::text::Page;
use crate::words;

impl Page<'_> {
    /// The whole time, what to measure, what was supposed.
    pub(super) fn end(&mut self) {
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
        let mut told: Vec<(String, String)> = Vec::new();
        for frame in &self.rehearsal.frames {
            for zone in frame.goods.iter().flat_map(|goods| &goods.zones) {
                let figures = zone.contents.water.iter().cloned().chain(self.rehearsal.alkali(zone));
                for figure in figures.filter(|figure| figure.value.best > 0.002 * zone.dry.value.best) {
                    let input = words::measure(&figure, &|place| self.picked.written(place, self.file));
                    if let Some(input) = input.filter(|input| told.iter().all(|(_, have)| have != input)) {
                        told.push((self.picked.written(frame.place, self.file), input));
                    }
                }
            }
        }
        if !told.is_empty() {
            self.text.push_str("\nWide results; to narrow them, measure\n");
        }
        for (from, input) in told {
            self.line(2, &format!("from {from} on: {input}"));
        }
    }
}
