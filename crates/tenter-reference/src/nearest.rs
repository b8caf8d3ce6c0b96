//! "Did you mean": the known names nearest to one that is not known.

use crate::Reference;
use crate::fold::fold;
use crate::names::{Kind, Name};
use std::collections::BTreeSet;

/// How many names are offered at most.
const OFFERED: usize = 3;

/// Names longer than this are not misspellings of anything.
const LONGEST: usize = 64;

/// What a missing or added word costs, in slips.
const WORD: usize = 2;

impl Reference {
    /// Up to three known names nearest to `name`, nearest first, as the data writes them; one for each entry. Only names
    /// that a slip of the hand, a swapped pair of words, or one word too many or too few could have turned into
    /// `name` are offered, so the list is often empty. `kind` narrows the search.
    pub fn nearest(&self, name: &str, kind: Option<Kind>) -> Vec<&str> {
        let key = fold(name);
        if key.chars().count() < 3 || key.len() > LONGEST {
            return Vec::new();
        }
        let wanted = Wanted { sorted: sort_words(&key), digits: digits(&key), key: &key };
        let mut found: Vec<(usize, bool, &Name)> = self
            .names
            .iter()
            .filter(|known| kind.is_none_or(|kind| kind == known.kind))
            .filter_map(|known| Some((wanted.slips(&known.key)?, !known.primary, known)))
            .collect();
        found.sort_by(|a, b| (a.0, a.1, &a.2.key).cmp(&(b.0, b.1, &b.2.key)));
        let mut seen = BTreeSet::new();
        found.retain(|(_, _, known)| seen.insert((known.kind, known.index)));
        found.into_iter().take(OFFERED).map(|(_, _, known)| known.written.as_str()).collect()
    }
}

/// The name somebody wrote, in the forms it is compared in.
struct Wanted<'a> {
    key: &'a str,
    sorted: String,
    digits: String,
}

impl Wanted<'_> {
    /// Slips between it and a known name, or nothing if they are too many.
    fn slips(&self, known: &str) -> Option<usize> {
        if known == self.key {
            return Some(0);
        }
        // `Reactive Red 2` is not a misspelling of `Reactive Red 11`: figures have to agree.
        if self.digits != digits(known) {
            return None;
        }
        let allowed = match self.key.chars().count().max(known.chars().count()) {
            0..=4 => 1,
            5..=8 => 2,
            9..=15 => 3,
            _ => 4,
        };
        let misspelt = (self.key.len().abs_diff(known.len()) <= allowed * 4)
            .then(|| {
                let straight = strsim::osa_distance(self.key, known);
                let reordered = strsim::osa_distance(&self.sorted, &sort_words(known)) + 1;
                straight.min(reordered)
            })
            .filter(|slips| *slips <= allowed);
        misspelt.into_iter().chain(self.word_apart(known)).min()
    }

    /// `soda` for `soda ash`, or `fine table salt` for `table salt`.
    fn word_apart(&self, known: &str) -> Option<usize> {
        let (shorter, longer) = if self.key.len() < known.len() { (self.key, known) } else { (known, self.key) };
        let words = longer.split(' ').count();
        let apart = words == shorter.split(' ').count() + 1 && shorter.len() >= 4;
        let ends = longer.strip_suffix(shorter).is_some_and(|rest| rest.ends_with(' '));
        let opens = longer.strip_prefix(shorter).is_some_and(|rest| rest.starts_with(' '));
        (apart && (ends || opens)).then_some(WORD)
    }
}

fn digits(name: &str) -> String {
    name.chars().filter(char::is_ascii_digit).collect()
}

fn sort_words(key: &str) -> String {
    let mut words: Vec<&str> = key.split(' ').collect();
    words.sort_unstable();
    words.join(" ")
}
