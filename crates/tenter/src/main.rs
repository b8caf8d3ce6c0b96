//! The command `tenter`: checks, totals, rehearses and formats textile dye recipes written as `.dye` files.
//!
//! It is a face: it reads files, hands them to the stages and shows what they say. It works nothing out.

mod arguments;
mod bath;
mod check;
mod completions;
mod exit;
mod explain;
mod files;
mod fmt;
mod lsp;
mod man;
mod materials;
mod new;
mod output;
mod recipes;
mod rehearse;
mod totals;

use std::process::ExitCode;

use clap::Parser;
use tenter_account as account;
use tenter_account::{number, text};

use crate::arguments::{Arguments, Verb};
use crate::exit::Outcome;
use crate::output::Output;

fn main() -> ExitCode {
    let arguments = Arguments::parse();
    if matches!(arguments.verb, Verb::Lsp { .. }) {
        return lsp::run();
    }
    let mut output = Output::standard();
    let outcome = run(&arguments, &mut output);
    output.finish(outcome).into()
}

fn run(arguments: &Arguments, output: &mut Output) -> Outcome {
    match &arguments.verb {
        Verb::Check(wanted) => check::run(wanted, output),
        Verb::Explain(wanted) => explain::run(wanted, output),
        Verb::Totals(wanted) => totals::run(wanted, output),
        Verb::Rehearse(wanted) => rehearse::run(wanted, output),
        Verb::Bath(wanted) => bath::run(wanted, output),
        Verb::Fmt(wanted) => fmt::run(wanted, output),
        Verb::Materials(wanted) => materials::run(wanted, output),
        Verb::New(wanted) => new::run(wanted, output),
        Verb::Completions(wanted) => completions::run(wanted, output),
        Verb::Man(wanted) => man::run(wanted, output),
        // Served before there is an output: nothing but its frames may go to standard output.
        Verb::Lsp { .. } => Outcome::Clean,
    }
}
