//! What a step did: every figure of the rehearsal that it changed.

use std::sync::Arc;

use tenter_quantity::Figure;
use tenter_rehearse::{Frame, LiquorName, ZoneState};
use tenter_resolve::recipe::{Ingredient, LiquorKind, Step};

use crate::account::{names, words};
use crate::explain::figures::{Page, Story};

/// Everything measured out in a step.
pub fn ingredients(step: &Step) -> impl Iterator<Item = &Ingredient> {
    let bath = match step.liquor.as_ref().map(|liquor| &liquor.kind) {
        Some(LiquorKind::Bath(bath)) => bath.as_slice(),
        _ => &[],
    };
    step.applied.iter().chain(&step.with).chain(bath)
}

/// Adds what the step changed, the last time it was done.
pub fn after(page: &mut Page<'_>, step: &Step) {
    let frames = &page.rehearsal.frames;
    let Some(at) = frames.iter().rposition(|frame| frame.place == step.place) else { return };
    let Some(frame) = frames.get(at) else { return };
    let before = at.checked_sub(1).and_then(|at| frames.get(at));
    page.figure("time taken", Some(&frame.time));
    let (elapsed, hands_on) = (words::clock(frame.end.elapsed.best), words::clock(frame.end.hands_on.best));
    page.stories.push(Story::Words(format!("clock after it: {elapsed}, {hands_on} of it work")));
    liquors(page, frame, before);
    goods(page, frame, before);
}

fn liquors(page: &mut Page<'_>, frame: &Frame, before: Option<&Frame>) {
    for (at, liquor) in frame.liquors.iter().enumerate().filter(|(_, liquor)| !liquor.gone) {
        let had = before.and_then(|before| before.liquors.get(at));
        if had.is_some_and(|had| Arc::ptr_eq(had, liquor)) {
            continue;
        }
        let name = names::liquor(page.picked, liquor);
        changed(page, format!("{name}, volume"), liquor.volume.as_ref(), had.and_then(|had| had.volume.as_ref()));
        let warmth = had.map(|had| &had.temperature);
        changed(page, format!("{name}, temperature"), Some(&liquor.temperature), warmth);
        match (had, liquor.name) {
            (None, LiquorName::Mix(id)) => page.ph_of(id),
            _ => {
                if let Some(acidity) = liquor.acidity(&page.rehearsal.substances) {
                    page.stories.push(Story::Words(format!("{name}: {}", words::ph(acidity))));
                }
            }
        }
    }
}

fn goods(page: &mut Page<'_>, frame: &Frame, before: Option<&Frame>) {
    for (at, goods) in frame.goods.iter().enumerate() {
        let had = before.and_then(|before| before.goods.get(at).map(|goods| (before, goods)));
        for zone in &goods.zones {
            let held = page.rehearsal.as_held(frame, goods, zone);
            let then =
                had.and_then(|(before, goods)| Some(page.rehearsal.as_held(before, goods, goods.zone(zone.key)?)));
            let part = names::part(&page.picked.recipe, zone.key);
            let gap = if part.is_empty() { "" } else { ", " };
            let name = format!("{}{gap}{part}", names::goods(&page.picked.recipe, goods));
            self::zone(page, &name, &held, then.as_deref());
        }
    }
}

fn zone(page: &mut Page<'_>, name: &str, zone: &ZoneState, then: Option<&ZoneState>) {
    let water = then.and_then(|then| then.contents.water.as_ref());
    changed(page, format!("water in {name}"), zone.contents.water.as_ref(), water);
    let (alkali, had) = (page.rehearsal.alkali(zone), then.and_then(|then| page.rehearsal.alkali(then)));
    changed(page, format!("alkali, as soda ash, in {name}"), alkali.as_ref(), had.as_ref());
    changed(page, format!("temperature of {name}"), Some(&zone.temperature), then.map(|then| &then.temperature));
    let table = &page.rehearsal.substances;
    let ph = |zone: &ZoneState| zone.acidity(table).map(words::ph);
    let now = ph(zone);
    if now != then.and_then(ph)
        && let Some(acidity) = zone.acidity(table)
    {
        let ions = super::ph::totals(acidity);
        page.stories.push(Story::Words(format!(
            "{name}: {} from {ions} mol in a kg of water at {:.0} °C",
            words::ph(acidity),
            acidity.temperature - 273.15
        )));
    }
    for (id, mass) in zone.contents.parts.iter().filter(|(id, mass)| table.is_dye(*id) && mass.value.high > 1e-6) {
        let dye = page.picked.recipe.materials.get(id.0).map_or("dye", |material| &material.name);
        changed(page, format!("{dye} on {name}"), Some(mass), then.and_then(|then| then.contents.part(*id)));
        if let Some(reaction) = page.rehearsal.reaction(zone, *id).filter(|_| !zone.powder) {
            let hours = reaction.equivalent / 3600.0;
            page.stories.push(Story::Words(format!(
                "{name}: {dye} has gone {}, having reacted as it would in {} h at the reference temperature of its class",
                words::batch(&reaction),
                tenter_quantity::show_number(hours)
            )));
        }
    }
}

/// Adds a figure unless it is the very one from before the step.
fn changed(page: &mut Page<'_>, label: String, now: Option<&Figure>, then: Option<&Figure>) {
    let same = now.zip(then).is_some_and(|(now, then)| {
        Arc::ptr_eq(&now.origin, &then.origin) || (now.value == then.value && now.show() == then.show())
    });
    if !same {
        page.figure(label, now);
    }
}
