//! One step: each phrase to its place by the connecting word, the dimension and what the name stands for.

use tenter_quantity::{Basis, Dimension, Figure, Interval};
use tenter_syntax::{Connector, Expect, Span, Verb, fold_name};

use crate::binder::{Binder, tidy};
use crate::ledger::Ledger;
use crate::mix::{Draft, draft, settle_all};
use crate::names::Referent;
use crate::phrase::{Counted, Manner, Measured, NameUse, Phrase, PhraseKind};
use crate::problem::{NameKind, ProblemKind};
use crate::recipe::{Cover, GoodsId, Liquor, LiquorKind, LotsUse, Named, Source, Step, Substance, ZoneRef, ZoneUse};
use crate::sheet::Row;
use crate::{places, water};

/// Which list the last liquid went to, for a temperature that follows it.
#[derive(Clone, Copy, PartialEq)]
enum List {
    Applied,
    Bath,
    With,
}

pub(crate) struct StepReader<'r, 's> {
    row: &'r Row<'s>,
    step: Step,
    applied: Vec<(Row<'s>, Draft)>,
    bath: Vec<(Row<'s>, Draft)>,
    with: Vec<(Row<'s>, Draft)>,
    /// An amount that still lacks its name: `60 mL/piece from night bottle`.
    nameless: Option<(Measured, Span)>,
    last_liquid: Option<List>,
    last_duration: bool,
    after_each: bool,
    after_lot: bool,
    ratio: Option<(f64, Span)>,
    liquor_ratio_used: bool,
}

impl<'r, 's> StepReader<'r, 's> {
    pub(crate) fn new(row: &'r Row<'s>, verb: Option<&'static Verb>, verb_span: Span) -> Self {
        let step = Step {
            place: row.place(row.line.span),
            verb,
            verb_place: row.place(verb_span),
            goods: Vec::new(),
            goods_named: false,
            applied: Vec::new(),
            zones: Vec::new(),
            liquor: None,
            source: None,
            with: Vec::new(),
            layout: None,
            repeats_group: None,
            lots: None,
            duration: None,
            interval: None,
            delay: None,
            temperature: None,
            from_temperature: None,
            to_temperature: None,
            pickup: None,
            repeats: None,
            portions: None,
            cover: None,
            until: None,
            words: Vec::new(),
        };
        Self {
            row,
            step,
            applied: Vec::new(),
            bath: Vec::new(),
            with: Vec::new(),
            nameless: None,
            last_liquid: None,
            last_duration: false,
            after_each: false,
            after_lot: false,
            ratio: None,
            liquor_ratio_used: false,
        }
    }

    pub(crate) fn read(mut self, binder: &mut Binder<'_>, ledger: &mut Ledger) -> Step {
        if self.verb_name() == "wear" || self.verb_name() == "mark" {
            self.plain_words();
            self.default_goods(binder);
            return self.step;
        }
        if self.verb_name() == "repeat" {
            self.repeat(binder);
        }
        let phrases = binder.phrases(self.row);
        let mut standing: Option<Connector> = None;
        for phrase in &phrases {
            // `and` goes on with the clause before it.
            let connector = match phrase.connector {
                Some((Connector::And, _)) => standing,
                Some((connector, _)) => {
                    standing = Some(connector);
                    Some(connector)
                }
                None => None,
            };
            self.phrase(binder, phrase, connector);
        }
        self.finish(binder, ledger)
    }

    fn verb_name(&self) -> &'static str {
        self.step.verb.map_or("", |verb| verb.name)
    }

    /// Whether the verb takes `what` in a clause of `connector`.
    fn takes(&self, connector: Option<Connector>, what: &[Expect]) -> bool {
        self.step.verb.is_none_or(|verb| {
            verb.takes.iter().any(|clause| clause.connector == connector && what.contains(&clause.what))
        })
    }

    /// Everything behind the verb, as words split at commas.
    fn plain_words(&mut self) {
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

    fn repeat(&mut self, binder: &mut Binder<'_>) {
        let Some(span) = self.row.line.items.iter().map(tenter_syntax::Item::span).reduce(Span::cover) else {
            binder.missing(self.row, "what to repeat", "repeat steps colour for lot 2");
            return;
        };
        let text = self.row.text(span).trim();
        let bare = text.strip_prefix("steps").map_or(text, str::trim);
        let words: Vec<&str> = bare.split_whitespace().collect();
        let group = binder.names.longest(&words).and_then(|hit| {
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

    fn phrase(&mut self, binder: &mut Binder<'_>, phrase: &Phrase, connector: Option<Connector>) {
        let after_each = std::mem::take(&mut self.after_each);
        let after_lot = std::mem::take(&mut self.after_lot);
        match &phrase.kind {
            PhraseKind::Measured(measured, name) => self.measured(binder, phrase, connector, measured, name.as_ref()),
            PhraseKind::Count(counted, value, span) => self.count(*counted, *value, *span),
            PhraseKind::Bare(value, span, name) => {
                if after_lot && value.best >= 1.0 && value.best <= 1000.0 {
                    self.step.lots = Some(LotsUse::One(value.best as u32));
                } else if let Some(name) = name.as_ref().filter(|name| name.referents.is_empty()) {
                    self.unit_or_name(binder, name);
                } else {
                    binder.problem(
                        self.row.place(*span),
                        ProblemKind::MissingUnit { written: self.row.text(*span).into() },
                    );
                }
            }
            PhraseKind::Name(name) => {
                self.check_taken(binder, phrase, connector);
                self.named(binder, phrase, connector, name, after_each);
            }
            PhraseKind::Manner(manner) => self.manner(phrase, *manner),
            PhraseKind::Pair(left, right) => {
                if *left > 0.0 && right >= left {
                    self.ratio = Some((right / left, phrase.span));
                } else {
                    binder.problem(
                        self.row.place(phrase.span),
                        ProblemKind::Unreadable { written: self.row.text(phrase.span).into() },
                    );
                }
            }
            PhraseKind::Text => {
                let named = Named { text: tidy(self.row.text(phrase.span)), place: self.row.place(phrase.span) };
                if connector == Some(Connector::Until) {
                    self.step.until = Some(named);
                } else {
                    self.step.words.push(named);
                }
            }
            PhraseKind::Empty => self.empty(binder, phrase, connector),
            PhraseKind::Broken(name) => {
                if let Some(name) = name {
                    if connector == Some(Connector::In) || connector.is_none() {
                        self.quietly(name);
                    }
                }
            }
            PhraseKind::Date | PhraseKind::Colour(_) => {}
        }
    }

    /// A number followed by a word that is neither unit nor name: the nearer of the two is offered.
    fn unit_or_name(&mut self, binder: &mut Binder<'_>, name: &NameUse) {
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

    /// Goods and mixes named behind a broken number are still the ones meant.
    fn quietly(&mut self, name: &NameUse) {
        if let Some(id) = name.find(goods) {
            self.step.goods.push(id);
            self.step.goods_named = true;
        }
    }

    fn empty(&mut self, binder: &mut Binder<'_>, phrase: &Phrase, connector: Option<Connector>) {
        let harmless = matches!(
            connector,
            Some(
                Connector::Over
                    | Connector::On
                    | Connector::After
                    | Connector::Before
                    | Connector::Through
                    | Connector::By
            )
        );
        if harmless {
            return;
        }
        let word = self.row.text(phrase.span);
        let example = self
            .step
            .verb
            .and_then(|verb| verb.takes.iter().find(|clause| clause.connector == connector))
            .map_or("", |clause| clause.example);
        binder.problem(
            self.row.place(phrase.span),
            ProblemKind::MissingValue { what: format!("what comes after `{word}`").into(), example: example.into() },
        );
    }

    fn count(&mut self, counted: Counted, value: Interval, span: Span) {
        let place = self.row.place(span);
        let number = value.best.round().clamp(0.0, 1000.0) as u32;
        match counted {
            Counted::Times => self.step.repeats = Some((number.max(1), place)),
            Counted::Parts => self.step.portions = Some((number.max(1), place)),
            Counted::Lots | Counted::Pieces => {}
        }
    }

    fn manner(&mut self, phrase: &Phrase, manner: Manner) {
        let place = self.row.place(phrase.span);
        match manner {
            Manner::Covered => self.step.cover = Some((Cover::Covered, place)),
            Manner::Uncovered => self.step.cover = Some((Cover::Uncovered, place)),
            Manner::Apart => {
                if self.last_duration {
                    self.step.interval = self.step.duration.take();
                }
            }
            Manner::Overnight => {
                if self.step.duration.is_none() {
                    let value = Interval::new(8.0 * 3600.0, 10.0 * 3600.0, 14.0 * 3600.0);
                    let unit = Dimension::Time.usual_unit(Basis::Absolute);
                    self.step.duration = Some(Figure::assumed(
                        value,
                        Dimension::Time,
                        unit,
                        "overnight",
                        "8 to 14 hours; common practice, no source",
                    ));
                }
            }
            Manner::Once => self.step.repeats = Some((1, place)),
            Manner::Twice => self.step.repeats = Some((2, place)),
            Manner::Each => self.after_each = true,
            Manner::InAll | Manner::Fixed | Manner::Neutral => {}
        }
    }

    fn measured(
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
            _ => self.amount(binder, phrase, connector, measured, name),
        }
    }

    fn time(&mut self, binder: &mut Binder<'_>, phrase: &Phrase, connector: Option<Connector>, figure: Figure) {
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
    fn range(&self, first: tenter_quantity::Place, second: Span) -> Option<std::sync::Arc<str>> {
        let first = self.row.text(Span::new(first.start, first.end)).trim();
        let number = first.split_whitespace().next()?;
        Some(format!("{number} to {}", self.row.text(second).trim()).into())
    }

    fn temperature(&mut self, binder: &mut Binder<'_>, phrase: &Phrase, connector: Option<Connector>, figure: Figure) {
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
                self.step.temperature = Some(figure);
            }
        }
    }

    fn amount(
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

    fn place_draft(&mut self, binder: &Binder<'_>, connector: Option<Connector>, draft: Draft) {
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

    /// A clause with something that counts in it, which the verb does not take.
    fn check_taken(&mut self, binder: &mut Binder<'_>, phrase: &Phrase, connector: Option<Connector>) {
        let Some(connector) = connector else { return };
        let free = matches!(
            connector,
            Connector::Until
                | Connector::After
                | Connector::Before
                | Connector::By
                | Connector::Through
                | Connector::Without
                | Connector::And
                | Connector::Because
        );
        let Some(verb) = self.step.verb else { return };
        if free || verb.takes.iter().any(|clause| clause.connector == Some(connector)) {
            return;
        }
        let counts = match &phrase.kind {
            PhraseKind::Measured(..) => true,
            PhraseKind::Name(name) => !name.referents.is_empty(),
            _ => false,
        };
        if counts {
            self.not_taken(binder, phrase, Some(connector));
        }
    }

    fn not_taken(&mut self, binder: &mut Binder<'_>, phrase: &Phrase, connector: Option<Connector>) {
        let (Some(verb), Some(connector)) = (self.step.verb, connector) else {
            return;
        };
        let word = phrase.connector.map_or(phrase.span, |(_, span)| span);
        let span = word.cover(phrase.span);
        let mut takes: Vec<&'static str> =
            verb.takes.iter().filter(|clause| clause.connector.is_some()).map(|clause| clause.example).collect();
        takes.dedup();
        binder.problem(
            self.row.place(span),
            ProblemKind::ClauseNotTaken { verb: verb.name, connector, written: self.row.text(span).into(), takes },
        );
    }

    fn named(
        &mut self,
        binder: &mut Binder<'_>,
        phrase: &Phrase,
        connector: Option<Connector>,
        name: &NameUse,
        after_each: bool,
    ) {
        let text = self.row.text(name.span);
        let folded = fold_name(text);
        if folded == "lot" || folded == "lots" || folded == "each lot" {
            if after_each || folded == "each lot" {
                self.step.lots = Some(LotsUse::Each);
            } else {
                self.after_lot = true;
            }
            return;
        }
        if self.temperature_words(binder, connector, &folded, name.span) {
            return;
        }
        match connector {
            None | Some(Connector::And) => self.direct(binder, phrase, name, &folded),
            Some(Connector::In | Connector::Into) => self.liquor(binder, name, &folded, connector),
            Some(Connector::To) => self.target(binder, name, &folded),
            Some(Connector::From) => self.source(binder, name, &folded),
            Some(Connector::With) => self.with_name(binder, phrase, name, &folded),
            Some(Connector::On | Connector::Onto | Connector::Over | Connector::Under) => {
                self.spot(binder, phrase, name, &folded, connector)
            }
            Some(Connector::As) => match name.find(layout) {
                Some(id) => self.step.layout = Some(id),
                None => binder.unknown_name(self.row, name, NameKind::Layout),
            },
            Some(Connector::For) => match name.find(goods) {
                Some(id) => self.goods(id),
                None if name.find(mix).is_some()
                    || name.find(group).is_some()
                    || self.takes(connector, &[Expect::Text]) => {}
                None => self.words(name),
            },
            Some(_) => self.words(name),
        }
    }

    /// `at room temperature`, `to the boil`, `at a simmer`.
    fn temperature_words(
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

    fn words(&mut self, name: &NameUse) {
        self.step.words.push(Named { text: tidy(self.row.text(name.span)), place: self.row.place(name.span) });
    }

    fn goods(&mut self, id: GoodsId) {
        if !self.step.goods.contains(&id) {
            self.step.goods.push(id);
        }
        self.step.goods_named = true;
    }

    /// What stands right behind the verb.
    fn direct(&mut self, binder: &mut Binder<'_>, phrase: &Phrase, name: &NameUse, folded: &str) {
        if let Some(id) = name.find(goods) {
            return self.goods(id);
        }
        if self.verb_name() == "repeat" {
            return;
        }
        if let Some(zone) = name.find(zone).filter(|zone| !matches!(zone, ZoneRef::Ice)) {
            self.step.zones.push(ZoneUse { place: self.row.place(name.span), zone });
            return;
        }
        if let Some(id) = name.find(vessel) {
            self.step.liquor = Some(Liquor { place: self.row.place(name.span), kind: LiquorKind::Vessel(id) });
            return;
        }
        if name.find(group).is_some() && name.find(mix).is_none() {
            return self.words(name);
        }
        if let Some(id) = name.find(mix) {
            let acts_on_bath = matches!(
                self.verb_name(),
                "raise"
                    | "hold"
                    | "heat"
                    | "cool"
                    | "boil"
                    | "simmer"
                    | "stir"
                    | "drain"
                    | "dispose"
                    | "rest"
                    | "store"
                    | "cover"
                    | "top up"
            );
            if acts_on_bath {
                self.step.liquor = Some(Liquor { place: self.row.place(name.span), kind: LiquorKind::Mix(id) });
                return;
            }
        }
        if matches!(
            self.verb_name(),
            "raise" | "hold" | "heat" | "cool" | "boil" | "simmer" | "stir" | "drain" | "dispose" | "top up"
        ) && places::is_current_bath(folded)
        {
            self.step.liquor = Some(Liquor { place: self.row.place(name.span), kind: LiquorKind::Current });
            return;
        }
        if name.referents.is_empty() {
            let is_verb = tenter_syntax::verb_row(folded).is_some();
            if is_verb
                || places::is_everyday(folded)
                || self.takes(None, &[Expect::Text, Expect::Equipment, Expect::Cover])
            {
                return self.words(name);
            }
            let expected =
                if self.takes(None, &[Expect::Material, Expect::Liquor]) { NameKind::Any } else { NameKind::Goods };
            return binder.unknown_name(self.row, name, expected);
        }
        if let Some(draft) = draft(binder, self.row, None, name, phrase, false) {
            self.place_draft(binder, None, draft);
        }
    }

    fn liquor(&mut self, binder: &mut Binder<'_>, name: &NameUse, folded: &str, connector: Option<Connector>) {
        let place = self.row.place(name.span);
        let kind = if let Some(id) = name.find(mix) {
            Some(LiquorKind::Mix(id))
        } else if let Some(id) = name.find(vessel) {
            Some(LiquorKind::Vessel(id))
        } else if let Some(word) = name.find(water_word) {
            Some(LiquorKind::Water(water::temperature(word)))
        } else if name.find(|referent| matches!(referent, Referent::Reference(_)).then_some(())).is_some()
            && folded.ends_with("water")
        {
            Some(LiquorKind::Words)
        } else {
            None
        };
        match kind {
            Some(kind) => {
                let mix_then_vessel = matches!(
                    (&kind, &self.step.liquor),
                    (LiquorKind::Vessel(_), Some(Liquor { kind: LiquorKind::Mix(_) | LiquorKind::Bath(_), .. }))
                );
                if !mix_then_vessel {
                    self.step.liquor = Some(Liquor { place, kind });
                }
            }
            None => {
                if let Some(cover) = places::cover(folded) {
                    self.step.cover = Some((cover, place));
                } else if name.find(layout).is_some() {
                    self.step.layout = name.find(layout);
                } else if places::is_current_bath(folded) {
                    self.step.liquor = Some(Liquor { place, kind: LiquorKind::Current });
                } else if folded.ends_with("water") {
                    self.step.liquor = Some(Liquor { place, kind: LiquorKind::Words });
                } else if places::is_everyday(folded)
                    || self.takes(connector, &[Expect::Text, Expect::Portions])
                        && !self.takes(connector, &[Expect::Liquor])
                {
                    self.words(name);
                } else if let Some(id) = name.find(goods) {
                    self.goods(id);
                } else {
                    let known = !name.referents.is_empty();
                    if known {
                        let written = self.row.text(name.span);
                        binder.problem(
                            place,
                            ProblemKind::UnknownName {
                                written: written.into(),
                                expected: NameKind::Mix,
                                nearest: binder.names.nearest(written, NameKind::Mix),
                            },
                        );
                    } else {
                        binder.unknown_name(
                            self.row,
                            name,
                            if self.takes(connector, &[Expect::Liquor]) { NameKind::Mix } else { NameKind::Vessel },
                        );
                    }
                }
            }
        }
    }

    /// `to dye bath`.
    fn target(&mut self, binder: &mut Binder<'_>, name: &NameUse, folded: &str) {
        let place = self.row.place(name.span);
        if name.find(mix).is_some()
            || name.find(vessel).is_some()
            || places::is_current_bath(folded)
            || name.find(goods).is_none()
        {
            if let Some(id) = name.find(zone) {
                self.step.zones.push(ZoneUse { place, zone: id });
                return;
            }
            return self.liquor(binder, name, folded, Some(Connector::To));
        }
        if let Some(id) = name.find(goods) {
            self.goods(id);
        }
    }

    fn source(&mut self, binder: &mut Binder<'_>, name: &NameUse, folded: &str) {
        if let Some(id) = name.find(mix) {
            self.step.source = Some(Source::Mix(id));
        } else if let Some(id) = name.find(vessel) {
            self.step.source = Some(Source::Vessel(id));
        } else if let Some(id) = name.find(goods) {
            self.goods(id);
        } else if !name.referents.is_empty() && name.find(zone).is_none() {
            // `6 g from lagoon`: a material drawn from its jar.
            if let Some((measured, span)) = self.nameless.take() {
                let phrase = Phrase {
                    connector: None,
                    clause: 0,
                    span: span.cover(name.span),
                    kind: PhraseKind::Name(name.clone()),
                };
                if let Some(draft) = draft(binder, self.row, Some(&measured), name, &phrase, false) {
                    self.place_draft(binder, None, draft);
                }
            }
        } else if places::is_everyday(folded) || name.find(zone).is_some() {
            self.words(name);
        } else {
            binder.unknown_name(self.row, name, NameKind::Vessel);
        }
    }

    fn with_name(&mut self, binder: &mut Binder<'_>, phrase: &Phrase, name: &NameUse, _folded: &str) {
        if let Some(id) = name.find(mix) {
            // Squirted or brushed with a mix is drawn from it.
            if self.applies_liquor() {
                self.step.source = Some(Source::Mix(id));
                return;
            }
        }
        if name.referents.is_empty() {
            // A brush, a spoon, a friend.
            return self.words(name);
        }
        if let Some(draft) = draft(binder, self.row, None, name, phrase, false) {
            self.place_draft(binder, Some(Connector::With), draft);
        }
    }

    fn applies_liquor(&self) -> bool {
        matches!(self.verb_name(), "squirt" | "spray" | "pour" | "brush" | "print" | "irrigate" | "dip")
    }

    fn spot(
        &mut self,
        binder: &mut Binder<'_>,
        phrase: &Phrase,
        name: &NameUse,
        folded: &str,
        connector: Option<Connector>,
    ) {
        let place = self.row.place(name.span);
        if let Some(zone) = name.find(zone) {
            self.step.zones.push(ZoneUse { place, zone });
            return;
        }
        if let Some(id) = name.find(goods) {
            if connector == Some(Connector::Under) {
                self.words(name);
            }
            return self.goods(id);
        }
        if let Some(cover) = places::cover(folded).filter(|_| matches!(connector, Some(Connector::Under))) {
            self.step.cover = Some((cover, place));
            return;
        }
        if name.find(water_word).is_some() || folded.ends_with("water") {
            self.step.liquor = Some(Liquor { place, kind: LiquorKind::Words });
            return;
        }
        let free = places::is_everyday(folded)
            || (self.takes(connector, &[Expect::Text, Expect::Vessel])
                && !self.takes(connector, &[Expect::Zone, Expect::Goods]));
        if free || name.find(vessel).is_some() {
            return self.words(name);
        }
        let _ = phrase;
        binder.unknown_name(self.row, name, NameKind::Zone);
    }

    fn finish(mut self, binder: &mut Binder<'_>, ledger: &mut Ledger) -> Step {
        if let Some((measured, span)) = self.nameless.take() {
            match self.step.source {
                Some(Source::Mix(id)) => {
                    let name = NameUse { span, referents: vec![Referent::Mix(id)] };
                    let goods = measured.per_goods.iter().flatten().filter_map(goods).collect();
                    let draft = Draft {
                        measured: Some(measured),
                        what: Substance::Mix(id),
                        name,
                        place: self.row.place(span),
                        temperature: None,
                        fixed: false,
                        goods,
                    };
                    self.place_draft(binder, None, draft);
                }
                _ => {
                    let written = self.row.text(measured.span);
                    binder.problem(
                        self.row.place(measured.span),
                        ProblemKind::MissingValue {
                            what: format!("what this is {written} of").into(),
                            example: format!("{written} water").into(),
                        },
                    );
                }
            }
        } else if let (Some(Source::Mix(id)), true, true) =
            (&self.step.source, self.applied.is_empty(), self.applies_liquor() || self.verb_name() == "sprinkle")
        {
            // No amount: all of it.
            let span = self.row.line.span;
            let name = NameUse { span, referents: vec![Referent::Mix(*id)] };
            let draft = Draft {
                measured: None,
                what: Substance::Mix(*id),
                name,
                place: self.row.place(span),
                temperature: None,
                fixed: false,
                goods: Vec::new(),
            };
            self.place_draft(binder, None, draft);
        }
        self.default_goods(binder);
        self.ratio_bath(binder);
        let goods = self.step.goods.clone();
        for list in [&mut self.applied, &mut self.bath, &mut self.with] {
            for (_, draft) in list.iter_mut() {
                if draft.goods.is_empty() {
                    draft.goods.clone_from(&goods);
                }
            }
        }
        let mut liquor_volume = None;
        if !self.bath.is_empty() {
            let (ingredients, liquid) = settle_all(binder, &self.bath, None, None);
            liquor_volume = liquid;
            let place = self.bath.iter().map(|(_, draft)| draft.place).reduce(|a, b| tenter_quantity::Place {
                block: a.block,
                start: a.start.min(b.start),
                end: a.end.max(b.end),
            });
            if let Some(place) = place {
                self.step.liquor = Some(Liquor { place, kind: LiquorKind::Bath(ingredients) });
            }
        }
        let liquor_volume = liquor_volume.or_else(|| ledger.volume(&self.step));
        let (applied, applied_liquid) = settle_all(binder, &self.applied, None, liquor_volume.as_ref());
        self.step.applied = applied;
        let (with, _) = settle_all(binder, &self.with, None, liquor_volume.or(applied_liquid).as_ref());
        self.step.with = with;
        self.step
    }

    /// `in water at 1:20`: a bath measured by the goods.
    fn ratio_bath(&mut self, binder: &mut Binder<'_>) {
        let Some((ratio, span)) = self.ratio.take() else {
            return;
        };
        self.liquor_ratio_used = true;
        let already = self.bath.iter().any(|(_, draft)| crate::mix::is_liquid(binder, draft.what));
        if already {
            return;
        }
        let Some(quantity) = tenter_quantity::liquor_ratio(1.0, ratio) else {
            return;
        };
        let place = self.row.place(span);
        let Some(water) = binder.reference_material("water", place) else {
            return;
        };
        let measured = Measured {
            quantity,
            unit: quantity.dimension.usual_unit(quantity.basis),
            span,
            pickup: false,
            per_goods: None,
            in_doubt: false,
        };
        let name = NameUse { span, referents: Vec::new() };
        let temperature = self.step.temperature.take();
        let draft = Draft {
            measured: Some(measured),
            what: Substance::Material(water),
            name,
            place,
            temperature,
            fixed: false,
            goods: Vec::new(),
        };
        self.bath.insert(0, (*self.row, draft));
    }

    /// Goods not named: those folded the way the zones say, else all.
    fn default_goods(&mut self, binder: &Binder<'_>) {
        if self.step.goods.is_empty() {
            self.step.goods = (0..binder.goods.len()).map(GoodsId).collect();
        }
    }
}

struct Piece<'a> {
    text: &'a str,
    start: u32,
}

/// Splits at `and` between blanks.
fn split_and(text: &str) -> Vec<Piece<'_>> {
    let mut out = Vec::new();
    let mut from = 0;
    while let Some(at) = text[from..].find(" and ") {
        out.push(Piece { text: &text[from..from + at], start: from as u32 });
        from += at + 5;
    }
    out.push(Piece { text: &text[from..], start: from as u32 });
    out
}

/// The span of the first word of a phrase that opens with `word`.
pub(crate) fn first_word(span: Span, word: &str) -> Span {
    Span::new(span.start, span.start + word.len() as u32)
}

fn goods(referent: &Referent) -> Option<GoodsId> {
    match referent {
        Referent::Goods(id) => Some(*id),
        _ => None,
    }
}

fn mix(referent: &Referent) -> Option<crate::recipe::MixId> {
    match referent {
        Referent::Mix(id) => Some(*id),
        _ => None,
    }
}

fn vessel(referent: &Referent) -> Option<crate::recipe::VesselId> {
    match referent {
        Referent::Vessel(id) => Some(*id),
        _ => None,
    }
}

fn layout(referent: &Referent) -> Option<crate::recipe::LayoutId> {
    match referent {
        Referent::Layout(id) => Some(*id),
        _ => None,
    }
}

fn group(referent: &Referent) -> Option<crate::recipe::GroupId> {
    match referent {
        Referent::Group(id) => Some(*id),
        _ => None,
    }
}

fn zone(referent: &Referent) -> Option<ZoneRef> {
    match referent {
        Referent::Zone(zone) => Some(*zone),
        _ => None,
    }
}

fn water_word(referent: &Referent) -> Option<crate::names::WaterWord> {
    match referent {
        Referent::Water(word) => Some(*word),
        _ => None,
    }
}
