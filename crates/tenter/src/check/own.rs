//! What is to be told of the configurations themselves.

use std::collections::BTreeSet;
use std::path::PathBuf;

use tenter_rules::rule;

use crate::arguments::CheckFormat;
use crate::check::configs::Configs;
use crate::check::one::{Counts, Result, Run};
use crate::check::report::Report;
use crate::check::text::{Style, render};
use crate::check::{config::Config, fingerprint};
use crate::exit::Outcome;
use crate::files::walk::Found;
use crate::output::Output;

/// One result for each configuration there is something to tell of. `files` are those of the recipes.
pub fn results(files: &[Result], run: Run<'_>) -> Vec<Result> {
    let met: BTreeSet<&(PathBuf, &str)> = files.iter().flat_map(|result| &result.accepted_by_collection).collect();
    let sound = files.iter().all(|file| file.troubles.is_empty());
    let mut results = Vec::new();
    for (root, config) in run.configs.met() {
        let mut reports = config.reports.clone();
        // Only who has seen the whole collection can say that nothing in it is accepted.
        if let Some(root) = root.filter(|root| sound && run.collections.whole(root)) {
            let used = |name: &'static str| met.contains(&(root.clone(), name));
            let unused = config.accepts.keys().filter(|name| !used(name)).filter_map(|name| unused(&config, name));
            reports.extend(unused);
        }
        reports.sort_by_key(|report| (report.at.bytes, report.rule));
        if !reports.is_empty() || !config.troubles.is_empty() {
            results.push(result(&config, reports, run));
        }
    }
    results
}

/// Tells what keeps configurations from being followed, and what could not be looked through.
pub fn troubles(configs: &Configs, found: &Found, output: &mut Output) -> Outcome {
    let configs = configs.met();
    let mut outcome = Outcome::Clean;
    for (name, what) in found.troubles.iter().chain(configs.iter().flat_map(|(_, config)| &config.troubles)) {
        output.trouble(name, what);
        outcome = Outcome::Failed;
    }
    outcome
}

fn result(config: &Config, reports: Vec<Report>, run: Run<'_>) -> Result {
    let mut result = Result { troubles: config.troubles.clone(), ..Result::default() };
    let mut counts = Counts::default();
    reports.iter().for_each(|report| counts.add(report.level));
    result.counts = counts;
    result.reports = reports;
    result.reports.retain(|report| run.wanted.level.shows(report.level));
    if let Some(file) = &config.file {
        result.name.clone_from(&file.name);
        if run.wanted.format == CheckFormat::Sarif {
            fingerprint::mark(&mut result.reports, file);
        }
        if run.style != Style::None {
            result.shown = result.reports.iter().map(|report| render(report, file, run.style)).collect();
        }
    }
    result
}

fn unused(config: &Config, name: &str) -> Option<Report> {
    let rule = rule("unused-accept")?;
    Some(Report {
        rule: rule.name,
        level: rule.level,
        at: config.accepts.get(name)?.clone(),
        message: format!("`{name}` finds nothing in this collection, so there is nothing to accept"),
        help: "Take the line away, so that it does not hide the next mistake.".to_owned(),
        notes: Vec::new(),
        fixes: Vec::new(),
        accepted: None,
        reason: None,
        fingerprint: String::new(),
    })
}
