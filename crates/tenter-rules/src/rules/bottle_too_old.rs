//! The bottle has died.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_rehearse::EventKind;

pub(crate) const RULE: Rule = Rule {
    name: "bottle-too-old",
    summary: "A bottle with dye and alkali in it is used too late.",
    group: Group::Dye,
    level: Level::Warning,
    since: "1",
    page: include_str!("bottle_too_old.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let mut told = Vec::new();
    for event in context.events() {
        let EventKind::Drawn { mix, age, alkali_with_dye: Some(together), .. } = &event.kind else { continue };
        if told.contains(mix) || context.troubled_line(event.place) {
            continue;
        }
        let Some(life) = pot_life(context, *mix) else { continue };
        if together.best <= life {
            continue;
        }
        told.push(*mix);
        let mix = context.recipe.mix(*mix);
        let shown = tenter_quantity::show(*together, tenter_quantity::standard::MINUTE);
        let usual = tenter_quantity::show(tenter_quantity::Interval::exact(life), tenter_quantity::standard::MINUTE);
        let mut finding = Finding::new(
            &RULE,
            event.place,
            format!("{} has had dye and alkali in it for {shown}; after about {usual} a good part of the dye has bound to the water", mix.name.text),
        )
        .figure(age)
        .help("Mix it just before use, or put the alkali on the cloth and not into the bottle.");
        if let Some(made) = mix.made_by_step {
            finding = finding.note(made, "it is made here");
        }
        found.push(finding);
    }
}

/// How long a bottle with its alkali serves, s.
fn pot_life(context: &Context<'_>, mix: tenter_resolve::recipe::MixId) -> Option<f64> {
    context
        .materials_of_mix(mix)
        .into_iter()
        .filter(|(id, _)| context.is_reactive(*id))
        .filter_map(|(id, _)| context.class(id))
        .map(|class| if class.id == "reactive-dichlorotriazine" { 7_200.0 } else { 21_600.0 })
        .reduce(f64::min)
}
