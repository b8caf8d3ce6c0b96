//! JSON that is safe on a terminal too.

use std::fmt::Write;

use serde::Serialize;

use crate::text::safe::steers;

/// Pretty JSON with a final line feed. Inside strings, whatever could steer a terminal or turn the direction of
/// reading is written as `\uXXXX`, which means the same to every reader of JSON.
pub fn json(value: &impl Serialize) -> Result<String, serde_json::Error> {
    let plain = serde_json::to_string_pretty(value)?;
    let mut text = String::with_capacity(plain.len() + 1);
    for c in plain.chars() {
        if steers(c) {
            let mut units = [0; 2];
            for unit in c.encode_utf16(&mut units) {
                // Writing to a string cannot fail.
                let _ = write!(text, "\\u{unit:04x}");
            }
        } else {
            text.push(c);
        }
    }
    text.push('\n');
    Ok(text)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_escaped_reads_back_the_same() {
        let hostile = "\u{1b}[31m \u{9b}2J \u{202e} \u{7f} \u{e0041} é 👩 \n";
        let text = json(&[hostile]).unwrap();
        assert!(!text.trim_end().chars().any(steers), "{text:?}");
        assert_eq!(serde_json::from_str::<Vec<String>>(&text).unwrap(), [hostile]);
    }
}
