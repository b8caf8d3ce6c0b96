//! Dye stock past its time.

use crate::context::Context;
use crate::finding::{Finding, Level, Note};
use crate::rule::{Group, Rule};
use tenter_quantity::standard::DAY;
use tenter_quantity::{Figure, Interval, Place, show};
use tenter_rehearse::EventKind;
use tenter_resolve::recipe::{LiquorKind, MixId};

pub(crate) const RULE: Rule = Rule {
    name: "stock-too-old",
    summary: "A dye stock without alkali, or a mix with a `keep for` line, is used after its time.",
    group: Group::Dye,
    level: Level::Warning,
    since: "1",
    page: include_str!("stock_too_old.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.troubled_steps() {
        return;
    }
    let mut told = Vec::new();
    let mut first: Option<usize> = None;
    for event in context.events() {
        // With alkali in it a bottle lives by another clock.
        let EventKind::Drawn { mix: id, age, keeps, alkali_with_dye: None, .. } = &event.kind else { continue };
        let Some(mix) = context.recipe.mixes.get(id.0).filter(|_| !told.contains(id)) else { continue };
        let chilled = chilled(context, *id);
        let (life, said) = match (&mix.keep, keeps) {
            (Some(keep), _) => (keep.value, Some(keep)),
            (None, Some(_)) if !reactive(context, *id) => continue,
            (None, Some(_)) if chilled.is_some() => (CHILLED, None),
            (None, Some(keeps)) => (*keeps, None),
            (None, None) => continue,
        };
        if age.value.best <= life.high * 1.001 {
            continue;
        }
        told.push(*id);
        // Stocks that stand through the same wait are one mistake.
        let same = first.and_then(|at| found.get_mut(at)).filter(|have| {
            have.figures.first().is_some_and(|other| (other.value.best / age.value.best - 1.0).abs() < SAME)
        });
        if let Some(have) = same {
            have.notes.push(Note { place: event.place, text: format!("{} is too old as well", mix.name.text) });
            continue;
        }
        first.get_or_insert(found.len());
        let old = old(age.value);
        let name = &mix.name.text;
        let message = match (said, chilled) {
            (Some(keep), _) => format!("{name} is {old} old here, and by its own line it keeps for {}", keep.show()),
            (None, Some(_)) => format!("{name} is {old} old here; chilled, such a stock keeps for 5 to 9 weeks"),
            (None, None) => format!("{name} is {old} old here; a stock of reactive dye keeps for {}", show(life, DAY)),
        };
        let finding = Finding::new(&RULE, event.place, message)
            .figure(age)
            .help("Water eats the reactive dye and the shade comes out pale. Make it fresh, keep it cold, or test it on a scrap first.");
        found.push(notes(finding, said, mix.made_by_step, chilled));
    }
}

fn notes(mut finding: Finding, said: Option<&Figure>, made: Option<Place>, chilled: Option<Place>) -> Finding {
    if let Some(keep) = said {
        finding = finding.noted(keep, "its own line");
    }
    if let Some(made) = made {
        finding = finding.note(made, "it is made here");
    }
    match chilled {
        Some(place) if said.is_none() => finding.note(place, "and kept cold here"),
        _ => finding,
    }
}

fn reactive(context: &Context<'_>, mix: MixId) -> bool {
    context.materials_of_mix(mix).iter().any(|(id, _)| context.is_reactive(*id))
}

/// The step that puts a mix in the cold.
fn chilled(context: &Context<'_>, mix: MixId) -> Option<Place> {
    context
        .steps()
        .filter(|step| step.verb.is_some_and(|verb| matches!(verb.name, "store" | "rest" | "hold" | "cool")))
        .filter(|step| {
            step.liquor.as_ref().is_some_and(|liquor| matches!(liquor.kind, LiquorKind::Mix(id) if id == mix))
        })
        .find(|step| step.temperature.as_ref().is_some_and(|temperature| temperature.value.best < COLD))
        .map(|step| step.place)
}

/// 8 °C in K.
const COLD: f64 = 281.15;
/// Five to nine weeks in s.
const CHILLED: Interval = Interval { low: 3_024_000.0, best: 4_233_600.0, high: 5_443_200.0 };
/// Share by which two ages may differ and count as one.
const SAME: f64 = 0.05;

/// An age; whole days where it is many.
fn old(age: Interval) -> String {
    let day = 86_400.0;
    let rounded = if age.best > 10.0 * day { Interval::exact(libm::round(age.best / day) * day) } else { age };
    show(rounded, DAY)
}
