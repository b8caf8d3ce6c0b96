//! Dye by the shovel.

use crate::bench::number;
use crate::context::Context;
use crate::dips::dips;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_reference::DyeFamily;
use tenter_resolve::recipe::{Depth, GoodsId};

pub(crate) const RULE: Rule = Rule {
    name: "far-too-much-dye",
    summary: "Far more dye than cloth can take.",
    group: Group::Dye,
    level: Level::Warning,
    since: "1",
    page: include_str!("far_too_much_dye.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    strong_dip(context, found);
    for (index, goods) in context.recipe.goods.iter().enumerate() {
        let Some(dry) = &goods.dry_mass else { continue };
        let Some((mass, place)) = crate::rules::too_little_dye::dye_on(context, GoodsId(index)) else { continue };
        let share = mass.low / dry.value.high.max(f64::MIN_POSITIVE);
        let family = context
            .dyeings()
            .find(|dyeing| dyeing.goods == GoodsId(index))
            .and_then(|dyeing| context.class(dyeing.dye))
            .map(|class| class.family);
        if family == Some(DyeFamily::Natural) && share <= MOST_PLANTS {
            continue;
        }
        let all = if family.is_some_and(goes_on_wholly) { MOST_EXHAUSTED } else { MOST };
        let most = context.recipe.header.depth.map_or(all, |(depth, _)| most(depth).min(all));
        if family != Some(DyeFamily::Natural) && share <= most {
            continue;
        }
        found.push(
            Finding::new(
                &RULE,
                place,
                format!("{} of dye on {} of {}: {}% of the weight", crate::bench::grams(mass), dry.show(), goods.name.text, number(share * 100.0)),
            )
            .noted(dry, "what the goods weigh")
            .figure(dry)
            .help("Blacks take 5 to 8%, the strongest powder work twice that. Look for a slip: a decimal point, g for mg, each for all."),
        );
    }
}

/// Three times what a depth takes at most: 1, 3, 6% of the dry weight; a full black is bounded as everything is.
const fn most(depth: Depth) -> f64 {
    match depth {
        Depth::Pale => 0.03,
        Depth::Medium => 0.09,
        Depth::Dark => 0.18,
        Depth::FullBlack => MOST,
    }
}

/// Families whose dye goes on to the fibre almost wholly, so that nobody lays on much more than stays.
const fn goes_on_wholly(family: DyeFamily) -> bool {
    matches!(family, DyeFamily::Acid | DyeFamily::Direct | DyeFamily::Disperse | DyeFamily::Basic)
}

/// Share of the dry weight: dried plants are taken weight for weight, fresh ones up to several times that.
const MOST_PLANTS: f64 = 10.0;
/// Share of the dry weight: a full black of an acid or direct dye takes 5 to 8%.
const MOST_EXHAUSTED: f64 = 0.1;
/// Share of the dry weight.
const MOST: f64 = 0.2;

/// A bath for dipping stronger than any.
fn strong_dip(context: &Context<'_>, found: &mut Vec<Finding>) {
    let strong = dips(context).into_iter().find(|dip| dip.strength.best > STRONGEST_DIP);
    found.extend(strong.map(|dip| {
        dip.strength_told(&RULE, "")
            .help("Baths for dipping have 0.5 to 10 g/L of dye; most of this one goes down the drain. Look for a slip: a decimal point, each for all.")
    }));
}

/// kg/m³: a little above the strongest baths of the trade.
const STRONGEST_DIP: f64 = 12.0;
