//! `log` and `shelf` blocks.

use tenter_quantity::{Basis, Dimension, Figure};
use tenter_syntax::{BlockKind, Connector};

use crate::binder::{Binder, prose, tidy};
use crate::dates;
use crate::phrase::PhraseKind;
use crate::problem::ProblemKind;
use crate::recipe::{Log, Named, ShelfLine, Substance};
use crate::sheet::Row;

/// Reads all `log` blocks.
pub(crate) fn logs(binder: &mut Binder<'_>) -> Vec<Log> {
    let mut logs = Vec::new();
    for body in binder.of_kind(BlockKind::Log) {
        let written = body.name();
        let place = body.place(if written.is_empty() { body.block.keyword } else { body.block.name });
        if !dates::is_date(written) {
            binder.problem(
                place,
                ProblemKind::DateForm { written: written.into(), suggestion: dates::suggestion(written) },
            );
        }
        let mut entries = Vec::new();
        for row in &body.rows {
            let Some(head) = &row.line.head else {
                crate::keys::stray(binder, row);
                continue;
            };
            crate::keys::known_or_told(binder, row, body.block.kind);
            if let Some(text) = prose(row) {
                entries.push((head.word.clone(), text));
            }
        }
        logs.push(Log { date: Named { text: tidy(written), place }, entries });
    }
    logs
}

/// Reads all `shelf` blocks: `250 g lagoon bought 2026-02-01 at 12 EUR`.
pub(crate) fn shelf(binder: &mut Binder<'_>) -> Vec<ShelfLine> {
    let mut lines = Vec::new();
    for body in binder.of_kind(BlockKind::Shelf) {
        for row in &body.rows {
            if row.line.span.is_empty() {
                continue;
            }
            if row.line.head.is_some() {
                crate::keys::known_or_told(binder, row, body.block.kind);
                continue;
            }
            if let Some(line) = shelf_line(binder, row) {
                lines.push(line);
            }
        }
    }
    lines
}

fn shelf_line(binder: &mut Binder<'_>, row: &Row<'_>) -> Option<ShelfLine> {
    let phrases = binder.phrases(row);
    let mut drafts = Vec::new();
    let mut bought = None;
    let mut paid = None;
    for phrase in &phrases {
        match &phrase.kind {
            PhraseKind::Measured(measured, None) if measured.quantity.dimension == Dimension::Money => {
                let code = crate::materials::currency_code(row.text(measured.span));
                paid = Some((code.to_uppercase().into(), binder.figure(row, measured)));
            }
            PhraseKind::Measured(measured, Some(name)) if drafts.is_empty() => {
                if let Some(draft) = crate::mix::draft(binder, row, Some(measured), name, phrase, false) {
                    drafts.push((*row, draft));
                }
            }
            PhraseKind::Date => {
                let text = row.text(phrase.span);
                let place = row.place(phrase.span);
                if !dates::is_date(text) {
                    binder.problem(
                        place,
                        ProblemKind::DateForm { written: text.into(), suggestion: dates::suggestion(text) },
                    );
                }
                bought = Some(Named { text: text.into(), place });
            }
            PhraseKind::Name(name) if matches!(phrase.connector, Some((Connector::Bought, _))) => {
                let text = row.text(name.span);
                binder.problem(
                    row.place(name.span),
                    ProblemKind::DateForm { written: text.into(), suggestion: dates::suggestion(text) },
                );
            }
            _ => {}
        }
    }
    // The shelf does not scale with the recipe.
    let scale = std::mem::replace(&mut binder.scale, 1.0);
    let (mut ingredients, _) = crate::mix::settle_all(binder, &drafts, None, None);
    binder.scale = scale;
    let item = ingredients.pop()?;
    Some(ShelfLine { place: row.place(row.line.span), item, bought, paid })
}

/// What was paid for stock is the price of a material that has no other.
pub(crate) fn price_from_shelf(binder: &mut Binder<'_>, shelf: &[ShelfLine]) {
    for line in shelf {
        let Substance::Material(id) = line.item.what else {
            continue;
        };
        let (Some((currency, paid)), Some(amount)) = (&line.paid, &line.item.amount) else {
            continue;
        };
        let Some(material) = binder.materials.get_mut(id.0) else {
            continue;
        };
        if material.price.is_some() {
            continue;
        }
        let by_volume = amount.mass.is_none();
        let Some(bought) = amount.mass.as_ref().or(amount.volume.as_ref()) else {
            continue;
        };
        let dimension = if by_volume { Dimension::MoneyPerVolume } else { Dimension::MoneyPerMass };
        let unit = if by_volume {
            tenter_quantity::price_per_litre(currency)
        } else {
            tenter_quantity::price_per_kilogram(currency)
        };
        let unit = unit.unwrap_or_else(|| dimension.usual_unit(Basis::Absolute));
        let rate = Figure::worked(
            "{0} ÷ {1}",
            paid.value / bought.value,
            dimension,
            unit,
            vec![("paid", paid.clone()), ("bought", bought.clone())],
        );
        material.price = Some(crate::recipe::Price { currency: currency.clone(), rate, by_volume });
    }
}
