//! More drawn than made.

use tenter_resolve::recipe::Draw;

use crate::bench::{measurable, weighable};
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "mix-overdrawn",
    summary: "More is drawn from a mix than is made of it.",
    group: Group::Amounts,
    level: Level::Error,
    since: "1",
    page: include_str!("mix_overdrawn.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for total in &context.recipe.totals.mixes {
        let mix = context.recipe.mix(total.mix);
        let Some(made) = total.volume.as_ref().or(total.mass.as_ref()) else { continue };
        let Some(drawn) = total.drawn.as_ref().filter(|drawn| drawn.dimension == made.dimension) else { continue };
        let times = f64::from(total.times.max(1));
        let available = made.value.scale(times);
        if drawn.value.best <= available.best * (1.0 + MARGIN) || drawn.value.low <= available.low {
            continue;
        }
        if context.troubled_block(mix.name.place) {
            continue;
        }
        let Some(place) = last_straw(&mix.draws, available.best) else { continue };
        let made_text = if total.times > 1 { format!("{} times {}", total.times, made.show()) } else { made.show() };
        let mut finding = Finding::new(
            &RULE,
            place,
            format!("{} of {} is drawn in all, but only {made_text} is made", drawn.show(), mix.name.text),
        )
        .note(mix.name.place, format!("makes {}", made.show()))
        .figure(drawn)
        .figure(made);
        for draw in mix.draws.iter().filter(|draw| draw.place != place) {
            if let Some(amount) = &draw.amount {
                finding = finding.note(draw.place, format!("draws {}", amount.show()));
            }
        }
        // Enough for the most that may be drawn.
        let short = drawn.value.high - available.low;
        let more = if total.volume.is_some() { measurable(short) } else { weighable(short) };
        found.push(finding.help(format!("Make {more} more with everything in proportion, or draw less.")));
    }
}

/// Drawn beyond this share is told: finer than a squeeze bottle measures.
const MARGIN: f64 = 0.01;

/// The draw at which there is no longer enough.
fn last_straw(draws: &[Draw], available: f64) -> Option<tenter_quantity::Place> {
    let mut taken = 0.0;
    for draw in draws {
        taken += draw.amount.as_ref().map_or(0.0, |amount| amount.value.best);
        if taken > available * (1.0 + MARGIN) {
            return Some(draw.place);
        }
    }
    draws.last().map(|draw| draw.place)
}
