//! `tenter totals`: what to weigh, pour and pay.

mod json;
mod number;
mod pick;
mod text;

use crate::arguments::{Totals, TotalsFormat};
use crate::exit::Outcome;
use crate::files::collection::Collections;
use crate::files::path::{absolute, shown};
use crate::files::source::SourceFile;
use crate::output::Output;
use crate::totals::pick::{Picked, pick};

/// Runs the command.
pub fn run(wanted: &Totals, output: &mut Output) -> Outcome {
    let scale = match wanted.pieces {
        None => tenter_resolve::Scale::AsWritten,
        Some(pieces) if pieces.is_finite() && pieces > 0.0 && pieces <= 1e6 => tenter_resolve::Scale::Pieces(pieces),
        Some(pieces) => {
            output.tell(&format!("--pieces {pieces}: give a number above zero and not above a million"));
            return Outcome::Failed;
        }
    };
    let stdin = wanted.stdin_filename.is_some() || wanted.file.as_os_str() == "-";
    let path = wanted.stdin_filename.as_ref().unwrap_or(&wanted.file);
    let name = if path.as_os_str() == "-" { "<stdin>".to_owned() } else { shown(path) };
    let read = if stdin { SourceFile::standard_input(name.clone()) } else { SourceFile::read(path, name.clone()) };
    let file = match read {
        Ok(file) => file,
        Err(error) => {
            output.trouble(&name, &error.to_string());
            return Outcome::Failed;
        }
    };
    if let Some(trouble) = file.encoding_trouble() {
        output.trouble(&name, &trouble);
    }
    let (collection, inside) = Collections::new(&[]).of(&absolute(path));
    let sheets = tenter_resolve::sheets(&file.document, &inside, &*collection);
    let all: Vec<Picked<'_>> = pick(&sheets, scale);
    let picked: Vec<Picked<'_>> = match &wanted.recipe {
        None => all,
        Some(recipe) => {
            let known: Vec<String> = all.iter().map(Picked::title).collect();
            let chosen: Vec<Picked<'_>> = all.into_iter().filter(|entry| entry.is(recipe)).collect();
            if chosen.is_empty() {
                let names = if known.is_empty() { "there is none".to_owned() } else { known.join(", ") };
                output.trouble(&name, &format!("no recipe or variant is named {recipe}; known: {names}"));
                return Outcome::Failed;
            }
            chosen
        }
    };
    if picked.is_empty() {
        output.trouble(&name, "there is no recipe in this file, only definitions for others");
    }
    match wanted.format {
        TotalsFormat::Text => text::show(&picked, &file, output),
        TotalsFormat::Json => json::show(&picked, &file, output),
    }
    open_amounts(&picked, &name, output)
}

/// Says when what could not be read leaves gaps in the sums.
fn open_amounts(picked: &[Picked<'_>], name: &str, output: &mut Output) -> Outcome {
    let errors = picked.iter().map(Picked::errors).max().unwrap_or(0);
    if errors == 0 {
        return Outcome::Clean;
    }
    let (things, leave) = if errors == 1 { ("thing", "leaves") } else { ("things", "leave") };
    output.tell(&format!(
        "{errors} {things} in this recipe could not be read and {leave} the totals open: tenter check {name}"
    ));
    Outcome::Findings
}
