//! Paler than it says.

use crate::bench::number;
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_resolve::recipe::{Depth, GoodsId};

pub(crate) const RULE: Rule = Rule {
    name: "too-little-dye",
    summary: "Too little dye for the depth of shade the recipe names.",
    group: Group::Dye,
    level: Level::Warning,
    since: "1",
    page: include_str!("too_little_dye.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let Some((depth, said)) = context.recipe.header.depth else { return };
    if context.uncertain_bench() {
        return;
    }
    let (least, usual, word) = match depth {
        Depth::Pale => return,
        Depth::Medium => (0.005, "1 to 2%", "medium"),
        Depth::Dark => (0.02, "3 to 5%", "dark"),
        Depth::FullBlack => (0.04, "5 to 8%", "full black"),
    };
    for (index, goods) in context.recipe.goods.iter().enumerate() {
        let Some(dry) = &goods.dry_mass else { continue };
        let id = GoodsId(index);
        let Some((mass, place)) = dye_on(context, id) else { continue };
        let share = mass.best / dry.value.best.max(f64::MIN_POSITIVE);
        if mass.high / dry.value.best.max(f64::MIN_POSITIVE) >= least {
            continue;
        }
        found.push(
            Finding::new(
                &RULE,
                place,
                format!(
                    "{}% of dye on {}, and the shade is to be {word}: {usual} is usual",
                    number(share * 1000.0 / 10.0),
                    goods.name.text
                ),
            )
            .note(said, format!("{word} is wanted"))
            .figure(dry)
            .help("Take more dye, or say a paler depth. Black and turquoise want more than other colours."),
        );
    }
}

/// All dye that reaches goods, kg, and the line of the first.
pub(crate) fn dye_on(
    context: &Context<'_>,
    goods: GoodsId,
) -> Option<(tenter_quantity::Interval, tenter_quantity::Place)> {
    let mut seen = Vec::new();
    let mut sum: Option<(tenter_quantity::Interval, tenter_quantity::Place)> = None;
    for dyeing in context.dyeings().filter(|dyeing| dyeing.goods == goods) {
        // The dye of a bath is one, however many zones it meets.
        let key = match dyeing.medium {
            tenter_rehearse::Medium::Bath(bath) => (Some(bath), None, dyeing.dye),
            tenter_rehearse::Medium::Cloth => (None, Some((dyeing.zone, dyeing.lot)), dyeing.dye),
        };
        if seen.contains(&key) {
            continue;
        }
        seen.push(key);
        let place = context.laid_at(dyeing);
        sum = Some(match sum {
            Some((mass, first)) => (mass + dyeing.mass.value, first),
            None => (dyeing.mass.value, place),
        });
    }
    sum
}
