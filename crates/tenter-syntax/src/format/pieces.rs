//! A line taken apart into the pieces that are written with one blank between them.

use crate::format::units::unit_at;
use crate::tree::{Block, Clause, Item, Line, NumberForm, Span};

/// A piece of a line.
#[derive(Clone, Debug)]
pub(super) struct Piece {
    /// Where it begins in the block.
    pub start: u32,
    /// Where it ends.
    pub end: u32,
    /// What is written.
    pub text: String,
    /// What it is for spacing and columns.
    pub role: Role,
}

/// What a piece is for spacing and columns.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Role {
    Head,
    Number,
    /// Part of the unit that follows a number.
    Unit,
    Comma,
    /// Something only told apart by what stands around it: kept as close or as far as it was.
    Odd,
    Other,
}

/// The pieces of a line with items, in order.
pub(super) fn pieces(block: &Block, line: &Line) -> Vec<Piece> {
    let mut out = Vec::new();
    if let Some(head) = &line.head {
        push_words(block, head.span, Role::Head, &mut out);
        // Two words make one head.
        if let (Some(first), true) = (out.first().cloned(), out.len() > 1) {
            let text = out.iter().map(|piece| piece.text.as_str()).collect::<Vec<_>>().join(" ");
            out = vec![Piece { end: head.span.end, text, ..first }];
        }
    }
    items(block, &line.items, &mut out);
    for Clause { word, items: inside, .. } in &line.clauses {
        push_words(block, *word, Role::Other, &mut out);
        items(block, inside, &mut out);
    }
    if let Some(unread) = line.unread {
        out.push(verbatim(block, unread, Role::Other));
    }
    out
}

fn items(block: &Block, items: &[Item], out: &mut Vec<Piece>) {
    let mut number: Option<&str> = None;
    for item in items {
        let before = number.take();
        match item {
            Item::Words(span) => {
                let from = out.len();
                push_words(block, *span, Role::Other, out);
                if let Some(number) = before {
                    write_unit(block, number, from, out);
                }
            }
            Item::Number(value) => {
                number = match &value.form {
                    NumberForm::Plain(span) | NumberForm::Range(_, span) => Some(block.slice(*span)),
                    NumberForm::Tolerance { half_width, .. } => Some(block.slice(*half_width)),
                    NumberForm::Pair(..) | NumberForm::Date(_) | NumberForm::Malformed(_) => None,
                };
                let mut piece = verbatim(block, value.span, Role::Number);
                piece.text = piece.text.split_whitespace().collect::<Vec<_>>().join(" ");
                out.push(piece);
            }
            Item::Comma(span) => out.push(verbatim(block, *span, Role::Comma)),
            Item::Odd(span) => out.push(verbatim(block, *span, Role::Odd)),
            Item::Quoted(span) | Item::Colour(span) | Item::Aside(span) => {
                out.push(verbatim(block, *span, Role::Other))
            }
        }
    }
}

/// Marks the unit among the pieces from `from` on, and spells it.
fn write_unit(block: &Block, number: &str, from: usize, out: &mut Vec<Piece>) {
    let words: Vec<&str> = out.iter().skip(from).take(8).map(|piece| piece.text.as_str()).collect();
    let Some(unit) = unit_at(&words, number) else { return };
    let Some(last) = out.get(from + unit.words - 1) else { return };
    let (Some(start), end) = (out.get(from).map(|piece| piece.start), last.end) else { return };
    // Over the end of a physical line the words stay as they are.
    if block.slice(Span::new(start, end)).contains(['\n', '\r']) {
        return;
    }
    let text = unit.written.join(" ");
    out.splice(from..from + unit.words, [Piece { start, end, text, role: Role::Unit }]);
}

fn push_words(block: &Block, span: Span, role: Role, out: &mut Vec<Piece>) {
    let text = block.slice(span);
    let base = text.as_ptr() as usize;
    for word in text.split_whitespace() {
        let at = crate::prepare::offset(word.as_ptr() as usize - base);
        let start = span.start + at;
        out.push(Piece { start, end: start + crate::prepare::offset(word.len()), text: word.to_owned(), role });
    }
}

fn verbatim(block: &Block, span: Span, role: Role) -> Piece {
    Piece { start: span.start, end: span.end, text: block.slice(span).to_owned(), role }
}

/// What stands between two pieces of a line that touch or are apart in the text.
pub(super) fn gap(before: &Piece, after: &Piece) -> &'static str {
    let apart = before.end < after.start;
    match (before.role, after.role) {
        (_, Role::Comma) if before.role != Role::Odd => "",
        (Role::Comma, _) => " ",
        (Role::Number, Role::Unit) if after.text.starts_with('%') => "",
        // A bare degree sign asks to be mended, not moved.
        (Role::Number, Role::Unit) if !apart && after.text == "°" => "",
        (Role::Number, Role::Unit) => " ",
        _ if apart => " ",
        _ => "",
    }
}
