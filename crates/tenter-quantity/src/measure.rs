//! Reading a unit from words: `g/L`, `4 tsp per cup`, `2 L per 100 g goods`, `24 EUR per 500 g`.

use crate::composed::COMPOSED;
use crate::currency;
use crate::dimension::Dimension;
use crate::interval::Interval;
use crate::lookup::{self, Found, Group, WHOSE, meant_units};
use crate::pieces::{Piece, Pieces};
use crate::problem::UnitProblem;
use crate::quantity::{Basis, Quantity};
use crate::unit::{System, Unit};

/// A piece of a line as the parser hands it over.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Token<'a> {
    /// A word, a stroke inside it or not.
    Word(&'a str),
    /// A number.
    Number(f64),
}

/// Below the stroke.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Denominator<'a> {
    /// How many: 100 in `per 100 g`; 1 where no number stands.
    pub number: f64,
    /// The unit below the stroke; `None` for a word or `parts per 1000`.
    pub unit: Option<&'static Unit>,
    /// The word below the stroke where it is no unit: `tee`.
    pub word: Option<&'a str>,
    /// Whether `goods` follows the unit: `per 100 g goods`.
    pub of_goods: bool,
    /// Whether units of several countries share the spelling below the stroke.
    pub shared_spelling: bool,
}

/// A unit whose spelling several countries share, and that nothing settled.
#[derive(Clone, PartialEq, Debug)]
pub struct Ambiguity {
    /// The shared spellings, above and below the stroke.
    pub spellings: Vec<&'static str>,
    /// The units they may be, likeliest first.
    pub candidates: Vec<&'static Unit>,
    /// Why it matters.
    pub why: &'static str,
}

/// A unit as written: simple or divided, with its factor to SI.
#[derive(Clone, PartialEq, Debug)]
pub struct UnitExpression<'a> {
    /// Above the stroke, or all of it. The likeliest one where the spelling is ambiguous.
    pub numerator: &'static Unit,
    /// Below the stroke.
    pub denominator: Option<Denominator<'a>>,
    /// What it is counted on.
    pub basis: Basis,
    /// `tee` in `g per tee`: the resolver checks that it names goods.
    pub per_word: Option<&'a str>,
    /// How many tokens the unit spans.
    pub words_used: usize,
    /// The kind of the whole.
    pub dimension: Dimension,
    /// To SI. Where nothing says whose cup it is, it spans them all, with the US customary one as best estimate.
    pub factor: Interval,
    /// To SI, after the factor: only an undivided temperature has one.
    pub offset: f64,
    /// Set where the spelling stays ambiguous by more than 2 % in all.
    pub ambiguity: Option<Ambiguity>,
}

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
            let top = Part {
                group: Group::one(unit),
                spelling: unit.symbol,
                end: 1,
            };
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
pub fn read_denominator<'a>(
    tokens: &[Token<'a>],
) -> Result<Option<(Denominator<'a>, usize)>, UnitProblem> {
    let pieces = Pieces::new(tokens);
    let found = denominator_at(&pieces, 0)?;
    Ok(found.map(|(bottom, end)| (bottom.denominator, pieces.tokens_to(end))))
}

/// One side of the stroke.
#[derive(Clone, Copy)]
struct Part {
    group: Group,
    spelling: &'static str,
    end: usize,
}

struct Bottom<'a> {
    denominator: Denominator<'a>,
    part: Option<Part>,
}

/// The unit at the front. `% w/v` and `mg/L CaCO3` have strokes of their own: whole words come first.
fn find_at_front(pieces: &Pieces<'_>) -> Result<Option<Part>, UnitProblem> {
    let whole = lookup::find(pieces.whole_words())
        .and_then(|(found, spelling, used)| Some((found, spelling, pieces.piece_at(used)?)));
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
    match lookup::find(words.get(..count).unwrap_or_default()) {
        // Nothing is divided by money: there the word is a name.
        Some((Found::Currency(_), _, _)) if at > 0 => Ok(None),
        Some((found, spelling, used)) => part_of(pieces, found, spelling, at + used),
        None => Ok(None),
    }
}

fn part_of(
    pieces: &Pieces<'_>,
    found: Found,
    spelling: &'static str,
    end: usize,
) -> Result<Option<Part>, UnitProblem> {
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
    Ok(Some(Part {
        group,
        spelling,
        end,
    }))
}

