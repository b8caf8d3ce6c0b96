//! Units at the front of words that follow a number: how far they reach and how they are written.

use tenter_quantity::{Lookup, canonical_spelling, lookup_unit, parse_numeral};

/// The unit at the front of some words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct UnitText {
    /// How many of the words it takes.
    pub words: usize,
    /// How it is written, word by word.
    pub written: Vec<String>,
    /// What it is, for comparing: symbols rather than spellings.
    pub meant: Vec<String>,
}

/// The unit in front of `words`, which follow the number written as `number`.
pub(super) fn unit_at(words: &[&str], number: &str) -> Option<UnitText> {
    let value = parse_numeral(number).unwrap_or(2.0);
    let first = *words.first()?;
    let strokes = first.bytes().filter(|b| *b == b'/').count();
    if strokes == 1
        && let Some((top, bottom)) = first.split_once('/')
        && let Some((top_written, top_meant)) = single(&[top], value)
    {
        if bottom.is_empty() {
            return Some(UnitText {
                words: 1,
                written: vec![first.to_owned()],
                meant: vec![top_meant, "/".to_owned()],
            });
        }
        let (bottom_written, bottom_meant) =
            single(&[bottom], 1.0).unwrap_or_else(|| (bottom.to_owned(), bottom.to_owned()));
        // `m2/kg` and the like stay one word.
        if !top_written.contains(' ') && !bottom_written.contains(' ') {
            return Some(UnitText {
                words: 1,
                written: vec![format!("{top_written}/{bottom_written}")],
                meant: vec![top_meant, "/".to_owned(), bottom_meant],
            });
        }
    }
    let reach = words.get(..words.len().min(3))?;
    let (_, used) = lookup_unit(reach, None)?;
    let (written, meant) = single(words.get(..used)?, value)?;
    let mut unit =
        UnitText { words: used, written: written.split(' ').map(str::to_owned).collect(), meant: vec![meant] };
    if let Some(["per", bottom]) = words.get(used..used + 2) {
        let (bottom_written, bottom_meant) =
            single(&[bottom], 1.0).unwrap_or_else(|| ((*bottom).to_owned(), (*bottom).to_owned()));
        unit.words += 2;
        unit.written.push("per".to_owned());
        unit.written.extend(bottom_written.split(' ').map(str::to_owned));
        unit.meant.extend(["/".to_owned(), bottom_meant]);
    }
    // `2 L per 100 g`, or half typed.
    if let Some(["per"]) = words.get(used..) {
        unit.words += 1;
        unit.written.push("per".to_owned());
        unit.meant.push("/".to_owned());
    }
    Some(unit)
}

/// One undivided unit that takes all of `words`: how it is written and what it is. Doubtful and ambiguous spellings
/// stay as they are.
fn single(words: &[&str], value: f64) -> Option<(String, String)> {
    let as_is = words.join(" ");
    match lookup_unit(words, None)? {
        (_, used) if used != words.len() => None,
        (Lookup::Unit(unit), _) => {
            let written = canonical_spelling(words, value)
                .filter(|(spelling, used)| *used == words.len() && !only_number_differs(spelling, &as_is))
                .map_or_else(|| as_is.clone(), |(spelling, _)| spelling.to_owned());
            // The writing must lead back to the same unit.
            let again: Vec<&str> = written.split(' ').collect();
            match lookup_unit(&again, None) {
                Some((Lookup::Unit(same), used)) if used == again.len() && same.symbol == unit.symbol => {
                    Some((written, unit.symbol.to_owned()))
                }
                _ => Some((as_is, unit.symbol.to_owned())),
            }
        }
        _ => Some((as_is.clone(), as_is)),
    }
}

/// Singular and plural are the writer's business.
fn only_number_differs(a: &str, b: &str) -> bool {
    a == b || a.strip_suffix('s') == Some(b) || b.strip_suffix('s') == Some(a)
}
