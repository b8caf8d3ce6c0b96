//! One file checked.

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::Path;

use tenter_rules::{Level, check_document};

use crate::arguments::Check;
use crate::check::locate::Locator;
use crate::check::report::Report;
use crate::check::text::{Style, render};
use crate::files::collection::Collections;
use crate::files::source::SourceFile;

/// Where the bytes come from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Input {
    /// The file itself.
    Disk,
    /// Standard input, under the file's name.
    Standard,
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

/// Reads and checks a file. A mistake of ours in one file does not keep the others from being checked.
pub fn check_one(
    name: &str,
    path: &Path,
    input: Input,
    collections: &Collections,
    wanted: &Check,
    style: Style,
) -> Result {
    let work = || checked(name, path, input, collections, wanted, style);
    catch_unwind(AssertUnwindSafe(work)).unwrap_or_else(|_| {
        let what = "this file brought the checker down; that is a mistake of the checker, please report it";
        Result { name: name.to_owned(), troubles: vec![(name.to_owned(), what.to_owned())], ..Result::default() }
    })
}

fn checked(name: &str, path: &Path, input: Input, collections: &Collections, wanted: &Check, style: Style) -> Result {
    let mut result = Result { name: name.to_owned(), ..Result::default() };
    let read = match input {
        Input::Disk => SourceFile::read(path, name.to_owned()),
        Input::Standard => SourceFile::standard_input(name.to_owned()),
    };
    let file = match read {
        Ok(file) => file,
        Err(error) => {
            result.troubles.push((name.to_owned(), error.to_string()));
            return result;
        }
    };
    result.warning = file.encoding_trouble();
    let (collection, inside) = collections.of(path);
    let checked = check_document(&file.document, &inside, &*collection);
    for told in &checked.findings {
        let finding = &told.finding;
        match (&finding.accepted, finding.level) {
            (Some(_), _) => result.counts.accepted += 1,
            (None, Level::Error) => result.counts.errors += 1,
            (None, Level::Warning) => result.counts.warnings += 1,
            (None, Level::Advice) => result.counts.advice += 1,
        }
        let hidden = finding.accepted.is_some() && !wanted.accepted;
        if hidden || !wanted.level.shows(finding.level) {
            continue;
        }
        let Some(sheet) = checked.sheets.get(told.sheet) else { continue };
        let locator = Locator { sheet, file: &file, collection: &collection };
        let Some(report) = Report::new(finding, &locator) else { continue };
        if style != Style::None {
            result.shown.push(render(&report, &file, style));
        }
        result.reports.push(report);
    }
    result
}
