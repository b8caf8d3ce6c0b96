//! `mix` blocks: what goes in, in order, and what it makes.

mod assemble;

use crate::amounts::{Ground, gram, refers_to_liquid, scaled, settle, volume_unit};
use crate::binder::{Binder, tidy};
use crate::names::{Referent, unquoted};
use crate::phrase::{Manner, Measured, NameUse, Phrase, PhraseKind};
use crate::problem::{NameKind, ProblemKind};
use crate::recipe::{GoodsId, Ingredient, Mix, MixId, Named, Substance};
use crate::sheet::{Body, Row};
use assemble::{assemble, circles};
pub(crate) use assemble::{is_liquid, settle_all};
use tenter_quantity::{Basis, Dimension, Figure, Interval, Place};
use tenter_syntax::{BlockKind, fold_name};

/// An ingredient line as read, before its amount is settled.
pub(crate) struct Draft {
    pub measured: Option<Measured>,
    pub what: Substance,
    pub name: NameUse,
    pub place: Place,
    pub temperature: Option<Figure>,
    pub fixed: bool,
    pub goods: Vec<GoodsId>,
}

/// Reads all `mix` blocks.
pub(crate) fn bind(binder: &mut Binder<'_>) {
    let bodies = binder.of_kind(BlockKind::Mix);
    let scale = binder.scale;
    for body in &bodies {
        binder.scale = binder.by_lot.scale_of_mix(MixId(binder.mixes.len()), scale);
        let mix = read(binder, body);
        binder.mixes.push(mix);
    }
    binder.scale = scale;
    circles(binder);
}

fn read(binder: &mut Binder<'_>, body: &Body<'_>) -> Mix {
    let place = body.place(if body.block.name.is_empty() { body.block.keyword } else { body.block.name });
    let mut mix = Mix {
        name: Named { text: tidy(unquoted(body.name())), place },
        ingredients: Vec::new(),
        made_up_to: None,
        liquid_in: None,
        volume: None,
        mass: None,
        temperature: None,
        rest: None,
        keep: None,
        times_made: 1,
        made_by_step: None,
        shared: body.shared,
        draws: Vec::new(),
    };
    let mut drafts: Vec<(Row<'_>, Draft)> = Vec::new();
    let told = binder.problems.len();
    // `fixed` on a line of its own holds for the whole mix.
    let fixed = body.rows.iter().any(|row| fold_name(row.text(row.line.span)) == "fixed");
    for row in &body.rows {
        match row.line.head.as_ref().map(|head| (&*head.word, head.known)) {
            Some(("make up", true)) => {
                let phrases = binder.phrases(row);
                mix.made_up_to = binder
                    .value_of(
                        row,
                        &phrases,
                        &[Dimension::Volume, Dimension::Mass],
                        "what it is made up to",
                        "make up to 8 L",
                    )
                    .map(|figure| scaled(binder, &figure, fixed || has_fixed(&phrases)));
            }
            Some(("rest", true)) => {
                let phrases = binder.phrases(row);
                mix.rest = binder.value_of(row, &phrases, &[Dimension::Time], "how long it rests", "rest for 12 h");
            }
            Some(("keep", true)) => {
                let phrases = binder.phrases(row);
                mix.keep = binder.value_of(row, &phrases, &[Dimension::Time], "how long it keeps", "keep for 5 days");
            }
            Some(("accept", true)) => {}
            Some((_, true)) => {}
            Some((_, false)) => headed(binder, row, &mut drafts),
            None if row.line.span.is_empty() => {}
            None => amount_line(binder, row, &mut drafts),
        }
    }
    for (_, draft) in &mut drafts {
        draft.fixed |= fixed;
    }
    binder.hushed = binder.problems.len() > told;
    assemble(binder, &mut mix, &drafts);
    binder.hushed = false;
    mix
}

fn has_fixed(phrases: &[Phrase]) -> bool {
    phrases.iter().any(|phrase| matches!(phrase.kind, PhraseKind::Manner(Manner::Fixed)))
}

/// A line that opens with a word: a name without its amount, or with the amount behind it.
fn headed<'s>(binder: &mut Binder<'_>, row: &Row<'s>, drafts: &mut Vec<(Row<'s>, Draft)>) {
    let text = row.text(row.line.span);
    let words: Vec<&str> = text.split_whitespace().collect();
    let hit = binder.names.longest(&words);
    let known = hit.as_ref().is_some_and(|hit| {
        hit.referents.iter().any(|referent| {
            matches!(referent, Referent::Mix(_) | Referent::Declared(_) | Referent::Reference(_) | Referent::Water(_))
        })
    });
    let phrases = binder.phrases(row);
    let amount = phrases.iter().find_map(|phrase| match &phrase.kind {
        PhraseKind::Measured(measured, _) => Some(measured.clone()),
        _ => None,
    });
    let place = row.place(row.line.span);
    let name_end = words.iter().take(hit.as_ref().map_or(1, |hit| hit.words)).map(|word| word.len()).sum::<usize>();
    let span = tenter_syntax::Span::new(
        row.line.span.start,
        row.line.span.start + (name_end + hit.as_ref().map_or(0, |hit| hit.words.saturating_sub(1))) as u32,
    );
    let name = NameUse { span, referents: hit.map_or_else(Vec::new, |hit| hit.referents) };
    match (known, amount) {
        (true, Some(measured)) => {
            let suggestion = format!("{} {}", row.text(measured.span), row.text(name.span));
            binder.problem(place, ProblemKind::AmountBehindName { suggestion: suggestion.into() });
            if let Some(what) = binder.substance(row, &name) {
                drafts.push((
                    *row,
                    Draft {
                        measured: Some(measured),
                        what,
                        name,
                        place,
                        temperature: None,
                        fixed: false,
                        goods: Vec::new(),
                    },
                ));
            }
        }
        (true, None) => {
            let what = row.text(name.span);
            binder.problem(
                place,
                ProblemKind::MissingValue {
                    what: format!("how much {what}").into(),
                    example: format!("60 g/L {what}").into(),
                },
            );
        }
        (false, _) => {
            crate::keys::known_or_told(binder, row, BlockKind::Mix);
        }
    }
}

