//! `tenter totals`: what to weigh, pour and pay.

mod diff;

use tenter_account::totals::{json, text};

use crate::arguments::{Totals, TotalsForm};
use crate::exit::Outcome;
use crate::output::Output;
use crate::recipes::open::{gaps, open, scale};

/// Runs the command.
pub fn run(wanted: &Totals, output: &mut Output) -> Outcome {
    let of = &wanted.of;
    let Some(scale) = scale(of, output) else { return Outcome::Failed };
    if wanted.format == TotalsForm::Diff {
        return diff::run(of, scale, output);
    }
    let Some(opened) = open(&of.file, of.stdin_filename.as_deref(), output) else { return Outcome::Failed };
    let Some(picked) = opened.picked(of.recipe.as_deref(), scale, output) else { return Outcome::Failed };
    match wanted.format {
        TotalsForm::Text | TotalsForm::Diff => output.raw(&text::text(&picked, &opened.file)),
        TotalsForm::Json => output.json(&json::json(&picked, &opened.file)),
    }
    gaps(&picked, &opened.name, "the totals", output)
}
