//! One unit divided by another: kind, basis and factor, country by country.

use crate::dimension::Dimension;
use crate::index::Group;
use crate::interval::Interval;
use crate::lookup::WHOSE;
use crate::measure::{Ambiguity, Denominator, UnitExpression};
use crate::problem::UnitProblem;
use crate::quantity::Basis;
use crate::unit::{System, Unit};

/// One side of the stroke.
#[derive(Clone, Copy)]
pub(crate) struct Part {
    pub(crate) group: Group,
    pub(crate) spelling: &'static str,
    pub(crate) end: usize,
}

/// Half-width of a factor, as a share, up to which nobody need be told that two countries differ.
const UNREMARKABLE: f64 = 0.01;

/// The factor of a quotient: a writer uses one country's measures throughout, so both sides are taken from the same
/// country, country by country.
pub(crate) fn factor(top: Part, bottom: Option<Part>, measures: Option<System>) -> (Interval, Option<Ambiguity>) {
    const COUNTRIES: [System; 4] = [System::Us, System::Metric, System::Imperial, System::Australian];
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
    let mut ambiguity = Ambiguity { spellings: Vec::new(), candidates: Vec::new(), why: WHOSE };
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
    /// This unit for each of something that stands elsewhere in the line: `9 g lagoon per tee`. Words used stay those
    /// of the unit itself.
    ///
    /// # Errors
    /// Where the quotient makes no sense, or this unit is divided already.
    pub fn divided_by(self, denominator: Denominator<'a>, measures: Option<System>) -> Result<Self, UnitProblem> {
        if self.denominator.is_some() {
            return Err(UnitProblem::TwoDivisions { spelling: self.text(), words_used: self.words_used });
        }
        let part = |unit: &'static Unit, shared: bool| Part {
            group: if shared { Group::sharing(unit) } else { Group::one(unit) },
            spelling: unit.spellings.first().copied().unwrap_or(unit.symbol),
            end: 0,
        };
        // Several countries' units are in question where the factor is not that of one.
        let shared = self.factor != self.numerator.factor_interval();
        let top = part(self.numerator, shared);
        let bottom = denominator.unit.map(|unit| part(unit, denominator.shared_spelling));
        self.over(denominator, top, bottom, measures)
    }

    pub(crate) fn over(
        self,
        denominator: Denominator<'a>,
        top: Part,
        bottom: Option<Part>,
        measures: Option<System>,
    ) -> Result<Self, UnitProblem> {
        let (numerator, words_used) = (self.numerator, self.words_used);
        if denominator.number.is_nan() || denominator.number <= 0.0 {
            return Err(UnitProblem::PerZero { words_used });
        }
        let mut divided = Self { denominator: Some(denominator), offset: 0.0, ..self };
        let Some(unit) = denominator.unit else {
            if let Some(word) = denominator.word {
                let lot = ["lot", "lots"].iter().any(|l| word.eq_ignore_ascii_case(l));
                divided.basis = if lot { Basis::PerLot } else { Basis::PerPiece };
                divided.per_word = (!lot).then_some(word);
                return Ok(divided);
            }
            if numerator.dimension != Dimension::Part {
                return Err(UnitProblem::NumberWithoutUnit { numerator, number: denominator.number, words_used });
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
            return Err(UnitProblem::Combination { numerator, denominator: unit, words_used });
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
}
