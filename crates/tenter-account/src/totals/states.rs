//! How everything stands after each step, in short: the step table of the totals.

use std::collections::BTreeMap;
use std::sync::Arc;

use serde::Serialize;
use tenter_quantity::Interval;
use tenter_rehearse::{Frame, GoodsState, Rehearsal, ZoneKey, ZoneState};

use crate::number::{Number, in_per_cent, minutes, plain};
use crate::pick::Picked;
use crate::source::Source;
use crate::text::safe::safe;
use crate::text::table::{Edge, Table};
use crate::text::wrap::wrap;
use crate::{names, words};

/// A step done, and how the goods stand after it.
#[derive(Serialize)]
pub struct State {
    line: Option<u32>,
    text: String,
    pass: u32,
    lot: Option<u32>,
    clock_min: Number,
    hands_on_min: Number,
    zones: Vec<Zone>,
}

#[derive(Serialize)]
struct Zone {
    goods: String,
    lot: Option<u32>,
    zone: Option<String>,
    face: Option<&'static str>,
    water_percent: Number,
    alkali_g_per_kg: Number,
    ph: Option<Number>,
}

/// One entry a performed step.
pub fn states(picked: &Picked<'_>, rehearsal: &Rehearsal, file: &dyn Source) -> Vec<State> {
    let recipe = &picked.recipe;
    rehearsal
        .frames
        .iter()
        .map(|frame| State {
            line: picked.line(frame.place, file),
            text: picked.words(frame.place),
            pass: frame.pass,
            lot: frame.lot,
            clock_min: minutes(frame.end.elapsed),
            hands_on_min: minutes(frame.end.hands_on),
            zones: frame
                .goods
                .iter()
                .flat_map(|goods| parts(rehearsal, frame, goods).map(move |zone| (goods, zone)))
                .map(|(goods, zone)| Zone {
                    goods: recipe
                        .goods
                        .get(goods.goods.0)
                        .map_or_else(String::new, |entry| entry.name.text.to_string()),
                    lot: goods.lot,
                    zone: names::zone(recipe, zone.key),
                    face: names::face(zone.key),
                    water_percent: in_per_cent(zone.water_ratio()),
                    alkali_g_per_kg: plain(alkali(rehearsal, &zone)),
                    ph: zone.acidity(&rehearsal.substances).map(|acidity| plain(acidity.ph)),
                })
                .collect(),
        })
        .collect()
}

fn parts<'a>(
    rehearsal: &'a Rehearsal,
    frame: &'a Frame,
    goods: &'a GoodsState,
) -> impl Iterator<Item = Arc<ZoneState>> + 'a {
    goods.zones.iter().map(move |zone| rehearsal.as_held(frame, goods, zone))
}

/// g of soda ash for each kg of dry goods.
fn alkali(rehearsal: &Rehearsal, zone: &ZoneState) -> Interval {
    rehearsal.alkali(zone).map_or(Interval::ZERO, |alkali| alkali.value / zone.dry.value * 1000.0)
}

/// Water, alkali and pH.
type Cells = [String; 3];

/// A part of the goods by name.
type Row = (String, Cells);

/// The table; a row a step, a line in it for each part of the goods that the step changed.
pub fn table(picked: &Picked<'_>, rehearsal: &Rehearsal, file: &dyn Source) -> Table {
    let several = rehearsal.frames.iter().any(|frame| frame.goods.len() > 1);
    let mut table = Table::new(&[
        ("step", Edge::Left),
        ("clock", Edge::Right),
        ("goods", Edge::Left),
        ("water, %", Edge::Right),
        ("soda, g/kg", Edge::Right),
        ("pH", Edge::Right),
    ]);
    let mut told: BTreeMap<(usize, ZoneKey), Cells> = BTreeMap::new();
    for frame in &rehearsal.frames {
        let mut rows: Vec<Row> = Vec::new();
        for (at, goods) in frame.goods.iter().enumerate() {
            let mut alike: Vec<(Vec<ZoneKey>, Cells)> = Vec::new();
            for zone in parts(rehearsal, frame, goods) {
                let cells = cells(rehearsal, &zone);
                if told.insert((at, zone.key), cells.clone()).as_ref() == Some(&cells) {
                    continue;
                }
                match alike.iter_mut().find(|(_, have)| *have == cells) {
                    Some((keys, _)) => keys.push(zone.key),
                    None => alike.push((vec![zone.key], cells)),
                }
            }
            let name = if several { names::goods(&picked.recipe, goods) } else { String::new() };
            for (keys, cells) in alike {
                let part = names::parts(&picked.recipe, goods, &keys);
                let gap = if part.is_empty() || name.is_empty() { "" } else { " " };
                let whole = if part.is_empty() && name.is_empty() { "all" } else { "" };
                // A long name takes lines of its own; the figures stand on its last.
                let mut names = wrap(&safe(&format!("{name}{gap}{part}{whole}")), NAMES);
                let last = names.pop().unwrap_or_default();
                rows.extend(names.into_iter().map(|line| (line, Default::default())));
                rows.push((last, cells));
            }
        }
        let line = picked.line(frame.place, file).map(|line| format!("{line} ")).unwrap_or_default();
        let lot = frame.lot.map(|lot| format!(", lot {lot}")).unwrap_or_default();
        let column = |cell: &dyn Fn(&Row) -> String| rows.iter().map(cell).collect::<Vec<_>>().join("\n");
        let cells = vec![
            format!("{line}{}{lot}", frame.verb.unwrap_or("?")),
            words::clock(frame.end.elapsed.best),
            column(&|(name, _)| name.clone()),
            column(&|(_, [water, _, _])| water.clone()),
            column(&|(_, [_, soda, _])| soda.clone()),
            column(&|(_, [_, _, ph])| ph.clone()),
        ];
        table.row(cells, Vec::new());
    }
    table
}

/// Water, alkali, pH; a dash where there is none.
fn cells(rehearsal: &Rehearsal, zone: &ZoneState) -> Cells {
    let soda = alkali(rehearsal, zone);
    let ph = zone.acidity(&rehearsal.substances).map(|acidity| words::bare_ph(acidity.ph));
    let dash = || "-".to_owned();
    [
        words::rough(zone.water_ratio() * 100.0),
        if soda.high < 0.05 { dash() } else { words::rough(soda) },
        ph.unwrap_or_else(dash),
    ]
}

/// Columns for the names of parts.
const NAMES: usize = 13;

/// pH of a mix as made, where it has one.
pub fn mix_ph(rehearsal: &Rehearsal, mix: tenter_resolve::recipe::MixId) -> Option<&tenter_rehearse::Acidity> {
    rehearsal.mix(mix)?.acidity(&rehearsal.substances)
}
