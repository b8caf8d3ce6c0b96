//! `tenter check`: what the rule book finds.

mod github;
mod json;
mod locate;
mod one;
mod report;
mod text;
mod window;

use std::path::PathBuf;

use rayon::prelude::*;

use crate::arguments::{Check, CheckFormat, LevelWanted};
use crate::check::one::{Input, Result, check_one};
use crate::exit::Outcome;
use crate::files::collection::Collections;
use crate::files::path::shown;
use crate::files::walk::{Found, find};
use crate::output::Output;
use crate::text::count::counted;

/// Runs the command.
pub fn run(wanted: &Check, output: &mut Output) -> Outcome {
    let dash = wanted.paths.iter().any(|path| path.as_os_str() == "-");
    let stdin = dash || wanted.stdin_filename.is_some();
    if stdin && wanted.paths.iter().any(|path| path.as_os_str() != "-") {
        output.tell("standard input is checked alone: give no other path beside - or --stdin-filename");
        return Outcome::Failed;
    }
    let here = [PathBuf::from(".")];
    let (found, collections, input) = if stdin {
        let path = wanted.stdin_filename.clone().unwrap_or_else(|| PathBuf::from("-"));
        let name = wanted.stdin_filename.as_deref().map_or_else(|| "<stdin>".to_owned(), shown);
        (Found { files: vec![(name, path)], troubles: Vec::new() }, Collections::default(), Input::Standard)
    } else {
        let paths = if wanted.paths.is_empty() { &here[..] } else { &wanted.paths };
        (find(paths), Collections::new(paths), Input::Disk)
    };
    let detail = if wanted.format == CheckFormat::Text { text::Style::of(output) } else { text::Style::None };
    let results: Vec<Result> =
        found.files.par_iter().map(|(name, path)| check_one(name, path, input, &collections, wanted, detail)).collect();
    match wanted.format {
        CheckFormat::Text => results.iter().flat_map(|result| &result.shown).for_each(|text| output.raw(text)),
        CheckFormat::Json => json::show(&results, output),
        CheckFormat::Github => github::show(&results, output),
    }
    let mut failed = false;
    for (name, what) in found.troubles.iter().chain(results.iter().flat_map(|result| &result.troubles)) {
        output.trouble(name, what);
        failed = true;
    }
    for result in &results {
        if let Some(what) = &result.warning {
            output.trouble(&result.name, what);
        }
    }
    let tally = Tally::of(&results);
    output.tell(&tally.told(found.files.len()));
    if failed { Outcome::Failed } else { tally.outcome(wanted) }
}

/// What was found in all, whether shown or not.
#[derive(Default)]
struct Tally {
    errors: usize,
    warnings: usize,
    advice: usize,
    accepted: usize,
    files: usize,
}

impl Tally {
    fn of(results: &[Result]) -> Self {
        let mut tally = Self::default();
        for result in results {
            tally.errors += result.counts.errors;
            tally.warnings += result.counts.warnings;
            tally.advice += result.counts.advice;
            tally.accepted += result.counts.accepted;
            let any = result.counts.errors + result.counts.warnings + result.counts.advice > 0;
            tally.files += usize::from(any);
        }
        tally
    }

    fn told(&self, files: usize) -> String {
        if files == 0 {
            return "no .dye files found".to_owned();
        }
        let accepted = if self.accepted > 0 { format!(" ({} accepted)", self.accepted) } else { String::new() };
        let parts: Vec<String> = [
            (self.errors, "error", "errors"),
            (self.warnings, "warning", "warnings"),
            (self.advice, "piece of advice", "pieces of advice"),
        ]
        .iter()
        .filter(|(count, _, _)| *count > 0)
        .map(|(count, one, many)| counted(*count, one, many))
        .collect();
        let all = counted(files, "file", "files");
        if parts.is_empty() {
            format!("nothing to say about {all}{accepted}")
        } else {
            format!("{} in {} of {all}{accepted}", parts.join(", "), self.files)
        }
    }

    fn outcome(&self, wanted: &Check) -> Outcome {
        let too_many = wanted.max_warnings.is_some_and(|most| self.warnings > most);
        if (self.errors > 0 || too_many) && !wanted.exit_zero { Outcome::Findings } else { Outcome::Clean }
    }
}

impl LevelWanted {
    /// Whether findings of this level are shown.
    pub fn shows(self, level: tenter_rules::Level) -> bool {
        let least = match self {
            Self::Error => tenter_rules::Level::Error,
            Self::Warning => tenter_rules::Level::Warning,
            Self::Advice => tenter_rules::Level::Advice,
        };
        level <= least
    }
}