/// Words that mean the goods as a whole after `per 100 g`.
const GOODS: &[&str] = &["goods", "fabric", "cloth", "fibre", "fiber"];

fn denominator_at<'a>(
    pieces: &Pieces<'a>,
    start: usize,
) -> Result<Option<(Bottom<'a>, usize)>, UnitProblem> {
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
        return Err(UnitProblem::HalfUnit {
            numerator,
            words_used: pieces.tokens_to(top.end + 1),
        });
    };
    let words_used = pieces.tokens_to(end);
    if pieces.get(end) == Some(Piece::Stroke) {
        return Err(UnitProblem::TwoDivisions {
            spelling: pieces.text_to(end + 2),
            words_used: pieces.tokens_to(end + 2).max(words_used),
        });
    }
    simple(numerator, top, measures, words_used).over(
        bottom.denominator,
        top,
        bottom.part,
        measures,
    )
}

fn simple<'a>(
    numerator: &'static Unit,
    top: Part,
    measures: Option<System>,
    words_used: usize,
) -> UnitExpression<'a> {
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

/// Half-width of a factor, as a share, up to which nobody need be told that two countries differ.
const UNREMARKABLE: f64 = 0.01;

/// The factor of a quotient: a writer uses one country's measures throughout, so both sides are taken from the same
/// country, country by country.
fn factor(
    top: Part,
    bottom: Option<Part>,
    measures: Option<System>,
) -> (Interval, Option<Ambiguity>) {
    const COUNTRIES: [System; 4] = [
        System::Us,
        System::Metric,
        System::Imperial,
        System::Australian,
    ];
    let countries: &[System] = match &measures {
        Some(System::Any) | None => &COUNTRIES,
        Some(system) => std::slice::from_ref(system),
    };
    let mut hull: Option<Interval> = None;
    for &country in countries {
        for above in top.group.of(Some(country)).iter() {
            match bottom {
                None => widen(&mut hull, above.factor_interval()),
                Some(part) => {
                    for below in part.group.of(Some(country)).iter() {
                        widen(&mut hull, above.factor_interval() / below.factor_interval());
                    }
                }
            }
        }
    }
    let factor = hull.unwrap_or(Interval::ONE);
    let mut ambiguity = Ambiguity {
        spellings: Vec::new(),
        candidates: Vec::new(),
        why: WHOSE,
    };
    for part in [Some(top), bottom].into_iter().flatten() {
        let chosen = part.group.of(measures);
        if chosen.iter().nth(1).is_some() {
            ambiguity.spellings.push(part.spelling);
            ambiguity.candidates.extend(chosen.iter());
        }
    }
    let remarkable = !ambiguity.candidates.is_empty() && factor.relative_spread() > UNREMARKABLE;
    (factor, remarkable.then_some(ambiguity))
}

fn widen(hull: &mut Option<Interval>, factor: Interval) {
    *hull = Some(match *hull {
        None => factor,
        Some(so_far) => so_far.hull(factor),
    });
}

impl<'a> UnitExpression<'a> {
    /// A number of these to SI.
    pub fn apply(&self, written: Interval) -> Quantity {
        Quantity {
            value: written * self.factor + self.offset,
            dimension: self.dimension,
            basis: self.basis,
        }
    }

    /// A number of these as a difference: the 2 °C of `± 2 °C`. Anything but a temperature as in [`Self::apply`].
    pub fn apply_difference(&self, written: Interval) -> Quantity {
        if self.dimension == Dimension::Temperature {
            Quantity {
                value: written * self.factor,
                dimension: Dimension::TemperatureDifference,
                basis: self.basis,
            }
        } else {
            self.apply(written)
        }
    }

