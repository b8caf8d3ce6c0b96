//! Words kept as they are: protective equipment, tools, temperatures without a number.

use super::*;
use crate::phrase::manner;

impl StepReader<'_, '_> {
    /// Everything behind the verb, as words split at commas.
    pub(super) fn plain_words(&mut self) {
        let rest = self.row.text(self.row.line.rest);
        let mut at = self.row.line.rest.start;
        for part in rest.split(',') {
            for piece in split_and(part) {
                let trimmed = piece.text.trim();
                if !trimmed.is_empty() {
                    let start = at + piece.start + (piece.text.len() - piece.text.trim_start().len()) as u32;
                    let span = Span::new(start, start + trimmed.len() as u32);
                    self.step.words.push(Named { text: tidy(trimmed), place: self.row.place(span) });
                }
            }
            at += part.len() as u32 + 1;
        }
    }

    pub(super) fn repeat(&mut self, binder: &mut Binder<'_>) {
        let Some(span) = self.row.line.items.iter().map(tenter_syntax::Item::span).reduce(Span::cover) else {
            binder.missing(self.row, "what to repeat", "repeat steps colour for lot 2");
            return;
        };
        // The name of a group may run across a connecting word: `repeat steps four at a time for lot 2`.
        let first = self.row.line.items.first().map_or(span, tenter_syntax::Item::span);
        let own = without_steps(self.row.text(first)).split_whitespace().count();
        let whole = self.row.text(Span::new(span.start, self.row.line.span.end));
        let words: Vec<&str> = without_steps(whole).split_whitespace().collect();
        let left_over = |used: usize| words.get(used..own).unwrap_or(&[]).iter().all(|word| manner(word).is_some());
        let group = binder.names.longest(&words).filter(|hit| left_over(hit.words)).and_then(|hit| {
            hit.referents.iter().find_map(|referent| match referent {
                Referent::Group(id) => Some(*id),
                _ => None,
            })
        });
        match group {
            Some(id) => self.step.repeats_group = Some(id),
            None => binder.unknown_name(self.row, &NameUse { span, referents: Vec::new() }, NameKind::Steps),
        }
    }

    pub(super) fn words(&mut self, name: &NameUse) {
        self.step.words.push(Named { text: tidy(self.row.text(name.span)), place: self.row.place(name.span) });
    }

    /// `at room temperature`, `to the boil`, `at a simmer`.
    pub(super) fn temperature_words(
        &mut self,
        binder: &Binder<'_>,
        connector: Option<Connector>,
        folded: &str,
        span: Span,
    ) -> bool {
        if !matches!(connector, Some(Connector::At | Connector::To)) {
            return false;
        }
        let unit = Dimension::Temperature.usual_unit(Basis::Absolute);
        let celsius = |low: f64, best: f64, high: f64| Interval::new(low + 273.15, best + 273.15, high + 273.15);
        let figure = match folded {
            "room temperature" | "room" => binder.header.room.clone().unwrap_or_else(|| {
                Figure::assumed(
                    celsius(16.0, 20.0, 25.0),
                    Dimension::Temperature,
                    unit,
                    "room temperature",
                    "no `room` line; common practice, no source",
                )
            }),
            "boil" | "boiling" | "boiling point" => Figure::assumed(
                celsius(95.0, 99.0, 100.0),
                Dimension::Temperature,
                unit,
                "the boil",
                "lower with height above the sea",
            ),
            "simmer" => Figure::assumed(
                celsius(85.0, 92.0, 97.0),
                Dimension::Temperature,
                unit,
                "a simmer",
                "just below the boil; common practice, no source",
            ),
            _ => return false,
        };
        let _ = span;
        if connector == Some(Connector::To) {
            self.step.to_temperature = Some(figure);
        } else {
            self.step.temperature = Some(figure);
        }
        true
    }
}

/// What stands behind the word `steps`, if that opens the text.
fn without_steps(text: &str) -> &str {
    let text = text.trim();
    match text.split_once(char::is_whitespace) {
        Some((first, rest)) if first.eq_ignore_ascii_case("steps") => rest.trim_start(),
        _ => text,
    }
}
