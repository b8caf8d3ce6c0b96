//! No such key.

use tenter_resolve::ProblemKind;

use crate::context::Context;
use crate::finding::{Finding, Fix, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};
use crate::say;
use tenter_quantity::Place;
use tenter_syntax::BlockKind;

pub(crate) const RULE: Rule = Rule {
    name: "unknown-key",
    summary: "A key the block does not have.",
    group: Group::Writing,
    level: Level::Error,
    since: "1",
    page: include_str!("unknown_key.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let keys: Vec<(Place, &str, BlockKind)> = told_by(context, RULE.name)
        .filter_map(|problem| match &problem.kind {
            ProblemKind::UnknownKey { written, block, .. } => Some((problem.place, &**written, *block)),
            _ => None,
        })
        .collect();
    let mut stranded = Vec::new();
    for (place, _, block) in &keys {
        if stranded.contains(place) {
            continue;
        }
        let together: Vec<(Place, &str)> = keys
            .iter()
            .filter(|(other, _, _)| other.block == place.block)
            .map(|(other, key, _)| (*other, *key))
            .collect();
        let Some(kind) = home_of(&together, *block) else { continue };
        stranded.extend(together.iter().map(|(place, _)| *place));
        let here = tenter_syntax::kind_row(*block).map_or("this", |row| row.name);
        let mut finding = Finding::new(
            &RULE,
            *place,
            format!(
                "this line and {} more belong into a {kind} block, and stand in a {here} block",
                together.len() - 1
            ),
        )
        .help(format!("Its header is missing: put a line `{kind} NAME` above them, at the left edge."));
        for (other, _) in together.iter().skip(1).take(8) {
            finding = finding.note(*other, "and this");
        }
        found.push(finding);
    }
    for problem in told_by(context, RULE.name).filter(|problem| !stranded.contains(&problem.place)) {
        let ProblemKind::UnknownKey { written, block, nearest } = &problem.kind else { continue };
        let kind = tenter_syntax::kind_row(*block).map_or("this", |row| row.name);
        let finding = Finding::new(&RULE, problem.place, format!("a {kind} block has no line `{written}`"))
            .help(say::sentence(&say::did_you_mean(nearest.as_slice(), "a remark starts with `note` or `#`")));
        found.push(match nearest {
            Some(near) => finding.fix(Fix::replace(problem.place, &**near, true)),
            None => finding,
        });
    }
}

/// The other kind of block that has all these keys, when they are several: its header was left out.
pub(crate) fn home_of(keys: &[(Place, &str)], block: BlockKind) -> Option<&'static str> {
    if keys.len() < 3 {
        return None;
    }
    tenter_syntax::KINDS
        .iter()
        .filter(|row| row.kind != block)
        .find(|row| keys.iter().all(|(_, key)| tenter_syntax::key_row(row.kind, key).is_some()))
        .map(|row| row.name)
}
