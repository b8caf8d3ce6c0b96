//! Amounts, times and temperatures of a step, by dimension and connecting word.

use super::*;

impl StepReader<'_, '_> {
    pub(super) fn measured(
        &mut self,
        binder: &mut Binder<'_>,
        phrase: &Phrase,
        connector: Option<Connector>,
        measured: &Measured,
        name: Option<&NameUse>,
    ) {
        let figure = binder.figure(self.row, measured);
        match measured.quantity.dimension {
            Dimension::Time => self.time(binder, phrase, connector, figure),
            Dimension::Temperature => self.temperature(binder, phrase, connector, figure),
            Dimension::Part => {
                let number = measured.quantity.value.best.round().clamp(1.0, 1000.0) as u32;
                if let (Some(_), None) = (connector, name) {
                    self.step.portions = Some((number, self.row.place(measured.span)));
                } else {
                    self.amount(binder, phrase, connector, measured, name);
                }
            }
            Dimension::PerCent if measured.pickup || (name.is_none() && self.takes(connector, &[Expect::Pickup])) => {
                if measured.pickup && !self.takes(connector, &[Expect::Pickup]) {
                    self.not_taken(binder, phrase, connector);
                }
                self.step.pickup = Some(figure);
            }
            Dimension::TemperatureDifference | Dimension::TemperatureRate => {
                binder.wrong_dimension(self.row, measured, &[Dimension::Temperature], "a temperature");
            }
            // `bind tees every 5 cm`, `mark at 10 cm`: where it is done, for people.
            Dimension::Length if self.takes(connector, &[Expect::Text]) => {
                let text = tidy(self.row.text(phrase.span));
                self.step.words.push(Named { text, place: self.row.place(phrase.span) });
            }
            _ => self.amount(binder, phrase, connector, measured, name),
        }
    }

    pub(super) fn time(
        &mut self,
        binder: &mut Binder<'_>,
        phrase: &Phrase,
        connector: Option<Connector>,
        figure: Figure,
    ) {
        let place = self.row.place(phrase.span);
        self.last_duration = false;
        match connector {
            Some(Connector::Every) => self.step.interval = Some(figure),
            Some(Connector::After | Connector::Before) => self.step.delay = Some(figure),
            // `in 3 parts, 5 min apart`.
            Some(Connector::In) if self.step.portions.is_some() => self.step.interval = Some(figure),
            Some(
                Connector::At | Connector::With | Connector::On | Connector::As | Connector::Onto | Connector::Under,
            ) => {
                let written = self.row.text(phrase.span);
                binder.problem(
                    place,
                    ProblemKind::WrongDimension {
                        written: written.into(),
                        given: Dimension::Time,
                        needed: vec![if connector == Some(Connector::At) {
                            Dimension::Temperature
                        } else {
                            Dimension::Mass
                        }],
                        purpose: "this clause",
                        probably: Some(format!("for {written}").into()),
                    },
                );
            }
            _ => {
                if let Some(first) = self.step.duration.as_ref().and_then(Figure::place) {
                    let range = (connector == Some(Connector::To)).then(|| self.range(first, phrase.span)).flatten();
                    binder.problem(place, ProblemKind::SaidTwice { what: "duration", first, range });
                    return;
                }
                self.step.duration = Some(figure);
                self.last_duration = true;
            }
        }
    }

    /// `10 min to 20 min` as the range it was meant for.
    pub(super) fn range(&self, first: tenter_quantity::Place, second: Span) -> Option<std::sync::Arc<str>> {
        let first = self.row.text(Span::new(first.start, first.end)).trim();
        let number = first.split_whitespace().next()?;
        Some(format!("{number} to {}", self.row.text(second).trim()).into())
    }

