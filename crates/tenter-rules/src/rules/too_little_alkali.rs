//! Less alkali than the dye laid on needs.

use crate::bench::{buffered, grams, grams_per_litre, number};
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_quantity::{Figure, Interval, Place};
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
    let mut told: Vec<Told> = Vec::new();
    for dyeing in context.dyeings() {
        let cellulose = context.share_of(dyeing.goods, FibreFamily::Cellulose).is_some_and(|share| share >= 0.5);
        if !cellulose || !context.is_reactive(dyeing.dye) || dyeing.base.high <= 0.0 {
            continue;
        }
        // Steam makes soda of bicarbonate: two of it give one.
        let soda = if dyeing.steamed || (dyeing.medium == Medium::Cloth && buffered(dyeing)) {
            dyeing.base.scale(0.5 * SODA_ASH_MOLAR_MASS)
        } else {
            dyeing.usable.scale(SODA_ASH_MOLAR_MASS)
        };
        let finding = match dyeing.medium {
            Medium::Cloth => on_cloth(context, dyeing, soda),
            Medium::Bath(_) => in_bath(context, dyeing, soda),
        };
        let Some((finding, shortfall)) = finding else { continue };
        // One weak soak is one mistake, however many bottles and zones it lets down: the worst is told.
        let from = alkali_lines(context, dyeing);
        match told
            .iter_mut()
            .find(|told| told.finding.place == finding.place || (!from.is_empty() && told.from == from))
        {
            Some(told) if told.shortfall <= shortfall => told.also(finding.place),
            Some(told) => {
                let before = std::mem::replace(&mut told.finding, finding);
                told.shortfall = shortfall;
                told.also(before.place);
            }
            None => told.push(Told { finding, shortfall, from, others: Vec::new() }),
        }
    }
    for Told { mut finding, others, .. } in told {
        for place in others {
            if place != finding.place {
                finding = finding.note(place, "too little here as well");
            }
        }
        found.push(finding);
    }
}

/// A shortage, with the lines its alkali comes from and the other lines that lay dye on it.
struct Told {
    finding: Finding,
    shortfall: f64,
    from: Vec<Place>,
    others: Vec<Place>,
}

impl Told {
    fn also(&mut self, place: Place) {
        if place != self.finding.place && !self.others.contains(&place) {
            self.others.push(place);
        }
    }
}

/// The lines that bring the alkali a dye meets.
fn alkali_lines(context: &Context<'_>, dyeing: &Dyeing) -> Vec<Place> {
    let mut lines: Vec<Place> = contents(dyeing)
        .filter(|(id, _)| context.material(*id).role() == tenter_reference::Role::Alkali)
        .filter_map(|(_, figure)| figure.places().first().copied())
        .collect();
    lines.sort();
    lines.dedup();
    lines
}

/// What is with the dye at the moment that decides.
fn contents(dyeing: &Dyeing) -> impl Iterator<Item = &(tenter_resolve::recipe::MaterialId, Figure)> {
    let cloth = dyeing.zone_then.as_ref().map(|zone| &zone.contents);
    cloth.or(dyeing.bath_then.as_ref().map(|bath| &bath.contents)).into_iter().flat_map(|contents| &contents.parts)
}

/// Soda ash for dye on the cloth, g for g: below it the dye's own acid takes the pH down while it reacts.
const RATIO: f64 = 1.0;
/// The trade gives at least this; between the two it is advice.
const USUAL_RATIO: f64 = 1.5;
/// The same for what is steamed: heat does the rest. Print pastes have half as much bicarbonate as dye and more.
const STEAMED_RATIO: f64 = 0.18;
/// The same for soda with more bicarbonate, which holds the pH: four parts to one by the spoon are a third of the dye's weight.
const BUFFERED_RATIO: f64 = 0.4;
/// Half-width of the dye laid, as a share, beyond which only the most favourable reading counts.
const UNSURE: f64 = 0.6;
/// Share of the usual strength of a bath below which it is told.
const BATH_SHARE: f64 = 0.6;

fn on_cloth(context: &Context<'_>, dyeing: &Dyeing, soda: Interval) -> Option<(Finding, f64)> {
    // Nothing but bicarbonate is another rule's business; what is known only roughly is no ground for a complaint.
    let bicarbonate_only = soda.best <= 0.0 && dyeing.base.best > 0.0;
    if dyeing.all_dye.best <= 0.0 || bicarbonate_only {
        return None;
    }
    let unsure = dyeing.all_dye.relative_spread() > UNSURE;
    let ratio = if unsure {
        // The most favourable reading must fall short.
        soda.high / dyeing.all_dye.low.max(f64::MIN_POSITIVE)
    } else {
        soda.best / dyeing.all_dye.best
    };
    if unsure && ratio >= RATIO {
        return None;
    }
    let wanted = if dyeing.steamed {
        STEAMED_RATIO
    } else if buffered(dyeing) {
        BUFFERED_RATIO
    } else {
        USUAL_RATIO
    };
    // Between the two what is enough by the most favourable reading is not worth a word.
    let favourable = soda.high / dyeing.all_dye.low.max(f64::MIN_POSITIVE);
    if ratio >= wanted || (!dyeing.steamed && ratio >= RATIO && favourable >= wanted) {
        return None;
    }
    let zone = context.zone_name(dyeing.goods, dyeing.zone);
    // Enough for the most dye and the least soda there may be.
    let missing = crate::bench::weighable(dyeing.all_dye.high * wanted - soda.low);
    let finding = Finding::new(
        &RULE,
        context.laid_at(dyeing),
        format!(
            "{zone}: {} of dye with {} of soda ash, {} g for each gram; {wanted} g is the least the trade gives",
            grams(dyeing.all_dye),
            grams(soda),
            finely(ratio)
        ),
    )
    .level(if dyeing.steamed || ratio < RATIO { Level::Warning } else { Level::Advice })
    .figure(&dyeing.mass)
    .help(format!(
        "Bring about {missing} more soda ash there, for all pieces together: a stronger soak, a wetter cloth, soda strewn over it or put into the bottle. Or lay less dye."
    ));
    Some((with_alkali(context, dyeing, finding), ratio / wanted))
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
    let enough_for_dye =
        soda.best / dyeing.all_dye.best.max(f64::MIN_POSITIVE) >= 2.0 * USUAL_RATIO && strength.best >= 5.0;
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
    for (id, figure) in contents(dyeing) {
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

/// To two places below one.
fn finely(ratio: f64) -> String {
    if ratio < 1.0 {
        tenter_quantity::show_number(Interval::exact(libm::round(ratio * 100.0) / 100.0))
    } else {
        number(ratio)
    }
}
