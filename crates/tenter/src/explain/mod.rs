//! `tenter explain`: the page of a rule, or where every number on a line comes from.

mod rule;

use crate::arguments::Explain;
use crate::exit::Outcome;
use crate::output::Output;

/// Runs the command.
pub fn run(wanted: &Explain, output: &mut Output) -> Outcome {
    rule::run(wanted.what.as_deref(), output)
}
