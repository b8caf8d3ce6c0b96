//! From the tokens of a line to its phrases.
//!
//! Dimension, not order or comma, says what a quantity is: times, temperatures and counts never take a
//! material. A name must match whole; what is left over must be words of manner, else the whole phrase is
//! unknown.

mod measures;
mod names;
mod numbers;

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
