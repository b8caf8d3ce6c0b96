//! Tokens taken apart at strokes, so that `g/L`, `g / L`, `g /L` and `g per L` read alike.

use crate::measure::Token;

/// Pieces of interest: no unit is longer.
const MOST: usize = 12;

/// What a unit is made of.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(crate) enum Piece<'a> {
    Word(&'a str),
    Number(f64),
    Stroke,
}

/// The pieces of the first few tokens, and which token each came from.
pub(crate) struct Pieces<'a> {
    pieces: [(Piece<'a>, usize); MOST],
    count: usize,
    whole: [&'a str; 3],
    whole_count: usize,
}

impl<'a> Pieces<'a> {
    pub(crate) fn new(tokens: &[Token<'a>]) -> Self {
        let mut taken = Self { pieces: [(Piece::Stroke, 0); MOST], count: 0, whole: [""; 3], whole_count: 0 };
        for (slot, token) in taken.whole.iter_mut().zip(tokens) {
            let Token::Word(word) = *token else { break };
            *slot = word;
            taken.whole_count += 1;
        }
        for (position, token) in tokens.iter().take(MOST).enumerate() {
            match *token {
                Token::Number(number) => taken.push(Piece::Number(number), position),
                Token::Word(word) if word.eq_ignore_ascii_case("per") => {
                    taken.push(Piece::Stroke, position);
                }
                Token::Word(word) => taken.split(word, position),
            }
        }
        taken
    }

    fn push(&mut self, piece: Piece<'a>, token: usize) {
        if let Some(slot) = self.pieces.get_mut(self.count) {
            *slot = (piece, token);
            self.count += 1;
        }
    }

    fn split(&mut self, word: &'a str, token: usize) {
        for (position, part) in word.split(['/', '∕', '⁄']).enumerate() {
            if position > 0 {
                self.push(Piece::Stroke, token);
            }
            let digits = part.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(part.len());
            let number = part.get(..digits).and_then(|text| text.parse().ok());
            let rest = match number {
                // `g/100g`: the number stands below the stroke.
                Some(number) if position > 0 || token > 0 => {
                    self.push(Piece::Number(number), token);
                    part.get(digits..).unwrap_or_default()
                }
                _ => part,
            };
            if !rest.is_empty() {
                self.push(Piece::Word(rest), token);
            }
        }
    }

    pub(crate) fn get(&self, position: usize) -> Option<Piece<'a>> {
        self.pieces.get(..self.count)?.get(position).map(|&(piece, _)| piece)
    }

    /// The first words as they stand, strokes and all.
    pub(crate) fn whole_words(&self) -> &[&'a str] {
        self.whole.get(..self.whole_count).unwrap_or_default()
    }

    /// Up to three words from a piece on, before the next stroke or number.
    pub(crate) fn words_from(&self, start: usize) -> ([&'a str; 3], usize) {
        let mut words = [""; 3];
        let mut count = 0;
        for (offset, slot) in words.iter_mut().enumerate() {
            let Some(Piece::Word(word)) = self.get(start + offset) else {
                break;
            };
            *slot = word;
            count += 1;
        }
        (words, count)
    }

    /// The first piece that belongs to this token or a later one.
    pub(crate) fn piece_at(&self, token: usize) -> Option<usize> {
        let kept = self.pieces.get(..self.count)?;
        Some(kept.partition_point(|&(_, from)| from < token))
    }

    /// How many tokens the pieces before `end` touch.
    pub(crate) fn tokens_to(&self, end: usize) -> usize {
        let last = end.min(self.count).checked_sub(1);
        last.and_then(|last| self.pieces.get(last)).map_or(0, |&(_, token)| token + 1)
    }

    /// The pieces before `end` as text.
    pub(crate) fn text_to(&self, end: usize) -> String {
        let mut text = String::new();
        for &(piece, _) in self.pieces.iter().take(end.min(self.count)) {
            match piece {
                Piece::Stroke => text.push('/'),
                Piece::Number(number) => text.push_str(&number.to_string()),
                Piece::Word(word) => {
                    if !text.is_empty() && !text.ends_with('/') {
                        text.push(' ');
                    }
                    text.push_str(word);
                }
            }
        }
        text
    }
}
