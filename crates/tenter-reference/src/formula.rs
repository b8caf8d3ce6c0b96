//! Chemical formulas: read, counted and weighed.
//!
//! Standard atomic weights: IUPAC Commission on Isotopic Abundances and Atomic Weights, abridged values, as in Prohaska et al.,
//! Pure Appl. Chem. 2022, 94, 573–600 ("Standard atomic weights of the elements 2021"). Elements with an interval
//! take its conventional value.

use std::collections::BTreeMap;
use std::fmt;

/// Abridged standard atomic weights 2021, for the elements the data needs.
pub const ATOMIC_WEIGHTS: [(&str, f64); 22] = [
    ("Al", 26.982),
    ("B", 10.81),
    ("C", 12.011),
    ("Ca", 40.078),
    ("Cl", 35.45),
    ("Co", 58.933),
    ("Cr", 51.996),
    ("Cu", 63.546),
    ("F", 18.998),
    ("Fe", 55.845),
    ("H", 1.008),
    ("K", 39.098),
    ("Mg", 24.305),
    ("Mn", 54.938),
    ("N", 14.007),
    ("Na", 22.990),
    ("O", 15.999),
    ("P", 30.974),
    ("S", 32.06),
    ("Si", 28.085),
    ("Sn", 118.71),
    ("Zn", 65.38),
];

/// Counts of the elements in a formula.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Formula {
    counts: BTreeMap<String, u32>,
}

/// Why a formula could not be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum FormulaError {
    /// A character that has no place in a formula.
    Unexpected(char),
    /// A bracket without its partner.
    Bracket,
    /// A symbol that is not in the table of atomic weights.
    Element(String),
    /// A count that is nought or too large.
    Count,
}

impl fmt::Display for FormulaError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Unexpected(c) => write!(f, "{c:?} has no place in a formula"),
            Self::Bracket => f.write_str("a bracket has no partner"),
            Self::Element(symbol) => write!(f, "no atomic weight for {symbol:?}"),
            Self::Count => f.write_str("a count is nought or too large"),
        }
    }
}

impl std::error::Error for FormulaError {}

impl Formula {
    /// Reads formulas such as `Na2CO3`, `KAl(SO4)2·12H2O`. Parts are joined by `·` and may open with a count.
    ///
    /// # Errors
    /// If a character, bracket, element or count makes no sense.
    pub fn parse(text: &str) -> Result<Self, FormulaError> {
        let mut total = Self::default();
        for part in text.split('·') {
            let digits = part.bytes().take_while(u8::is_ascii_digit).count();
            let (count, rest) = part.split_at_checked(digits).unwrap_or(("", part));
            total.add(&parse_part(rest)?, parse_count(count)?)?;
        }
        Ok(total)
    }

    /// Atoms of an element.
    pub fn count(&self, element: &str) -> u32 {
        self.counts.get(element).copied().unwrap_or(0)
    }

    /// Elements and their counts, by symbol.
    pub fn elements(&self) -> impl Iterator<Item = (&str, u32)> {
        self.counts.iter().map(|(symbol, count)| (symbol.as_str(), *count))
    }

    /// Molar mass, g/mol.
    ///
    /// # Errors
    /// If an element is not in the table.
    pub fn molar_mass(&self) -> Result<f64, FormulaError> {
        let mut sum = 0.0;
        for (symbol, count) in &self.counts {
            let weight = ATOMIC_WEIGHTS.iter().find(|(known, _)| known == symbol).map(|(_, weight)| *weight);
            sum += weight.ok_or_else(|| FormulaError::Element(symbol.clone()))? * f64::from(*count);
        }
        Ok(sum)
    }

    fn add(&mut self, other: &Self, times: u32) -> Result<(), FormulaError> {
        for (symbol, count) in &other.counts {
            let slot = self.counts.entry(symbol.clone()).or_default();
            *slot = count.checked_mul(times).and_then(|n| slot.checked_add(n)).ok_or(FormulaError::Count)?;
        }
        Ok(())
    }
}

fn parse_count(digits: &str) -> Result<u32, FormulaError> {
    if digits.is_empty() {
        return Ok(1);
    }
    digits.parse().ok().filter(|n| *n > 0).ok_or(FormulaError::Count)
}

fn parse_part(text: &str) -> Result<Formula, FormulaError> {
    let mut stack = vec![Formula::default()];
    let mut characters = text.chars().peekable();
    while let Some(character) = characters.next() {
        let piece = match character {
            '(' | '[' => {
                stack.push(Formula::default());
                continue;
            }
            ')' | ']' if stack.len() > 1 => stack.pop().unwrap_or_default(),
            ')' | ']' => return Err(FormulaError::Bracket),
            c if c.is_ascii_uppercase() => {
                let mut symbol = String::from(c);
                while let Some(lower) = characters.next_if(char::is_ascii_lowercase) {
                    symbol.push(lower);
                }
                Formula { counts: BTreeMap::from([(symbol, 1)]) }
            }
            c => return Err(FormulaError::Unexpected(c)),
        };
        let mut digits = String::new();
        while let Some(digit) = characters.next_if(char::is_ascii_digit) {
            digits.push(digit);
        }
        let count = parse_count(&digits)?;
        stack.last_mut().ok_or(FormulaError::Bracket)?.add(&piece, count)?;
    }
    match (stack.pop(), stack.is_empty()) {
        (Some(formula), true) => Ok(formula),
        _ => Err(FormulaError::Bracket),
    }
}
