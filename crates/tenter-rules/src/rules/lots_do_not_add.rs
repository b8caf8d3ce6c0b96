//! Lots that do not add up.

use tenter_resolve::ProblemKind;
use tenter_resolve::recipe::LotsUse;

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "lots-do-not-add",
    summary: "Lots that do not make up the pieces.",
    group: Group::Writing,
    level: Level::Error,
    since: "1",
    page: include_str!("lots_do_not_add.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let ProblemKind::LotsDoNotAdd { pieces, lots, each } = &problem.kind else { continue };
        let count = tenter_quantity::show_number(tenter_quantity::Interval::exact(*pieces));
        found.push(
            Finding::new(
                &RULE,
                problem.place,
                format!("{lots} lots of {each} make {}, not {count} pieces", u64::from(*lots) * u64::from(*each)),
            )
            .help("Change the number of pieces, of lots, or of pieces in a lot."),
        );
    }
    let Some(lots) = context.recipe.goods.iter().filter_map(|goods| goods.lots.as_ref()).max_by_key(|lots| lots.count)
    else {
        return;
    };
    for step in context.steps() {
        let Some(LotsUse::One(lot)) = step.lots else { continue };
        if lot <= lots.count || context.troubled_line(step.place) {
            continue;
        }
        found.push(
            Finding::new(&RULE, step.place, format!("lot {lot} is named here, and there are {}", lots.count))
                .note(lots.place, "the lots")
                .help("Name a lot there is, or `for each lot`: a lot that is passed over stays as it was."),
        );
    }
}
