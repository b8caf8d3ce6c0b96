//! What stands under the last step: the whole time, what to measure, what was supposed.

use serde::Serialize;
use tenter_quantity::Place;
use tenter_rehearse::{Frame, Rehearsal, Slot, Widener};

use crate::pick::Picked;
use crate::rehearsal::waiting;
use crate::source::Source;
use crate::text::safe::safe;
use crate::words;

/// What stands under the last step.
#[derive(Debug, Serialize)]
pub struct Ending {
    /// The whole time.
    pub time: String,
    /// Said when there were too many steps.
    pub cut_short: Option<&'static str>,
    /// Lists under their headings.
    pub lists: Vec<(&'static str, Vec<String>)>,
}

/// The whole time, what to measure, what was supposed.
pub(super) fn ending(picked: &Picked<'_>, rehearsal: &Rehearsal, slots: &[Slot], file: &dyn Source) -> Ending {
    let clock = rehearsal.clock();
    let lists = [
        ("Until when liquors are of use", waiting::lives(picked, rehearsal)),
        ("Wide results; to narrow them, measure", wide(picked, rehearsal, file)),
        ("Supposed", supposed(picked, rehearsal, file)),
    ];
    let mut time =
        format!("In all {}, {} of it work.", words::clock(clock.elapsed.best), words::clock(clock.hands_on.best));
    if let Some(sooner) = waiting::overlapped(rehearsal, slots) {
        time.push_str(&format!(" {sooner}"));
    }
    Ending {
        time,
        cut_short: rehearsal.cut_short.then_some("There are more steps than are carried out; the rest is left out."),
        lists: lists.into_iter().filter(|(_, lines)| !lines.is_empty()).collect(),
    }
}

fn supposed(picked: &Picked<'_>, rehearsal: &Rehearsal, file: &dyn Source) -> Vec<String> {
    let mut told: Vec<(Place, &str)> = Vec::new();
    for note in &rehearsal.notes {
        if !told.contains(&(note.place, note.text)) {
            told.push((note.place, note.text));
        }
    }
    told.into_iter()
        .map(|(place, text)| {
            let line = picked.line(place, file).map(|line| format!("line {line}: ")).unwrap_or_default();
            format!("{line}{text}")
        })
        .collect()
}

/// What to measure where water or alkali of the goods came out too wide to be of use.
fn wide(picked: &Picked<'_>, rehearsal: &Rehearsal, file: &dyn Source) -> Vec<String> {
    let mut told: Vec<(String, String)> = Vec::new();
    for frame in &rehearsal.frames {
        for zone in frame.goods.iter().flat_map(|goods| &goods.zones) {
            let figures = zone.contents.water.iter().cloned().chain(rehearsal.alkali(zone));
            for figure in figures.filter(|figure| figure.value.best > 0.002 * zone.dry.value.best) {
                let input = words::measure(&figure, &|place| picked.written(place, file));
                if let Some(input) = input.filter(|input| told.iter().all(|(_, have)| have != input)) {
                    told.push((picked.written(frame.place, file), input));
                }
            }
        }
    }
    for (from, input) in reacted(picked, rehearsal, file) {
        told.push((from, input));
    }
    told.into_iter().map(|(from, input)| safe(&format!("from {from} on: {input}")).into_owned()).collect()
}

/// What to measure where it is not to be told how far dye has reacted: one line for each kind of input.
fn reacted(picked: &Picked<'_>, rehearsal: &Rehearsal, file: &dyn Source) -> Vec<(String, String)> {
    let mut told: Vec<(Widener, String)> = Vec::new();
    // As it stands before the dye is washed off: what goes on then changes nothing.
    let count = rehearsal.frames.last().map_or(0, |frame| frame.goods.len());
    let ends = (0..count).filter_map(|at| {
        let unwashed = |frame: &&Frame| frame.goods.get(at).is_some_and(|goods| !goods.washed_off);
        let frame = rehearsal.frames.iter().rfind(unwashed)?;
        Some(frame.goods.get(at)?.zones.iter().map(move |zone| (frame, zone)))
    });
    for (frame, zone) in ends.flatten() {
        for (dye, _) in zone.contents.parts.iter().filter(|(id, _)| rehearsal.substances.is_dye(*id)) {
            let Some(kind) = rehearsal.reaction_widened_by(zone, *dye) else { continue };
            if told.iter().all(|(have, _)| *have != kind) {
                told.push((kind, picked.written(frame.place, file)));
            }
        }
    }
    told.into_iter()
        .map(|(kind, from)| {
            let what = match kind {
                Widener::Temperature => {
                    "how far dye has reacted: how warm the wet goods are right after the step and every while on"
                }
                Widener::Time => {
                    "how far dye has reacted: how long the steps take, and with ice when the last of it has melted"
                }
                Widener::Acidity => "how far dye has reacted: the pH of the liquor in the goods, with pH paper",
                Widener::Class => {
                    "how far dye has reacted: nothing at the bench narrows it; a trial swatch of this dye does"
                }
            };
            (from, what.to_owned())
        })
        .collect()
}
