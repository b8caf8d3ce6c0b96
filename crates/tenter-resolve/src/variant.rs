//! Variants: a few lines that stand for others of the recipe above them.

use tenter_quantity::Place;
use tenter_syntax::{BlockKind, Connector, Item, Line, Span, fold_name};

use crate::problem::{Problem, ProblemKind};
use crate::sheet::{Body, Row, Sheet};

/// The bodies of a sheet as variant block `variant` would have them, and what is wrong with its lines.
pub(crate) fn applied<'s>(sheet: &'s Sheet, variant: usize) -> (Vec<Body<'s>>, Vec<Problem>) {
    let mut bodies = crate::sheet::bodies(sheet);
    let mut problems = Vec::new();
    let Some(body) = bodies.get(variant).cloned() else {
        return (bodies, problems);
    };
    let mut scope: Option<Place> = None;
    let mut target: Option<u32> = None;
    let mut instead: Option<u32> = None;
    for row in &body.rows {
        if row.line.span.is_empty() || is_remark(row) {
            continue;
        }
        if opens_scope(row) {
            let (found, whole) = scope_of(row, &bodies);
            scope = Some(row.place(row.line.span));
            target = found;
            instead = found.filter(|_| whole);
            match found {
                None => problems.push(Problem {
                    place: row.place(row.line.span),
                    kind: ProblemKind::VariantMatch { candidates: 0 },
                }),
                Some(index) if whole => {
                    if let Some(target) = bodies.iter_mut().find(|body| body.index == index) {
                        target.rows.clear();
                    }
                }
                Some(_) => {}
            }
            continue;
        }
        if scope.is_some() && target.is_none() {
            // Told at the line that names the unknown block.
            continue;
        }
        if let Some(index) = instead {
            if let Some(target) = bodies.iter_mut().find(|body| body.index == index) {
                target.rows.push(*row);
            }
            continue;
        }
        replace(&mut bodies, row, target, &mut problems);
    }
    (bodies, problems)
}

fn is_remark(row: &Row<'_>) -> bool {
    row.line.head.as_ref().is_some_and(|head| matches!(&*head.word, "note" | "about" | "accept"))
}

/// `in steps prepare`, `in mix soda soak`, `in steps colour instead`.
fn opens_scope(row: &Row<'_>) -> bool {
    let first_word = row.text(row.line.span).split_whitespace().next().unwrap_or("");
    row.line.head.is_none() && row.line.clauses.first().is_some_and(|clause| clause.connector == Connector::In)
        || fold_name(first_word) == "in"
}

fn scope_of(row: &Row<'_>, bodies: &[Body<'_>]) -> (Option<u32>, bool) {
    let text = fold_name(row.text(row.line.span));
    let text = text.strip_prefix("in ").unwrap_or(&text).trim();
    let (text, whole) = text.strip_suffix(" instead").map_or((text, false), |rest| (rest.trim_end(), true));
    let (kind, name) = text.split_once(' ').unwrap_or((text, ""));
    let kind_of = |body: &Body<'_>| fold_name(body.block.slice(body.block.keyword));
    let found = bodies
        .iter()
        .filter(|body| !matches!(body.block.kind, BlockKind::Variant | BlockKind::Loose | BlockKind::Unknown))
        .find(|body| kind_of(body) == kind && fold_name(body.name()) == name)
        .or_else(|| {
            bodies.iter().find(|body| matches!(body.block.kind, BlockKind::Steps) && fold_name(body.name()) == text)
        })
        .or_else(|| bodies.iter().find(|body| name.is_empty() && kind_of(body) == kind));
    (found.map(|body| body.index), whole)
}

/// How well a line answers a variant's line: `None` when it is about something else.
fn likeness(variant: &Row<'_>, other: &Row<'_>) -> Option<usize> {
    match (&variant.line.head, &other.line.head) {
        (Some(a), Some(b)) if a.word == b.word => {}
        (None, None) if !variant.line.span.is_empty() && !other.line.span.is_empty() => {
            // Amount lines answer each other by what they are an amount of.
            let shared = shared_words(variant, other);
            return (shared > 0).then_some(shared);
        }
        _ => return None,
    }
    Some(1 + shared_words(variant, other))
}

fn words<'a>(row: &Row<'a>, line: &'a Line) -> Vec<String> {
    let items = line.items.iter().chain(line.clauses.iter().flat_map(|clause| clause.items.iter()));
    items
        .filter_map(|item| match item {
            Item::Words(span) | Item::Quoted(span) => Some(row.text(*span)),
            _ => None,
        })
        .flat_map(str::split_whitespace)
        .map(fold_name)
        .filter(|word| word.chars().count() > 2)
        .collect()
}

fn shared_words(a: &Row<'_>, b: &Row<'_>) -> usize {
    let ours = words(a, a.line);
    let theirs = words(b, b.line);
    ours.iter().filter(|word| theirs.contains(word)).count()
}

fn replace<'s>(bodies: &mut [Body<'s>], row: &Row<'s>, target: Option<u32>, problems: &mut Vec<Problem>) {
    let text = fold_name(row.text(row.line.span));
    let leaves_out = text.strip_prefix("leave out ").is_some();
    let mut best: Vec<(usize, usize)> = Vec::new();
    let mut score = 0;
    for (at, body) in bodies.iter().enumerate() {
        let eligible = match target {
            Some(index) => body.index == index,
            None => matches!(
                body.block.kind,
                BlockKind::Steps | BlockKind::Mix | BlockKind::Goods | BlockKind::Recipe | BlockKind::Layout
            ),
        };
        if !eligible {
            continue;
        }
        for (line, other) in body.rows.iter().enumerate() {
            if other.line.span.is_empty() {
                continue;
            }
            let found = if leaves_out { left_out(&text, other) } else { likeness(row, other) };
            match found {
                Some(found) if found > score => {
                    score = found;
                    best = vec![(at, line)];
                }
                Some(found) if found == score => best.push((at, line)),
                _ => {}
            }
        }
    }
    match best.as_slice() {
        [(at, line)] => {
            if leaves_out {
                bodies[*at].rows.remove(*line);
            } else {
                bodies[*at].rows[*line] = *row;
            }
        }
        several => problems.push(Problem {
            place: row.place(row.line.span),
            kind: ProblemKind::VariantMatch { candidates: several.len() },
        }),
    }
}

/// `leave out soften tees`: how many of its words a line opens with or holds.
fn left_out(text: &str, other: &Row<'_>) -> Option<usize> {
    let rest = text.strip_prefix("leave out ")?;
    let line = fold_name(other.text(Span::new(other.line.span.start, other.line.span.end)));
    let opens = other
        .line
        .head
        .as_ref()
        .is_none_or(|head| rest.starts_with(&*fold_name(other.text(head.span))) || rest.starts_with(&*head.word));
    if !opens {
        return None;
    }
    let theirs: Vec<&str> = line.split(' ').collect();
    let shared = rest.split(' ').filter(|word| theirs.contains(word)).count();
    (shared > 0).then_some(shared)
}
