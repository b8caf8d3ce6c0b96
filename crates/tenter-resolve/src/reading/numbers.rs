//! Numbers and the units behind them.

use super::*;

impl<'a> Reader<'_, 'a> {
    pub(super) fn number(&mut self, at: usize) -> usize {
        let Some(&Token::Number(number)) = self.tokens.get(at) else {
            return at + 1;
        };
        match &number.form {
            NumberForm::Pair(left, right) => {
                match (number::plain(self.row.text(*left)), number::plain(self.row.text(*right))) {
                    (Some(left), Some(right)) => return self.pair(number.span, left, right, at),
                    _ => self.malformed(number.span),
                }
                return at + 1;
            }
            NumberForm::Date(span) => {
                self.push(*span, PhraseKind::Date);
                return at + 1;
            }
            NumberForm::Malformed(span) => {
                self.malformed(*span);
                return self.after_broken(at + 1);
            }
            NumberForm::Plain(_) | NumberForm::Range(..) | NumberForm::Tolerance { .. } => {}
        }
        let value = match number::interval(self.row, number) {
            Ok(value) => value,
            Err(kind) => {
                self.problem(number.span, kind);
                return self.after_broken(at + 1);
            }
        };
        let before = number::unit_before(self.row, number);
        let unit = self.unit(at + 1, before);
        match unit {
            Err(next) => self.after_broken(next),
            Ok(None) => match self.lent(at) {
                Some(unit) => self.measured(number.span, value, unit, at + 1, Span::default(), number),
                None => self.bare(at, number.span, value),
            },
            Ok(Some((unit, next, span))) => self.measured(number.span, value, unit, next, span, number),
        }
    }

    /// `heat from 20 to 60 °C`: the 20 borrows the unit of what it goes up to.
    fn lent(&self, at: usize) -> Option<UnitExpression<'a>> {
        let (Some((Connector::From, _)), Some(Token::Connector(Connector::To, ..)), Some(Token::Number(_))) =
            (self.connector, self.tokens.get(at + 1), self.tokens.get(at + 2))
        else {
            return None;
        };
        tenter_quantity::read_unit(&self.unit_tokens(at + 3), self.measures).ok().flatten()
    }

    pub(super) fn malformed(&mut self, span: Span) {
        let kind = number::malformed(self.row.text(span));
        self.problem(span, kind);
    }

    /// The name behind a number that could not be read still says what the line is about.
    pub(super) fn after_broken(&mut self, at: usize) -> usize {
        let mut next = at;
        let spans = self.unit_tokens(at);
        if let Ok(Some(unit)) = tenter_quantity::read_unit(&spans, self.measures) {
            next = at + unit.words_used;
        }
        let named = self.name(next);
        let span = named.as_ref().map_or_else(Span::default, |(name, _)| name.span);
        let end = named.as_ref().map_or(next, |(_, end)| *end);
        self.push(span, PhraseKind::Broken(named.map(|(name, _)| name)));
        end.max(at)
    }

    pub(super) fn unit_tokens(&self, at: usize) -> Vec<UnitToken<'a>> {
        let mut out = Vec::with_capacity(6);
        for token in self.tokens[at.min(self.tokens.len())..].iter().take(6) {
            match token {
                Token::Word(word, _) => out.push(UnitToken::Word(word)),
                Token::Number(number) => match plain_number(self.row, number).and_then(number::plain) {
                    Some(value) => out.push(UnitToken::Number(value)),
                    None => break,
                },
                _ => break,
            }
        }
        out
    }

    /// The unit at `at`: itself, where it ends, its span. `Err` when it is broken (told already).
    #[allow(clippy::type_complexity)]
    pub(super) fn unit(
        &mut self,
        at: usize,
        before: Option<&'a str>,
    ) -> Result<Option<(UnitExpression<'a>, usize, Span)>, usize> {
        let mut words = self.unit_tokens(at);
        if words.is_empty() {
            if let Some(unit) = before {
                words.extend(unit.split_whitespace().map(UnitToken::Word));
                return match tenter_quantity::read_unit(&words, self.measures) {
                    Ok(found) => Ok(found.map(|unit| (unit, at, Span::default()))),
                    Err(_) => Ok(None),
                };
            }
            return Ok(None);
        }
        match tenter_quantity::read_unit(&words, self.measures) {
            Ok(None) => Ok(None),
            Ok(Some(unit)) => {
                let next = at + unit.words_used;
                let span = self.tokens[at..next.min(self.tokens.len())]
                    .iter()
                    .map(Token::span)
                    .reduce(Span::cover)
                    .unwrap_or_default();
                Ok(Some((unit, next, span)))
            }
            Err(problem) => {
                let next = (at + problem.words_used().max(1)).min(self.tokens.len());
                let span = self.tokens[at..next].iter().map(Token::span).reduce(Span::cover).unwrap_or_default();
                // `2 c` may open a name that begins with that letter.
                if let (UnitProblem::Doubtful { .. }, Some((_, _))) = (&problem, self.known_name(at)) {
                    return Ok(None);
                }
                let kind = number::unit_problem(&problem, self.row.text(span));
                self.problem(span, kind);
                Err(next)
            }
        }
    }

    pub(super) fn pair(&mut self, span: Span, left: f64, right: f64, at: usize) -> usize {
        if left > 0.0 && right > left {
            // A liquor ratio in front of a liquid: `1:20 water`.
            let (per_goods, from) = match self.of_goods(at + 1) {
                Some((referents, end)) => (Some(referents), end),
                None => (None, at + 1),
            };
            if let Some(Token::Word(..)) = self.tokens.get(from)
                && let (Some(quantity), Some((name, next))) =
                    (tenter_quantity::liquor_ratio(left, right), self.name(from))
                && !name.referents.is_empty()
            {
                let unit = quantity.dimension.usual_unit(quantity.basis);
                let measured = Measured { quantity, unit, span, pickup: false, per_goods };
                self.push(span.cover(name.span), PhraseKind::Measured(measured, Some(name)));
                return next;
            }
        }
        self.push(span, PhraseKind::Pair(left, right));
        at + 1
    }

    /// A number without a unit.
    pub(super) fn bare(&mut self, at: usize, span: Span, value: Interval) -> usize {
        let next = at + 1;
        if let Some(word) = self.word_at(next) {
            if ["lot", "lots"].iter().any(|lots| word.eq_ignore_ascii_case(lots)) {
                self.push(span, PhraseKind::Count(Counted::Lots, value, span));
                return next + 1;
            }
            if let Some((name, end)) = self.name(next) {
                if name.find(goods_of).is_some() {
                    self.push(span.cover(name.span), PhraseKind::Count(Counted::Pieces, value, span));
                    self.push(name.span, PhraseKind::Name(name));
                    return end;
                }
                // A word of manner or a stray word may follow a bare number: `rating 3 of 5`.
                if !name.referents.is_empty()
                    || !self.word_at(next).is_some_and(|word| manner(word).is_some() || word.eq_ignore_ascii_case("of"))
                {
                    self.push(span.cover(name.span), PhraseKind::Bare(value, span, Some(name)));
                    return end;
                }
            }
        }
        self.push(span, PhraseKind::Bare(value, span, None));
        next
    }
}
