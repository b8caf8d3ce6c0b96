//! A blend that does not dye through.

use crate::bench::{grams, per_cent};
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_reference::{DyeFamily, Uptake};

pub(crate) const RULE: Rule = Rule {
    name: "undyeable-share",
    summary: "Part of a blend stays pale.",
    group: Group::Dye,
    level: Level::Warning,
    since: "1",
    page: include_str!("undyeable_share.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for (index, goods) in context.recipe.goods.iter().enumerate() {
        let mut families: Vec<DyeFamily> = Vec::new();
        for (id, dye, _) in crate::rules::class_cannot_dye_fibre::first_laid(context) {
            if id.0 == index {
                // A dye of unknown class may be there for just that fibre.
                let Some(class) = context.class(dye) else { return };
                if !families.contains(&class.family) {
                    families.push(class.family);
                }
            }
        }
        if families.is_empty() || goods.fibres.iter().any(|part| part.fibre.is_none()) {
            continue;
        }
        let best = |part: &tenter_resolve::recipe::FibreShare| {
            families.iter().filter_map(|family| part.fibre?.takes(*family).map(|how| how.uptake)).min()
        };
        if !goods.fibres.iter().any(|part| best(part) == Some(Uptake::Yes)) {
            continue;
        }
        let pale: Vec<_> =
            goods.fibres.iter().filter(|part| best(part).is_some_and(|uptake| uptake != Uptake::Yes)).collect();
        let share: f64 = pale.iter().map(|part| part.share.value.best).sum();
        let Some(first) = pale.first().filter(|_| share >= LEAST) else { continue };
        let names: Vec<&str> = pale.iter().map(|part| &*part.name.text).collect();
        let weight = goods
            .piece_mass
            .as_ref()
            .map_or_else(String::new, |mass| format!(", {} of each piece", grams(mass.value.scale(share))));
        let only_tints = pale.iter().all(|part| best(part) == Some(Uptake::Weak));
        found.push(
            Finding::new(
                &RULE,
                context.line(first.name.place).map_or(first.name.place, |_| first.name.place),
                format!(
                    "{} of the weight{weight}, is {} and {}",
                    per_cent(share),
                    crate::say::list(&names, "and"),
                    if only_tints { "takes the dye only weakly" } else { "stays pale" }
                ),
            )
            .level(if unseen(&pale, share) || (only_tints && elastane(&pale)) { Level::Advice } else { Level::Warning })
            .figure(&first.share)
            .help("The piece comes out lighter and may look flecked. Take more dye for the look of it, add a dye for that fibre, or accept it with a reason."),
        );
    }
}

/// Elastane runs inside the yarn, wrapped by the other fibre: a little of it is hardly seen.
fn unseen(pale: &[&tenter_resolve::recipe::FibreShare], share: f64) -> bool {
    share <= if elastane(pale) { WRAPPED } else { FLECKS } + 1e-9
}

fn elastane(pale: &[&tenter_resolve::recipe::FibreShare]) -> bool {
    pale.iter().all(|part| part.fibre.is_some_and(|fibre| fibre.id == "elastane"))
}

/// Share of elastane up to which it is advice.
const WRAPPED: f64 = 0.1;
/// Share of any other fibre up to which it is advice.
const FLECKS: f64 = 0.05;
/// Share of the weight.
const LEAST: f64 = 0.02;
