//! A bottle that fizzes with its lid on.

use crate::bench::{grams, litres};
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_quantity::Place;
use tenter_rehearse::{Contents, Substances};
use tenter_resolve::recipe::Vessel;

pub(crate) const RULE: Rule = Rule {
    name: "gas-in-closed-vessel",
    summary: "Acid and carbonate together in a vessel that is shut: gas builds up.",
    group: Group::People,
    level: Level::Error,
    since: "1",
    page: include_str!("gas_in_closed_vessel.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let mut told = Vec::new();
    let substances = &context.rehearsal.substances;
    for frame in &context.rehearsal.frames {
        for liquor in frame.liquors.iter().filter(|liquor| !liquor.gone) {
            let Some(id) = liquor.vessel.filter(|id| !told.contains(id)) else { continue };
            let Some(vessel) = context.recipe.vessels.get(id.0) else { continue };
            let Some(shut) = shut(context, vessel) else { continue };
            let gas = carbon_dioxide(substances, &liquor.contents);
            if gas < WORTH_TELLING {
                continue;
            }
            told.push(id);
            let parts = |wanted: fn(&tenter_rehearse::Substance) -> bool| {
                liquor
                    .contents
                    .parts
                    .iter()
                    .find(|(id, mass)| mass.value.best > 0.0 && substances.get(*id).is_some_and(wanted))
            };
            let acid = parts(|one| one.acid.best > 0.0);
            let soda = parts(|one| carbonate(one) > 0.0);
            let (Some((acid, acid_mass)), Some((soda, soda_mass))) = (acid, soda) else { continue };
            let (acid, soda) = (context.material(*acid), context.material(*soda));
            let mut message = format!(
                "{} of {} and {} of {} stand together in {}, which is shut: up to {} of carbon dioxide comes off",
                grams(acid_mass.value),
                acid.name,
                grams(soda_mass.value),
                soda.name,
                vessel.name.text,
                litres(gas)
            );
            if let Some(holds) = &vessel.holds {
                message.push_str(&format!(", and it holds {}", holds.show()));
            }
            found.push(
                Finding::new(&RULE, frame.place, message)
                    .note(shut, "shut by this")
                    .figure(acid_mass)
                    .figure(soda_mass)
                    .help("A shut vessel can burst. Bring acid and carbonate together in an open tub, a little at a time, or keep them in two vessels."),
            );
        }
    }
}

/// Where it says that a vessel is shut: its line `closed`, or its own name.
fn shut(context: &Context<'_>, vessel: &Vessel) -> Option<Place> {
    let open = |place: &Place| {
        let line = context.text(*place).to_lowercase();
        line.split_whitespace().any(|word| matches!(word, "no" | "never" | "not" | "open"))
    };
    match vessel.closed {
        Some(place) if open(&place) => None,
        Some(place) => Some(place),
        None => {
            let name = vessel.name.text.to_lowercase();
            let says = name.split([' ', '-']).any(|word| matches!(word, "sealed" | "closed" | "stoppered" | "capped"));
            says.then_some(vessel.name.place)
        }
    }
}

/// Carbonate in one kg, mol.
fn carbonate(one: &tenter_rehearse::Substance) -> f64 {
    one.ions.as_ref().map_or(0.0, |ions| ions.carbonate)
}

/// Carbon dioxide that can come off, m³ at 25 °C and 101 325 Pa: the carbonate, or the part of it that the acid there is
/// can turn into gas; what stays dissolved is not taken off. V = n·R·T/p, R = 8.314 462 618 J/(mol·K) (CODATA 2018).
fn carbon_dioxide(substances: &Substances, contents: &Contents) -> f64 {
    let moles: f64 =
        contents.parts.iter().filter_map(|(id, mass)| Some(mass.value.best * carbonate(substances.get(*id)?))).sum();
    let base = substances.base(contents).best;
    let acid = substances.acid(contents).best;
    if moles <= 0.0 || base <= 0.0 || acid <= 0.0 {
        return 0.0;
    }
    moles * (acid / base).min(1.0) * GAS_CONSTANT * 298.15 / 101_325.0
}

/// J/(mol·K), CODATA 2018.
const GAS_CONSTANT: f64 = 8.314_462_618;
/// Gas below which a bottle hardly notices, m³: 50 mL.
const WORTH_TELLING: f64 = 5e-5;
