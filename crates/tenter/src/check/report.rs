//! A finding with every place turned into file, line and column: what all formats show.

use serde::Serialize;
use tenter_rules::{Finding, Level};

use crate::check::locate::{Locator, Stretch};

/// One finding, ready to show.
#[derive(Clone, Debug)]
pub struct Report {
    /// Rule.
    pub rule: &'static str,
    /// How bad.
    pub level: Level,
    /// Where.
    pub at: Stretch,
    /// What is wrong.
    pub message: String,
    /// What to do.
    pub help: String,
    /// The other numbers and where they are written.
    pub notes: Vec<(Option<Stretch>, String)>,
    /// Changes that would settle it.
    pub fixes: Vec<FixReport>,
    /// The line that accepts it.
    pub accepted: Option<Stretch>,
    /// Why it is accepted.
    pub reason: Option<String>,
    /// What it is known by from run to run; empty where no format asks for it.
    pub fingerprint: String,
}

/// A change of the text.
#[derive(Clone, Debug, Serialize)]
pub struct FixReport {
    /// What it does.
    pub title: String,
    /// Certain enough to be made without asking.
    pub safe: bool,
    /// The edits.
    pub edits: Vec<EditReport>,
}

/// One stretch replaced.
#[derive(Clone, Debug, Serialize)]
pub struct EditReport {
    /// Where.
    #[serde(flatten)]
    pub at: Stretch,
    /// What stands there then.
    pub new_text: String,
}

impl Report {
    /// Turns the places of a finding into lines and columns. `None` if it stands nowhere that is shown.
    pub fn new(finding: &Finding, locator: &Locator<'_>) -> Option<Self> {
        let fixes = finding.fixes.iter().filter_map(|fix| {
            let edits = fix
                .edits
                .iter()
                .map(|edit| Some(EditReport { at: locator.stretch(edit.place)?, new_text: edit.new_text.clone() }))
                .collect::<Option<Vec<_>>>()?;
            Some(FixReport { title: fix.title.clone(), safe: fix.safe, edits })
        });
        Some(Self {
            rule: finding.rule,
            level: finding.level,
            at: locator.stretch(finding.place)?,
            message: finding.message.clone(),
            help: finding.help.clone(),
            notes: finding.notes.iter().map(|note| (locator.stretch(note.place), note.text.clone())).collect(),
            fixes: fixes.collect(),
            accepted: finding.accepted.and_then(|place| locator.stretch(place)),
            reason: None,
            fingerprint: String::new(),
        })
    }
}