    /// This unit for each of something that stands elsewhere in the line: `9 g lagoon per tee`. Words used stay those
    /// of the unit itself.
    ///
    /// # Errors
    /// Where the quotient makes no sense, or this unit is divided already.
    pub fn divided_by(
        self,
        denominator: Denominator<'a>,
        measures: Option<System>,
    ) -> Result<Self, UnitProblem> {
        if self.denominator.is_some() {
            return Err(UnitProblem::TwoDivisions {
                spelling: self.text(),
                words_used: self.words_used,
            });
        }
        let part = |unit: &'static Unit, shared: bool| Part {
            group: if shared {
                Group::sharing(unit)
            } else {
                Group::one(unit)
            },
            spelling: unit.spellings.first().copied().unwrap_or(unit.symbol),
            end: 0,
        };
        // Several countries' units are in question where the factor is not that of one.
        let shared = self.factor != self.numerator.factor_interval();
        let top = part(self.numerator, shared);
        let bottom = denominator
            .unit
            .map(|unit| part(unit, denominator.shared_spelling));
        self.over(denominator, top, bottom, measures)
    }

    fn over(
        self,
        denominator: Denominator<'a>,
        top: Part,
        bottom: Option<Part>,
        measures: Option<System>,
    ) -> Result<Self, UnitProblem> {
        let (numerator, words_used) = (self.numerator, self.words_used);
        if denominator.number == 0.0 {
            return Err(UnitProblem::PerZero { words_used });
        }
        let mut divided = Self {
            denominator: Some(denominator),
            offset: 0.0,
            ..self
        };
        let Some(unit) = denominator.unit else {
            if let Some(word) = denominator.word {
                let lot = ["lot", "lots"].iter().any(|l| word.eq_ignore_ascii_case(l));
                divided.basis = if lot { Basis::PerLot } else { Basis::PerPiece };
                divided.per_word = (!lot).then_some(word);
                return Ok(divided);
            }
            if numerator.dimension != Dimension::Part {
                return Err(UnitProblem::NumberWithoutUnit {
                    numerator,
                    number: denominator.number,
                    words_used,
                });
            }
            // `parts per 1000` of a paste are weighed out.
            divided.dimension = Dimension::MassFraction;
            divided.factor = divided.factor / denominator.number;
            return Ok(divided);
        };
        if unit.dimension == Dimension::Piece {
            divided.basis = Basis::PerPiece;
            divided.factor = divided.factor / (denominator.number * unit.factor);
            return Ok(divided);
        }
        let Some(dimension) = numerator
            .dimension
            .over(unit.dimension)
            .filter(|_| numerator.basis == Basis::Absolute && unit.dimension != Dimension::None)
        else {
            return Err(UnitProblem::Combination {
                numerator,
                denominator: unit,
                words_used,
            });
        };
        let (factor, ambiguity) = factor(top, bottom, measures);
        divided.dimension = dimension;
        divided.factor = factor / denominator.number;
        divided.ambiguity = ambiguity;
        if denominator.of_goods {
            divided.basis = Basis::PerGoods;
        }
        Ok(divided)
    }

    /// The unit a figure written so is shown in: the same one where the table has it, else the usual one of its kind.
    pub fn display_unit(&self) -> &'static Unit {
        let Some(denominator) = self.denominator else {
            return self.numerator;
        };
        let below = match (denominator.unit, self.basis) {
            (_, Basis::PerPiece) => "piece",
            (_, Basis::PerLot) => "lot",
            (Some(unit), _) => unit.symbol,
            (None, _) => "",
        };
        let same = COMPOSED.iter().find(|unit| {
            unit.basis == self.basis
                && unit.dimension == self.dimension
                && unit.symbol.split_once('/').is_some_and(|(top, bottom)| {
                    top == self.numerator.symbol
                        && bottom.strip_suffix(" goods").unwrap_or(bottom) == below
                })
        });
        let price = match self.dimension {
            Dimension::MoneyPerMass => currency::price_per_kilogram(self.numerator.symbol),
            Dimension::MoneyPerVolume => currency::price_per_litre(self.numerator.symbol),
            Dimension::Money => Some(self.numerator),
            _ => None,
        };
        let plain = matches!(self.basis, Basis::PerPiece | Basis::PerLot).then_some(self.numerator);
        same.or(price)
            .or(plain)
            .unwrap_or_else(|| self.dimension.usual_unit(self.basis))
    }

    /// The unit as the formatter writes it, in the singular: `g/L`, `L per 100 g goods`.
    pub fn text(&self) -> String {
        let top = self.numerator.symbol;
        let Some(below) = self.denominator else {
            return top.to_owned();
        };
        let goods = if below.of_goods { " goods" } else { "" };
        let under = below
            .unit
            .map(|unit| unit.symbol)
            .or(below.word)
            .unwrap_or("");
        if below.number == 1.0 {
            format!("{top}/{under}{goods}")
        } else if under.is_empty() {
            format!("{top} per {}", below.number)
        } else {
            format!("{top} per {} {under}{goods}", below.number)
        }
    }
}
