//! Numbers as people write them: `60`, `0.5`, `1/4`, `1 1/2`, `1½`, `−18`.
//!
//! What could be read two ways (`2,5`, `1,000`, `1-1/2`, `1e3`) is a problem with a suggested fix, never a guess.

use crate::numeral_fix::diagnose;
use crate::numeral_problem::{NumeralProblem, NumeralProblemKind};

/// The greatest magnitude a recipe needs, and the least other than zero.
pub(crate) const GREATEST: f64 = 1e9;
pub(crate) const LEAST: f64 = 1e-9;

/// The number a text is. The value is rounded once; within ±1e9, and not closer to zero than 1e-9 unless it is zero.
///
/// # Errors
/// Says what is wrong and what may be written instead.
pub fn parse_numeral(text: &str) -> Result<f64, NumeralProblem> {
    use NumeralProblemKind as K;
    let trimmed = text.trim();
    let problem = |kind, fixes| Err(NumeralProblem::new(kind, trimmed, fixes));
    if trimmed.is_empty() {
        return problem(K::Empty, vec![]);
    }
    let (sign, body) = match trimmed.strip_prefix(['-', '−', '+']) {
        Some(rest) if trimmed.starts_with('+') => (1.0, rest.trim_start()),
        Some(rest) => (-1.0, rest.trim_start()),
        None => (1.0, trimmed),
    };
    let Some(size) = unsigned(body) else {
        let (kind, fixes) = diagnose(trimmed);
        return problem(kind, fixes);
    };
    if size.is_nan() {
        return problem(K::ZeroDenominator, vec![]);
    }
    if size > GREATEST {
        return problem(K::TooLarge, vec![]);
    }
    if size != 0.0 && size < LEAST {
        return problem(K::TooSmall, vec![]);
    }
    Ok(if size == 0.0 { 0.0 } else { sign * size })
}

/// `None` where it is no number of the accepted forms; NaN for a fraction over zero.
pub(crate) fn unsigned(body: &str) -> Option<f64> {
    if let Some((whole, fraction)) = vulgar(body) {
        let whole = whole.trim_end();
        return Some(fraction + if whole.is_empty() { 0.0 } else { digits(whole)? });
    }
    let Some((before, below)) = body.split_once(['/', '⁄']) else {
        return decimal(body);
    };
    let below = digits(below.trim_start())?;
    let before = before.trim_end();
    let (whole, above) = match before.rsplit_once(char::is_whitespace) {
        Some((whole, above)) => (digits(whole.trim_end())?, digits(above)?),
        None => (0.0, digits(before)?),
    };
    if below == 0.0 {
        return Some(f64::NAN);
    }
    // One rounding: whole and above are integers, exact far beyond any recipe.
    Some((whole * below + above) / below)
}

/// Digits alone, at most fifteen: an integer that a float holds exactly.
pub(crate) fn digits(text: &str) -> Option<f64> {
    let fits = (1..=15).contains(&text.len()) && text.bytes().all(|byte| byte.is_ascii_digit());
    if fits { text.parse().ok() } else { None }
}

fn decimal(text: &str) -> Option<f64> {
    let (whole, part) = text.split_once('.').unwrap_or((text, "0"));
    let all_digits = |text: &str| text.bytes().all(|byte| byte.is_ascii_digit());
    // `.5` is read; `5.` is not: the point may end a sentence.
    let fits = all_digits(whole) && all_digits(part) && !part.is_empty() && text.len() <= 40;
    if fits { text.parse().ok() } else { None }
}

const VULGAR: &[(char, f64, f64)] = &[
    ('½', 1.0, 2.0),
    ('⅓', 1.0, 3.0),
    ('⅔', 2.0, 3.0),
    ('¼', 1.0, 4.0),
    ('¾', 3.0, 4.0),
    ('⅕', 1.0, 5.0),
    ('⅖', 2.0, 5.0),
    ('⅗', 3.0, 5.0),
    ('⅘', 4.0, 5.0),
    ('⅙', 1.0, 6.0),
    ('⅚', 5.0, 6.0),
    ('⅐', 1.0, 7.0),
    ('⅛', 1.0, 8.0),
    ('⅜', 3.0, 8.0),
    ('⅝', 5.0, 8.0),
    ('⅞', 7.0, 8.0),
    ('⅑', 1.0, 9.0),
    ('⅒', 1.0, 10.0),
];

/// A vulgar fraction sign at the end, and what stands before it.
fn vulgar(text: &str) -> Option<(&str, f64)> {
    let last = text.chars().next_back()?;
    let &(_, above, below) = VULGAR.iter().find(|row| row.0 == last)?;
    let before = text.get(..text.len() - last.len_utf8())?;
    Some((before, above / below))
}
