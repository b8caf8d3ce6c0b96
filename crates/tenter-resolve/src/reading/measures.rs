//! A number with its unit and what it is an amount of.

use super::*;

impl<'a> Reader<'_, 'a> {
    pub(super) fn measured(
        &mut self,
        number_span: Span,
        value: Interval,
        unit: UnitExpression<'a>,
        next: usize,
        unit_span: Span,
        number: &tenter_syntax::Number,
    ) -> usize {
        let span = if unit_span.is_empty() { number_span } else { number_span.cover(unit_span) };
        if unit.denominator.is_none() {
            let counted = match unit.dimension {
                Dimension::None => Some(Counted::Times),
                Dimension::Piece => Some(Counted::Pieces),
                _ => None,
            };
            if let Some(counted) = counted {
                let value = value * unit.factor;
                self.push(span, PhraseKind::Count(counted, value, span));
                return next;
            }
        }
        let mut unit = unit;
        let mut next = next;
        let mut pickup = false;
        let mut span = span;
        if unit.dimension == Dimension::PerCent && self.word_at(next).is_some_and(is_pickup) {
            pickup = true;
            span = span.cover(self.tokens[next].span());
            next += 1;
        }
        // `10 L per 100 g tees`: the goods named after the weight.
        let mut per_goods = None;
        if let Some(below) = unit.denominator
            && below.word.is_none()
            && !below.of_goods
            && below.unit.is_some_and(|unit| unit.dimension == Dimension::Mass)
        {
            let start =
                if self.word_at(next).is_some_and(|word| word.eq_ignore_ascii_case("of")) { next + 1 } else { next };
            if let Some((name, end)) = self.known_name(start)
                && name.find(goods_of).is_some()
            {
                unit.basis = tenter_quantity::Basis::PerGoods;
                per_goods = Some(name.referents);
                next = end;
            }
        }
        // `2% owg of tees plum`: the goods an amount follows, named behind its unit.
        let follows = matches!(unit.basis, tenter_quantity::Basis::PerGoods | tenter_quantity::Basis::PerPiece);
        if per_goods.is_none()
            && follows
            && let Some((referents, end)) = self.of_goods(next)
        {
            per_goods = Some(referents);
            next = end;
        }
        if let Some(word) = unit.per_word {
            match self
                .names
                .longest(&[word])
                .filter(|hit| hit.referents.iter().any(|referent| goods_of(referent).is_some()))
            {
                Some(hit) => per_goods = Some(hit.referents),
                None => {
                    let near = strsim::normalized_damerau_levenshtein(&tenter_syntax::fold_name(word), "piece") >= 0.6;
                    let nearest = near.then(|| format!("{}/piece", unit.numerator.symbol).into());
                    self.problem(
                        unit_span,
                        ProblemKind::UnknownUnit { written: self.row.text(unit_span).into(), nearest },
                    );
                    return self.after_broken(next);
                }
            }
        }
        let takes_name = !matches!(
            unit.dimension,
            Dimension::Time | Dimension::Temperature | Dimension::TemperatureDifference | Dimension::TemperatureRate
        ) && !pickup;
        let named = if takes_name { self.amount_name(next) } else { None };
        let end = named.as_ref().map_or(next, |(_, end)| *end);
        let (unit, end) = self.behind_name(unit, end, &mut per_goods);
        let quantity = number::quantity(self.row, number, value, &unit);
        if let Some(ambiguity) = &unit.ambiguity {
            let kind = number::ambiguous(self.row.text(unit_span), value, &unit, ambiguity);
            self.problem(span, kind);
        }
        let measured = Measured { quantity, unit: unit.display_unit(), span, pickup, per_goods };
        let whole = named.as_ref().map_or(span, |(name, _)| span.cover(name.span));
        self.push(whole, PhraseKind::Measured(measured, named.map(|(name, _)| name)));
        end
    }

    /// `of tees` with more behind it.
    pub(super) fn of_goods(&self, at: usize) -> Option<(Vec<crate::names::Referent>, usize)> {
        if !self.word_at(at)?.eq_ignore_ascii_case("of") {
            return None;
        }
        let start = at + 1;
        let words: Vec<&str> = (start..start + LONGEST_NAME).map_while(|at| self.word_at(at)).collect();
        let hit = self.names.longest(&words).filter(|hit| hit.referents.iter().any(|it| goods_of(it).is_some()))?;
        Some((hit.referents, start + hit.words))
    }

    /// The name an amount is an amount of: words right behind it, manner words excepted.
    pub(super) fn amount_name(&mut self, at: usize) -> Option<(NameUse, usize)> {
        let word = match self.tokens.get(at)? {
            Token::Word(word, _) => *word,
            Token::Quoted(..) => "",
            _ => return None,
        };
        let named = self.name(at)?;
        if named.0.referents.is_empty() && manner(word).is_some() {
            return None;
        }
        Some(named)
    }

    /// `9 g lagoon per tee`: the divisor behind the name.
    pub(super) fn behind_name(
        &mut self,
        unit: UnitExpression<'a>,
        at: usize,
        per_goods: &mut Option<Vec<crate::names::Referent>>,
    ) -> (UnitExpression<'a>, usize) {
        let stroke = self.word_at(at).is_some_and(|word| word.eq_ignore_ascii_case("per") || word == "/");
        if !stroke || unit.denominator.is_some() {
            return (unit, at);
        }
        let words = self.unit_tokens(at + 1);
        match tenter_quantity::read_denominator(&words) {
            Ok(Some((below, used))) => {
                if let Some(word) = below.word {
                    let hit = self
                        .names
                        .longest(&[word])
                        .filter(|hit| hit.referents.iter().any(|referent| goods_of(referent).is_some()));
                    match hit {
                        Some(hit) => *per_goods = Some(hit.referents),
                        None if word.eq_ignore_ascii_case("lot") => {}
                        None => return (unit, at),
                    }
                }
                match unit.clone().divided_by(below, self.measures) {
                    Ok(divided) => (divided, at + 1 + used),
                    Err(_) => (unit, at),
                }
            }
            _ => (unit, at),
        }
    }
}
