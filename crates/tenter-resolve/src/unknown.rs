//! Blocks of no known kind, unknown editions, steps without goods.

use tenter_quantity::Place;
use tenter_syntax::{BlockKind, KINDS, fold_name};

use crate::binder::Binder;
use crate::problem::ProblemKind;
use crate::recipe::StepGroup;

/// The editions of the notation this tool knows.
pub const EDITIONS: [&str; 1] = ["1"];

/// Tells of unknown blocks and editions.
pub(crate) fn blocks(binder: &mut Binder<'_>) {
    for body in binder.bodies.clone() {
        match body.block.kind {
            BlockKind::Unknown => {
                let written = body.block.slice(body.block.keyword);
                let folded = fold_name(written);
                let nearest = KINDS
                    .iter()
                    .map(|kind| (strsim::normalized_damerau_levenshtein(&folded, kind.name), kind.name))
                    .filter(|(score, _)| *score >= 0.6)
                    .max_by(|a, b| a.0.total_cmp(&b.0))
                    .map(|(_, name)| name.into());
                binder.problem(
                    body.place(body.block.keyword),
                    ProblemKind::UnknownBlock { written: written.into(), nearest },
                );
            }
            BlockKind::Edition => {
                let written = body.name();
                if !EDITIONS.contains(&written) {
                    let span = if body.block.name.is_empty() { body.block.keyword } else { body.block.name };
                    binder.problem(body.place(span), ProblemKind::UnknownEdition { written: written.into() });
                }
            }
            BlockKind::Loose => {
                for row in &body.rows {
                    crate::keys::stray(binder, row);
                }
            }
            _ => {}
        }
    }
}

/// A recipe with steps needs something to do them to.
pub(crate) fn missing_goods(binder: &mut Binder<'_>, is_recipe: bool, groups: &[StepGroup]) {
    let steps = groups.iter().any(|group| !group.steps.is_empty());
    if !is_recipe || !steps || !binder.goods.is_empty() {
        return;
    }
    let place = binder
        .of_kind(BlockKind::Recipe)
        .first()
        .map_or(Place { block: 0, start: 0, end: 0 }, |body| body.place(body.block.keyword));
    binder.problem(place, ProblemKind::MissingGoods);
}
