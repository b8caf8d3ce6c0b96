//! `tenter explain`: the page of a rule, or where every number on a line comes from.

mod figures;
mod line;
mod ph;
mod rule;
mod step;

use std::path::PathBuf;

use crate::arguments::Explain;
use crate::exit::Outcome;
use crate::output::Output;

/// Runs the command.
pub fn run(wanted: &Explain, output: &mut Output) -> Outcome {
    match wanted.what.as_deref().and_then(file_and_line) {
        Some((file, line)) => line::run(&file, line, wanted, output),
        None => rule::run(wanted.what.as_deref(), output),
    }
}

/// `recipe.dye:31`
fn file_and_line(what: &str) -> Option<(PathBuf, u32)> {
    let (file, line) = what.rsplit_once(':')?;
    let line = line.parse().ok().filter(|line| *line > 0)?;
    (!file.is_empty()).then(|| (PathBuf::from(file), line))
}
