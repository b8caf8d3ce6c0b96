//! `tenter rehearse`: the recipe carried out on paper, step by step.

use tenter_account::rehearsal::{json, text};
use tenter_rehearse::rehearse;

use crate::arguments::{Form, Rehearse};
use crate::exit::Outcome;
use crate::output::Output;
use crate::recipes::open::{gaps, open, scale};

/// Runs the command.
pub fn run(wanted: &Rehearse, output: &mut Output) -> Outcome {
    let of = &wanted.of;
    let Some(scale) = scale(of, output) else { return Outcome::Failed };
    let Some(opened) = open(&of.file, of.stdin_filename.as_deref(), output) else { return Outcome::Failed };
    let Some(picked) = opened.picked(of.recipe.as_deref(), scale, output) else { return Outcome::Failed };
    let accounts: Vec<_> = picked.iter().map(|picked| (picked, rehearse(&picked.recipe))).collect();
    match wanted.format {
        Form::Text => output.raw(&text::text(&accounts, &opened.file)),
        Form::Json => output.json(&json::json(&accounts, &opened.file)),
    }
    gaps(&picked, &opened.name, "the rehearsal", output)
}
