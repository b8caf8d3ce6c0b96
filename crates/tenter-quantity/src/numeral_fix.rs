//! What a text that is no number was probably meant to be.

use crate::numeral::{GREATEST, LEAST, digits, parse_numeral, unsigned};
use crate::numeral_problem::NumeralProblemKind;

/// What a text that is no number was probably meant to be.
pub(crate) fn diagnose(text: &str) -> (NumeralProblemKind, Vec<String>) {
    use NumeralProblemKind as K;
    let plain = |fix: String| parse_numeral(&fix).is_ok().then_some(fix);
    let only = |allowed: &str| text.chars().all(|c| c.is_ascii_digit() || allowed.contains(c));
    if text.len() > 60 {
        return (K::Unreadable, vec![]);
    }
    if text.contains(',') && only(",.-−+") {
        return comma(text);
    }
    if only(" '’_\u{a0}\u{202f}\u{2009}.-−") && text.chars().any(|c| " '’_\u{a0}\u{202f}\u{2009}".contains(c)) {
        let together: String = text.chars().filter(|c| !" '’_\u{a0}\u{202f}\u{2009}".contains(*c)).collect();
        return (K::ThousandsGap, plain(together).into_iter().collect());
    }
    if let Some((whole, fraction)) = text.split_once(['-', '–', '‐', '‑'])
        && fraction.contains(['/', '⁄'])
        && digits(whole.trim()).is_some()
        && parse_or_none(fraction).is_some()
    {
        let (whole, fraction) = (whole.trim(), fraction.trim());
        let range = match (parse_or_none(whole), parse_or_none(fraction)) {
            (Some(a), Some(b)) if b < a => format!("{fraction} to {whole}"),
            _ => format!("{whole} to {fraction}"),
        };
        return (K::HyphenFraction, vec![format!("{whole} {fraction}"), range]);
    }
    if let Some((mantissa, power)) = text.split_once(['e', 'E'])
        && let (Some(mantissa), Ok(power)) = (parse_or_none(mantissa), power.parse::<i32>())
    {
        return (K::Scientific, written_out(mantissa, power).into_iter().collect());
    }
    if text.contains(['/', '⁄']) && only("/⁄ .-−") {
        return (K::OddFraction, vec![]);
    }
    if text.chars().any(|c| c.is_numeric() && ascii_digit(c).is_some_and(|_| !c.is_ascii())) {
        let ascii: String = text.chars().map(|c| ascii_digit(c).unwrap_or(c)).collect();
        if let Some(fix) = plain(ascii) {
            return (K::OtherDigits, vec![fix]);
        }
    }
    let trailing = text.strip_suffix('.').and_then(|fix| plain(fix.to_owned())).into_iter().collect();
    (K::Unreadable, trailing)
}

fn comma(text: &str) -> (NumeralProblemKind, Vec<String>) {
    use NumeralProblemKind as K;
    let without: String = text.chars().filter(|&c| c != ',').collect();
    let pointed = text.replace(',', ".");
    let mut groups = text.split(',');
    let first = groups.next().unwrap_or_default().trim_start_matches(['-', '−', '+']);
    // The last group may carry decimals: 1,234.5.
    let rest: Vec<&str> = groups.map(|group| group.split('.').next().unwrap_or_default()).collect();
    let in_threes = (1..=3).contains(&first.len())
        && first.bytes().all(|byte| byte.is_ascii_digit())
        && !first.starts_with('0')
        && rest.iter().all(|group| group.len() == 3);
    let valid = |fixes: Vec<String>| fixes.into_iter().filter(|fix| parse_numeral(fix).is_ok()).collect();
    if in_threes {
        let certain = rest.len() > 1 || text.contains('.');
        let fixes = if certain { vec![without] } else { vec![without, pointed] };
        return (K::ThousandsComma, valid(fixes));
    }
    if text.matches(',').count() == 1 {
        // 1.234,5: points between thousands, comma before decimals.
        let swapped: String = text.chars().filter(|&c| c != '.').map(|c| if c == ',' { '.' } else { c }).collect();
        return (K::DecimalComma, valid(vec![swapped]));
    }
    (K::Unreadable, vec![])
}

fn parse_or_none(text: &str) -> Option<f64> {
    unsigned(text.trim())
}

/// A number and its power of ten with all its digits, where a recipe could mean it.
fn written_out(mantissa: f64, power: i32) -> Option<String> {
    if !(-9..=9).contains(&power) {
        return None;
    }
    let value: f64 = format!("{mantissa}e{power}").parse().ok()?;
    (LEAST..=GREATEST).contains(&value).then(|| value.to_string())
}

/// The digits of scripts a keyboard may produce, full width and Arabic among them.
fn ascii_digit(c: char) -> Option<char> {
    const ZEROES: &[char] = &['\u{ff10}', '\u{0660}', '\u{06f0}', '\u{0966}', '\u{09e6}'];
    ZEROES.iter().find_map(|&zero| {
        let offset = u32::from(c).checked_sub(u32::from(zero))?;
        char::from_digit((offset < 10).then_some(offset)?, 10)
    })
}
