//! While a step is written: the clauses its verb takes, the one being written marked.

use tenter_syntax::{BlockKind, verb_row};

use crate::completion::Place;
use crate::workspace::Snapshot;

/// What a verb takes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Signature {
    /// The verb and its clauses on one line.
    pub label: String,
    /// What the verb does.
    pub summary: String,
    /// Byte ranges of the clauses in the label.
    pub parts: Vec<std::ops::Range<usize>>,
    /// The one being written.
    pub active: Option<usize>,
}

/// The signature of the step at an offset; none outside steps or before the verb is written.
pub fn signature(snapshot: &Snapshot, path: &str, offset: usize) -> Option<Signature> {
    let file = snapshot.file(path)?;
    let Place::Body(body) = Place::at(&file, file.clamp(offset)) else { return None };
    if body.kind != BlockKind::Steps {
        return None;
    }
    let line = body.line()?;
    let head = line.head.as_ref().filter(|head| head.known)?;
    let verb = verb_row(&head.word)?;
    let typed_on = body.start() + body.typed().len() > head.span.end as usize;
    if !typed_on {
        return None;
    }
    let connector = line.clauses.last().map(|clause| clause.connector);
    let mut label = verb.name.to_owned();
    let mut parts = Vec::new();
    let mut active = None;
    for take in verb.takes {
        label.push(' ');
        let start = label.len();
        label.push_str(take.example);
        parts.push(start..label.len());
        if take.connector == connector && active.is_none() {
            active = Some(parts.len() - 1);
        }
    }
    Some(Signature { label, summary: verb.summary.to_owned(), parts, active })
}
