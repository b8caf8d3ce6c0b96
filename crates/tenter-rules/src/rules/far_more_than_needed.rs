//! Most of it is left over.

use crate::bench::per_cent;
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "far-more-than-needed",
    summary: "Far more of a mix is made than is used.",
    group: Group::Amounts,
    level: Level::Advice,
    since: "1",
    page: include_str!("far_more_than_needed.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for total in &context.recipe.totals.mixes {
        let mix = context.recipe.mix(total.mix);
        let (Some(share), Some(left)) = (&total.used_share, &total.left) else { continue };
        let Some(drawn) = &total.drawn else { continue };
        let slip = share.value.high < SLIP;
        if total.carried.is_some()
            || mix.shared
            || (mix.keep.is_some() && !slip)
            || mix.draws.iter().any(|draw| draw.whole)
        {
            continue;
        }
        let dyed = context.materials_of_mix(total.mix).iter().any(|(id, _)| context.material(*id).is_dye);
        let little = left.dimension == tenter_quantity::Dimension::Volume && left.value.best < 1e-4;
        if (!dyed && !slip)
            || little
            || share.value.high >= LEAST
            || context.troubled_steps()
            || context.troubled_block(mix.name.place)
        {
            continue;
        }
        found.push(
            Finding::new(
                &RULE,
                mix.name.place,
                format!(
                    "{} of {} is used, {} of it; {} is left over",
                    drawn.show(),
                    mix.name.text,
                    per_cent(libm::round(share.value.best * 100.0) / 100.0),
                    left.show()
                ),
            )
            .figure(drawn)
            .figure(left)
            .level(if share.value.high < TENTH { Level::Warning } else { Level::Advice })
            .help("Make less of it, or say `keep for 5 days` if it is a stock. If it was meant to be used up, look for a slip in what is drawn."),
        );
    }
}

/// Share used below which it is a slip of the pen whatever the mix.
const SLIP: f64 = 0.02;
/// Share used below which the piece hardly gets what was made for it: a decimal slip.
const TENTH: f64 = 0.15;
/// Share used below which it is told.
const LEAST: f64 = 1.0 / 3.0;
