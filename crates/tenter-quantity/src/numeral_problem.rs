//! What can be wrong with a written number.

use std::fmt;

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
        Self { kind, text: text.to_owned(), fixes }
    }
}

impl fmt::Display for NumeralProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        use NumeralProblemKind as K;
        let text = &self.text;
        match self.kind {
            K::Empty => f.write_str("a number is missing"),
            K::DecimalComma => write!(f, "`{text}` has a comma; a decimal takes a point"),
            K::ThousandsComma => {
                write!(f, "`{text}` could be thousands or a decimal; numbers are written without a comma")
            }
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
