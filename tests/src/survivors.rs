//! Mutants nobody catches, and why.

/// Why mutants of an operator survive in some recipe, or in all.
pub struct Survivor {
    /// The operator.
    pub operator: &'static str,
    /// The file, or `*`.
    pub file: &'static str,
    /// Words of the change, or empty for every change of the operator there.
    pub change: &'static str,
    /// Why no finding is made of it.
    pub why: &'static str,
}

/// The explanations.
pub const SURVIVORS: &[Survivor] = &[];

/// The explanation of a survivor.
pub fn explained(operator: &str, file: &str, change: &str) -> Option<&'static str> {
    SURVIVORS
        .iter()
        .find(|each| {
            each.operator == operator && (each.file == "*" || each.file == file) && change.contains(each.change)
        })
        .map(|each| each.why)
}
