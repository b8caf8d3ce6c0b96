//! Names and words of manner.

use super::*;

impl<'a> Reader<'_, 'a> {
    pub(super) fn quoted(&mut self, text: &str, span: Span, at: usize) -> usize {
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
    pub(super) fn words(&mut self, at: usize) -> usize {
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
    pub(super) fn leading_manners(&mut self, at: usize) -> usize {
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

    pub(super) fn word_at(&self, at: usize) -> Option<&'a str> {
        match self.tokens.get(at) {
            Some(&Token::Word(word, _)) => Some(word),
            _ => None,
        }
    }

    pub(super) fn is_in_all(&self, at: usize) -> bool {
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
    pub(super) fn name(&mut self, at: usize) -> Option<(NameUse, usize)> {
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

    pub(super) fn known_name(&self, start: usize) -> Option<(NameUse, usize)> {
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
    pub(super) fn unknown(&self, start: usize) -> (NameUse, usize) {
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
}
