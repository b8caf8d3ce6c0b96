//! Numbers from the grammar's pairs.

use pest::iterators::Pair;

use crate::grammar::Rule;
use crate::lower::items::span_of;
use crate::tree::{Number, NumberForm, Qualifier, Span};

/// Reads a `number` or `start_number` pair.
pub(super) fn number(pair: Pair<'_, Rule>, base: usize) -> Number {
    let span = span_of(&pair, base);
    let mut qualifier = None;
    let mut form = None;
    for part in pair.into_inner() {
        let here = span_of(&part, base);
        match part.as_rule() {
            Rule::qualifier => qualifier = part.into_inner().next().and_then(|word| qualifier_of(word.as_rule())),
            Rule::date => form = Some(NumberForm::Date(here)),
            Rule::malformed => form = Some(NumberForm::Malformed(here)),
            Rule::value => form = Some(NumberForm::Plain(here)),
            rule => form = Some(extended(form, rule, part, here, base)),
        }
    }
    Number { span, form: form.unwrap_or(NumberForm::Malformed(span)), qualifier }
}

fn extended(form: Option<NumberForm>, rule: Rule, part: Pair<'_, Rule>, here: Span, base: usize) -> NumberForm {
    let mut unit_before = None;
    let mut second = None;
    for inner in part.into_inner() {
        let span = span_of(&inner, base);
        match inner.as_rule() {
            Rule::unit_before => unit_before = Some(span),
            _ => second = Some(span),
        }
    }
    match (form, second) {
        (Some(NumberForm::Plain(value)), Some(second)) => match rule {
            Rule::range_tail | Rule::to_tail => NumberForm::Range(value, second),
            Rule::pair_tail => NumberForm::Pair(value, second),
            Rule::tolerance => NumberForm::Tolerance { value, unit_before, half_width: second },
            _ => NumberForm::Malformed(value.cover(here)),
        },
        // `10-20 to 30`: no form takes three.
        (Some(earlier), _) => NumberForm::Malformed(whole(&earlier).cover(here)),
        (None, _) => NumberForm::Malformed(here),
    }
}

fn whole(form: &NumberForm) -> Span {
    match form {
        NumberForm::Plain(span) | NumberForm::Date(span) | NumberForm::Malformed(span) => *span,
        NumberForm::Range(low, high) | NumberForm::Pair(low, high) => low.cover(*high),
        NumberForm::Tolerance { value, half_width, .. } => value.cover(*half_width),
    }
}

fn qualifier_of(rule: Rule) -> Option<Qualifier> {
    match rule {
        Rule::about => Some(Qualifier::About),
        Rule::at_least => Some(Qualifier::AtLeast),
        Rule::at_most => Some(Qualifier::AtMost),
        _ => None,
    }
}