fn amount_line<'s>(binder: &mut Binder<'_>, row: &Row<'s>, drafts: &mut Vec<(Row<'s>, Draft)>) {
    let phrases = binder.phrases(row);
    let first = drafts.len();
    let fixed = has_fixed(&phrases);
    let mut told = false;
    for phrase in &phrases {
        match &phrase.kind {
            PhraseKind::Measured(measured, name)
                if !matches!(measured.quantity.dimension, Dimension::Temperature | Dimension::Time) =>
            {
                match name {
                    Some(name) => {
                        if let Some(draft) = draft(binder, row, Some(measured), name, phrase, fixed) {
                            drafts.push((*row, draft));
                        } else {
                            told = true;
                        }
                    }
                    None if measured.quantity.dimension == Dimension::PerCent
                        && crate::materials::strength_behind(
                            binder,
                            row,
                            drafts[first..].last().map(|(_, draft)| draft.what),
                            measured,
                        ) => {}
                    None => {
                        let from = phrases.iter().find_map(|other| match &other.kind {
                            PhraseKind::Name(name) if other.clause > phrase.clause => Some(name.clone()),
                            _ => None,
                        });
                        match from {
                            Some(name) => {
                                if let Some(draft) = draft(binder, row, Some(measured), &name, phrase, fixed) {
                                    drafts.push((*row, draft));
                                }
                                told = true;
                            }
                            None => {
                                told = true;
                                let written = row.text(measured.span);
                                binder.problem(
                                    row.place(measured.span),
                                    ProblemKind::MissingValue {
                                        what: format!("what this is {written} of").into(),
                                        example: format!("{written} water").into(),
                                    },
                                );
                            }
                        }
                    }
                }
            }
            PhraseKind::Measured(measured, _) if measured.quantity.dimension == Dimension::Temperature => {
                let figure = binder.figure(row, measured);
                let earlier =
                    drafts[first..].iter().find_map(|(_, draft)| draft.temperature.as_ref().and_then(Figure::place));
                if let Some((_, draft)) =
                    drafts[first..].iter_mut().rev().find(|(_, draft)| draft.temperature.is_none())
                {
                    draft.temperature = Some(figure);
                } else if let Some(first) = earlier {
                    binder.problem(
                        row.place(measured.span),
                        ProblemKind::SaidTwice { what: "temperature", first, range: None },
                    );
                }
            }
            PhraseKind::Bare(_, span, name) => {
                told = true;
                let span = *span;
                if let Some(name) = name
                    && name.referents.is_empty()
                {
                    // Perhaps the word behind the number was meant for a unit.
                    let word = row.text(name.span).split_whitespace().next().unwrap_or("");
                    match tenter_quantity::nearest_unit(word) {
                        Some(unit) => binder.problem(
                            row.place(crate::step::first_word(name.span, word)),
                            ProblemKind::UnknownUnit { written: word.into(), nearest: Some(unit.symbol.into()) },
                        ),
                        None => binder.unknown_name(row, name, NameKind::Material),
                    }
                    continue;
                }
                binder.problem(row.place(span), ProblemKind::MissingUnit { written: row.text(span).into() });
            }
            PhraseKind::Name(name) => {
                let goods = name.find(|referent| match referent {
                    Referent::Goods(id) => Some(*id),
                    _ => None,
                });
                match goods {
                    Some(id) => {
                        for (_, draft) in &mut drafts[first..] {
                            draft.goods.push(id);
                        }
                    }
                    None if !told && name.referents.is_empty() => binder.unknown_name(row, name, NameKind::Material),
                    None => {}
                }
            }
            PhraseKind::Broken(_) => told = true,
            PhraseKind::Empty if phrases.len() == 1 => binder.missing(row, "what goes in", "8 L water at 40 °C"),
            _ => {}
        }
    }
}

/// A draft of an ingredient; an unknown name is told.
pub(crate) fn draft(
    binder: &mut Binder<'_>,
    row: &Row<'_>,
    measured: Option<&Measured>,
    name: &NameUse,
    phrase: &Phrase,
    fixed: bool,
) -> Option<Draft> {
    let Some(what) = binder.substance(row, name) else {
        if let Some(measured) = measured
            && measured.quantity.dimension == Dimension::PerCent
        {
            binder.problem(
                row.place(measured.span),
                ProblemKind::PercentOfWhat { written: row.text(measured.span).into(), of: row.text(name.span).into() },
            );
        }
        binder.unknown_name(row, name, NameKind::Material);
        return None;
    };
    let goods = measured
        .and_then(|measured| measured.per_goods.as_ref())
        .map(|referents| {
            referents
                .iter()
                .filter_map(|referent| match referent {
                    Referent::Goods(id) => Some(*id),
                    _ => None,
                })
                .collect()
        })
        .unwrap_or_default();
    let water = name.find(|referent| match referent {
        Referent::Water(word) => Some(*word),
        _ => None,
    });
    let temperature = water.map(crate::water::temperature);
    Some(Draft {
        measured: measured.cloned(),
        what,
        name: name.clone(),
        place: row.place(phrase.span),
        temperature,
        fixed,
        goods,
    })
}
