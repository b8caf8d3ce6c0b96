//! One file checked.

use std::collections::BTreeSet;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::{Path, PathBuf};

use tenter_rules::{Checked, Level, Scale, Told, Verdict, check_document};

use crate::arguments::{Check, CheckFormat};
use crate::check::configs::Configs;
use crate::check::fingerprint;
use crate::check::locate::Locator;
use crate::check::report::Report;
use crate::check::text::{Style, render};
use crate::files::collection::Collections;
use crate::files::source::SourceFile;

/// Where the text comes from.
#[derive(Clone, Copy, Debug)]
pub enum Input<'a> {
    /// The file itself.
    Disk,
    /// It was read already.
    Given(&'a SourceFile),
}

/// What holds for all files of a run.
#[derive(Clone, Copy)]
pub struct Run<'a> {
    /// What is wanted.
    pub wanted: &'a Check,
    /// Where other files come from.
    pub collections: &'a Collections,
    /// What the collections say about rules.
    pub configs: &'a Configs,
    /// To how many pieces the recipes are scaled before.
    pub scale: Scale,
    /// How reports look.
    pub style: Style,
}

/// What came of a file.
#[derive(Debug, Default)]
pub struct Result {
    /// The name shown.
    pub name: String,
    /// What is to be shown, in order.
    pub reports: Vec<Report>,
    /// The same as text for people, where that is wanted.
    pub shown: Vec<String>,
    /// How many there are, shown or not.
    pub counts: Counts,
    /// Why it could not be checked: the name it is about and what is wrong.
    pub troubles: Vec<(String, String)>,
    /// What is wrong with the file as a whole although it was checked.
    pub warning: Option<String>,
    /// Rules of which the collection with this top folder accepted something here.
    pub accepted_by_collection: BTreeSet<(PathBuf, &'static str)>,
}

/// How many findings of each level.
#[derive(Debug, Default)]
pub struct Counts {
    /// Errors.
    pub errors: usize,
    /// Warnings.
    pub warnings: usize,
    /// Advice.
    pub advice: usize,
    /// Accepted ones of any level.
    pub accepted: usize,
}

impl Counts {
    /// Counts one of this level.
    pub fn add(&mut self, level: Level) {
        match level {
            Level::Error => self.errors += 1,
            Level::Warning => self.warnings += 1,
            Level::Advice => self.advice += 1,
        }
    }
}

/// What is said when the work on a file ends in a mistake of ours.
pub const BROUGHT_DOWN: &str = "this file brought the checker down; that is a mistake of the checker, please report it";

/// Reads and checks a file. A mistake of ours in one file does not keep the others from being checked.
pub fn check_one(name: &str, path: &Path, input: Input<'_>, run: Run<'_>) -> Result {
    catch_unwind(AssertUnwindSafe(|| match input {
        Input::Given(file) => checked(file, path, run),
        Input::Disk => match SourceFile::read(path, name.to_owned()) {
            Ok(file) => checked(&file, path, run),
            Err(error) => failed(name, &error.to_string()),
        },
    }))
    .unwrap_or_else(|_| failed(name, BROUGHT_DOWN))
}

fn failed(name: &str, what: &str) -> Result {
    Result { name: name.to_owned(), troubles: vec![(name.to_owned(), what.to_owned())], ..Result::default() }
}

fn checked(file: &SourceFile, path: &Path, run: Run<'_>) -> Result {
    let mut result = Result { name: file.name.clone(), warning: file.encoding_trouble(), ..Result::default() };
    let (collection, inside) = run.collections.of(path);
    let config = run.configs.of(collection.root());
    let checked = check_document(&file.document, &inside, &*collection, run.scale);
    for told in &checked.findings {
        let mut finding = told.finding.clone();
        let by_collection = match config.levels.apply(&mut finding) {
            Verdict::Off => continue,
            Verdict::Told => None,
            Verdict::Accepted(reason) => {
                result.accepted_by_collection.insert((collection.root().to_owned(), finding.rule));
                Some(reason)
            }
        };
        let accepted = finding.accepted.is_some() || by_collection.is_some();
        if accepted {
            result.counts.accepted += 1;
        } else {
            result.counts.add(finding.level);
        }
        // A log for other tools carries what is accepted as such: they would take it for settled else.
        let shows_accepted = run.wanted.accepted || run.wanted.format == CheckFormat::Sarif;
        if (accepted && !shows_accepted) || !run.wanted.level.shows(finding.level) {
            continue;
        }
        let Some(sheet) = checked.sheets.get(told.sheet) else { continue };
        let locator = Locator { sheet, file, collection: &collection };
        let Some(mut report) = Report::new(&finding, &locator) else { continue };
        if let Some(reason) = by_collection {
            report.accepted = config.accepts.get(finding.rule).cloned();
            report.reason = Some(reason.to_owned());
        } else {
            report.reason = reason(&checked, told);
        }
        if run.style != Style::None {
            result.shown.push(render(&report, file, run.style));
        }
        result.reports.push(report);
    }
    if run.wanted.format == CheckFormat::Sarif {
        fingerprint::mark(&mut result.reports, file);
    }
    result
}

/// The reason the recipe gives for accepting a finding.
fn reason(checked: &Checked, told: &Told) -> Option<String> {
    let place = told.finding.accepted?;
    let recipe = checked.results.get(told.sheet)?.recipes.get(told.recipe)?;
    let acceptance = recipe.acceptances.iter().find(|acceptance| acceptance.place == place)?;
    acceptance.reason.as_ref().map(|reason| reason.text.to_string())
}
