//! The goods bring water of their own.

use crate::bench::{grams_per_litre, per_cent};
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_rehearse::EventKind;

pub(crate) const RULE: Rule = Rule {
    name: "damp-goods-dilute-soak",
    summary: "Goods go damp into the soak and thin it.",
    group: Group::Alkali,
    level: Level::Warning,
    since: "1",
    page: include_str!("damp_goods_dilute_soak.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for event in context.events() {
        let EventKind::SoakUptake { mix, goods, water_before, strength_nominal, strength_actual, earlier_uses, .. } =
            &event.kind
        else {
            continue;
        };
        let (Some(nominal), Some(actual)) = (strength_nominal, strength_actual) else { continue };
        if *earlier_uses > 0
            || nominal.value.best <= 0.0
            || water_before.value.best <= 0.0
            || context.troubled_line(event.place)
        {
            continue;
        }
        let loss = 1.0 - actual.value.best / nominal.value.best;
        if loss <= LOSS {
            continue;
        }
        let name = mix.map_or("the soak", |mix| &*context.recipe.mix(mix).name.text);
        let mut finding = Finding::new(
            &RULE,
            event.place,
            format!(
                "{} carry {} of water into {name}: what they take up has {} of soda ash instead of {}",
                context.goods_name(*goods),
                water_before.show(),
                grams_per_litre(actual.value),
                grams_per_litre(nominal.value)
            ),
        )
        .figure(water_before)
        .figure(actual)
        .help(format!(
            "Dry the goods first, or make the soak {} stronger.",
            per_cent(libm::round(20.0 * loss / (1.0 - loss).max(0.1)) / 20.0)
        ));
        if let Some(place) = context.goods(*goods).and_then(|goods| goods.state.place) {
            finding = finding.note(place, "the state they come in");
        }
        if let Some(mix) = mix {
            finding = finding
                .note(context.recipe.mix(*mix).name.place, format!("made with {}", grams_per_litre(nominal.value)));
        }
        found.push(finding);
    }
}

/// Loss of strength from which it is told.
const LOSS: f64 = 0.1;
