//! What a name stands for, in a few lines.

use tenter_resolve::Recipe;

use crate::analysis::FileAnalysis;
use crate::hints::percent;
use crate::names::SymbolKind;
use crate::navigation::Found;
use crate::state::{frame_at, goods_lines, mix_ph, zone_lines};
use crate::types::page;

/// The words on a name.
pub(super) fn words(analysis: &FileAnalysis, found: &Found<'_>) -> String {
    let symbol = found.symbol;
    let mut parts = vec![format!("**{}** ({})", symbol.name, symbol.kind.word())];
    if symbol.kind == SymbolKind::Reference {
        parts.clear();
    }
    let told = found.view.recipe().map(|recipe| of_kind(analysis, found, recipe)).unwrap_or_default();
    parts.extend(told);
    parts.extend(now(found));
    let entry = symbol.entry.or_else(|| declared_entry(found));
    parts.extend(entry.map(page));
    if let Some(declared) = &found.declared
        && declared.path != analysis.file.path
    {
        parts.push(format!("from {}", declared.path));
    }
    parts.join("\n\n")
}

/// On a step: how the goods or the zone named there stand after it.
fn now(found: &Found<'_>) -> Option<String> {
    let place = found.occurrence.place;
    let (step, frame) = frame_at(found.view, place.block, place.start)?;
    let (recipe, rehearsal) = (found.view.recipe()?, found.view.rehearsal()?);
    let lines = match found.symbol.kind {
        SymbolKind::Goods => goods_lines(recipe, rehearsal, frame, step),
        SymbolKind::Zone => {
            let used = step.zones.iter().find(|used| used.place.start <= place.start && place.end <= used.place.end)?;
            zone_lines(rehearsal, frame, used.zone)
        }
        _ => Vec::new(),
    };
    (!lines.is_empty()).then(|| format!("After this step:\n\n{}", lines.join("\n")))
}

fn declared_entry(found: &Found<'_>) -> Option<tenter_reference::Entry<'static>> {
    let declared = found.symbol.declared?;
    let material = found.view.recipe()?.materials.iter().find(|material| material.declared == Some(declared))?;
    material.dye.map(tenter_reference::Entry::Dye).or(material.reference.map(tenter_reference::Entry::Material))
}

fn of_kind(analysis: &FileAnalysis, found: &Found<'_>, recipe: &Recipe) -> Vec<String> {
    let sheet = found.view.sheet;
    let written = |place| analysis.written(sheet, place);
    let declared = found.symbol.declared;
    let mut parts = Vec::new();
    match found.symbol.kind {
        SymbolKind::Goods => {
            if let Some(goods) = recipe.goods.iter().find(|goods| Some(goods.name.place) == declared) {
                let mut lines = vec![format!("pieces: {}", goods.pieces.show())];
                lines.extend(goods.dry_mass.iter().map(|mass| format!("dry weight: {}", mass.derivation(&written))));
                let fibres: Vec<String> =
                    goods.fibres.iter().map(|fibre| format!("{} {}", percent(&fibre.share), fibre.name.text)).collect();
                if !fibres.is_empty() {
                    lines.push(format!("fibre: {}", fibres.join(", ")));
                }
                parts.push(lines.join("  \n"));
            }
        }
        SymbolKind::Mix => {
            let at = recipe.mixes.iter().position(|mix| Some(mix.name.place) == declared);
            if let Some(total) = recipe.totals.mixes.iter().find(|total| Some(total.mix.0) == at) {
                let mut lines = Vec::new();
                lines.extend(total.volume.iter().map(|it| format!("makes {}", it.derivation(&written))));
                if total.times > 1 {
                    lines.push(format!("made {} times", total.times));
                }
                if let Some((_, ph)) = found.view.rehearsal().and_then(|rehearsal| mix_ph(rehearsal, total.mix)) {
                    lines.push(format!("pH {:.1} ({:.1} to {:.1})", ph.best, ph.low, ph.high));
                }
                lines.extend(total.drawn.iter().map(|it| format!("drawn: {}", it.show())));
                lines.extend(total.carried.iter().map(|it| format!("carried off by the goods: {}", it.show())));
                lines.extend(total.left.iter().map(|it| format!("left over: {}", it.show())));
                lines.extend(total.used_share.iter().map(|it| format!("used: {}", percent(it))));
                parts.push(lines.join("  \n"));
                let held: Vec<String> = total
                    .ingredients
                    .iter()
                    .filter_map(|(id, mass)| {
                        let material = recipe.materials.get(id.0)?;
                        Some(format!("- {} {}", mass.as_ref()?.show(), material.name))
                    })
                    .collect();
                if !held.is_empty() {
                    parts.push(held.join("\n"));
                }
            }
        }
        SymbolKind::Dye | SymbolKind::Chemical | SymbolKind::Reference => {
            let name = found.symbol.name.as_str();
            let at = recipe.materials.iter().position(|material| {
                declared.map_or_else(|| *material.name == *name, |place| material.declared == Some(place))
            });
            if let Some(total) = recipe.totals.materials.iter().find(|total| Some(total.material.0) == at) {
                let mut lines = Vec::new();
                if let Some(figure) = total.mass.as_ref().or(total.volume.as_ref()) {
                    lines.push(format!("in all: {}", figure.derivation(&written)));
                }
                lines.extend(total.owg.iter().map(|owg| format!("on weight of goods: {}", percent(owg))));
                lines.extend(total.per_piece.iter().map(|it| format!("a piece: {}", it.show())));
                lines.extend(total.cost.iter().map(|cost| format!("cost: {}", cost.total.show())));
                parts.push(lines.join("  \n"));
            }
        }
        SymbolKind::Zone => {
            let zone =
                recipe.layouts.iter().flat_map(|layout| &layout.zones).find(|zone| Some(zone.name.place) == declared);
            parts.extend(
                zone.and_then(|zone| zone.share.as_ref()).map(|share| format!("share of the area: {}", percent(share))),
            );
        }
        SymbolKind::Layout => {
            if let Some(layout) = recipe.layouts.iter().find(|layout| Some(layout.name.place) == declared) {
                let zones: Vec<String> = layout
                    .zones
                    .iter()
                    .map(|zone| match &zone.share {
                        Some(share) => format!("- {} {}", percent(share), zone.name.text),
                        None => format!("- {}", zone.name.text),
                    })
                    .collect();
                parts.push(zones.join("\n"));
            }
        }
        SymbolKind::Vessel => {
            if let Some(vessel) = recipe.vessels.iter().find(|vessel| Some(vessel.name.place) == declared) {
                let mut lines = Vec::new();
                lines.extend(vessel.holds.iter().map(|it| format!("holds {}", it.show())));
                lines.extend(vessel.material.iter().map(|it| it.text.to_string()));
                lines.extend(vessel.rated.iter().map(|it| format!("stands {}", it.show())));
                parts.push(lines.join(", "));
            }
        }
        SymbolKind::Steps => {
            let group = recipe.groups.iter().find(|group| group.name.as_ref().map(|name| name.place) == declared);
            parts.extend(group.map(|group| format!("{} steps", group.steps.len())));
        }
        SymbolKind::Recipe | SymbolKind::Variant => {}
    }
    parts.retain(|part| !part.is_empty());
    parts
}
