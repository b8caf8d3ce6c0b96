//! `tenter totals --format diff`: what git is to compare in place of a recipe's bytes: its text, then what it comes to.
//!
//! Git gives up a whole comparison when this fails, so whatever is in a file, there is something to show and all is well.

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::Path;

use tenter_account::totals::diff::text;
use tenter_resolve::Scale;

use crate::arguments::Chosen;
use crate::exit::Outcome;
use crate::files::collection::Collections;
use crate::files::path::{absolute, shown};
use crate::files::source::SourceFile;
use crate::files::written_out::home;
use crate::output::Output;
use crate::recipes::pick::{Picked, pick};

/// Shows the file and its totals.
pub fn run(of: &Chosen, scale: Scale, output: &mut Output) -> Outcome {
    let stdin = of.stdin_filename.is_some() || of.file.as_os_str() == "-";
    let path = of.stdin_filename.as_deref().unwrap_or(&of.file);
    let read = if stdin { SourceFile::standard_input(shown(path)) } else { SourceFile::read(path, shown(path)) };
    let file = match read {
        Ok(file) => file,
        Err(error) => {
            output.print(&format!("This file could not be read: {error}\n"));
            return Outcome::Clean;
        }
    };
    // A working file may end its lines otherwise than what git keeps of it; that is no change.
    let lines = file.text.replace("\r\n", "\n");
    output.print(&lines);
    output.raw(if lines.is_empty() || lines.ends_with('\n') { "\n" } else { "\n\n" });
    let totals = catch_unwind(AssertUnwindSafe(|| totals(&file, path, of.recipe.as_deref(), scale)));
    output.raw(totals.as_deref().unwrap_or("The totals could not be worked out.\n"));
    Outcome::Clean
}

fn totals(file: &SourceFile, path: &Path, recipe: Option<&str>, scale: Scale) -> String {
    let uses = file.document.blocks.iter().any(|block| block.block.kind == tenter_syntax::BlockKind::Use);
    // Only what takes something from its neighbours needs to be put back among them.
    let home = if uses { home(path) } else { absolute(path) };
    let (collection, inside) = Collections::new(&[]).of(&home);
    let sheets = tenter_resolve::sheets(&file.document, &inside, &*collection);
    let wanted = |picked: &Picked<'_>| recipe.is_none_or(|recipe| picked.is(recipe));
    let picked: Vec<Picked<'_>> = pick(&sheets, scale).into_iter().filter(wanted).collect();
    if picked.is_empty() { "There is no recipe to total in this file.\n".to_owned() } else { text(&picked, file) }
}
