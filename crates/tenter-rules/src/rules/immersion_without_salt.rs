//! No salt in the bath.

use crate::bench::{bath_of, number};
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_reference::{DyeFamily, FibreFamily, Role};
use tenter_rehearse::EventKind;

pub(crate) const RULE: Rule = Rule {
    name: "immersion-without-salt",
    summary: "A long bath with no salt to drive the dye on.",
    group: Group::WaterAndSalt,
    level: Level::Warning,
    since: "1",
    page: include_str!("immersion_without_salt.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    let mut told = Vec::new();
    for dyeing in context.dyeings() {
        let Some((liquor, bath)) = bath_of(context, dyeing) else { continue };
        let wants = context.class(dyeing.dye).is_some_and(|class| {
            class.needs.value.salt && matches!(class.family, DyeFamily::Reactive | DyeFamily::Direct)
        });
        let cellulose = context.share_of(dyeing.goods, FibreFamily::Cellulose).is_some_and(|share| share >= 0.5);
        let place = context.laid_at(dyeing);
        if dyeing.dry
            || !wants
            || !cellulose
            || told.contains(&liquor)
            || context.verb_at(place).is_some_and(|verb| LAID.contains(&verb))
        {
            continue;
        }
        let ratio = context.events().find_map(|event| match &event.kind {
            EventKind::Immersed { liquor: at, liquor_ratio: Some(ratio), .. } if *at == liquor => Some(ratio),
            _ => None,
        });
        let Some(ratio) = ratio.filter(|ratio| ratio.value.best >= LONG) else { continue };
        let direct = context.class(dyeing.dye).is_some_and(|class| class.family == DyeFamily::Direct);
        let least = if direct { LEAST_DIRECT } else { LEAST_SALT };
        let salted = bath.volume.as_ref().is_none_or(|volume| {
            let added: f64 = context
                .events()
                .filter_map(|event| match &event.kind {
                    EventKind::Added { liquor: at, material, mass, .. }
                        if *at == liquor && context.material(*material).role() == Role::Salt =>
                    {
                        Some(mass.value.high * dry(context, *material))
                    }
                    _ => None,
                })
                .sum();
            let there: f64 = bath
                .contents
                .parts
                .iter()
                .filter(|(id, _)| context.material(*id).role() == Role::Salt)
                .map(|(id, mass)| mass.value.high * dry(context, *id))
                .sum();
            added.max(there) / volume.value.best.max(f64::MIN_POSITIVE) >= least
        });
        if salted {
            continue;
        }
        told.push(liquor);
        found.push(
            Finding::new(
                &RULE,
                place,
                format!(
                    "{} goes into a bath of {} L for each kilogram of goods with hardly any salt: most of it stays in the water",
                    context.material(dyeing.dye).name,
                    number(ratio.value.best * 1000.0)
                ),
            )
            .figure(ratio)
            .help(if direct {
                "Add 5 to 20% of the weight of the goods of sodium chloride or sodium sulfate, in parts, once the bath is hot."
            } else {
                "Add 20 to 60 g/L sodium chloride, or 1.22 times that of sodium sulfate, in parts before the alkali; or work in far less water."
            }),
        );
    }
}

/// Dye that was laid on the cloth, or taken up in a dip, and only afterwards came into a bath.
const LAID: [&str; 8] = ["dip", "squirt", "pour", "spray", "brush", "print", "sprinkle", "sift"];
/// kg/m³ of salt; the palest shades have 20.
const LEAST_SALT: f64 = 10.0;
/// The same for direct dyes, which go on with far less.
const LEAST_DIRECT: f64 = 1.0;
/// m³ for a kilogram.
const LONG: f64 = 8e-3;

/// Share of a salt that is not the water of its crystals.
fn dry(context: &Context<'_>, id: tenter_resolve::recipe::MaterialId) -> f64 {
    context.material(id).reference.and_then(|entry| entry.anhydrous.as_ref()).map_or(1.0, |form| form.fraction)
}
