//! Powder that stays powder.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_rehearse::EventKind;

pub(crate) const RULE: Rule = Rule {
    name: "powder-never-wetted",
    summary: "Dye powder is strewn on and never gets wet.",
    group: Group::Dye,
    level: Level::Warning,
    since: "1",
    page: include_str!("powder_never_wetted.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.troubled_steps() {
        return;
    }
    for dyeing in context.dyeings() {
        let again = context
            .dyeings()
            .any(|other| other.wetted && (other.goods, other.lot, other.dye) == (dyeing.goods, dyeing.lot, dyeing.dye));
        let damp = dyeing.wetted && dyeing.dry && !again_wet(context, dyeing);
        if !dyeing.dry || ((dyeing.wetted || again) && !damp) {
            continue;
        }
        let place = context.laid_at(dyeing);
        if found.iter().any(|have| have.rule == RULE.name && have.place == place) {
            continue;
        }
        found.push(
            Finding::new(
                &RULE,
                place,
                format!(
                    "{} is strewn on {} and nothing but {} wets it before it is washed off",
                    context.material(dyeing.dye).name,
                    context.zone_name(dyeing.goods, dyeing.zone),
                    if damp { "damp cloth" } else { "air" }
                ),
            )
            .figure(&dyeing.mass)
            .help("Damp cloth, water from a can, steam or ice must dissolve the powder so that it can react."),
        );
    }
}

/// Whether liquor, ice or steam comes on the goods after the powder, or they hold their own weight of water by then.
pub(crate) fn again_wet(context: &Context<'_>, dyeing: &tenter_rehearse::Dyeing) -> bool {
    let held = dyeing.zone_then.as_ref().is_some_and(|zone| zone.water_ratio().best >= 1.0);
    let laid = context.laid_at(dyeing);
    let mut after = false;
    held || dyeing.steamed
        || context.events().any(|event| {
            after |= event.place == laid;
            after
                && match &event.kind {
                    EventKind::LiquorLaid { goods, .. }
                    | EventKind::Iced { goods, .. }
                    | EventKind::Heated { goods, .. } => *goods == dyeing.goods,
                    EventKind::Immersed { goods, .. } => *goods == dyeing.goods && !context.washes(event.place),
                    EventKind::DyeLaid { goods, ice, .. } => *ice && *goods == dyeing.goods,
                    _ => false,
                }
        })
}
