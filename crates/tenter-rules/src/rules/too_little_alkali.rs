//! Less alkali than the dye laid on needs.

use crate::bench::{grams, grams_per_litre, number};
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_quantity::Interval;
use tenter_reference::FibreFamily;
use tenter_rehearse::{Dyeing, Medium, SODA_ASH_MOLAR_MASS};

pub(crate) const RULE: Rule = Rule {
    name: "too-little-alkali",
    summary: "Less alkali with the dye than it needs to fix.",
    group: Group::Alkali,
    level: Level::Warning,
    since: "1",
    page: include_str!("too_little_alkali.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    let mut told: Vec<(tenter_quantity::Place, f64)> = Vec::new();
    for dyeing in context.dyeings() {
        let cellulose = context.share_of(dyeing.goods, FibreFamily::Cellulose).is_some_and(|share| share >= 0.5);
        if !cellulose || !context.is_reactive(dyeing.dye) || dyeing.base.high <= 0.0 || dyeing.steamed {
            continue;
        }
        let soda = dyeing.usable.scale(SODA_ASH_MOLAR_MASS);
        let finding = match dyeing.medium {
            Medium::Cloth => on_cloth(context, dyeing, soda),
            Medium::Bath(_) => in_bath(context, dyeing, soda),
        };
        let Some((finding, shortfall)) = finding else { continue };
        // The same line may lay dye on several zones: the worst is told.
        match told.iter().position(|(place, _)| *place == finding.place) {
            Some(at) if told[at].1 <= shortfall => {}
            Some(at) => {
                told[at].1 = shortfall;
                if let Some(have) = found.iter_mut().find(|have| have.rule == RULE.name && have.place == finding.place)
                {
                    *have = finding;
                }
            }
            None => {
                told.push((finding.place, shortfall));
                found.push(finding);
            }
        }
    }
}

/// Soda ash for dye on the cloth, g for g.
const RATIO: f64 = 1.5;
/// Half-width of the dye laid, as a share, beyond which nothing is said.
const UNSURE: f64 = 0.6;
/// Share of the usual strength of a bath below which it is told.
const BATH_SHARE: f64 = 0.6;

fn on_cloth(context: &Context<'_>, dyeing: &Dyeing, soda: Interval) -> Option<(Finding, f64)> {
    // Nothing but bicarbonate is another rule's business; what is known only roughly is no ground for a complaint.
    let bicarbonate_only = soda.best <= 0.0 && dyeing.base.best > 0.0;
    if dyeing.all_dye.best <= 0.0 || bicarbonate_only || dyeing.all_dye.relative_spread() > UNSURE {
        return None;
    }
    let ratio = soda.best / dyeing.all_dye.best;
    if ratio >= RATIO {
        return None;
    }
    let zone = context.zone_name(dyeing.goods, dyeing.zone);
    let missing = Interval::exact(dyeing.all_dye.best * RATIO - soda.best);
    let finding = Finding::new(
        &RULE,
        context.laid_at(dyeing),
        format!(
            "{zone}: {} of dye with {} of soda ash, {} g for each gram; {RATIO} g is the least that serves",
            grams(dyeing.all_dye),
            grams(soda),
            number(ratio)
        ),
    )
    .figure(&dyeing.mass)
    .help(format!(
        "Bring {} more soda ash there: a stronger soak, a wetter cloth, soda strewn over it or put into the bottle. Or lay less dye.",
        grams(missing)
    ));
    Some((with_alkali(context, dyeing, finding), ratio / RATIO))
}

fn in_bath(context: &Context<'_>, dyeing: &Dyeing, soda: Interval) -> Option<(Finding, f64)> {
    let bath = dyeing.bath_then.as_ref()?;
    let volume = bath.volume.as_ref()?.value;
    let goods = context.goods(dyeing.goods)?.dry_mass.as_ref()?.value;
    if volume.best <= 0.0 || goods.best <= 0.0 {
        return None;
    }
    let depth = dyeing.all_dye.best / goods.best;
    let usual = if depth <= 0.0125 {
        5.0
    } else if depth <= 0.045 {
        10.0
    } else {
        20.0
    };
    // A short bath needs no more in all than the cloth would: strength times ratio says enough.
    let strength = soda / volume;
    let enough_for_dye = soda.best / dyeing.all_dye.best.max(f64::MIN_POSITIVE) >= 2.0 * RATIO && strength.best >= 5.0;
    if strength.best >= usual * BATH_SHARE || (enough_for_dye && depth > 0.045) {
        return None;
    }
    let finding = Finding::new(
        &RULE,
        context.laid_at(dyeing),
        format!(
            "the bath has {} of soda ash; for {}% of dye on the goods {usual} g/L is usual",
            grams_per_litre(strength),
            number(depth * 100.0)
        ),
    )
    .figure(&dyeing.mass)
    .help(format!("Add soda ash until the bath has {usual} g/L, in parts, once the dye is level."));
    Some((with_alkali(context, dyeing, finding), strength.best / usual))
}

fn with_alkali(context: &Context<'_>, dyeing: &Dyeing, mut finding: Finding) -> Finding {
    let then =
        dyeing.zone_then.as_ref().map(|zone| &zone.contents).or(dyeing.bath_then.as_ref().map(|bath| &bath.contents));
    for (id, figure) in then.into_iter().flat_map(|contents| &contents.parts) {
        let material = context.material(*id);
        if material.role() == tenter_reference::Role::Alkali {
            if let Some(place) = figure.places().first() {
                finding = finding.note(*place, format!("brings the {}", material.name));
            }
            finding = finding.figure(figure);
        }
    }
    finding
}
