//! How far a written number may be from the truth: `about`, `at least`, `at most`, ranges, `±`.

use crate::interval::Interval;
use crate::numeral::parse_numeral;
use crate::numeral_problem::{NumeralProblem, NumeralProblemKind};

/// What `about` is taken to mean, as a share to either side: assumed; common practice, no source.
pub const ABOUT_SHARE: f64 = 0.10;

/// How far `at least` is taken to reach up, and `at most` down, as a share: assumed; common practice, no source. A
/// bound without another end cannot be totalled.
pub const ONE_SIDED_SHARE: f64 = 0.50;

/// How a number was bounded.
#[derive(Clone, Copy, PartialEq, Eq, Debug, serde::Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Bound {
    /// As it stands.
    Exact,
    /// `about 20`: spread assumed.
    About,
    /// `at least 20`: upper end assumed.
    AtLeast,
    /// `at most 20`: lower end assumed.
    AtMost,
    /// `10 to 20`.
    Range,
    /// `20 ± 2`.
    PlusMinus,
}

impl Bound {
    /// What was assumed, in words; `None` where the writer gave both ends.
    pub const fn assumption(self) -> Option<&'static str> {
        match self {
            Self::About => Some("`about` taken as 10 % either way"),
            Self::AtLeast => Some("`at least` taken as up to half as much again"),
            Self::AtMost => Some("`at most` taken as down to half of it"),
            Self::Exact | Self::Range | Self::PlusMinus => None,
        }
    }
}

/// `about x`: x ± 10 %.
pub fn about(x: f64) -> Interval {
    Interval::plus_minus(x, x * ABOUT_SHARE)
}

/// `at least x`: from x, most likely x, to half as much again.
pub fn at_least(x: f64) -> Interval {
    Interval::new(x, x, x + x.abs() * ONE_SIDED_SHARE)
}

/// `at most x`: up to x, most likely x, from half of it.
pub fn at_most(x: f64) -> Interval {
    Interval::new(x - x.abs() * ONE_SIDED_SHARE, x, x)
}

const ABOUT: &[&str] = &["about", "approximately", "approx.", "approx", "roughly", "around", "circa", "ca.", "~", "≈"];
const AT_LEAST: &[&str] = &["at least", "no less than", "not less than", "≥", ">="];
const AT_MOST: &[&str] = &["at most", "no more than", "not more than", "up to", "≤", "<="];

fn after<'a>(text: &'a str, openings: &[&str]) -> Option<&'a str> {
    openings.iter().find_map(|opening| {
        let head = text.get(..opening.len())?;
        let rest = text.get(opening.len()..)?;
        let apart = !opening.ends_with(char::is_alphabetic) || rest.starts_with(char::is_whitespace);
        (head.eq_ignore_ascii_case(opening) && apart).then(|| rest.trim_start())
    })
}

/// A whole written amount without its unit: a number, a range (`10-20`, `10–20`, `10 to 20`, `-18--5`), `about 20`,
/// `at least 20`, `20 ± 2`.
///
/// # Errors
/// What is wrong with it and what may be written instead.
pub fn parse_amount(text: &str) -> Result<(Interval, Bound), NumeralProblem> {
    let text = text.trim();
    if let Some(rest) = after(text, ABOUT) {
        // `about 10 to 20` is the range: it is wide enough already.
        return Ok(match parse_amount_plain(rest)? {
            (value, Bound::Exact) => (about(value.best), Bound::About),
            bounded => bounded,
        });
    }
    if let Some(rest) = after(text, AT_LEAST) {
        return Ok((at_least(parse_numeral(rest)?), Bound::AtLeast));
    }
    if let Some(rest) = after(text, AT_MOST) {
        return Ok((at_most(parse_numeral(rest)?), Bound::AtMost));
    }
    parse_amount_plain(text)
}

fn parse_amount_plain(text: &str) -> Result<(Interval, Bound), NumeralProblem> {
    for sign in ["±", "+/-", "+-"] {
        if let Some((best, half)) = text.split_once(sign) {
            let (best, half) = (parse_numeral(best)?, parse_numeral(half)?);
            if half < 0.0 {
                return Err(NumeralProblem::new(
                    NumeralProblemKind::OddBounds,
                    text,
                    vec![format!("{best} ± {}", half.abs())],
                ));
            }
            return Ok((Interval::plus_minus(best, half), Bound::PlusMinus));
        }
    }
    let whole = parse_numeral(text);
    if let Ok(value) = whole {
        return Ok((Interval::exact(value), Bound::Exact));
    }
    // `1-1/2` is a doubt, not a range.
    let doubtful = |problem: &NumeralProblem| problem.kind == NumeralProblemKind::HyphenFraction;
    if whole.as_ref().is_err_and(doubtful) {
        return whole.map(|value| (Interval::exact(value), Bound::Exact));
    }
    let Some((low, high)) = range_ends(text) else {
        return whole.map(|value| (Interval::exact(value), Bound::Exact));
    };
    let (from, to) = (parse_numeral(low)?, parse_numeral(high)?);
    if from > to {
        return Err(NumeralProblem::new(
            NumeralProblemKind::OddBounds,
            text,
            vec![format!("{} to {}", high.trim(), low.trim())],
        ));
    }
    Ok((Interval::range(from, to), Bound::Range))
}

/// The two ends around `to`, a dash or the hyphen after the first digit.
fn range_ends(text: &str) -> Option<(&str, &str)> {
    for word in [" to ", "–", "—"] {
        if let Some(ends) = text.split_once(word) {
            return Some(ends);
        }
    }
    let hyphen = text.char_indices().skip(1).find(|&(_, c)| matches!(c, '-' | '‐' | '‑' | '−'))?;
    Some((text.get(..hyphen.0)?, text.get(hyphen.0 + hyphen.1.len_utf8()..)?))
}
