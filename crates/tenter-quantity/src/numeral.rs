//! Numbers as people write them: `60`, `0.5`, `1/4`, `1 1/2`, `1½`, `−18`.
//!
//! What could be read two ways (`2,5`, `1,000`, `1-1/2`, `1e3`) is a problem with a suggested fix, never a guess.

use std::fmt;

/// The greatest magnitude a recipe needs, and the least other than zero.
const GREATEST: f64 = 1e9;
const LEAST: f64 = 1e-9;

/// What is wrong with a number.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum NumeralProblemKind {
    /// Nothing there.
    Empty,
    /// `2,5`
    DecimalComma,
    /// `1,000`
    ThousandsComma,
    /// `1 000`, `1'000`
    ThousandsGap,
    /// `1-1/2`
    HyphenFraction,
    /// `1e3`
    Scientific,
    /// `1/0`
    ZeroDenominator,
    /// `1 1/2` with a decimal point somewhere, `1/2/3`
    OddFraction,
    /// Digits of another script.
    OtherDigits,
    /// Beyond what a recipe can mean.
    TooLarge,
    /// So small that a recipe cannot mean it.
    TooSmall,
    /// A range from more to less, or other misuse of bounds.
    OddBounds,
    /// No number at all.
    Unreadable,
}

/// A number that cannot be read, and what may be written in its place.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct NumeralProblem {
    /// What is wrong.
    pub kind: NumeralProblemKind,
    /// As written.
    pub text: String,
    /// What may be written instead; the likeliest first; empty where nothing is likely.
    pub fixes: Vec<String>,
}

impl NumeralProblem {
    pub(crate) fn new(kind: NumeralProblemKind, text: &str, fixes: Vec<String>) -> Self {
        Self {
            kind,
            text: text.to_owned(),
            fixes,
        }
    }
}

impl fmt::Display for NumeralProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        use NumeralProblemKind as K;
        let text = &self.text;
        match self.kind {
            K::Empty => f.write_str("a number is missing"),
            K::DecimalComma => write!(f, "`{text}` has a comma; a decimal takes a point"),
            K::ThousandsComma => write!(
                f,
                "`{text}` could be thousands or a decimal; numbers are written without a comma"
            ),
            K::ThousandsGap => write!(f, "`{text}` is split; write the digits together"),
            K::HyphenFraction => write!(f, "`{text}` could be a mixed fraction or a range"),
            K::Scientific => write!(f, "`{text}` uses a power of ten; write the number out"),
            K::ZeroDenominator => write!(f, "`{text}` divides by zero"),
            K::OddFraction => write!(f, "`{text}` is no fraction; write one like `1 1/2`"),
            K::OtherDigits => write!(f, "`{text}` has digits of another script"),
            K::TooLarge => write!(f, "`{text}` is more than any recipe can mean"),
            K::TooSmall => write!(f, "`{text}` is less than any recipe can mean"),
            K::OddBounds => write!(f, "`{text}` has bounds that do not fit together"),
            K::Unreadable => write!(f, "`{text}` is no number"),
        }?;
        for (position, fix) in self.fixes.iter().enumerate() {
            let link = if position == 0 { ": write" } else { " or" };
            write!(f, "{link} `{fix}`")?;
        }
        Ok(())
    }
}

impl std::error::Error for NumeralProblem {}

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
fn unsigned(body: &str) -> Option<f64> {
    if let Some((whole, fraction)) = vulgar(body) {
        let whole = whole.trim_end();
        return Some(
            fraction
                + if whole.is_empty() {
                    0.0
                } else {
                    digits(whole)?
                },
        );
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
fn digits(text: &str) -> Option<f64> {
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

/// What a text that is no number was probably meant to be.
fn diagnose(text: &str) -> (NumeralProblemKind, Vec<String>) {
    use NumeralProblemKind as K;
    let plain = |fix: String| parse_numeral(&fix).is_ok().then_some(fix);
    let only = |allowed: &str| {
        text.chars()
            .all(|c| c.is_ascii_digit() || allowed.contains(c))
    };
    if text.len() > 60 {
        return (K::Unreadable, vec![]);
    }
    if text.contains(',') && only(",.-−+") {
        return comma(text);
    }
    if only(" '’_\u{a0}\u{202f}\u{2009}.-−")
        && text
            .chars()
            .any(|c| " '’_\u{a0}\u{202f}\u{2009}".contains(c))
    {
        let together: String = text
            .chars()
            .filter(|c| !" '’_\u{a0}\u{202f}\u{2009}".contains(*c))
            .collect();
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
        return (
            K::HyphenFraction,
            vec![format!("{whole} {fraction}"), range],
        );
    }
    if let Some((mantissa, power)) = text.split_once(['e', 'E'])
        && let (Some(mantissa), Ok(power)) = (parse_or_none(mantissa), power.parse::<i32>())
    {
        return (
            K::Scientific,
            written_out(mantissa, power).into_iter().collect(),
        );
    }
    if text.contains(['/', '⁄']) && only("/⁄ .-−") {
        return (K::OddFraction, vec![]);
    }
    if text
        .chars()
        .any(|c| c.is_numeric() && ascii_digit(c).is_some_and(|_| !c.is_ascii()))
    {
        let ascii: String = text.chars().map(|c| ascii_digit(c).unwrap_or(c)).collect();
        if let Some(fix) = plain(ascii) {
            return (K::OtherDigits, vec![fix]);
        }
    }
    let trailing = text
        .strip_suffix('.')
        .and_then(|fix| plain(fix.to_owned()))
        .into_iter()
        .collect();
    (K::Unreadable, trailing)
}

fn comma(text: &str) -> (NumeralProblemKind, Vec<String>) {
    use NumeralProblemKind as K;
    let without: String = text.chars().filter(|&c| c != ',').collect();
    let pointed = text.replace(',', ".");
    let mut groups = text.split(',');
    let first = groups
        .next()
        .unwrap_or_default()
        .trim_start_matches(['-', '−', '+']);
    // The last group may carry decimals: 1,234.5.
    let rest: Vec<&str> = groups
        .map(|group| group.split('.').next().unwrap_or_default())
        .collect();
    let in_threes = (1..=3).contains(&first.len())
        && first.bytes().all(|byte| byte.is_ascii_digit())
        && !first.starts_with('0')
        && rest.iter().all(|group| group.len() == 3);
    let valid = |fixes: Vec<String>| {
        fixes
            .into_iter()
            .filter(|fix| parse_numeral(fix).is_ok())
            .collect()
    };
    if in_threes {
        let certain = rest.len() > 1 || text.contains('.');
        let fixes = if certain {
            vec![without]
        } else {
            vec![without, pointed]
        };
        return (K::ThousandsComma, valid(fixes));
    }
    if text.matches(',').count() == 1 {
        // 1.234,5: points between thousands, comma before decimals.
        let swapped: String = text
            .chars()
            .filter(|&c| c != '.')
            .map(|c| if c == ',' { '.' } else { c })
            .collect();
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
    (LEAST..=GREATEST)
        .contains(&value)
        .then(|| value.to_string())
}

/// The digits of scripts a keyboard may produce, full width and Arabic among them.
fn ascii_digit(c: char) -> Option<char> {
    const ZEROES: &[char] = &['\u{ff10}', '\u{0660}', '\u{06f0}', '\u{0966}', '\u{09e6}'];
    ZEROES.iter().find_map(|&zero| {
        let offset = u32::from(c).checked_sub(u32::from(zero))?;
        char::from_digit((offset < 10).then_some(offset)?, 10)
    })
}
