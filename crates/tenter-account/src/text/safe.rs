//! What comes from a file or a file name is shown so that it cannot steer the terminal or hide what it says.

use std::borrow::Cow;
use std::fmt::Write;

/// One line of shown text: control characters (line breaks and tabs too), escape sequences, characters that turn
/// the direction of reading and characters that show nothing are written as `\u{1b}`.
pub fn safe(text: &str) -> Cow<'_, str> {
    replaced(text, |c| steers(c) || matches!(c, '\n' | '\r' | '\t'))
}

/// Shown text of several lines: as [`safe`], but line feeds and tabs stay.
pub fn safe_lines(text: &str) -> Cow<'_, str> {
    replaced(text, |c| steers(c) || c == '\r')
}

/// Whether a character is not shown as it is, wherever it stands. Line breaks and tabs are left to the caller.
pub fn steers(c: char) -> bool {
    match c {
        '\n' | '\r' | '\t' => false,
        _ if c.is_ascii() => c.is_ascii_control(),
        _ => c.is_control() || turns_or_hides(c),
    }
}

/// The visible form of a character.
pub fn visible(c: char) -> String {
    format!("\\u{{{:x}}}", u32::from(c))
}

fn turns_or_hides(c: char) -> bool {
    matches!(
        c,
        '\u{00ad}'
            | '\u{061c}'
            | '\u{115f}'..='\u{1160}'
            | '\u{180e}'
            | '\u{200b}'
            | '\u{200e}'..='\u{200f}'
            | '\u{2028}'..='\u{202e}'
            | '\u{2060}'..='\u{206f}'
            | '\u{3164}'
            | '\u{feff}'
            | '\u{ffa0}'
            | '\u{fff9}'..='\u{fffb}'
            | '\u{e0000}'..='\u{e0fff}'
    )
}

fn replaced(text: &str, hidden: impl Fn(char) -> bool) -> Cow<'_, str> {
    if !text.chars().any(&hidden) {
        return Cow::Borrowed(text);
    }
    let mut shown = String::with_capacity(text.len() + 16);
    for c in text.chars() {
        if hidden(c) {
            // Writing to a string cannot fail.
            let _ = write!(shown, "{}", visible(c));
        } else {
            shown.push(c);
        }
    }
    Cow::Owned(shown)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn plain_text_is_left_alone() {
        for text in ["", "soda ash", "Inês Carvalhal", "小麦粉", "👩‍🎨 1½ °C"] {
            assert!(matches!(safe(text), Cow::Borrowed(same) if same == text), "{text}");
        }
    }

    #[test]
    fn nothing_that_steers_gets_through() {
        let hostile =
            "a\u{1b}]0;title\u{7}b\u{9b}31mc\u{202e}d\u{2066}e\u{200f}f\0g\u{7f}h\r\ni\tj\u{feff}k\u{e0041}l\u{2028}";
        let shown = safe(hostile);
        assert!(!shown.chars().any(|c| c.is_control() || turns_or_hides(c)), "{shown:?}");
        assert!(shown.starts_with("a\\u{1b}]0;title\\u{7}b\\u{9b}31mc\\u{202e}d"), "{shown}");
        assert!(shown.ends_with("h\\u{d}\\u{a}i\\u{9}j\\u{feff}k\\u{e0041}l\\u{2028}"), "{shown}");
    }

    #[test]
    fn lines_keep_their_breaks_but_not_their_carriage_returns() {
        assert_eq!(safe_lines("a\n\tb\rc"), "a\n\tb\\u{d}c");
    }
}
