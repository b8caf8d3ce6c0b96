//! Hard water.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_reference::Role;
use tenter_resolve::recipe::MixId;

pub(crate) const RULE: Rule = Rule {
    name: "hard-water",
    summary: "Hard water, and nothing in the dye liquors to take the hardness up.",
    group: Group::WaterAndSalt,
    level: Level::Advice,
    since: "1",
    page: include_str!("hard_water.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let Some(hardness) = &context.recipe.header.hardness else { return };
    if hardness.value.low <= HARD {
        return;
    }
    let softened = context.recipe.materials.iter().any(|material| material.role() == Role::Sequestrant);
    let dyed = (0..context.recipe.mixes.len())
        .any(|mix| context.materials_of_mix(MixId(mix)).iter().any(|(id, _)| context.material(*id).is_dye));
    let Some(place) = hardness.place().filter(|_| dyed && !softened) else { return };
    found.push(
        Finding::new(&RULE, place, format!("the water has {}, and no water softener goes in anywhere", hardness.show()))
            .figure(hardness)
            .help("Put 1 to 2 g/L of a softener such as sodium hexametaphosphate into dye liquors and the first rinse, or use softened water. Lime takes dye out of the bath and leaves a veil on the cloth."),
    );
}

/// kg CaCO₃ per m³.
const HARD: f64 = 0.15;
