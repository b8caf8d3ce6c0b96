//! `steps` blocks: each line a verb and its clauses.

use tenter_syntax::{BlockKind, verb_row};

use crate::binder::{Binder, tidy};
use crate::ledger::Ledger;
use crate::names::unquoted;
use crate::problem::ProblemKind;
use crate::recipe::{GroupId, Named, Step, StepGroup};
use crate::sheet::Row;
use crate::step::StepReader;

/// Reads all groups of steps, in order.
pub(crate) fn bind(binder: &mut Binder<'_>) -> Vec<StepGroup> {
    let mut ledger = Ledger::new(binder);
    let mut groups = Vec::new();
    let scale = binder.scale;
    for body in binder.of_kind(BlockKind::Steps) {
        binder.scale = binder.by_lot.scale_of_group(GroupId(groups.len()), scale);
        let written = body.name();
        let name =
            (!written.is_empty()).then(|| Named { text: tidy(unquoted(written)), place: body.place(body.block.name) });
        let mut steps = Vec::with_capacity(body.rows.len());
        for row in &body.rows {
            match crate::joined::parts(row) {
                None => steps.extend(read(binder, &mut ledger, row)),
                Some(lines) => {
                    for line in &lines {
                        steps.extend(read(binder, &mut ledger, &Row { line, ..*row }));
                    }
                }
            }
        }
        groups.push(StepGroup { name, place: body.place(body.block.keyword), steps });
    }
    binder.scale = scale;
    groups
}

fn read(binder: &mut Binder<'_>, ledger: &mut Ledger, row: &Row<'_>) -> Option<Step> {
    if row.line.span.is_empty() {
        return None;
    }
    let Some(head) = &row.line.head else {
        binder.problem(
            row.place(row.line.span),
            ProblemKind::UnknownVerb { written: row.text(row.line.span).into(), nearest: None },
        );
        return None;
    };
    if matches!(&*head.word, "accept" | "note" | "about") {
        return None;
    }
    let verb = verb_row(&head.word).filter(|_| head.known);
    if verb.is_none() {
        return unknown_verb(binder, ledger, row);
    }
    let step = StepReader::new(row, verb, head.span).read(binder, ledger);
    ledger.record(binder, &step);
    Some(step)
}

/// A line whose first word is no verb is read as if it were one, so that its amounts still count.
fn unknown_verb(binder: &mut Binder<'_>, ledger: &mut Ledger, row: &Row<'_>) -> Option<Step> {
    let head = row.line.head.as_ref()?;
    let written = row.text(head.span);
    let nearest = crate::keys::nearest_verb(&tenter_syntax::fold_name(written));
    let guess = nearest.and_then(|(_, name)| verb_row(name));
    binder.problem(
        row.place(head.span),
        ProblemKind::UnknownVerb { written: written.into(), nearest: nearest.map(|(word, _)| word.into()) },
    );
    // What else is wrong on a line that is not understood is not worth telling.
    let before = binder.problems.len();
    let step = StepReader::new(row, guess, head.span).read(binder, ledger);
    binder.problems.truncate(before);
    ledger.record(binder, &step);
    Some(step)
}
