//! A recipe spoiled in one way, and the ways to spoil one.

use crate::good::Good;

/// A good recipe with one change.
#[derive(Clone, Debug)]
pub struct Mutant {
    /// The whole text after it.
    pub text: String,
    /// The lines it touches, from 1, as they stand in the new text. A line taken out is stood for by those beside it.
    pub lines: Vec<usize>,
    /// What was changed, for the list of survivors.
    pub change: String,
}

/// One way to spoil a recipe, applied wherever it fits.
#[derive(Clone, Copy, Debug)]
pub struct Operator {
    /// Its name.
    pub name: &'static str,
    /// What it changes, and when that does harm.
    pub what: &'static str,
    /// Rules that speak of the harm it does, wherever in the recipe they tell it. Any other finding counts only on a
    /// line changed, or where it names one as a source of its numbers.
    pub answers: &'static [&'static str],
    /// The mutants of a recipe; none where it does not fit.
    pub make: fn(&Good) -> Vec<Mutant>,
    /// Whether the piece is spoiled or somebody may be hurt: the recipe before and after.
    pub harms: fn(&Good, &Good) -> bool,
}
