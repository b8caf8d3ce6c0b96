//! Thread that stays white.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_reference::Uptake;

pub(crate) const RULE: Rule = Rule {
    name: "thread-stays-pale",
    summary: "The sewing thread takes none of the dyes.",
    group: Group::Dye,
    level: Level::Advice,
    since: "1",
    page: include_str!("thread_stays_pale.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for (id, dye, _) in crate::rules::class_cannot_dye_fibre::first_laid(context) {
        let (Some(goods), Some(class)) = (context.goods(id), context.class(dye)) else { continue };
        let Some(thread) = &goods.thread else { continue };
        let Some(how) = thread.fibre.and_then(|fibre| fibre.takes(class.family)) else { continue };
        let dyes_the_cloth = goods.fibres.iter().any(|part| {
            part.fibre.and_then(|fibre| fibre.takes(class.family)).is_some_and(|how| how.uptake == Uptake::Yes)
        });
        if how.uptake != Uptake::No
            || !dyes_the_cloth
            || found.iter().any(|have| have.rule == RULE.name && have.place == thread.name.place)
        {
            continue;
        }
        found.push(
            Finding::new(
                &RULE,
                thread.name.place,
                format!("the thread is {}, which {} dye leaves as it is", thread.name.text, class.name),
            )
            .help(
                "Seams and hems will stand out. That may be just right; choose goods sewn with the same fibre if not.",
            ),
        );
    }
}
