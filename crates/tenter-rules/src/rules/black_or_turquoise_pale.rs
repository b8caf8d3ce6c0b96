//! Blacks and turquoises want about twice the dye.

use crate::bench::number;
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use crate::rules::too_little_dye::dye_on;
use tenter_chemistry::colour::{Lab, Lch, Rgb};
use tenter_quantity::{Interval, Place};
use tenter_reference::FibreFamily;
use tenter_rehearse::{Dyeing, Medium};
use tenter_resolve::recipe::{Depth, Material};

pub(crate) const RULE: Rule = Rule {
    name: "black-or-turquoise-pale",
    summary: "A black or a turquoise is laid at the strength that serves for other colours.",
    group: Group::Dye,
    level: Level::Advice,
    since: "1",
    page: include_str!("black_or_turquoise_pale.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    let depth = context.recipe.header.depth;
    // What is below these is told for all dyes alike, by the rule on the depth named.
    let told_already = match depth {
        Some((Depth::Pale | Depth::Medium, _)) => return,
        Some((Depth::Dark, _)) => 0.02,
        Some((Depth::FullBlack, _)) => 0.04,
        None => 0.0,
    };
    let mut told = Vec::new();
    for dyeing in context.dyeings().filter(|dyeing| !dyeing.came_through) {
        let material = context.material(dyeing.dye);
        let pair = (dyeing.goods, dyeing.dye);
        let main = dyeing.mass.value.best >= MAIN * dyeing.all_dye.best;
        if told.contains(&pair) || !main || !context.is_reactive(dyeing.dye) || !over_a_known_area(context, dyeing) {
            continue;
        }
        if context.share_of(dyeing.goods, FibreFamily::Cellulose).is_none_or(|share| share < 0.5) {
            continue;
        }
        let (Some((kind, said)), Some(dry)) = (hint(material), dry(context, dyeing)) else { continue };
        let share = dyeing.mass.value / dry;
        if share.high >= USUAL || (depth.is_none() && share.best < MEANT_PALE) {
            continue;
        }
        let whole = context.goods(dyeing.goods).and_then(|goods| goods.dry_mass.as_ref());
        let all = dye_on(context, dyeing.goods).zip(whole).map(|((mass, _), dry)| mass.high / dry.value.best);
        if all.is_some_and(|all| all < told_already) {
            continue;
        }
        told.push(pair);
        let finding = Finding::new(
            &RULE,
            context.laid_at(dyeing),
            format!(
                "{}% of {} on {}: it is a {kind}, and a full {kind} takes 5 to 8%",
                number(share.best * 100.0),
                material.name,
                context.zone_name(dyeing.goods, dyeing.zone)
            ),
        )
        .note(said, format!("a {kind} by this"))
        .figure(&dyeing.mass)
        .help(match kind {
            "black" => "Take twice the dye for a full black, and the alkali that goes with it. If a grey is wanted, say `depth pale` or `depth medium`.",
            _ => "Take twice the dye for a full turquoise, and give it warmth. If a lighter one is wanted, say `depth pale` or `depth medium`.",
        });
        found.push(match depth {
            Some((_, place)) => finding.note(place, "the depth that is wanted").level(Level::Warning),
            None => finding,
        });
    }
}

/// Where the usual 5 to 8% certainly has not been reached.
const USUAL: f64 = 0.04;
/// Below this a recipe that names no depth plainly means grey or a pale blue.
const MEANT_PALE: f64 = 0.015;
/// Share of the dye of a part that makes it the dye of that part, and not one of a mixed shade.
const MAIN: f64 = 0.8;

/// What the reference data or the screen colour makes of a dye, and where it is written.
fn hint(material: &Material) -> Option<(&'static str, Place)> {
    if let Some(dye) = material.dye {
        if dye.black.as_ref().is_some_and(|black| black.value) {
            return Some(("black", material.place));
        }
        return dye.turquoise.as_ref().is_some_and(|blue| blue.value).then_some(("turquoise", material.place));
    }
    let ([r, g, b], place) = material.colour?;
    let lab = Lab::from(Rgb::from_bytes(r, g, b));
    (lab.l < BLACK_LIGHTNESS && Lch::from(lab).c < BLACK_CHROMA).then_some(("black", place))
}

/// CIELAB lightness and chroma below which a screen colour is a black.
const BLACK_LIGHTNESS: f64 = 16.0;
const BLACK_CHROMA: f64 = 8.0;

/// A brush or a block covers nobody knows how much of the cloth.
fn over_a_known_area(context: &Context<'_>, dyeing: &Dyeing) -> bool {
    match dyeing.medium {
        Medium::Bath(_) => true,
        Medium::Cloth => dyeing.laid.iter().all(|place| {
            context.step_at(*place).is_some_and(|step| {
                !step.zones.is_empty() && step.verb.is_some_and(|verb| !matches!(verb.name, "print" | "brush"))
            })
        }),
    }
}

/// Dry weight that shares the dye, kg.
fn dry(context: &Context<'_>, dyeing: &Dyeing) -> Option<Interval> {
    match dyeing.medium {
        Medium::Cloth => Some(dyeing.zone_then.as_ref()?.dry.value),
        Medium::Bath(bath) => {
            let mut goods: Vec<_> = context
                .dyeings()
                .filter(|other| other.medium == Medium::Bath(bath) && other.dye == dyeing.dye)
                .map(|other| other.goods)
                .collect();
            goods.sort_unstable();
            goods.dedup();
            if dyeing.lot.is_some() {
                return None;
            }
            let masses: Option<Vec<Interval>> =
                goods.into_iter().map(|id| Some(context.goods(id)?.dry_mass.as_ref()?.value)).collect();
            masses.map(|masses| masses.into_iter().sum())
        }
    }
}
