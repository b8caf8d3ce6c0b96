//! How everything stands after the step on a line, or how the mix on it comes out.

use tenter_account::text::WIDTH;
use tenter_account::text::safe::safe;
use tenter_account::text::table::{Edge, Table};
use tenter_account::text::wrap::paragraph;
use tenter_account::{names, words};
use tenter_quantity::Place;
use tenter_rehearse::{Frame, GoodsState, LiquorState, ZoneKey, ZoneState, clock_line};
use tenter_resolve::recipe::MixId;

use crate::analysis::FileAnalysis;
use crate::sheets::Chosen;

/// The line and what is to be told of it.
pub(super) fn at(analysis: &FileAnalysis, chosen: &Chosen<'_>) -> Option<(u32, String)> {
    step(analysis, chosen).or_else(|| mix(analysis, chosen))
}

/// The step on the line, else the last one above it in its group.
fn step(analysis: &FileAnalysis, chosen: &Chosen<'_>) -> Option<(u32, String)> {
    let (block, at) = chosen.at;
    let above = |place: Place| place.block == block && place.start <= at;
    let frames = chosen.rehearsal.frames.iter();
    let frame = frames
        .filter(|frame| above(frame.place))
        .max_by_key(|frame| (frame.place.start, frame.end.elapsed.best as u64))?;
    let line = chosen.picked.line(frame.place, &*analysis.file)?;
    let mut out = paragraph(&safe(&format!("After line {line}: {}", chosen.picked.words(frame.place))), 0, 2, WIDTH);
    out.push_str(&format!("  {}\n", clock_line(&frame.end)));
    out.push_str(&goods(chosen, frame));
    for liquor in frame.liquors.iter().filter(|liquor| !liquor.gone) {
        out.push_str(&paragraph(&safe(&told(chosen, liquor)), 2, 4, WIDTH));
    }
    Some((line, out))
}

fn goods(chosen: &Chosen<'_>, frame: &Frame) -> String {
    let recipe = &chosen.picked.recipe;
    let mut table = Table::new(&[
        ("", Edge::Left),
        ("water, %", Edge::Right),
        ("soda, g/kg", Edge::Right),
        ("pH", Edge::Right),
        ("°C", Edge::Right),
    ]);
    for goods in &frame.goods {
        let mut rows: Vec<(Vec<ZoneKey>, Vec<String>, Vec<String>)> = Vec::new();
        for zone in &goods.zones {
            let zone = chosen.rehearsal.as_held(frame, goods, zone);
            let (cells, dyes) = (cells(chosen, &zone), dyes(chosen, goods, &zone));
            match rows.iter_mut().find(|(_, have, other)| *have == cells && *other == dyes) {
                Some((keys, ..)) => keys.push(zone.key),
                None => rows.push((vec![zone.key], cells, dyes)),
            }
        }
        for (keys, cells, dyes) in rows {
            let part = names::parts(recipe, goods, &keys);
            let gap = if part.is_empty() { "" } else { ", " };
            let mut row = vec![safe(&format!("{}{gap}{part}", names::goods(recipe, goods))).into_owned()];
            row.extend(cells);
            table.row(row, dyes);
        }
    }
    if table.is_empty() { String::new() } else { table.render(2, WIDTH) }
}

fn cells(chosen: &Chosen<'_>, zone: &ZoneState) -> Vec<String> {
    let rehearsal = chosen.rehearsal;
    let alkali = rehearsal.alkali(zone).map(|alkali| alkali.value / zone.dry.value * 1000.0);
    let acidity = zone.acidity(&rehearsal.substances);
    vec![
        words::rough(zone.water_ratio() * 100.0),
        alkali.map_or_else(|| "0".to_owned(), words::rough),
        acidity.map_or_else(|| "-".to_owned(), |acidity| words::bare_ph(acidity.ph)),
        words::degrees(&zone.temperature),
    ]
}

/// The dyes of a part, and how far each has reacted.
fn dyes(chosen: &Chosen<'_>, goods: &GoodsState, zone: &ZoneState) -> Vec<String> {
    let rehearsal = chosen.rehearsal;
    let table = &rehearsal.substances;
    let held = zone.contents.parts.iter().filter(|(id, mass)| table.is_dye(*id) && mass.value.high > 1e-6);
    held.map(|(id, mass)| {
        let name = chosen.picked.recipe.materials.get(id.0).map_or("dye", |material| &material.name);
        let mut told = format!("{name} {}", mass.show());
        if zone.powder {
            told.push_str(", dry powder still");
        } else if let Some(reaction) = rehearsal.reaction(zone, *id) {
            told.push_str(&format!(", {}", words::batch(&reaction)));
        }
        if goods.washed_off {
            let high = rehearsal.loose_dye(zone, *id).high * 1000.0;
            told.push_str(&if high < 0.05 {
                ", hardly any loose".to_owned()
            } else {
                format!(", at most {high:.1} g loose")
            });
        }
        safe(&told).into_owned()
    })
    .collect()
}

fn told(chosen: &Chosen<'_>, liquor: &LiquorState) -> String {
    let mut parts = vec![liquor.volume.as_ref().map_or_else(
        || format!("{} g", words::rough(liquor.contents.total_mass() * 1000.0)),
        tenter_quantity::Figure::show,
    )];
    parts.push(liquor.temperature.show());
    parts.extend(liquor.acidity(&chosen.rehearsal.substances).map(words::ph));
    if let Some(until) = chosen.rehearsal.useful_until(liquor) {
        let (best, high) = (words::clock(until.best), words::clock(until.high));
        parts.push(format!("dye and alkali together: of use until about {best} on the clock, gone by {high}"));
    }
    format!("{}: {}", names::liquor(&chosen.picked, liquor), parts.join(", "))
}

/// The mix whose block the place stands in, as it is when made.
fn mix(analysis: &FileAnalysis, chosen: &Chosen<'_>) -> Option<(u32, String)> {
    let index = chosen.picked.recipe.mixes.iter().position(|mix| mix.name.place.block == chosen.at.0)?;
    let line = chosen.picked.line(chosen.picked.recipe.mixes.get(index)?.name.place, &*analysis.file)?;
    let made = chosen.rehearsal.mix(MixId(index))?;
    Some((line, paragraph(&safe(&format!("As made, {}", told(chosen, made))), 0, 2, WIDTH)))
}
