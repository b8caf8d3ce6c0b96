//! `mix` blocks: what goes in, in order, and what it makes.

use tenter_quantity::{Basis, Dimension, Figure, Interval, Place};
use tenter_syntax::BlockKind;

use crate::amounts::{Ground, gram, refers_to_liquid, scaled, settle, volume_unit};
use crate::binder::{Binder, tidy};
use crate::names::{Referent, unquoted};
use crate::phrase::{Manner, Measured, NameUse, Phrase, PhraseKind};
use crate::problem::{NameKind, ProblemKind};
use crate::recipe::{GoodsId, Ingredient, Mix, Named, Substance};
use crate::sheet::{Body, Row};

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
    for body in &bodies {
        let mix = read(binder, body);
        binder.mixes.push(mix);
    }
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
                    .map(|figure| scaled(binder, &figure, has_fixed(&phrases)));
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
                if let Some(name) = name {
                    if name.referents.is_empty() {
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
        if let Some(measured) = measured {
            if measured.quantity.dimension == Dimension::PerCent {
                binder.problem(
                    row.place(measured.span),
                    ProblemKind::PercentOfWhat {
                        written: row.text(measured.span).into(),
                        of: row.text(name.span).into(),
                    },
                );
            }
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
    let temperature = water.map(|word| crate::water::temperature(word));
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

/// The goods an amount refers to: those named, else all there are.
pub(crate) fn ground(binder: &mut Binder<'_>, row: &Row<'_>, draft: &Draft) -> Ground {
    let relative = draft.measured.as_ref().is_some_and(|measured| {
        measured.quantity.basis != Basis::Absolute
            || matches!(measured.quantity.dimension, Dimension::LiquorRatio | Dimension::VolumePerMass)
    });
    let mut ground = Ground { fixed: draft.fixed, ..Ground::default() };
    if draft.goods.is_empty() {
        ground.pieces = binder.all_pieces();
        ground.goods_mass = binder.all_dry_mass();
        if relative && binder.goods.len() > 1 {
            let choices = binder.goods.iter().map(|goods| goods.name.text.clone()).collect();
            binder.problem(row.place(row.line.span), ProblemKind::WhichGoods { choices });
        }
    } else {
        let chosen: Vec<&crate::recipe::Goods> = draft.goods.iter().filter_map(|id| binder.goods.get(id.0)).collect();
        ground.pieces = Some(Figure::sum(
            chosen.iter().map(|goods| goods.pieces.clone()).collect(),
            Dimension::Piece.usual_unit(Basis::Absolute),
        ));
        let masses: Option<Vec<Figure>> = chosen.iter().map(|goods| goods.dry_mass.clone()).collect();
        ground.goods_mass = masses.map(|masses| Figure::sum(masses, gram()));
    }
    ground
}

/// Settles drafts of one liquor together: first what stands by itself, then what is so much in a litre.
pub(crate) fn settle_all(
    binder: &mut Binder<'_>,
    drafts: &[(Row<'_>, Draft)],
    made_up_to: Option<&Figure>,
    liquor: Option<&Figure>,
) -> (Vec<Ingredient>, Option<Figure>) {
    let mut amounts = vec![None; drafts.len()];
    let parts: f64 = drafts
        .iter()
        .filter_map(|(_, draft)| draft.measured.as_ref())
        .filter(|measured| measured.quantity.dimension == Dimension::Part)
        .map(|measured| measured.quantity.value.best)
        .sum();
    let whole_mass = made_up_to.filter(|figure| figure.dimension == Dimension::Mass).cloned();
    let made_volume = made_up_to.filter(|figure| figure.dimension == Dimension::Volume).cloned();
    let whole_mass =
        whole_mass.or_else(|| made_volume.as_ref().filter(|_| parts > 0.0).map(|volume| paste_mass(volume)));
    for (index, (row, draft)) in drafts.iter().enumerate() {
        let Some(measured) = draft.measured.as_ref().filter(|measured| !refers_to_liquid(measured)) else {
            continue;
        };
        let mut ground = ground(binder, row, draft);
        ground.parts = Some(parts);
        ground.whole_mass = whole_mass.clone();
        amounts[index] = Some(settle(binder, row, draft.what, Some(&draft.name), measured, &ground));
    }
    let is_base = |binder: &Binder<'_>, what: Substance| match what {
        Substance::Mix(_) => true,
        Substance::Material(id) => binder.materials[id.0].is_water(),
    };
    let volumes = |base_only: bool| -> Vec<Figure> {
        drafts
            .iter()
            .zip(&amounts)
            .filter(|((_, draft), _)| if base_only { is_base(binder, draft.what) } else { true })
            .filter_map(|(_, amount): (_, &Option<crate::recipe::Amount>)| {
                amount.as_ref().filter(|amount| !amount.by_volume_of_solid).and_then(|amount| amount.volume.clone())
            })
            .collect()
    };
    let mut base = volumes(true);
    if base.is_empty() {
        base = volumes(false);
    }
    let put_in = (!base.is_empty()).then(|| Figure::sum(base, volume_unit()));
    let liquid = liquor.cloned().or_else(|| made_volume.clone()).or_else(|| put_in.clone());
    for (index, (row, draft)) in drafts.iter().enumerate() {
        let Some(measured) = draft.measured.as_ref().filter(|measured| refers_to_liquid(measured)) else {
            continue;
        };
        let mut ground = ground(binder, row, draft);
        ground.liquid = liquid.clone();
        ground.whole_mass = whole_mass.clone();
        amounts[index] = Some(settle(binder, row, draft.what, Some(&draft.name), measured, &ground));
    }
    let ingredients = drafts
        .iter()
        .zip(amounts)
        .map(|((row, draft), amount)| Ingredient {
            place: draft.place,
            what: draft.what,
            name_place: row.place(draft.name.span),
            amount,
            temperature: draft.temperature.clone(),
            fixed: draft.fixed,
        })
        .collect();
    (ingredients, made_volume.or(put_in))
}

fn paste_mass(volume: &Figure) -> Figure {
    let unit = Dimension::MassConcentration.usual_unit(Basis::Absolute);
    let density = Figure::assumed(
        Interval::new(1000.0, 1050.0, 1150.0),
        Dimension::MassConcentration,
        unit,
        "density of a paste",
        "a little more than water",
    );
    volume.times(&density, gram())
}

fn assemble(binder: &mut Binder<'_>, mix: &mut Mix, drafts: &[(Row<'_>, Draft)]) {
    let made_up_to = mix.made_up_to.clone();
    let (ingredients, liquid_in) = settle_all(binder, drafts, made_up_to.as_ref(), None);
    mix.ingredients = ingredients;
    mix.liquid_in = liquid_in;
    mix.temperature = crate::water::mean_temperature(&mix.ingredients);
    measure(binder, mix);
}

/// Volume and mass of what is made.
pub(crate) fn measure(binder: &Binder<'_>, mix: &mut Mix) {
    let masses: Option<Vec<Figure>> = mix
        .ingredients
        .iter()
        .map(|ingredient| ingredient.amount.as_ref().and_then(|amount| amount.mass.clone()))
        .collect();
    if let Some(target) = &mix.made_up_to {
        if target.dimension == Dimension::Mass {
            mix.mass = Some(target.clone());
            let unit = Dimension::MassConcentration.usual_unit(Basis::Absolute);
            let density = Figure::assumed(
                Interval::new(1000.0, 1050.0, 1150.0),
                Dimension::MassConcentration,
                unit,
                "density of a paste",
                "a little more than water",
            );
            let wet =
                mix.liquid_in.is_some() || mix.ingredients.iter().any(|ingredient| is_liquid(binder, ingredient.what));
            mix.volume = wet.then(|| target.over(&density, volume_unit()));
        } else {
            mix.volume = Some(target.clone());
            mix.mass = None;
        }
        return;
    }
    mix.mass = masses.filter(|masses| !masses.is_empty()).map(|masses| Figure::sum(masses, gram()));
    let mut terms: Vec<Figure> = Vec::new();
    let mut solids: Vec<Figure> = Vec::new();
    for ingredient in &mix.ingredients {
        let Some(amount) = &ingredient.amount else {
            continue;
        };
        if is_liquid(binder, ingredient.what) {
            terms.extend(amount.volume.clone());
        } else {
            solids.extend(amount.mass.clone());
        }
    }
    if terms.is_empty() {
        mix.volume = None;
        return;
    }
    if !solids.is_empty() {
        terms.push(displaced(Figure::sum(solids, gram())));
    }
    mix.volume = Some(Figure::sum(terms, volume_unit()));
}

/// Room that dissolved solids take up. Apparent volumes run from about none (soda ash) to three quarters of a
/// millilitre a gram (urea): common practice, no source.
fn displaced(mass: Figure) -> Figure {
    let unit = Dimension::VolumePerMass.usual_unit(Basis::Absolute);
    let room = Figure::assumed(
        Interval::new(0.0, 3.5e-4, 7.5e-4),
        Dimension::VolumePerMass,
        unit,
        "room taken by what is dissolved",
        "none to 0.75 mL a gram",
    );
    mass.times(&room, volume_unit())
}

pub(crate) fn is_liquid(binder: &Binder<'_>, what: Substance) -> bool {
    match what {
        Substance::Mix(id) => binder.mixes.get(id.0).is_none_or(|mix| !mix.is_dry() || mix.ingredients.is_empty()),
        Substance::Material(id) => binder.materials[id.0].liquid,
    }
}

/// A mix that draws on itself, however far round.
fn circles(binder: &mut Binder<'_>) {
    let draws: Vec<Vec<usize>> = binder
        .mixes
        .iter()
        .map(|mix| {
            mix.ingredients
                .iter()
                .filter_map(|ingredient| match ingredient.what {
                    Substance::Mix(id) => Some(id.0),
                    Substance::Material(_) => None,
                })
                .collect()
        })
        .collect();
    for start in 0..draws.len() {
        let mut reached = vec![false; draws.len()];
        let mut waiting = draws[start].clone();
        while let Some(next) = waiting.pop() {
            if next < reached.len() && !reached[next] {
                reached[next] = true;
                waiting.extend(&draws[next]);
            }
        }
        if reached[start] {
            let name = binder.mixes[start].name.clone();
            binder.problem(name.place, ProblemKind::CircularMix { name: name.text });
        }
    }
}
