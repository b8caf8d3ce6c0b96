//! What parts of the goods and liquors are called.

use tenter_rehearse::{Face, GoodsState, LiquorName, LiquorState, ZoneKey};
use tenter_resolve::Recipe;

use crate::pick::Picked;

/// The goods, with the lot where there are lots.
pub fn goods(recipe: &Recipe, state: &GoodsState) -> String {
    let name = recipe.goods.get(state.goods.0).map_or("goods", |goods| &goods.name.text);
    match state.lot {
        Some(lot) => format!("{name}, lot {lot}"),
        None => name.to_owned(),
    }
}

/// The zone of a layout.
pub fn zone(recipe: &Recipe, key: ZoneKey) -> Option<String> {
    let (layout, index) = key.layout?;
    Some(recipe.layouts.get(layout.0)?.zones.get(index)?.name.text.to_string())
}

/// The side, where the sides are worked by themselves.
pub fn face(key: ZoneKey) -> Option<&'static str> {
    key.face.map(|face| match face {
        Face::Front => "front",
        Face::Back => "back",
    })
}

/// A part of the goods in words; empty for the whole piece.
pub fn part(recipe: &Recipe, key: ZoneKey) -> String {
    match (zone(recipe, key), face(key)) {
        (Some(zone), Some(face)) => format!("{zone} {face}"),
        (Some(zone), None) => zone,
        (None, Some(face)) => face.to_owned(),
        (None, None) => String::new(),
    }
}

/// Several parts of one goods in words, as short as can be: empty for all of it, a side for all of a side.
pub fn parts(recipe: &Recipe, goods: &GoodsState, keys: &[ZoneKey]) -> String {
    if keys.len() == goods.zones.len() {
        return String::new();
    }
    let of_side = |face: Face| goods.zones.iter().filter(move |zone| zone.key.face == Some(face)).count();
    for (side, word) in [(Face::Front, "front"), (Face::Back, "back")] {
        if !keys.is_empty() && keys.iter().all(|key| key.face == Some(side)) && keys.len() == of_side(side) {
            return word.to_owned();
        }
    }
    keys.iter().map(|key| part(recipe, *key)).collect::<Vec<_>>().join(", ")
}

/// A mix by its name, the bath of a vessel, or a bath written in a step.
pub fn liquor(picked: &Picked<'_>, liquor: &LiquorState) -> String {
    let recipe = &picked.recipe;
    let vessel = |id: tenter_resolve::recipe::VesselId| recipe.vessels.get(id.0).map(|vessel| &*vessel.name.text);
    match liquor.name {
        LiquorName::Mix(id) => recipe.mixes.get(id.0).map_or("mix", |mix| &mix.name.text).to_owned(),
        LiquorName::Vessel(id) => vessel(id).map_or_else(|| "bath".to_owned(), |name| format!("bath in {name}")),
        LiquorName::InPlace(_) => match liquor.vessel.and_then(vessel) {
            Some(name) => format!("bath in {name}"),
            None => "bath".to_owned(),
        },
    }
}
