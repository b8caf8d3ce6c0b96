//! Changes an editor offers at a place: fixes of findings, the same amount said another way, accepting, scaling.

mod accept;
mod basis;
mod bodies;
mod clause;
mod columns;
mod fixes;
mod log;
mod needs;
mod repeated;
mod said;
mod scale;
mod split;
mod spoon;
mod temperature;

use tenter_quantity::Place;

use crate::analysis::{FileAnalysis, SheetView};
use crate::text::{Edit, Range, meet};
use crate::workspace::Snapshot;

pub use fixes::fix_all;
pub use log::log_entry;
pub use scale::scale;

/// Kinds of action.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum ActionKind {
    /// Settles a finding.
    Fix,
    /// Says the same in another way.
    Rewrite,
    /// Settles all that is certain.
    FixAll,
    /// Adds something new.
    Source,
    /// Puts something where others can take it.
    Extract,
}

/// A file that is to be made.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NewFile {
    /// Its path inside the collection.
    pub path: std::sync::Arc<str>,
    /// What it says.
    pub text: String,
}

/// An action and the edits it makes.
#[derive(Clone, Debug, PartialEq)]
pub struct Action {
    /// What it does.
    pub title: String,
    /// Its kind.
    pub kind: ActionKind,
    /// The finding it settles: rule and place.
    pub settles: Option<(&'static str, Range)>,
    /// Whether it is the one to take when there are several.
    pub preferred: bool,
    /// The edits.
    pub edits: Vec<Edit>,
    /// The file it makes; only for those who can make files.
    pub creates: Option<NewFile>,
}

/// Those of the actions on a stretch that settle a finding: they cost far less than all.
pub fn settling(analysis: &FileAnalysis, range: &Range) -> Vec<Action> {
    let mut found = Vec::new();
    fixes::offer(analysis, range, &mut found);
    accept::offer(analysis, range, &mut found);
    found.retain(|action| !action.edits.is_empty());
    found
}

/// The actions offered on a stretch of a file. `today` is the date a log entry would get, as `2026-05-03`.
pub fn actions(snapshot: &Snapshot, path: &str, range: &Range, today: Option<&str>) -> Vec<Action> {
    let Some(analysis) = snapshot.analyse(path) else { return Vec::new() };
    let mut found = settling(&analysis, range);
    temperature::offer(&analysis, range, &mut found);
    spoon::offer(&analysis, range, &mut found);
    basis::offer(&analysis, range, &mut found);
    scale::offer(&analysis, range, &mut found);
    clause::offer(&analysis, range, &mut found);
    log::offer(&analysis, range, today, &mut found);
    repeated::offer(&analysis, range, &mut found);
    split::offer(snapshot, &analysis, range, &mut found);
    found.retain(|action| !action.edits.is_empty());
    for action in found.iter_mut().filter(|action| action.kind == ActionKind::Rewrite) {
        action.edits = columns::kept(&analysis.file, std::mem::take(&mut action.edits));
    }
    found
}

fn rewrite(title: String, edits: Vec<Edit>) -> Action {
    Action { title, kind: ActionKind::Rewrite, settles: None, preferred: false, edits, creates: None }
}

/// The sheets with a block that meets a range, each once.
fn sheets_at<'a>(analysis: &'a FileAnalysis, range: &Range) -> Option<SheetView<'a>> {
    analysis.home_at(range.start).map(|(view, ..)| view)
}

/// A place of a sheet, when it stands in this file and meets the range.
fn here(analysis: &FileAnalysis, view: SheetView<'_>, place: Place, range: &Range) -> Option<Range> {
    analysis.locate_here(view.sheet, place).filter(|at| meet(at, range))
}
