//! Names as they are compared: without regard to case, spacing, composition of accents, or the quotes a phone types.

use std::borrow::Cow;
use unicode_normalization::UnicodeNormalization;

use crate::chars::is_invisible;

/// Folds a name for matching: composed (NFC), lower case, blanks in a row made one and trimmed, invisible
/// characters dropped, typographic apostrophes and quotes made plain.
///
/// Two names are the same name exactly when their folds are equal.
pub fn fold_name(name: &str) -> String {
    fold_name_cow(name).into_owned()
}

/// As [`fold_name`], borrowing when the name is folded already.
pub fn fold_name_cow(name: &str) -> Cow<'_, str> {
    if is_folded_ascii(name) {
        return Cow::Borrowed(name);
    }
    let mut folded = String::with_capacity(name.len());
    let lowered = name.nfc().filter(|c| !is_invisible(*c)).flat_map(char::to_lowercase);
    let mut gap = false;
    for c in lowered.nfc() {
        if c.is_whitespace() {
            gap = true;
            continue;
        }
        if gap && !folded.is_empty() {
            folded.push(' ');
        }
        gap = false;
        match c {
            '\u{2019}' | '\u{2018}' | '\u{02bc}' | '\u{ff07}' => folded.push('\''),
            '\u{201c}' | '\u{201d}' | '\u{201e}' => folded.push('"'),
            'ß' => folded.push_str("ss"),
            'ς' => folded.push('σ'),
            other => folded.push(other),
        }
    }
    Cow::Owned(folded)
}

fn is_folded_ascii(name: &str) -> bool {
    let mut last_blank = true;
    for byte in name.bytes() {
        match byte {
            b' ' if last_blank => return false,
            b' ' => last_blank = true,
            b'!'..=b'@' | b'['..=b'~' => last_blank = false,
            _ => return false,
        }
    }
    !last_blank || name.is_empty()
}
