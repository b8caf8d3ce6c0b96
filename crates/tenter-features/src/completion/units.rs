//! Units that fit what is expected.

use tenter_quantity::{Dimension, Token, read_unit};
use tenter_syntax::Expect;

use crate::completion::{Completion, ItemKind};
use crate::text::Range;

/// Units a dyer writes for each kind of thing, the usual first.
pub(super) const fn of(what: Expect) -> &'static [&'static str] {
    match what {
        Expect::Material => &[
            "g/piece", "g/L", "g", "mL/piece", "mL", "L", "% owg", "kg", "kg/piece", "mL/L", "oz", "tsp", "tbsp",
            "cups",
        ],
        Expect::Liquor => &["L", "mL", "mL/piece", "L/piece", "US gal", "cups"],
        Expect::Duration => &["min", "h", "days", "s"],
        Expect::Temperature => &["°C", "°F"],
        Expect::Pickup => &["% pickup"],
        Expect::Portions => &["parts"],
        _ => &[],
    }
}

/// The units that fit, to stand behind a number.
pub(super) fn fit(expected: &[Expect], range: &Range) -> Vec<Completion> {
    let mut found: Vec<Completion> = Vec::new();
    for unit in expected.iter().flat_map(|what| of(*what)) {
        if !found.iter().any(|item| item.label == *unit) {
            found.push(Completion::plain(range, *unit, ItemKind::Unit, name(unit), found.len() as u16));
        }
    }
    found
}

fn name(unit: &str) -> String {
    tenter_quantity::unit_by_symbol(unit).map(|unit| unit.name.to_owned()).unwrap_or_default()
}

/// Behind a number: how many bytes a whole unit and the blank after it take, if one stands there, and whether it is one
/// of volume.
pub(super) fn behind(text: &str) -> Option<(usize, bool)> {
    let words: Vec<&str> = text.split_whitespace().collect();
    let tokens: Vec<Token<'_>> = words.iter().take(6).map(|word| Token::Word(word)).collect();
    let read = read_unit(&tokens, None).ok()??;
    let used = read.words_used;
    let mut at = 0;
    for word in words.iter().take(used) {
        let rest = text.get(at..)?;
        at += rest.find(word)? + word.len();
    }
    let rest = text.get(at..)?;
    let blanks = rest.len() - rest.trim_start().len();
    (blanks > 0).then_some((at + blanks, read.dimension == Dimension::Volume))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_unit_offered_is_read() {
        let all = [Expect::Material, Expect::Liquor, Expect::Duration, Expect::Temperature];
        for unit in all.iter().flat_map(|what| of(*what)) {
            let tokens: Vec<Token<'_>> = unit.split(' ').map(Token::Word).collect();
            assert!(matches!(read_unit(&tokens, None), Ok(Some(_)) | Err(_)), "{unit}");
            let read = read_unit(&tokens, Some(tenter_quantity::System::Metric));
            assert!(matches!(read, Ok(Some(found)) if found.words_used == tokens.len()), "{unit}");
        }
    }

    #[test]
    fn a_unit_ends_at_its_blank() {
        assert_eq!(behind("g/L soda"), Some((4, false)));
        assert_eq!(behind("L water"), Some((2, true)));
        assert_eq!(behind("% owg "), Some((6, false)));
        assert_eq!(behind("g"), None);
        assert_eq!(behind("zz "), None);
    }
}
