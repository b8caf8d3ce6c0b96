//! Dates: year, month, day, and nothing else.

use std::sync::Arc;

/// Whether a text is a date of the calendar as `2026-05-03`.
pub(crate) fn is_date(text: &str) -> bool {
    let bytes = text.as_bytes();
    if bytes.len() != 10 || bytes[4] != b'-' || bytes[7] != b'-' {
        return false;
    }
    let number = |range: std::ops::Range<usize>| text.get(range).and_then(|digits| digits.parse::<u32>().ok());
    matches!((number(0..4), number(5..7), number(8..10)), (Some(year), Some(month), Some(day)) if valid(year, month, day))
}

fn valid(year: u32, month: u32, day: u32) -> bool {
    let leap = year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400));
    let days = match month {
        1 | 3 | 5 | 7 | 8 | 10 | 12 => 31,
        4 | 6 | 9 | 11 => 30,
        2 if leap => 29,
        2 => 28,
        _ => return false,
    };
    (1..=days).contains(&day) && year >= 1000
}

/// What another order was likely meant to say; `None` when two orders would do.
pub(crate) fn suggestion(text: &str) -> Option<Arc<str>> {
    let parts: Vec<u32> = text
        .split(['-', '/', '.', ' '])
        .filter(|part| !part.is_empty())
        .map(|part| part.parse().ok())
        .collect::<Option<_>>()?;
    let (year, month, day) = match *parts.as_slice() {
        [year, month, day] if year >= 1000 && valid(year, month, day) => (year, month, day),
        [day, month, year] if year >= 1000 && day > 12 && valid(year, month, day) => (year, month, day),
        [month, day, year] if year >= 1000 && day > 12 && valid(year, month, day) => (year, month, day),
        [same, other, year] if year >= 1000 && same == other && valid(year, same, other) => (year, same, other),
        _ => return None,
    };
    Some(format!("{year:04}-{month:02}-{day:02}").into())
}
