//! Not enough soak left.

use crate::bench::{grams_per_litre, number};
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_rehearse::EventKind;

pub(crate) const RULE: Rule = Rule {
    name: "soak-bath-spent",
    summary: "A soak too small, or too far used up, for the goods that go into it.",
    group: Group::Alkali,
    level: Level::Warning,
    since: "1",
    page: include_str!("soak_bath_spent.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for event in context.events() {
        let EventKind::SoakUptake {
            mix: Some(mix),
            goods,
            carried,
            bath: Some(bath),
            strength_nominal,
            strength_actual,
            earlier_uses,
            lot,
            ..
        } = &event.kind
        else {
            continue;
        };
        if context.troubled_line(event.place) || context.troubled_block(context.recipe.mix(*mix).name.place) {
            continue;
        }
        let mix = context.recipe.mix(*mix);
        let lot = lot.map_or_else(String::new, |lot| format!(" (lot {lot})"));
        // kg of water against m³ of liquor: a litre is a kilogram, near enough.
        let asked = carried.value.best / 1000.0;
        if asked > bath.value.best * MOST {
            found.push(
                Finding::new(
                    &RULE,
                    event.place,
                    format!(
                        "{}{lot} take up {} L, and only {} of {} is there: it cannot cover them",
                        context.goods_name(*goods),
                        number(asked * 1000.0),
                        bath.show(),
                        mix.name.text
                    ),
                )
                .note(mix.name.place, "made here")
                .figure(carried)
                .figure(bath)
                .help("Make more of it, or squeeze the goods further out over the bath."),
            );
            continue;
        }
        let (Some(nominal), Some(actual)) = (strength_nominal, strength_actual.as_ref().filter(|_| *earlier_uses > 0))
        else {
            continue;
        };
        if actual.value.best < nominal.value.best * WEAKEST {
            found.push(
                Finding::new(
                    &RULE,
                    event.place,
                    format!(
                        "{}{lot} find {} of soda ash in {}, made with {}",
                        context.goods_name(*goods),
                        grams_per_litre(actual.value),
                        mix.name.text,
                        grams_per_litre(nominal.value)
                    ),
                )
                .note(mix.name.place, format!("made with {}", grams_per_litre(nominal.value)))
                .figure(actual)
                .help("Add soda ash for the later lots, or make the soak fresh."),
            );
        }
    }
}

/// Share of the bath the goods may carry off.
const MOST: f64 = 0.8;
/// Share of the strength as made, below which a later lot is told of.
const WEAKEST: f64 = 0.75;
