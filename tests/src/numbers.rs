//! Numbers in a text made larger or smaller.

/// Every plain number of a text times a factor; `None` where it holds none, or a ratio such as `1:20`.
pub fn scaled(text: &str, factor: f64) -> Option<String> {
    if text.contains(':') {
        return None;
    }
    let mut out = String::new();
    let mut rest = text;
    let mut any = false;
    while let Some(at) = rest.find(|letter: char| letter.is_ascii_digit()) {
        out.push_str(&rest[..at]);
        let tail = &rest[at..];
        let end = tail
            .char_indices()
            .find(|(_, letter)| !(letter.is_ascii_digit() || matches!(letter, '.' | '/')))
            .map_or(tail.len(), |(end, _)| end);
        out.push_str(&written(value(&tail[..end])? * factor));
        rest = &tail[end..];
        any = true;
    }
    out.push_str(rest);
    any.then_some(out)
}

fn value(numeral: &str) -> Option<f64> {
    match numeral.split_once('/') {
        Some((over, under)) => Some(over.parse::<f64>().ok()? / under.parse::<f64>().ok()?),
        None => numeral.parse().ok(),
    }
}

/// Four figures, no trailing noughts.
fn written(value: f64) -> String {
    let mut digits: usize = 0;
    while digits < 6 && (value * 10f64.powi(digits as i32)).abs() < 1000.0 {
        digits += 1;
    }
    let text = format!("{value:.digits$}");
    if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_owned() } else { text }
}

#[cfg(test)]
mod tests {
    use super::scaled;

    #[test]
    fn every_number_is_scaled() {
        assert_eq!(scaled("60 g/L", 0.25).as_deref(), Some("15 g/L"));
        assert_eq!(scaled("6 to 8 g", 10.0).as_deref(), Some("60 to 80 g"));
        assert_eq!(scaled("1/4 lb", 0.1).as_deref(), Some("0.025 lb"));
        assert_eq!(scaled("2% owg", 0.1).as_deref(), Some("0.2% owg"));
        assert_eq!(scaled("1:20", 0.1), None);
        assert_eq!(scaled("some", 0.1), None);
    }
}
