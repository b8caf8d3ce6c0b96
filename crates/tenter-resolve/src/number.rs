//! Written numbers and units to intervals and quantities, and the troubles they may have.

use std::sync::Arc;

use tenter_quantity::{
    Ambiguity, Dimension, Interval, Quantity, UnitExpression, UnitProblem, about, at_least, at_most, parse_numeral,
    show_number,
};
use tenter_syntax::{Number, NumberForm, Qualifier};

use crate::problem::ProblemKind;
use crate::sheet::Row;

/// A plain numeral, if it is one.
pub(crate) fn plain(text: &str) -> Option<f64> {
    parse_numeral(text).ok()
}

/// The value of a number in the unit written, qualifier and spread included.
pub(crate) fn interval(row: &Row<'_>, number: &Number) -> Result<Interval, ProblemKind> {
    let read = |span| {
        let text = row.text(span);
        parse_numeral(text).map_err(|_| malformed(text))
    };
    let value = match number.form {
        NumberForm::Plain(span) => {
            let value = read(span)?;
            return Ok(match number.qualifier {
                None => Interval::exact(value),
                Some(Qualifier::About) => about(value),
                Some(Qualifier::AtLeast) => at_least(value),
                Some(Qualifier::AtMost) => at_most(value),
            });
        }
        NumberForm::Range(low, high) => {
            let (low, high) = (read(low)?, read(high)?);
            if low > high {
                let text = row.text(number.span);
                return Err(ProblemKind::NumberForm {
                    written: text.into(),
                    suggestions: vec![
                        format!("{} to {}", show_number(Interval::exact(high)), show_number(Interval::exact(low)))
                            .into(),
                    ],
                    why: "the range runs from more to less".into(),
                });
            }
            Interval::range(low, high)
        }
        NumberForm::Tolerance { value, half_width, .. } => Interval::plus_minus(read(value)?, read(half_width)?.abs()),
        NumberForm::Pair(..) | NumberForm::Date(_) | NumberForm::Malformed(_) => {
            return Err(malformed(row.text(number.span)));
        }
    };
    Ok(value)
}

/// The unit that stands before a `±`.
pub(crate) fn unit_before<'a>(row: &Row<'a>, number: &Number) -> Option<&'a str> {
    match number.form {
        NumberForm::Tolerance { unit_before, .. } => unit_before.map(|span| row.text(span)),
        _ => None,
    }
}

/// Why a number has no reading, and what may be meant.
pub(crate) fn malformed(text: &str) -> ProblemKind {
    match parse_numeral(text) {
        Err(problem) => ProblemKind::NumberForm {
            written: text.into(),
            suggestions: problem.fixes.iter().map(|fix| fix.as_str().into()).collect(),
            why: plain_reason(&problem.to_string()),
        },
        Ok(_) => ProblemKind::NumberForm {
            written: text.into(),
            suggestions: Vec::new(),
            why: "it is in no form this notation knows".into(),
        },
    }
}

/// The reason without the suggestion that a caller shows apart.
fn plain_reason(message: &str) -> Arc<str> {
    message.split(": write").next().unwrap_or(message).into()
}

/// SI value of a number in a unit.
pub(crate) fn quantity(_row: &Row<'_>, _number: &Number, value: Interval, unit: &UnitExpression<'_>) -> Quantity {
    unit.apply(value)
}

/// A faulty unit as a problem.
pub(crate) fn unit_problem(problem: &UnitProblem, written: &str) -> ProblemKind {
    match problem {
        UnitProblem::HalfUnit { .. } => ProblemKind::HalfUnit { written: written.into() },
        UnitProblem::Doubtful { spelling, meant, why, .. } => ProblemKind::DoubtfulUnit {
            spelling: spelling.as_str().into(),
            meant: meant.iter().map(|unit| unit.symbol.into()).collect(),
            why: (*why).into(),
        },
        UnitProblem::Combination { .. }
        | UnitProblem::NumberWithoutUnit { .. }
        | UnitProblem::PerZero { .. }
        | UnitProblem::TwoDivisions { .. } => ProblemKind::UnknownUnit { written: written.into(), nearest: None },
    }
}

/// A measure that several countries share.
pub(crate) fn ambiguous(
    spelling: &str,
    value: Interval,
    unit: &UnitExpression<'_>,
    ambiguity: &Ambiguity,
) -> ProblemKind {
    let readings = if unit.denominator.is_none() {
        ambiguity.candidates.iter().map(|candidate| (Arc::from(candidate.name), candidate.to_si(value).best)).collect()
    } else {
        let quantity = unit.apply(value).value;
        vec![("the smallest reading".into(), quantity.low), ("the largest reading".into(), quantity.high)]
    };
    ProblemKind::AmbiguousMeasure {
        spelling: spelling.into(),
        readings,
        settle: "a `measures US`, `measures metric` or `measures imperial` line in the recipe block".into(),
    }
}

/// Dimensions that an amount in a mix or step may have.
pub(crate) const AMOUNTS: [Dimension; 12] = [
    Dimension::Mass,
    Dimension::Volume,
    Dimension::MassConcentration,
    Dimension::VolumeFraction,
    Dimension::MassFraction,
    Dimension::VolumePerMass,
    Dimension::LiquorRatio,
    Dimension::Part,
    Dimension::AmountConcentration,
    Dimension::Amount,
    Dimension::MassPerArea,
    Dimension::PerCent,
];
