//! Reading a unit from the tokens of a line.

use crate::currency;
use crate::dimension::Dimension;
use crate::index::{Found, Group, find};
use crate::lookup::meant_units;
use crate::measure::{Denominator, Token, UnitExpression};
use crate::pieces::{Piece, Pieces};
use crate::problem::UnitProblem;
use crate::quotient::{Part, factor};
use crate::unit::{System, Unit};

/// The unit at the front of `tokens`; `None` where there is none.
///
/// # Errors
/// What is wrong with it, where it begins as a unit: half written, doubtful, or divided into nonsense.
pub fn read_unit<'a>(
    tokens: &[Token<'a>],
    measures: Option<System>,
) -> Result<Option<UnitExpression<'a>>, UnitProblem> {
    let pieces = Pieces::new(tokens);
    let Some(top) = find_at_front(&pieces)? else {
        return Ok(None);
    };
    read_quotient(&pieces, top, measures).map(Some)
}

/// As [`read_unit`], where a price is expected: a currency code comes before any unit, so `CUP` is a peso.
///
/// # Errors
/// As [`read_unit`].
pub fn read_price<'a>(
    tokens: &[Token<'a>],
    measures: Option<System>,
) -> Result<Option<UnitExpression<'a>>, UnitProblem> {
    let pieces = Pieces::new(tokens);
    let code = match pieces.get(0) {
        Some(Piece::Word(word)) => currency::lookup_currency(word),
        _ => None,
    };
    match code {
        Some(unit) => {
            let top = Part { group: Group::one(unit), spelling: unit.symbol, end: 1 };
            read_quotient(&pieces, top, measures).map(Some)
        }
        None => read_unit(tokens, measures),
    }
}

/// What stands below a stroke, from tokens that begin after it (`9 g lagoon per tee`: `tee`), and how many of them it
/// takes. Put it under a unit with [`UnitExpression::divided_by`].
///
/// # Errors
/// Doubtful spellings. Nothing there gives `None`.
pub fn read_denominator<'a>(tokens: &[Token<'a>]) -> Result<Option<(Denominator<'a>, usize)>, UnitProblem> {
    let pieces = Pieces::new(tokens);
    let found = denominator_at(&pieces, 0)?;
    Ok(found.map(|(bottom, end)| (bottom.denominator, pieces.tokens_to(end))))
}

struct Bottom<'a> {
    denominator: Denominator<'a>,
    part: Option<Part>,
}

/// The unit at the front. `% w/v` and `mg/L CaCO3` have strokes of their own: whole words come first.
fn find_at_front(pieces: &Pieces<'_>) -> Result<Option<Part>, UnitProblem> {
    let whole =
        find(pieces.whole_words()).and_then(|(found, spelling, used)| Some((found, spelling, pieces.piece_at(used)?)));
    let strokes = pieces.whole_words().iter().any(|word| word.contains('/'));
    if let Some((found, spelling, end)) = whole
        && !strokes
    {
        return part_of(pieces, found, spelling, end);
    }
    let split = find_at(pieces, 0);
    match whole {
        // `% owg/L` is longer taken apart.
        Some((_, _, end)) if matches!(split, Ok(Some(part)) if part.end > end) => split,
        Some((found, spelling, end)) => part_of(pieces, found, spelling, end),
        None => split,
    }
}

fn find_at(pieces: &Pieces<'_>, at: usize) -> Result<Option<Part>, UnitProblem> {
    let (words, count) = pieces.words_from(at);
    match find(words.get(..count).unwrap_or_default()) {
        // Nothing is divided by money: there the word is a name.
        Some((Found::Currency(_), _, _)) if at > 0 => Ok(None),
        Some((found, spelling, used)) => part_of(pieces, found, spelling, at + used),
        None => Ok(None),
    }
}

fn part_of(pieces: &Pieces<'_>, found: Found, spelling: &'static str, end: usize) -> Result<Option<Part>, UnitProblem> {
    let group = match found {
        Found::Units(group) => group,
        Found::Currency(unit) => Group::one(unit),
        Found::Doubtful(doubt) => {
            return Err(UnitProblem::Doubtful {
                spelling: spelling.to_owned(),
                meant: meant_units(doubt),
                why: doubt.why,
                words_used: pieces.tokens_to(end),
            });
        }
    };
    Ok(Some(Part { group, spelling, end }))
}

/// Words that mean the goods as a whole after `per 100 g`.
const GOODS: &[&str] = &["goods", "fabric", "cloth", "fibre", "fiber"];

fn denominator_at<'a>(pieces: &Pieces<'a>, start: usize) -> Result<Option<(Bottom<'a>, usize)>, UnitProblem> {
    let (number, at) = match pieces.get(start) {
        Some(Piece::Number(number)) => (Some(number), start + 1),
        _ => (None, start),
    };
    let part = match pieces.get(at) {
        Some(Piece::Word(_)) => find_at(pieces, at)?,
        _ => None,
    };
    let mut denominator = Denominator {
        number: number.unwrap_or(1.0),
        unit: part.and_then(|part| part.group.first()),
        word: None,
        of_goods: false,
        shared_spelling: part.is_some_and(|part| part.group.iter().nth(1).is_some()),
    };
    let mut end = part.map_or(at, |part| part.end);
    if part.is_none() {
        match (number, pieces.get(at)) {
            (None, Some(Piece::Word(word))) => {
                denominator.word = Some(word);
                end = at + 1;
            }
            (None, _) => return Ok(None),
            (Some(_), _) => {}
        }
    } else if let Some(Piece::Word(word)) = pieces.get(end) {
        let mass = denominator.unit.map(|unit| unit.dimension) == Some(Dimension::Mass);
        if mass && GOODS.iter().any(|goods| word.eq_ignore_ascii_case(goods)) {
            denominator.of_goods = true;
            end += 1;
        }
    }
    Ok(Some((Bottom { denominator, part }, end)))
}

fn read_quotient<'a>(
    pieces: &Pieces<'a>,
    top: Part,
    measures: Option<System>,
) -> Result<UnitExpression<'a>, UnitProblem> {
    let Some(numerator) = top.group.of(measures).first() else {
        return Err(UnitProblem::PerZero { words_used: 0 });
    };
    if pieces.get(top.end) != Some(Piece::Stroke) {
        return Ok(simple(numerator, top, measures, pieces.tokens_to(top.end)));
    }
    let Some((bottom, end)) = denominator_at(pieces, top.end + 1)? else {
        return Err(UnitProblem::HalfUnit { numerator, words_used: pieces.tokens_to(top.end + 1) });
    };
    let words_used = pieces.tokens_to(end);
    if pieces.get(end) == Some(Piece::Stroke) {
        return Err(UnitProblem::TwoDivisions {
            spelling: pieces.text_to(end + 2),
            words_used: pieces.tokens_to(end + 2).max(words_used),
        });
    }
    simple(numerator, top, measures, words_used).over(bottom.denominator, top, bottom.part, measures)
}

fn simple<'a>(numerator: &'static Unit, top: Part, measures: Option<System>, words_used: usize) -> UnitExpression<'a> {
    let (factor, ambiguity) = factor(top, None, measures);
    UnitExpression {
        numerator,
        denominator: None,
        basis: numerator.basis,
        per_word: None,
        words_used,
        dimension: numerator.dimension,
        factor,
        offset: numerator.offset,
        ambiguity,
    }
}
