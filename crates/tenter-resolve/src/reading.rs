//! From the tokens of a line to its phrases.
//!
//! Dimension, not order or comma, says what a quantity is: times, temperatures and counts never take a
//! material. A name must match whole; what is left over must be words of manner, else the whole phrase is
//! unknown.

use tenter_quantity::{Dimension, Interval, System, Token as UnitToken, UnitExpression, UnitProblem};
use tenter_syntax::{Connector, NumberForm, Span};

use crate::names::Names;
use crate::number;
use crate::phrase::{Counted, Manner, Measured, NameUse, Phrase, PhraseKind, is_article, manner};
use crate::problem::{Problem, ProblemKind};
use crate::sheet::Row;
use crate::tokens::{Token, plain_number, tokens};

/// Longest run of words tried as one name.
const LONGEST_NAME: usize = 12;

/// Reads the phrases behind the head of a line.
pub(crate) fn read_line(
    row: &Row<'_>,
    names: &Names,
    measures: Option<System>,
    problems: &mut Vec<Problem>,
) -> Vec<Phrase> {
    let tokens = tokens(row);
    let mut reader = Reader {
        row,
        names,
        measures,
        problems,
        tokens: &tokens,
        connector: None,
        clause: 0,
        out: Vec::with_capacity(8),
    };
    reader.run();
    let phrases = reader.out;
    if let Some(span) = row.line.unread {
        problems.push(Problem {
            place: row.place(span),
            kind: ProblemKind::Unreadable { written: row.text(span).trim().into() },
        });
    }
    phrases
}

struct Reader<'r, 'a> {
    row: &'r Row<'a>,
    names: &'r Names,
    measures: Option<System>,
    problems: &'r mut Vec<Problem>,
    tokens: &'r [Token<'a>],
    connector: Option<(Connector, Span)>,
    clause: usize,
    out: Vec<Phrase>,
}