    pub(super) fn temperature(
        &mut self,
        binder: &mut Binder<'_>,
        phrase: &Phrase,
        connector: Option<Connector>,
        figure: Figure,
    ) {
        let place = self.row.place(phrase.span);
        match connector {
            Some(Connector::To | Connector::Into) => self.step.to_temperature = Some(figure),
            Some(Connector::From) => self.step.from_temperature = Some(figure),
            Some(Connector::For | Connector::Every | Connector::With | Connector::On | Connector::Over) => {
                let written = self.row.text(phrase.span);
                binder.problem(
                    place,
                    ProblemKind::WrongDimension {
                        written: written.into(),
                        given: Dimension::Temperature,
                        needed: vec![
                            if matches!(connector, Some(Connector::For | Connector::Every | Connector::Over)) {
                                Dimension::Time
                            } else {
                                Dimension::Mass
                            },
                        ],
                        purpose: "this clause",
                        probably: Some(format!("at {written}").into()),
                    },
                );
            }
            _ => {
                if let Some(list) = self.last_liquid {
                    let drafts = match list {
                        List::Applied => &mut self.applied,
                        List::Bath => &mut self.bath,
                        List::With => &mut self.with,
                    };
                    if let Some((_, last)) =
                        drafts.iter_mut().rev().find(|(_, draft)| crate::mix::is_liquid(binder, draft.what))
                    {
                        if last.temperature.is_none() {
                            last.temperature = Some(figure);
                            return;
                        }
                        if let Some(first) = last.temperature.as_ref().and_then(Figure::place) {
                            binder.problem(place, ProblemKind::SaidTwice { what: "temperature", first, range: None });
                            return;
                        }
                    }
                }
                if let Some(first) = self.step.temperature.as_ref().and_then(Figure::place) {
                    binder.problem(place, ProblemKind::SaidTwice { what: "temperature", first, range: None });
                    return;
                }
                if matches!(connector, Some(Connector::At | Connector::In)) {
                    self.check_taken(binder, phrase, connector);
                }
                self.step.temperature = Some(figure);
            }
        }
    }

    pub(super) fn amount(
        &mut self,
        binder: &mut Binder<'_>,
        phrase: &Phrase,
        connector: Option<Connector>,
        measured: &Measured,
        name: Option<&NameUse>,
    ) {
        let fixed = false;
        let wrong = match connector {
            Some(Connector::To) if self.takes(connector, &[Expect::Pickup]) => Some(Dimension::PerCent),
            Some(Connector::For | Connector::Every | Connector::Until) => Some(Dimension::Time),
            Some(Connector::At) => Some(Dimension::Temperature),
            _ => None,
        };
        if let Some(needed) = wrong {
            if measured.quantity.dimension == Dimension::LiquorRatio {
                self.ratio = Some((measured.quantity.value.best, measured.span));
                return;
            }
            let purpose = match needed {
                Dimension::Time => "a duration",
                Dimension::PerCent => "the water held, as a share of the dry weight",
                _ => "a temperature",
            };
            binder.wrong_dimension(self.row, measured, &[needed], purpose);
            return;
        }
        if !crate::number::AMOUNTS.contains(&measured.quantity.dimension) {
            binder.wrong_dimension(self.row, measured, &[Dimension::Mass, Dimension::Volume], "an amount");
            return;
        }
        let Some(name) = name else {
            if measured.quantity.dimension == Dimension::PerCent {
                let lists = [&self.with, &self.bath, &self.applied];
                let before = lists.iter().filter_map(|list| list.last()).max_by_key(|(_, draft)| draft.place.end);
                let what = before.map(|(_, draft)| draft.what);
                if crate::materials::strength_behind(binder, self.row, what, measured) {
                    return;
                }
                binder.problem(
                    self.row.place(measured.span),
                    ProblemKind::PercentOfWhat { written: self.row.text(measured.span).into(), of: "".into() },
                );
                return;
            }
            self.nameless = Some((measured.clone(), phrase.span));
            return;
        };
        self.check_taken(binder, phrase, connector);
        let Some(draft) = draft(binder, self.row, Some(measured), name, phrase, fixed) else {
            return;
        };
        self.place_draft(binder, connector, draft);
    }

    pub(super) fn place_draft(&mut self, binder: &Binder<'_>, connector: Option<Connector>, draft: Draft) {
        let liquid = crate::mix::is_liquid(binder, draft.what);
        let list = match connector {
            Some(Connector::With) => List::With,
            Some(Connector::In | Connector::Into) => List::Bath,
            _ => List::Applied,
        };
        let row = *self.row;
        match list {
            List::Applied => self.applied.push((row, draft)),
            List::Bath => self.bath.push((row, draft)),
            List::With => self.with.push((row, draft)),
        }
        if liquid {
            self.last_liquid = Some(list);
        }
    }

    /// A number followed by a word that is neither unit nor name: the nearer of the two is offered.
    pub(super) fn unit_or_name(&mut self, binder: &mut Binder<'_>, name: &NameUse) {
        let words = self.row.text(name.span);
        let word = words.split_whitespace().next().unwrap_or("");
        let nearest = tenter_quantity::nearest_unit(word);
        if nearest.is_none() && word.len() == words.len() {
            return binder.unknown_name(self.row, name, NameKind::Material);
        }
        let place = self.row.place(first_word(name.span, word));
        binder.problem(
            place,
            ProblemKind::UnknownUnit { written: word.into(), nearest: nearest.map(|unit| unit.symbol.into()) },
        );
    }
}
