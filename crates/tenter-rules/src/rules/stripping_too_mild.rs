//! Colour that stays.

use tenter_reference::{FibreFamily, Role};

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "stripping-too-mild",
    summary: "A discharge bath too cool, or without the alkali, for its reducing agent to work.",
    group: Group::HeatAndTime,
    level: Level::Warning,
    since: "1",
    page: include_str!("stripping_too_mild.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    pastes(context, found);
    for frame in &context.rehearsal.frames {
        if frame.verb != Some("strip") || found.iter().any(|have| have.place == frame.place) {
            continue;
        }
        let Some(goods) = frame
            .goods
            .iter()
            .find(|goods| context.step_at(frame.place).is_some_and(|step| step.goods.contains(&goods.goods)))
        else {
            continue;
        };
        for liquor in frame.liquors.iter().filter(|liquor| !liquor.gone) {
            let part = liquor.contents.parts.iter().find_map(|(id, mass)| {
                let material = context.material(*id);
                let entry = material.reference.filter(|_| mass.value.best > 0.0)?;
                let least = match entry.id.as_str() {
                    "thiourea-dioxide" => THIOUREA_DIOXIDE,
                    "sodium-dithionite" => DITHIONITE,
                    _ => return None,
                };
                Some((material, mass, least))
            });
            let Some((material, mass, least)) = part else { continue };
            let used = context.step_at(frame.place).and_then(|step| step.temperature.as_ref());
            let temperature = used.unwrap_or(&liquor.temperature);
            let cellulose = context.share_of(goods.goods, FibreFamily::Cellulose).is_some_and(|share| share >= 0.5);
            // Dithionite works without alkali too; thiourea dioxide turns into what reduces only in alkali.
            let alkali = least < THIOUREA_DIOXIDE || context.holds(&liquor.contents, Role::Alkali);
            let what = if temperature.value.high < least {
                format!(
                    "{} works from about {:.0} °C on, and the bath is at {}",
                    material.name,
                    least - 273.15,
                    temperature.show()
                )
            } else if cellulose && !alkali {
                format!("{} of {} and no alkali in the bath: it hardly works on cotton", mass.show(), material.name)
            } else {
                continue;
            };
            let finding = Finding::new(&RULE, frame.place, what)
                .noted(temperature, "how warm it is")
                .noted(mass, "the reducing agent");
            found.push(finding.figure(temperature).figure(mass).help(
                "Bring the bath to 70 to 90 °C with two to three times as much soda ash as thiourea dioxide; dithionite is content with 50 °C. In moving air, never in a shut room.",
            ));
            break;
        }
    }
}

/// A discharge paste of thiourea dioxide that no steam, iron or oven follows.
fn pastes(context: &Context<'_>, found: &mut Vec<Finding>) {
    let steps: Vec<_> = context.steps().collect();
    for (at, step) in steps.iter().enumerate() {
        let laid = step.verb.is_some_and(|verb| matches!(verb.name, "print" | "brush" | "spray" | "squirt"));
        let agent = crate::bench::materials_of_step(context, step).into_iter().find(|(id, _)| {
            laid && context.material(*id).reference.is_some_and(|entry| entry.id == "thiourea-dioxide")
        });
        let Some((agent, written)) = agent else { continue };
        let heated = steps.iter().skip(at + 1).any(|later| {
            let hot = later.temperature.as_ref().is_some_and(|hot| hot.value.high >= THIOUREA_DIOXIDE);
            later.verb.is_some_and(|verb| {
                matches!(verb.name, "steam" | "microwave" | "press" | "boil" | "simmer")
                    || (hot && matches!(verb.name, "dry" | "batch" | "heat" | "hold" | "rest"))
            })
        });
        if heated || context.troubled_line(step.place) {
            continue;
        }
        found.push(
            Finding::new(
                &RULE,
                step.place,
                format!(
                    "{} works from about {:.0} °C on, and nothing heats the goods after it is laid on",
                    context.material(agent).name,
                    THIOUREA_DIOXIDE - 273.15
                ),
            )
            .note(written, "the reducing agent")
            .help("Steam the print for 10 min or so, covered, or press it with a steam iron, in moving air."),
        );
        return;
    }
}

/// 50 °C in K.
const THIOUREA_DIOXIDE: f64 = 323.15;
/// 30 °C in K.
const DITHIONITE: f64 = 303.15;
