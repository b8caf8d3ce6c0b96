//! How goods and liquors stand after a step, in words.

use tenter_quantity::{Interval, show_number};
use tenter_rehearse::{Frame, GoodsState, Rehearsal, SODA_ASH_MOLAR_MASS, ZoneState, clock_line, zone_line};
use tenter_resolve::Recipe;
use tenter_resolve::recipe::{MixId, Step, ZoneRef};

use crate::analysis::SheetView;

/// The step whose line holds a place of a block, and how everything stands after it.
pub(crate) fn frame_at(view: SheetView<'_>, block: u32, at: u32) -> Option<(&Step, &Frame)> {
    let covers = |step: &&Step| step.place.block == block && step.place.start <= at && at <= step.place.end;
    let step = view.recipe()?.steps().map(|(_, step)| step).find(covers)?;
    Some((step, view.rehearsal()?.frame_at(step.place)?))
}

/// A line on each part of the goods a step is about.
pub(crate) fn goods_lines(recipe: &Recipe, rehearsal: &Rehearsal, frame: &Frame, step: &Step) -> Vec<String> {
    let mut lines = Vec::new();
    for goods in concerned(frame, step) {
        for zone in &goods.zones {
            let name = zone_name(recipe, zone);
            lines.push(format!("- {name} {}", zone_line(rehearsal, zone)));
        }
    }
    if !lines.is_empty() {
        lines.push(format!("\nafter {}", clock_line(&frame.end)));
    }
    lines
}

/// What a zone holds after a step.
pub(crate) fn zone_lines(rehearsal: &Rehearsal, frame: &Frame, zone: ZoneRef) -> Vec<String> {
    let ZoneRef::Of(layout, index) = zone else { return Vec::new() };
    let goods = frame.goods.iter().flat_map(|goods| &goods.zones);
    goods.filter(|state| state.key.layout == Some((layout, index))).map(|state| zone_line(rehearsal, state)).collect()
}

fn concerned<'a>(frame: &'a Frame, step: &'a Step) -> impl Iterator<Item = &'a GoodsState> {
    let all = step.goods.is_empty();
    frame.goods.iter().map(|goods| &**goods).filter(move |state| all || step.goods.contains(&state.goods))
}

fn zone_name(recipe: &Recipe, zone: &ZoneState) -> String {
    let face = match zone.key.face {
        Some(tenter_rehearse::Face::Front) => " front",
        Some(tenter_rehearse::Face::Back) => " back",
        None => "",
    };
    let named = zone.key.layout.and_then(|(layout, index)| {
        recipe.layouts.get(layout.0)?.zones.get(index).map(|zone| zone.name.text.to_string())
    });
    match named {
        Some(name) => format!("{name}{face}"),
        None if face.is_empty() => "the whole piece".to_owned(),
        None => format!("the{face}"),
    }
}

/// What the goods hold after a step, short: `0.65 L/kg · 39 g soda/kg`.
pub(crate) fn short(rehearsal: &Rehearsal, frame: &Frame, step: &Step) -> Option<String> {
    let mut states = concerned(frame, step);
    let goods = states.next()?;
    // Several lots or goods at once have no one state to tell.
    if states.any(|other| other.goods != goods.goods) {
        return None;
    }
    let water = goods.water_ratio();
    if water.best <= 0.0 {
        return None;
    }
    let alkali: Interval =
        goods.zones.iter().map(|zone| rehearsal.substances.usable_alkali(&zone.contents)).sum::<Interval>()
            * SODA_ASH_MOLAR_MASS
            * 1000.0;
    let wet = format!("{} L/kg", rough(water));
    let soda = alkali / goods.dry.value;
    Some(if soda.best >= 0.5 { format!("{wet} · {} g soda/kg", rough(soda)) } else { wet })
}

/// Two digits of the best value.
fn rough(value: Interval) -> String {
    let best: f64 = format!("{:.1e}", value.best).parse().unwrap_or(value.best);
    show_number(Interval::exact(best))
}

/// pH of a mix when made: `pH 11.4`.
pub(crate) fn mix_ph(rehearsal: &Rehearsal, mix: MixId) -> Option<(String, Interval)> {
    let acidity = rehearsal.mix(mix)?.acidity(&rehearsal.substances)?;
    Some((format!("pH {:.1}", acidity.ph.best), acidity.ph))
}
