//! `layout` blocks: zones, their shares, what lies side by side.

use tenter_quantity::Dimension;
use tenter_syntax::{BlockKind, Item, Span, fold_name};

use crate::binder::{Binder, tidy};
use crate::names::unquoted;
use crate::phrase::PhraseKind;
use crate::problem::{NameKind, ProblemKind};
use crate::recipe::{Layout, Named, Zone};
use crate::sheet::Body;

/// The zone names a layout declares, in order, with their spans: the words behind the share on `zone` lines.
pub(crate) fn zone_names<'a>(body: &Body<'a>) -> Vec<(&'a str, (u32, Span))> {
    let mut names = Vec::new();
    for row in &body.rows {
        if row.line.head.as_ref().is_none_or(|head| &*head.word != "zone") {
            continue;
        }
        let rest = row.text(row.line.rest);
        // `45% rim`, `rim 45%`, `rim`: what is neither number nor per cent sign is the name.
        let mut start = row.line.rest.start + (rest.len() - rest.trim_start().len()) as u32;
        let mut text = rest.trim();
        if let Some(Item::Number(number)) = row.line.items.first() {
            start = number.span.end;
            text = row.text(Span::new(start, row.line.rest.end));
            for mark in ["%", "percent", "per cent"] {
                let trimmed = text.trim_start();
                if let Some(after) = trimmed.strip_prefix(mark) {
                    start += (text.len() - after.len()) as u32;
                    text = after;
                    break;
                }
            }
        }
        start += (text.len() - text.trim_start().len()) as u32;
        let text = text.trim();
        let text = text.split(',').next().unwrap_or(text).trim_end();
        if !text.is_empty() {
            names.push((unquoted(text), (row.block, Span::new(start, start + text.len() as u32))));
        }
    }
    names
}

/// Reads all `layout` blocks.
pub(crate) fn bind(binder: &mut Binder<'_>) {
    for body in binder.of_kind(BlockKind::Layout) {
        let layout = read(binder, &body);
        binder.layouts.push(layout);
    }
}

fn read(binder: &mut Binder<'_>, body: &Body<'_>) -> Layout {
    let name = Named { text: tidy(unquoted(body.name())), place: body.place(body.block.name) };
    let names = zone_names(body);
    let mut zones: Vec<Zone> = names
        .iter()
        .map(|(text, (block, span))| Zone {
            name: Named {
                text: tidy(text),
                place: tenter_quantity::Place { block: *block, start: span.start, end: span.end },
            },
            share: None,
        })
        .collect();
    let mut beside = Vec::new();
    for row in &body.rows {
        let Some(head) = &row.line.head else {
            crate::keys::stray(binder, row);
            continue;
        };
        match &*head.word {
            "zone" => {
                let phrases = binder.phrases(row);
                let share = phrases.iter().find_map(|phrase| match &phrase.kind {
                    PhraseKind::Measured(measured, _) => Some(measured),
                    _ => None,
                });
                if let Some(measured) = share
                    && let Some(figure) =
                        binder.expect(row, measured, &[Dimension::PerCent], "a zone's share of the area")
                {
                    let on_line = |zone: &&mut Zone| {
                        zone.name.place.block == row.block && row.line.span.touches(zone.name.place.start)
                    };
                    if let Some(zone) = zones.iter_mut().find(on_line) {
                        zone.share = Some(figure);
                    }
                }
                if !zones
                    .iter()
                    .any(|zone| zone.name.place.block == row.block && row.line.span.touches(zone.name.place.start))
                {
                    binder.missing(row, "the zone's name", "zone 45% rim");
                }
            }
            "beside" => neighbours(binder, row, &zones, &mut beside),
            "accept" => {}
            _ => crate::keys::known_or_told(binder, row, body.block.kind),
        }
    }
    duplicates(binder, &zones);
    let shares: Vec<f64> = zones.iter().filter_map(|zone| zone.share.as_ref().map(|share| share.value.best)).collect();
    let sum: f64 = shares.iter().sum();
    let complete = shares.len() == zones.len() && !zones.is_empty();
    if sum > 1.005 || (complete && (sum - 1.0).abs() > 0.005) {
        let of = format!("the zones of {}", name.text);
        let place = zones
            .iter()
            .rev()
            .find_map(|zone| zone.share.as_ref().and_then(tenter_quantity::Figure::place))
            .unwrap_or(name.place);
        binder.problem(place, ProblemKind::Shares { of: of.into(), sum });
    }
    Layout { name, zones, beside }
}

fn duplicates(binder: &mut Binder<'_>, zones: &[Zone]) {
    for (index, zone) in zones.iter().enumerate() {
        let key = fold_name(&zone.name.text);
        if let Some(first) = zones[..index].iter().find(|other| fold_name(&other.name.text) == key) {
            binder.problem(
                zone.name.place,
                ProblemKind::SameName { name: zone.name.text.clone(), first: first.name.place },
            );
        }
    }
}

/// `beside rim, middle`: each name lies next to the one after it.
fn neighbours(binder: &mut Binder<'_>, row: &crate::sheet::Row<'_>, zones: &[Zone], beside: &mut Vec<(usize, usize)>) {
    let phrases = binder.phrases(row);
    let mut last: Option<usize> = None;
    for phrase in &phrases {
        if let PhraseKind::Name(name) = &phrase.kind {
            let key = fold_name(row.text(name.span));
            match zones.iter().position(|zone| fold_name(&zone.name.text) == key) {
                Some(index) => {
                    if let Some(before) = last {
                        beside.push((before, index));
                    }
                    last = Some(index);
                }
                None => binder.unknown_name(row, name, NameKind::Zone),
            }
        }
    }
}
