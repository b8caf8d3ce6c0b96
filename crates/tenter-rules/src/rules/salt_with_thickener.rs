//! Salt thins the paste.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_reference::Role;
use tenter_resolve::recipe::MixId;

pub(crate) const RULE: Rule = Rule {
    name: "salt-with-thickener",
    summary: "Salt in a paste that alginate has to thicken.",
    group: Group::WaterAndSalt,
    level: Level::Warning,
    since: "1",
    page: include_str!("salt_with_thickener.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for (index, mix) in context.recipe.mixes.iter().enumerate() {
        let materials = context.materials_of_mix(MixId(index));
        let of = |role: Role| materials.iter().find(|(id, _)| context.material(*id).role() == role);
        let (Some((thickener, _)), Some((salt, place))) = (of(Role::Thickener), of(Role::Salt)) else { continue };
        found.push(
            Finding::new(
                &RULE,
                *place,
                format!("{} in {} thins the {}", context.material(*salt).name, mix.name.text, context.material(*thickener).name),
            )
            .note(mix.name.place, "the paste")
            .help("Leave the salt out: laid on directly, the dye needs none. Hard water thickens or curdles alginate as well; use softened water."),
        );
    }
}
