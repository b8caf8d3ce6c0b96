//! Turns of phrase the rules share.

use std::fmt::Display;

/// "a", "a and b", "a, b and c".
pub(crate) fn list<T: Display>(items: &[T], last: &str) -> String {
    match items {
        [] => String::new(),
        [only] => only.to_string(),
        [head @ .., tail] => {
            let head: Vec<String> = head.iter().map(ToString::to_string).collect();
            format!("{} {last} {tail}", head.join(", "))
        }
    }
}

/// Each between backticks, joined: "`a`, `b` or `c`".
pub(crate) fn quoted<T: Display>(items: &[T]) -> String {
    let ticked: Vec<String> = items.iter().map(|item| format!("`{item}`")).collect();
    list(&ticked, "or")
}

/// "did you mean `x`?" or the other sentence when nothing is near.
pub(crate) fn did_you_mean<T: Display>(nearest: &[T], otherwise: &str) -> String {
    if nearest.is_empty() { otherwise.to_owned() } else { format!("did you mean {}?", quoted(nearest)) }
}

/// With a capital in front and a full stop behind, as a help line reads.
pub(crate) fn sentence(text: &str) -> String {
    let mut letters = text.chars();
    let Some(first) = letters.next() else { return String::new() };
    let mut told: String = first.to_uppercase().chain(letters).collect();
    if !told.ends_with(['.', '?', '!']) {
        told.push('.');
    }
    told
}

/// With "a" or "an" in front.
pub(crate) fn with_article(words: &str) -> String {
    let vowel = words.starts_with(['a', 'e', 'i', 'o', 'A', 'E', 'I', 'O']);
    format!("{} {words}", if vowel { "an" } else { "a" })
}
