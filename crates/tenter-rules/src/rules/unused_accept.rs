//! Accepted, but nothing is wrong.

use tenter_quantity::Place;
use tenter_resolve::{ProblemKind, Recipe};

use crate::context::Context;
use crate::finding::{Finding, Fix, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "unused-accept",
    summary: "An `accept` with nothing to accept.",
    group: Group::Writing,
    level: Level::Warning,
    since: "1",
    page: include_str!("unused_accept.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    // What is left unused is known only when all rules have spoken: see `unused`.
    let _ = (context, found);
}

/// The `accept` lines that had nothing to accept, given those that had.
pub(crate) fn unused<'a>(recipe: &'a Recipe, used: &'a [Place]) -> impl Iterator<Item = Place> + 'a {
    // While something is not understood, rules hold back, and an `accept` may only seem unused.
    let settled = recipe.problems.iter().all(|problem| matches!(problem.kind, ProblemKind::Oddity(_)));
    recipe
        .acceptances
        .iter()
        .filter(move |_| settled)
        .map(|acceptance| acceptance.place)
        .filter(|place| !used.contains(place))
}

/// What is told of one of them.
pub(crate) fn finding(recipe: &Recipe, place: Place) -> Finding {
    let name = recipe
        .acceptances
        .iter()
        .find(|acceptance| acceptance.place == place)
        .map_or("", |acceptance| &*acceptance.rule.text);
    Finding::new(&RULE, place, format!("`{name}` finds nothing here, so there is nothing to accept"))
        .help("Take the line away, so that it does not hide the next mistake.")
        .fix(Fix::replace(place, "", false).titled("take the line away"))
}
