//! Steps without goods.

use crate::context::Context;
use crate::finding::{Finding, Fix, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "missing-goods",
    summary: "A recipe with steps and nothing to do them to.",
    group: Group::Writing,
    level: Level::Error,
    since: "1",
    page: include_str!("missing_goods.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if told_by(context, "unknown-key").count() >= 3 {
        // The goods are there, only their header is not; that is told.
        return;
    }
    for problem in told_by(context, RULE.name) {
        let block =
            context.sheet.blocks.get(problem.place.block as usize).map_or(0, |entry| entry.block.text.trim_end().len());
        let end = tenter_quantity::Place { block: problem.place.block, start: block as u32, end: block as u32 };
        let lines =
            "\n\ngoods NAME\n  pieces   1\n  weight   150 g each\n  fibre    100% cotton\n  state    scoured, dry";
        found.push(
            Finding::new(&RULE, problem.place, "this recipe has steps and no goods to do them to")
                .help("Add a `goods` block: what it is, how many pieces, what one weighs dry, its fibre, its state.")
                .fix(Fix::replace(end, lines, false).titled("add a `goods` block to fill in")),
        );
    }
}