impl<'a> Reader<'_, 'a> {
    fn run(&mut self) {
        let mut at = 0;
        while let Some(token) = self.tokens.get(at) {
            at = match *token {
                Token::Connector(connector, _, span) => self.open_clause(connector, span, at),
                Token::Comma => at + 1,
                Token::Number(_) => self.number(at),
                Token::Word(..) => self.words(at),
                Token::Quoted(text, span) => self.quoted(text, span, at),
                Token::Colour(span) => {
                    if let Some(rgb) = colour(self.row.text(span)) {
                        self.push(span, PhraseKind::Colour(rgb));
                    }
                    at + 1
                }
                Token::Odd(span) | Token::Aside(span) => {
                    self.problem(span, ProblemKind::Unreadable { written: self.row.text(span).into() });
                    at + 1
                }
            };
        }
    }

    fn push(&mut self, span: Span, kind: PhraseKind) {
        self.out.push(Phrase { connector: self.connector, clause: self.clause, span, kind });
    }

    fn problem(&mut self, span: Span, kind: ProblemKind) {
        self.problems.push(Problem { place: self.row.place(span), kind });
    }

    fn open_clause(&mut self, connector: Connector, span: Span, at: usize) -> usize {
        self.connector = Some((connector, span));
        self.clause += 1;
        let next = at + 1;
        match self.tokens.get(next) {
            None | Some(Token::Connector(..)) => {
                self.push(span, PhraseKind::Empty);
                next
            }
            Some(_) if matches!(connector, Connector::Until | Connector::Because) => self.prose(next, connector),
            Some(_) => next,
        }
    }

    /// Text up to a comma, or a connecting word with a number behind it; a reason runs to the end.
    fn prose(&mut self, at: usize, connector: Connector) -> usize {
        let mut end = at;
        while let Some(token) = self.tokens.get(end) {
            let stops = connector == Connector::Until
                && match token {
                    Token::Comma => true,
                    Token::Connector(..) => {
                        matches!(self.tokens.get(end + 1), Some(Token::Number(_)))
                    }
                    _ => false,
                };
            if stops {
                break;
            }
            end += 1;
        }
        let spans = self.tokens[at..end].iter().map(Token::span).filter(|span| !span.is_empty());
        if let Some(span) = spans.reduce(Span::cover) {
            self.push(span, PhraseKind::Text);
        }
        end
    }

    fn quoted(&mut self, text: &str, span: Span, at: usize) -> usize {
        let words: Vec<&str> = text.split_whitespace().collect();
        let referents = self
            .names
            .longest(&words)
            .filter(|hit| hit.words == words.len())
            .map_or_else(Vec::new, |hit| hit.referents);
        self.push(span, PhraseKind::Name(NameUse { span, referents }));
        at + 1
    }

    /// Words that no number opens: a name, words of manner, or something unknown.
    fn words(&mut self, at: usize) -> usize {
        if self.is_in_all(at) {
            let span = self.tokens[at].span();
            self.push(span, PhraseKind::Manner(Manner::InAll));
            return at + 1;
        }
        if let Some((name, next)) = self.name(at) {
            let known = !name.referents.is_empty();
            if !known {
                let manners = self.leading_manners(at);
                if manners > at {
                    return manners;
                }
            }
            self.push(name.span, PhraseKind::Name(name));
            return next;
        }
        // Only articles before something else.
        at + 1
    }

    /// Words of manner at `at`, pushed; returns where they end.
    fn leading_manners(&mut self, at: usize) -> usize {
        let mut end = at;
        while let Some(&Token::Word(word, span)) = self.tokens.get(end) {
            if let Some(found) = manner(word) {
                self.push(span, PhraseKind::Manner(found));
                end += 1;
            } else if self.is_in_all(end) {
                self.push(span, PhraseKind::Manner(Manner::InAll));
                end += 1;
            } else if word == "%" && self.word_at(end + 1).is_some_and(is_pickup) {
                end += 2;
            } else {
                break;
            }
        }
        end
    }

    fn word_at(&self, at: usize) -> Option<&'a str> {
        match self.tokens.get(at) {
            Some(&Token::Word(word, _)) => Some(word),
            _ => None,
        }
    }

    fn is_in_all(&self, at: usize) -> bool {
        let Some(word) = self.word_at(at) else {
            return false;
        };
        word.eq_ignore_ascii_case("all")
            && at
                .checked_sub(1)
                .is_some_and(|before| matches!(self.tokens.get(before), Some(Token::Connector(Connector::In, ..))))
    }

    /// The name that begins at `at`, articles skipped; unknown words come back without referents. Words of
    /// manner behind it are pushed by the caller's loop.
    fn name(&mut self, at: usize) -> Option<(NameUse, usize)> {
        let mut start = at;
        loop {
            match self.tokens.get(start) {
                Some(&Token::Quoted(text, span)) => {
                    let words: Vec<&str> = text.split_whitespace().collect();
                    let referents = self
                        .names
                        .longest(&words)
                        .filter(|hit| hit.words == words.len())
                        .map_or_else(Vec::new, |hit| hit.referents);
                    return Some((NameUse { span, referents }, start + 1));
                }
                Some(&Token::Word(word, _)) => {
                    if let Some(found) = self.known_name(start) {
                        return Some(found);
                    }
                    if is_article(word) || word.eq_ignore_ascii_case("of") {
                        start += 1;
                        continue;
                    }
                    return Some(self.unknown(start));
                }
                _ => return None,
            }
        }
    }

    fn known_name(&self, start: usize) -> Option<(NameUse, usize)> {
        let mut words: Vec<&str> = Vec::with_capacity(LONGEST_NAME);
        for token in self.tokens[start..].iter().take(LONGEST_NAME) {
            match token {
                Token::Word(word, _) => words.push(word),
                Token::Connector(_, word, _) => words.push(word),
                Token::Number(number) => match plain_number(self.row, number) {
                    Some(text) => words.push(text),
                    None => break,
                },
                _ => break,
            }
        }
        let hit = self.names.longest(&words)?;
        let end = start + hit.words;
        // A connecting word or number at the very end is not part of the name's run; what follows must be manner.
        let span = self.tokens[start..end].iter().map(Token::span).reduce(Span::cover)?;
        let mut rest = end;
        while let Some(&Token::Word(word, _)) = self.tokens.get(rest) {
            let fits = manner(word).is_some()
                || word.eq_ignore_ascii_case("per")
                || word.eq_ignore_ascii_case("of")
                || word.starts_with('/')
                || (rest > end && self.word_at(rest - 1).is_some_and(|before| before.eq_ignore_ascii_case("per")));
            if !fits {
                return None;
            }
            rest += 1;
        }
        Some((NameUse { span, referents: hit.referents }, end))
    }

    /// All words up to the next number, comma or connecting word, trailing words of manner left alone.
    fn unknown(&self, start: usize) -> (NameUse, usize) {
        let mut end = start;
        while matches!(self.tokens.get(end), Some(Token::Word(..))) {
            end += 1;
        }
        while end > start + 1 && self.word_at(end - 1).is_some_and(|word| manner(word).is_some()) {
            end -= 1;
        }
        let span = self.tokens[start..end].iter().map(Token::span).reduce(Span::cover).unwrap_or_default();
        (NameUse { span, referents: Vec::new() }, end)
    }

    fn number(&mut self, at: usize) -> usize {
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
            Ok(None) => self.bare(at, number.span, value),
            Ok(Some((unit, next, span))) => self.measured(number.span, value, unit, next, span, number),
        }
    }

    fn malformed(&mut self, span: Span) {
        let kind = number::malformed(self.row.text(span));
        self.problem(span, kind);
    }

    /// The name behind a number that could not be read still says what the line is about.
    fn after_broken(&mut self, at: usize) -> usize {
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

    fn unit_tokens(&self, at: usize) -> Vec<UnitToken<'a>> {
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
    fn unit(&mut self, at: usize, before: Option<&'a str>) -> Result<Option<(UnitExpression<'a>, usize, Span)>, usize> {
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

    fn pair(&mut self, span: Span, left: f64, right: f64, at: usize) -> usize {
        if left > 0.0 && right > left {
            // A liquor ratio in front of a liquid: `1:20 water`.
            if let Some(Token::Word(..)) = self.tokens.get(at + 1) {
                if let (Some(quantity), Some((name, next))) =
                    (tenter_quantity::liquor_ratio(left, right), self.name(at + 1))
                {
                    if !name.referents.is_empty() {
                        let unit = quantity.dimension.usual_unit(quantity.basis);
                        let measured =
                            Measured { quantity, unit, span, pickup: false, per_goods: None, in_doubt: false };
                        self.push(span.cover(name.span), PhraseKind::Measured(measured, Some(name)));
                        return next;
                    }
                }
            }
        }
        self.push(span, PhraseKind::Pair(left, right));
        at + 1
    }

    /// A number without a unit.
    fn bare(&mut self, at: usize, span: Span, value: Interval) -> usize {
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

    fn measured(
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
        if unit.dimension == Dimension::PerCent && self.word_at(next).is_some_and(is_pickup) {
            pickup = true;
            next += 1;
        }
        // `10 L per 100 g tees`: the goods named after the weight.
        let mut per_goods = None;
        if let Some(below) = unit.denominator {
            if below.word.is_none()
                && !below.of_goods
                && below.unit.is_some_and(|unit| unit.dimension == Dimension::Mass)
            {
                let start = if self.word_at(next).is_some_and(|word| word.eq_ignore_ascii_case("of")) {
                    next + 1
                } else {
                    next
                };
                if let Some((name, end)) = self.known_name(start) {
                    if name.find(goods_of).is_some() {
                        unit.basis = tenter_quantity::Basis::PerGoods;
                        per_goods = Some(name.referents);
                        next = end;
                    }
                }
            }
        }
        if let Some(word) = unit.per_word {
            match self
                .names
                .longest(&[word])
                .filter(|hit| hit.referents.iter().any(|referent| goods_of(referent).is_some()))
            {
                Some(hit) => per_goods = Some(hit.referents),
                None => {
                    self.problem(
                        unit_span,
                        ProblemKind::UnknownUnit { written: self.row.text(unit_span).into(), nearest: None },
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
        let in_doubt = unit.ambiguity.is_some();
        let quantity = number::quantity(self.row, number, value, &unit);
        if let Some(ambiguity) = &unit.ambiguity {
            let kind = number::ambiguous(self.row.text(unit_span), value, &unit, ambiguity);
            self.problem(span, kind);
        }
        let measured = Measured { quantity, unit: unit.display_unit(), span, pickup, per_goods, in_doubt };
        let whole = named.as_ref().map_or(span, |(name, _)| span.cover(name.span));
        self.push(whole, PhraseKind::Measured(measured, named.map(|(name, _)| name)));
        end
    }

    /// The name an amount is an amount of: words right behind it, manner words excepted.
    fn amount_name(&mut self, at: usize) -> Option<(NameUse, usize)> {
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
    fn behind_name(
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

fn goods_of(referent: &crate::names::Referent) -> Option<crate::recipe::GoodsId> {
    match referent {
        crate::names::Referent::Goods(id) => Some(*id),
        _ => None,
    }
}

fn is_pickup(word: &str) -> bool {
    ["pickup", "pick-up", "wpu"].iter().any(|known| word.eq_ignore_ascii_case(known))
}

/// `#1d5fa6` to its three bytes.
pub(crate) fn colour(text: &str) -> Option<[u8; 3]> {
    let hex = text.strip_prefix('#').filter(|hex| hex.len() == 6)?;
    let byte = |at: usize| hex.get(at..at + 2).and_then(|pair| u8::from_str_radix(pair, 16).ok());
    Some([byte(0)?, byte(2)?, byte(4)?])
}
