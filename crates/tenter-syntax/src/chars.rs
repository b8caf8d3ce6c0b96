//! Classes of characters the scanner needs.

/// A blank: any white space that does not end a line.
pub fn is_blank(c: char) -> bool {
    c.is_whitespace() && c != '\n' && c != '\r'
}

/// A character that shows nothing and can hide inside a name: zero width, soft hyphen, text direction marks.
pub fn is_invisible(c: char) -> bool {
    matches!(
        c,
        '\u{00ad}'
            | '\u{034f}'
            | '\u{061c}'
            | '\u{115f}'..='\u{1160}'
            | '\u{17b4}'..='\u{17b5}'
            | '\u{180b}'..='\u{180e}'
            | '\u{200b}'..='\u{200f}'
            | '\u{202a}'..='\u{202e}'
            | '\u{2060}'..='\u{206f}'
            | '\u{3164}'
            | '\u{fe00}'..='\u{fe0f}'
            | '\u{feff}'
            | '\u{ffa0}'
            | '\u{e0000}'..='\u{e0fff}'
    )
}

/// A variation selector: shows nothing by itself but belongs to many emoji, so it is dropped in names and not reported.
pub fn is_variation_selector(c: char) -> bool {
    matches!(c, '\u{fe00}'..='\u{fe0f}' | '\u{e0100}'..='\u{e01ef}')
}

/// A control character that has no place in a recipe.
pub fn is_stray_control(c: char) -> bool {
    c.is_control() && !matches!(c, '\t' | '\n' | '\r')
}

/// Whether a number may begin with this character.
pub fn starts_number(c: char) -> bool {
    c.is_ascii_digit()
        || matches!(c, '\u{bc}'..='\u{be}' | '\u{2150}'..='\u{215e}' | '\u{2189}' | '~' | '≈' | '≥' | '≤')
}

/// Whether `c` may stand inside a word of the notation (see `word_char` in the grammar).
pub fn is_word_char(c: char) -> bool {
    if c.is_ascii() {
        c.is_ascii_alphanumeric() || "-/'.%_&#@+$`".contains(c)
    } else {
        !is_blank(c) && !"±–—“”„…•×·≈≥≤−→".contains(c)
    }
}
