//! `tenter completions`: a script that lets a shell complete verbs, options and the names of rules.

use clap::CommandFactory;
use clap::builder::PossibleValuesParser;

use crate::arguments::{Arguments, Completions};
use crate::exit::Outcome;
use crate::output::Output;

/// Runs the command.
pub fn run(wanted: &Completions, output: &mut Output) -> Outcome {
    // Only here are the rules the values that are possible: when run, it also takes FILE:LINE, and helps with a slip.
    let rules: Vec<&str> = tenter_rules::RULES.iter().map(|rule| rule.name).collect();
    let mut command = Arguments::command().mut_subcommand("explain", |explain| {
        explain.mut_arg("what", |what| what.value_parser(PossibleValuesParser::new(rules)))
    });
    let mut script = Vec::new();
    clap_complete::generate(wanted.shell, &mut command, "tenter", &mut script);
    output.raw(&String::from_utf8_lossy(&script));
    Outcome::Clean
}
