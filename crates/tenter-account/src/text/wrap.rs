//! Wrapping by the width characters take on a terminal.

use unicode_width::{UnicodeWidthChar, UnicodeWidthStr};

/// Columns a text takes.
pub fn width(text: &str) -> usize {
    UnicodeWidthStr::width(text)
}

/// Breaks a text into lines of at most `columns`, at blanks; a word wider than that is broken where it must.
/// Always at least one line.
pub fn wrap(text: &str, columns: usize) -> Vec<String> {
    let columns = columns.max(8);
    let mut lines = Vec::new();
    let mut line = String::new();
    // Width of the line so far: counted as it grows, for a line may be one word of a million letters.
    let mut taken = 0;
    for word in text.split_whitespace() {
        let wide = width(word);
        let gap = usize::from(!line.is_empty());
        if taken + gap + wide <= columns {
            if gap > 0 {
                line.push(' ');
            }
            line.push_str(word);
            taken += gap + wide;
            continue;
        }
        if !line.is_empty() {
            lines.push(std::mem::take(&mut line));
            taken = 0;
        }
        if wide <= columns {
            line.push_str(word);
            taken = wide;
            continue;
        }
        for c in word.chars() {
            let wide = UnicodeWidthChar::width(c).unwrap_or(0);
            if taken + wide > columns {
                lines.push(std::mem::take(&mut line));
                taken = 0;
            }
            line.push(c);
            taken += wide;
        }
    }
    if !line.is_empty() || lines.is_empty() {
        lines.push(line);
    }
    lines
}

/// A paragraph: wrapped, every line after the first set in by `hang` and the first by `indent`.
pub fn paragraph(text: &str, indent: usize, hang: usize, columns: usize) -> String {
    let mut out = String::new();
    let inner = columns.saturating_sub(indent.max(hang));
    for (number, line) in wrap(text, inner).iter().enumerate() {
        out.push_str(&" ".repeat(if number == 0 { indent } else { hang }));
        out.push_str(line);
        out.push('\n');
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn breaks_at_blanks_and_inside_words_only_where_it_must() {
        assert_eq!(wrap("soda ash and urea", 9), ["soda ash", "and urea"]);
        assert_eq!(wrap("aaaaaaaaaaaaaaaaaaaa b", 8), ["aaaaaaaa", "aaaaaaaa", "aaaa b"]);
        assert_eq!(wrap("", 20), [""]);
    }

    #[test]
    fn counts_wide_characters_twice() {
        assert_eq!(wrap("小麦粉 小麦粉", 8), ["小麦粉", "小麦粉"]);
    }
}
