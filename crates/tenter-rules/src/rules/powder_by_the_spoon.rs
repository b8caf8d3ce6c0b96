//! Spoons of powder.

use tenter_quantity::Place;
use tenter_resolve::recipe::{Ingredient, Substance};

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "powder-by-the-spoon",
    summary: "A powder measured by spoon or cup.",
    group: Group::Amounts,
    level: Level::Advice,
    since: "1",
    page: include_str!("powder_by_the_spoon.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let recipe = context.recipe;
    let in_mixes = recipe.mixes.iter().flat_map(|mix| &mix.ingredients);
    let in_steps = context.steps().flat_map(|step| step.applied.iter().chain(&step.with));
    let spooned: Vec<&Ingredient> = in_mixes
        .chain(in_steps)
        .filter(|ingredient| {
            ingredient.amount.as_ref().is_some_and(|amount| amount.by_volume_of_solid && amount.mass.is_some())
        })
        .collect();
    // Once a recipe is enough: who measures by the spoon does so throughout.
    let Some(first) = spooned.first() else { return };
    let Some((amount, mass)) = first.amount.as_ref().and_then(|amount| Some((amount, amount.mass.as_ref()?))) else {
        return;
    };
    let name = match first.what {
        Substance::Material(id) => &context.material(id).name,
        Substance::Mix(id) => &recipe.mix(id).name.text,
    };
    let written: Place = amount.place;
    let mut finding = Finding::new(
        &RULE,
        first.place,
        format!("`{}` of {name} weighs {}, according to how the powder lies", context.text(written), mass.show()),
    )
    .figure(mass)
    .help("Weigh it once, and write grams: two powders of one name can differ by half, and so does the colour. Or say what this powder weighs with a `density` line.");
    for other in spooned.iter().skip(1).take(8) {
        if let Some(mass) = other.amount.as_ref().and_then(|amount| amount.mass.as_ref()) {
            finding = finding.note(other.place, format!("here {}", mass.show()));
        }
    }
    found.push(finding);
}
