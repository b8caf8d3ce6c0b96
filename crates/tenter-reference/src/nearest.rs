//! "Did you mean": the known names nearest to one that is not known.

use crate::Reference;
use crate::fold::fold;
use crate::names::Kind;
use std::collections::BTreeSet;

/// How many names are offered at most.
const OFFERED: usize = 3;

/// Names longer than this are not misspellings of anything.
const LONGEST: usize = 64;

impl Reference {
    /// Up to three known names nearest to `name`, nearest first, as the data writes them; one for each entry. Only names that a slip of
    /// the hand could have turned into `name` are offered, so the list is often empty. `kind` narrows the search.
    pub fn nearest(&self, name: &str, kind: Option<Kind>) -> Vec<&str> {
        let key = fold(name);
        if key.chars().count() < 3 || key.len() > LONGEST {
            return Vec::new();
        }
        let sorted = sort_words(&key);
        let mut found: Vec<(usize, &str, Kind, usize)> = self
            .names
            .iter()
            .filter(|known| kind.is_none_or(|kind| kind == known.kind))
            .filter_map(|known| {
                let distance = distance(&key, &sorted, &known.key)?;
                Some((distance, known.written.as_str(), known.kind, known.index))
            })
            .collect();
        found.sort_unstable();
        let mut seen = BTreeSet::new();
        found.retain(|(_, _, kind, index)| seen.insert((*kind, *index)));
        found
            .into_iter()
            .take(OFFERED)
            .map(|(_, written, _, _)| written)
            .collect()
    }
}

/// Slips between two names, or nothing if they are too many. Words in another order cost one slip.
fn distance(key: &str, sorted: &str, known: &str) -> Option<usize> {
    let allowed = match key.chars().count().max(known.chars().count()) {
        0..=4 => 1,
        5..=8 => 2,
        9..=15 => 3,
        _ => 4,
    };
    if key.len().abs_diff(known.len()) > allowed * 4 {
        return None;
    }
    if digits(key) != digits(known) {
        return None;
    }
    let straight = strsim::osa_distance(key, known);
    let reordered = strsim::osa_distance(sorted, &sort_words(known)) + 1;
    Some(straight.min(reordered)).filter(|slips| *slips <= allowed)
}

/// `Reactive Red 2` is not a misspelling of `Reactive Red 11`: figures have to agree.
fn digits(name: &str) -> impl PartialEq {
    name.chars()
        .filter(char::is_ascii_digit)
        .collect::<String>()
}

fn sort_words(key: &str) -> String {
    let mut words: Vec<&str> = key.split(' ').collect();
    words.sort_unstable();
    words.join(" ")
}
