//! The `recipe` block.

use tenter_quantity::{Dimension, Quantity, System};
use tenter_syntax::{BlockKind, fold_name};

use crate::binder::{Binder, prose, tidy};
use crate::phrase::PhraseKind;
use crate::problem::ProblemKind;
use crate::recipe::{Depth, Evenness, Named};
use crate::sheet::{Body, Row};

/// `measures US` settles what cups and gallons are before anything else is read.
pub(crate) fn bind_measures(binder: &mut Binder<'_>) {
    for body in binder.of_kind(BlockKind::Recipe) {
        for row in &body.rows {
            if row.line.head.as_ref().is_some_and(|head| &*head.word == "measures") {
                match prose(row) {
                    Some(value) => match System::parse(&value.text) {
                        Some(system) => {
                            binder.measures = Some(system);
                            binder.header.measures = Some((system, value.place));
                        }
                        None => binder.problem(value.place, ProblemKind::Unreadable { written: value.text }),
                    },
                    None => binder.missing(row, "whose measures", "measures US"),
                }
            }
        }
    }
}

/// Reads the rest of the `recipe` block.
pub(crate) fn bind(binder: &mut Binder<'_>) {
    for body in binder.of_kind(BlockKind::Recipe) {
        for row in &body.rows {
            line(binder, &body, row);
        }
    }
}

fn line(binder: &mut Binder<'_>, body: &Body<'_>, row: &Row<'_>) {
    let Some(head) = &row.line.head else {
        crate::keys::stray(binder, row);
        return;
    };
    match &*head.word {
        "by" => binder.header.by = value(binder, row, "who wrote it", "by A. Nyland"),
        "licence" => binder.header.licence = value(binder, row, "the licence", "licence CC-BY-4.0"),
        "version" => binder.header.version = value(binder, row, "the version", "version 1.0.0"),
        "about" => binder.header.about = value(binder, row, "what it is", "about Folded ring tee, hot water set"),
        "for" => binder.header.purpose = value(binder, row, "what it is for", "for a summer fair"),
        "note" => {
            let note = value(binder, row, "a note", "note the red runs");
            binder.header.notes.extend(note);
        }
        "depth" => depth(binder, row),
        "shade" => shade(binder, row),
        "room" => {
            let phrases = binder.phrases(row);
            binder.header.room =
                binder.value_of(row, &phrases, &[Dimension::Temperature], "the temperature of the room", "room 22 °C");
        }
        "altitude" => {
            let phrases = binder.phrases(row);
            binder.header.altitude =
                binder.value_of(row, &phrases, &[Dimension::Length], "the height above the sea", "altitude 800 m");
        }
        "hardness" => hardness(binder, row),
        "measures" | "accept" => {}
        _ => crate::keys::known_or_told(binder, row, body.block.kind),
    }
}

fn value(binder: &mut Binder<'_>, row: &Row<'_>, what: &str, example: &str) -> Option<Named> {
    let value = prose(row);
    if value.is_none() {
        binder.missing(row, what, example);
    }
    value
}

fn depth(binder: &mut Binder<'_>, row: &Row<'_>) {
    let Some(value) = prose(row) else {
        binder.missing(row, "the depth of shade", "depth pale, medium, dark or full black");
        return;
    };
    let depth = match fold_name(&value.text).as_str() {
        "pale" | "light" => Depth::Pale,
        "medium" | "mid" => Depth::Medium,
        "dark" | "deep" | "heavy" => Depth::Dark,
        "full black" | "black" => Depth::FullBlack,
        _ => {
            binder.problem(value.place, ProblemKind::Unreadable { written: value.text });
            return;
        }
    };
    binder.header.depth = Some((depth, value.place));
}

fn shade(binder: &mut Binder<'_>, row: &Row<'_>) {
    let Some(value) = prose(row) else {
        binder.missing(row, "how even the shade is meant to be", "shade level or mottled");
        return;
    };
    let shade = match fold_name(&value.text).as_str() {
        "level" | "even" => Evenness::Level,
        "mottled" | "uneven" => Evenness::Mottled,
        _ => {
            binder.problem(value.place, ProblemKind::Unreadable { written: value.text });
            return;
        }
    };
    binder.header.shade = Some((shade, value.place));
}

/// Hardness may also come as plain mg/L or ppm, which here can only be calcium carbonate.
fn hardness(binder: &mut Binder<'_>, row: &Row<'_>) {
    let phrases = binder.phrases(row);
    for phrase in &phrases {
        if let PhraseKind::Measured(measured, _) = &phrase.kind {
            match measured.quantity.as_hardness() {
                Ok(quantity) => {
                    let Quantity { value, dimension, .. } = quantity;
                    let unit = if measured.quantity.dimension == Dimension::Hardness {
                        measured.unit
                    } else {
                        dimension.usual_unit(quantity.basis)
                    };
                    binder.header.hardness =
                        Some(tenter_quantity::Figure::written(value, dimension, unit, row.place(measured.span)));
                }
                Err(_) => binder.wrong_dimension(row, measured, &[Dimension::Hardness], "the hardness of the water"),
            }
            return;
        }
    }
    if !phrases.iter().any(|phrase| matches!(phrase.kind, PhraseKind::Broken(_))) {
        let text = tidy(row.text(row.line.rest));
        if text.is_empty() {
            binder.missing(row, "the hardness of the water", "hardness 180 mg/L");
        } else {
            binder.problem(row.place(row.line.rest), ProblemKind::Unreadable { written: text });
        }
    }
}
