//! `accept RULE because REASON`, in any block.

use tenter_syntax::{BlockKind, Connector, Span, fold_name};

use crate::binder::{Binder, tidy};
use crate::recipe::{Acceptance, Named, Scope};
use crate::sheet::Row;

/// Gathers all acceptances with what they are about.
pub(crate) fn bind(binder: &mut Binder<'_>) -> Vec<Acceptance> {
    let mut found = Vec::new();
    let bodies = binder.bodies.clone();
    for body in &bodies {
        let mut above: Option<Row<'_>> = None;
        for row in &body.rows {
            if row.line.span.is_empty() {
                continue;
            }
            if row.line.head.as_ref().is_none_or(|head| &*head.word != "accept") {
                above = Some(*row);
                continue;
            }
            let scope = match (&above, body.block.kind) {
                (_, BlockKind::Recipe) => Scope::Recipe,
                (Some(line), _) => Scope::Line(line.place(line.line.span)),
                (None, _) => Scope::Block(row.block),
            };
            if let Some(acceptance) = read(binder, row, scope) {
                found.push(acceptance);
            }
        }
    }
    found
}

fn read(binder: &mut Binder<'_>, row: &Row<'_>, scope: Scope) -> Option<Acceptance> {
    let line = row.line;
    let because = line.clauses.iter().find(|clause| clause.connector == Connector::Because);
    let rule_end = because.map_or(line.rest.end, |clause| clause.word.start);
    let rule_text = row.text(Span::new(line.rest.start, rule_end));
    let trimmed = rule_text.trim();
    if trimmed.is_empty() {
        binder.missing(row, "which rule is accepted", "accept undyeable-share because the stretch is wanted");
        return None;
    }
    let start = line.rest.start + (rule_text.len() - rule_text.trim_start().len()) as u32;
    let place = row.place(Span::new(start, start + trimmed.len() as u32));
    let rule = Named { text: fold_name(trimmed).replace(' ', "-").into(), place };
    let reason = because.and_then(|clause| {
        let text = row.text(Span::new(clause.word.end, line.rest.end.max(clause.word.end)));
        let trimmed = text.trim();
        (!trimmed.is_empty()).then(|| {
            let start = clause.word.end + (text.len() - text.trim_start().len()) as u32;
            Named { text: tidy(trimmed), place: row.place(Span::new(start, start + trimmed.len() as u32)) }
        })
    });
    Some(Acceptance { place: row.place(line.span), rule, reason, scope })
}
