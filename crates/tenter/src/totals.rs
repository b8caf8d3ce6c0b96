//! `tenter totals`: what to weigh, pour and pay.

use tenter_account::totals::{json, text};

use crate::arguments::{Form, Totals};
use crate::exit::Outcome;
use crate::output::Output;
use crate::recipes::open::{gaps, open, scale};

/// Runs the command.
pub fn run(wanted: &Totals, output: &mut Output) -> Outcome {
    let of = &wanted.of;
    let Some(scale) = scale(of, output) else { return Outcome::Failed };
    let Some(opened) = open(&of.file, of.stdin_filename.as_deref(), output) else { return Outcome::Failed };
    let Some(picked) = opened.picked(of.recipe.as_deref(), scale, output) else { return Outcome::Failed };
    match wanted.format {
        Form::Text => output.raw(&text::text(&picked, &opened.file)),
        Form::Json => output.json(&json::json(&picked, &opened.file)),
    }
    gaps(&picked, &opened.name, "the totals", output)
}
