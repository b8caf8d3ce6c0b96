//! A line laid out flat again: words one by one, so that a name may run across a connecting word.

use tenter_syntax::{Connector, Item, Line, Number, NumberForm, Span};

use crate::sheet::Row;

/// One token of a line.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Token<'a> {
    Number(&'a Number),
    Word(&'a str, Span),
    Quoted(&'a str, Span),
    Colour(Span),
    Comma,
    Aside(Span),
    Odd(Span),
    Connector(Connector, &'a str, Span),
}

impl Token<'_> {
    pub(crate) fn span(&self) -> Span {
        match self {
            Self::Number(number) => number.span,
            Self::Word(_, span)
            | Self::Quoted(_, span)
            | Self::Colour(span)
            | Self::Odd(span)
            | Self::Aside(span)
            | Self::Connector(_, _, span) => *span,
            Self::Comma => Span::default(),
        }
    }
}

/// A bare number that may be part of a name (`Reactive Blue 4`).
pub(crate) fn plain_number<'a>(row: &Row<'a>, number: &Number) -> Option<&'a str> {
    match (&number.form, number.qualifier) {
        (NumberForm::Plain(span), None) => Some(row.text(*span)),
        _ => None,
    }
}

/// The tokens behind the head of a line.
pub(crate) fn tokens<'a>(row: &Row<'a>) -> Vec<Token<'a>> {
    flatten(row, row.line)
}

fn flatten<'a>(row: &Row<'a>, line: &'a Line) -> Vec<Token<'a>> {
    let mut out = Vec::with_capacity(16);
    push_items(row, &line.items, &mut out);
    for clause in &line.clauses {
        out.push(Token::Connector(clause.connector, row.text(clause.word), clause.word));
        push_items(row, &clause.items, &mut out);
    }
    out
}

fn push_items<'a>(row: &Row<'a>, items: &'a [Item], out: &mut Vec<Token<'a>>) {
    for item in items {
        match item {
            Item::Number(number) => out.push(Token::Number(number)),
            Item::Words(span) => push_words(row, *span, out),
            Item::Quoted(span) => out.push(Token::Quoted(crate::names::unquoted(row.text(*span)), *span)),
            Item::Colour(span) => out.push(Token::Colour(*span)),
            Item::Aside(span) => out.push(Token::Aside(*span)),
            Item::Comma(_) => out.push(Token::Comma),
            Item::Odd(span) => out.push(Token::Odd(*span)),
        }
    }
}

fn push_words<'a>(row: &Row<'a>, span: Span, out: &mut Vec<Token<'a>>) {
    let text = row.text(span);
    let mut start = None;
    for (at, character) in text.char_indices().chain(std::iter::once((text.len(), ' '))) {
        if character.is_whitespace() {
            if let Some(from) = start.take() {
                let word = &text[from..at];
                out.push(Token::Word(word, Span::new(span.start + from as u32, span.start + at as u32)));
            }
        } else if start.is_none() {
            start = Some(at);
        }
    }
}
