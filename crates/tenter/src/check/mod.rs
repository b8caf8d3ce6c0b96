//! `tenter check`: what the rule book finds.

mod config;
mod configs;
mod fingerprint;
mod fix;
mod fixing;
mod github;
mod json;
mod locate;
mod one;
mod own;
mod report;
mod sarif;
mod text;
mod window;

use std::path::PathBuf;

use rayon::prelude::*;

use crate::arguments::{Check, CheckFormat, LevelWanted};
use crate::check::configs::Configs;
use crate::check::fixing::{Done, fix_all};
use crate::check::one::{Input, Result, Run, check_one};
use crate::exit::Outcome;
use crate::files::collection::Collections;
use crate::files::path::shown;
use crate::files::source::SourceFile;
use crate::files::walk::{Found, find};
use crate::output::Output;
use crate::recipes::open::scale_to;
use crate::text::count::counted;

/// Runs the command.
pub fn run(wanted: &Check, output: &mut Output) -> Outcome {
    let dash = wanted.paths.iter().any(|path| path.as_os_str() == "-");
    let stdin = dash || wanted.stdin_filename.is_some();
    if let Some(what) = contradiction(wanted, stdin) {
        output.tell(what);
        return Outcome::Failed;
    }
    let Some(scale) = scale_to(wanted.pieces, output) else { return Outcome::Failed };
    let here = [PathBuf::from(".")];
    let paths = if wanted.paths.is_empty() { &here[..] } else { &wanted.paths };
    let mut given = None;
    let mut found = if stdin {
        let path = wanted.stdin_filename.clone().unwrap_or_else(|| PathBuf::from("-"));
        let name = wanted.stdin_filename.as_deref().map_or_else(|| "<stdin>".to_owned(), shown);
        match SourceFile::standard_input(name.clone()) {
            Ok(file) => given = Some(file),
            Err(error) => {
                output.trouble(&name, &error.to_string());
                return Outcome::Failed;
            }
        }
        Found { files: vec![(name, path)], troubles: Vec::new() }
    } else {
        find(paths)
    };
    let text = wanted.format == CheckFormat::Text && !(given.is_some() && wanted.fix);
    let style = if text { text::Style::of(output) } else { text::Style::None };
    let configs = Configs::new(wanted);
    // Made anew once files were changed: what was read before is old then.
    let collections = || if stdin { Collections::default() } else { Collections::new(paths) };
    if wanted.fix || wanted.diff {
        let run = Run { wanted, collections: &collections(), configs: &configs, scale, style };
        match fix_all(&found.files, given.as_ref(), run, output) {
            Done::Shown(outcome) => return own::troubles(&configs, &found, output).max(outcome),
            Done::Made { text, troubles } => {
                given = text.or(given);
                found.troubles.extend(troubles);
            }
        }
    }
    let collections = collections();
    let run = Run { wanted, collections: &collections, configs: &configs, scale, style };
    let input = given.as_ref().map_or(Input::Disk, Input::Given);
    let mut results: Vec<Result> =
        found.files.par_iter().map(|(name, path)| check_one(name, path, input, run)).collect();
    results.extend(own::results(&results, run));
    results.sort_by(|a, b| a.name.cmp(&b.name));
    let troubles: Vec<(String, String)> =
        found.troubles.iter().chain(results.iter().flat_map(|result| &result.troubles)).cloned().collect();
    match wanted.format {
        CheckFormat::Text if given.is_some() && wanted.fix => told_aside(&results, output),
        CheckFormat::Text => results.iter().flat_map(|result| &result.shown).for_each(|text| output.raw(text)),
        CheckFormat::Json => json::show(&results, output),
        CheckFormat::Github => github::show(&results, output),
        CheckFormat::Sarif => sarif::show(&results, &troubles, output),
    }
    for (name, what) in &troubles {
        output.trouble(name, what);
    }
    for result in &results {
        if let Some(what) = &result.warning {
            output.trouble(&result.name, what);
        }
    }
    let tally = Tally::of(&results);
    output.tell(&tally.told(if found.files.is_empty() { 0 } else { results.len() }));
    if troubles.is_empty() { tally.outcome(wanted) } else { Outcome::Failed }
}

/// What cannot be wanted together.
fn contradiction(wanted: &Check, stdin: bool) -> Option<&'static str> {
    if stdin && wanted.paths.iter().any(|path| path.as_os_str() != "-") {
        Some("standard input is checked alone: give no other path beside - or --stdin-filename")
    } else if wanted.suggested && !wanted.fix && !wanted.diff {
        Some("--suggested goes with --fix or --diff")
    } else if stdin && wanted.fix && !wanted.diff && wanted.format != CheckFormat::Text {
        Some("with --fix standard input comes back on standard output: give no --format")
    } else {
        None
    }
}

/// Where standard output holds a text, the findings go beside it.
fn told_aside(results: &[Result], output: &mut Output) {
    for report in results.iter().flat_map(|result| &result.reports) {
        output.tell(&text::plain_line(report));
    }
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
