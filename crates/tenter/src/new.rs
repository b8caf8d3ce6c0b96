//! `tenter new`: a first recipe to start from.

use std::io::ErrorKind;

use crate::arguments::New;
use crate::exit::Outcome;
use crate::files::atomic::create;
use crate::files::path::shown;
use crate::output::Output;

/// The recipe that is written.
const STARTER: &str = include_str!("starter.dye");

/// Runs the command.
pub fn run(wanted: &New, output: &mut Output) -> Outcome {
    let name = shown(&wanted.file);
    if wanted.file.as_os_str() == "-" {
        output.raw(STARTER);
        return Outcome::Clean;
    }
    if wanted.file.extension().is_none_or(|ending| ending != "dye") {
        output.trouble(&name, "the name of a recipe file ends in .dye");
        return Outcome::Failed;
    }
    match create(&wanted.file, STARTER) {
        Ok(()) => {
            output.print(&format!("{name}\n"));
            output.tell(&format!("written; now: tenter check {name}, then tenter totals {name}"));
            Outcome::Clean
        }
        Err(error) if error.kind() == ErrorKind::AlreadyExists => {
            output.trouble(&name, "there is something by that name already; it is left alone");
            Outcome::Failed
        }
        Err(error) => {
            output.trouble(&name, &error.to_string());
            Outcome::Failed
        }
    }
}
