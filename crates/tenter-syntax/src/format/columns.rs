//! The column of a block: how wide its heads and amounts are.

use crate::format::pieces::{Piece, Role};
use crate::tree::BlockKind;

/// Heads up to this width share one column, so that a longer verb in one line need not move all others.
const USUAL: usize = 8;
/// A wider head stands out of the column.
const WIDEST: usize = 12;

/// How many of the first pieces stand in front of the column, if the line has such.
pub(super) fn leading(kind: BlockKind, known: bool, pieces: &[Piece]) -> Option<usize> {
    let amounts = matches!(kind, BlockKind::Mix | BlockKind::Shelf);
    match pieces.first()?.role {
        Role::Head if known || !amounts => Some(1),
        Role::Number if amounts => Some(amount(pieces)),
        _ => None,
    }
}

fn amount(pieces: &[Piece]) -> usize {
    let is = |at: usize, role: Role| pieces.get(at).is_some_and(|piece| piece.role == role);
    match (is(1, Role::Unit), is(2, Role::Number), is(3, Role::Unit)) {
        // `2 L per 100 g`, `2 L/100 g`: the second number belongs to the first.
        (true, true, true)
            if pieces.get(1).is_some_and(|unit| unit.text.ends_with('/') || unit.text.ends_with("per")) =>
        {
            4
        }
        (true, ..) => 2,
        _ => 1,
    }
}

/// The width of the column: of the widest lead that is not too wide.
pub(super) fn width(kind: BlockKind, leads: impl Iterator<Item = usize>) -> usize {
    let least = if kind == BlockKind::Layout { 0 } else { USUAL };
    leads.filter(|lead| *lead <= WIDEST).fold(least, usize::max)
}

/// Width as it shows, near enough for padding: one column a character.
pub(super) fn shown(text: &str) -> usize {
    text.chars().filter(|c| !crate::chars::is_invisible(*c) && !is_combining(*c)).count()
}

fn is_combining(c: char) -> bool {
    unicode_normalization::char::is_combining_mark(c)
}
