//! Bleach that goes on working.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_reference::Role;

pub(crate) const RULE: Rule = Rule {
    name: "bleach-without-stop",
    summary: "Bleach is rinsed but never stopped.",
    group: Group::Finish,
    level: Level::Warning,
    since: "1",
    page: include_str!("bleach_without_stop.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.troubled_steps() || context.troubled_mixes() {
        return;
    }
    let in_group = |id: tenter_resolve::recipe::MaterialId, group: &str| {
        context.material(id).reference.is_some_and(|entry| entry.hazard_groups.iter().any(|have| have == group))
    };
    let steps: Vec<_> = context.steps().collect();
    for (at, step) in steps.iter().enumerate() {
        let brings = crate::bench::materials_of_step(context, step);
        let brought = brings.iter().find(|(id, _)| in_group(*id, "hypochlorite") || in_group(*id, "permanganate"));
        let Some((bleach, _)) = brought else { continue };
        let permanganate = in_group(*bleach, "permanganate");
        if step.goods.is_empty() || step.verb.is_some_and(|verb| verb.name == "make") {
            continue;
        }
        let stopped = steps.iter().skip(at + 1).any(|later| {
            crate::bench::materials_of_step(context, later).iter().any(|(id, _)| {
                let material = context.material(*id);
                material.role() == Role::Reducer
                    || (permanganate && material.name.contains("oxalic"))
                    || in_group(*id, "sulfite-reducer")
                    || in_group(*id, "peroxide")
                    || material.name.contains("thiosulfate")
            })
        });
        if stopped {
            continue;
        }
        let mut finding = Finding::new(
            &RULE,
            step.place,
            format!("{} works on the goods, and nothing stops it afterwards", context.material(*bleach).name),
        )
        .help(if permanganate { CLEARING } else { STOPPING });
        let acid = steps.iter().skip(at + 1).filter(|_| !permanganate).find_map(|later| {
            let brought = crate::bench::materials_of_step(context, later);
            brought.into_iter().find(|(id, _)| context.material(*id).role() == Role::Acid)
        });
        if let Some((acid, brought)) = acid {
            finding = finding.note(brought, format!("{} does not stop it", context.material(acid).name));
        }
        found.push(finding);
        return;
    }
}

const STOPPING: &str = "After rinsing, soak for 10 min in 1 to 5 g/L sodium thiosulfate or metabisulfite, or in dilute peroxide, and rinse again. Never use vinegar or another acid on bleach: it gives off chlorine.";
const CLEARING: &str = "It goes on eating the cloth and leaves brown manganese dioxide behind: soak for 10 min in 2 to 10 g/L sodium metabisulfite, and rinse again.";
