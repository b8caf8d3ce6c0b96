//! One step: each phrase to its place by the connecting word, the dimension and what the name stands for.

mod finish;
mod liquor;
mod measured;
mod named;
mod top_up;
mod words;

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
    /// Problems there were before this line was read.
    told: usize,
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
            vessel: None,
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
            told: 0,
            liquor_ratio_used: false,
        }
    }

    pub(crate) fn read(mut self, binder: &mut Binder<'_>, ledger: &mut Ledger) -> Step {
        self.told = binder.problems.len();
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
            if self.opens_another_step(phrase) {
                // Told of by the reader of the text; what follows belongs to that step.
                break;
            }
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

    /// `rinse tees and wash with detergent`: a verb behind `and`.
    fn opens_another_step(&self, phrase: &Phrase) -> bool {
        let (Some((Connector::And, _)), PhraseKind::Name(name)) = (phrase.connector, &phrase.kind) else {
            return false;
        };
        let words = fold_name(self.row.text(name.span));
        let first = words.split(' ').next().unwrap_or("");
        name.referents.is_empty()
            && tenter_syntax::verbs().any(|verb| verb.name == first || verb.synonyms.contains(&first))
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

    fn phrase(&mut self, binder: &mut Binder<'_>, phrase: &Phrase, connector: Option<Connector>) {
        let after_each = std::mem::take(&mut self.after_each);
        let after_lot = std::mem::take(&mut self.after_lot);
        if self.prose(connector, &phrase.kind) {
            let text = tidy(self.row.text(phrase.span));
            return self.step.words.push(Named { text, place: self.row.place(phrase.span) });
        }
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
                if let Some(name) = name
                    && (connector == Some(Connector::In) || connector.is_none())
                {
                    self.quietly(name);
                }
            }
            PhraseKind::Date | PhraseKind::Colour(_) => {}
        }
    }

    /// Words for people where the verb expects nothing else: `at 600 W`, `as hazardous waste`, `into 8 wedges`.
    fn prose(&self, connector: Option<Connector>, kind: &PhraseKind) -> bool {
        let Some(verb) = self.step.verb.filter(|_| connector.is_some()) else {
            return false;
        };
        let mut clauses = verb.takes.iter().filter(|clause| clause.connector == connector).peekable();
        let free = clauses.peek().is_some() && clauses.all(|clause| clause.what == Expect::Text);
        free && match kind {
            PhraseKind::Name(name) => name.referents.is_empty(),
            PhraseKind::Bare(..) => true,
            PhraseKind::Measured(measured, name) => {
                name.as_ref().is_some_and(|name| name.referents.is_empty())
                    || matches!(
                        measured.quantity.dimension,
                        Dimension::TemperatureDifference | Dimension::TemperatureRate | Dimension::Length
                    )
            }
            _ => false,
        }
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
