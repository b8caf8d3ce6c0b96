//! The parts goods are divided into, and which of them a step means.

use std::sync::{Arc, OnceLock};

use tenter_quantity::{Figure, Interval};
use tenter_resolve::recipe::{LayoutId, Step, ZoneRef};

use crate::bench::Bench;
use crate::contents::Contents;
use crate::figures::{exact_share, portion, worked_share};
use crate::state::{Face, ZoneKey, ZoneState};

/// Parts of one goods that something is laid on, each with its share of it.
pub(crate) struct Target {
    pub state: usize,
    pub zones: Vec<(usize, Figure)>,
    /// Share of the whole amount that falls to these goods.
    pub share: Figure,
}

impl Bench<'_> {
    /// Divides goods by a layout (and by sides where the recipe works the back by itself). What they hold is spread evenly
    /// before it is divided: the parts of another layout do not lie where the new ones do.
    pub(crate) fn divide(&mut self, state: usize, layout: Option<LayoutId>) {
        let Some(goods) = self.goods.get(state).map(Arc::clone) else { return };
        let recipe = self.recipe;
        let zones = layout.and_then(|id| recipe.layouts.get(id.0)).map_or(&[][..], |layout| &layout.zones);
        let faces: &[Option<Face>] = if self.backs { &[Some(FACES[0]), Some(FACES[1])] } else { &[None] };
        let plain = zones.is_empty() && !self.backs;
        if plain || (goods.layout == layout && goods.zones.len() == faces.len() * zones.len().max(1)) {
            return;
        }
        let mut contents = Contents::default();
        for zone in &goods.zones {
            contents.add(zone.contents.clone());
        }
        let Some(whole) = goods.zones.first() else { return };
        let powder = goods.zones.iter().any(|zone| zone.powder);
        let said: f64 = zones.iter().filter_map(|zone| zone.share.as_ref()).map(|share| share.value.best).sum();
        let unsaid = zones.iter().filter(|zone| zone.share.is_none()).count();
        let rest = ((1.0 - said) / unsaid.max(1) as f64).max(0.0);
        // Shares that do not sum to the whole are complained of elsewhere; here they are taken as they relate.
        let sum = said + rest * unsaid as f64;
        let shares: Vec<(Option<(LayoutId, usize)>, Figure)> = if zones.is_empty() {
            vec![(None, exact_share(1.0, "share of the goods", "the whole of them"))]
        } else {
            zones
                .iter()
                .enumerate()
                .filter_map(|(at, zone)| {
                    let share = zone.share.clone().unwrap_or_else(|| {
                        exact_share(rest, "share of the zone", "what the others leave, in equal parts")
                    });
                    let share = if (sum - 1.0).abs() < 0.02 || sum <= 0.0 {
                        share
                    } else {
                        worked_share(
                            "{0} of the sum of the shares",
                            share.value * (1.0 / sum),
                            vec![("", share.clone())],
                        )
                    };
                    Some((Some((layout?, at)), share))
                })
                .collect()
        };
        let mut parts = Vec::with_capacity(shares.len() * faces.len());
        for (key, share) in &shares {
            for face in faces {
                let share = match face {
                    Some(_) => portion(share, &half()),
                    None => share.clone(),
                };
                parts.push(Arc::new(ZoneState {
                    key: ZoneKey { layout: *key, face: *face },
                    dry: portion(&goods.dry, &share),
                    contents: contents.share(&settled(&share)),
                    share,
                    temperature: whole.temperature.clone(),
                    loose: whole.loose,
                    decarbonated: whole.decarbonated,
                    powder,
                    spell: whole.spell,
                    acidity: OnceLock::new(),
                }));
            }
        }
        let keys: Vec<ZoneKey> = parts.iter().map(|zone| zone.key).collect();
        if let Some(goods) = self.goods_mut(state) {
            goods.zones = parts;
            goods.layout = layout;
        }
        self.accounts.divided(state, &keys);
    }

    /// The zones a step works on, with weights. Goods not yet divided as the zones say are divided now.
    pub(crate) fn targets(&mut self, step: &Step, liquid: bool) -> Vec<Target> {
        let wanted: Vec<ZoneRef> =
            step.zones.iter().map(|zone| zone.zone).filter(|zone| *zone != ZoneRef::Ice).collect();
        let layout = wanted.iter().find_map(|zone| match zone {
            ZoneRef::Of(layout, _) => Some(*layout),
            _ => None,
        });
        let sided = wanted.iter().any(|zone| matches!(zone, ZoneRef::Front | ZoneRef::Back));
        let working = self.working.clone();
        for state in &working {
            let now = self.goods.get(*state).and_then(|goods| goods.layout);
            if layout.is_some() && layout != now {
                self.divide(*state, layout);
            } else if sided && self.backs {
                self.divide(*state, now);
            }
        }
        let all: f64 = working.iter().filter_map(|at| self.goods.get(*at)).map(|goods| goods.dry.value.best).sum();
        let one = exact_share(1.0, "share of the goods", "the whole of them");
        let mut targets = Vec::with_capacity(working.len());
        for state in working {
            let Some(goods) = self.goods.get(state) else { continue };
            let share = if all > 0.0 && goods.dry.value.best < all * (1.0 - 1e-12) {
                exact_share(goods.dry.value.best / all, "share of these goods", "by weight")
            } else {
                one.clone()
            };
            let mut chosen: Vec<usize> = (0..goods.zones.len())
                .filter(|at| goods.zones.get(*at).is_some_and(|zone| means(&wanted, zone.key, liquid, goods.back_up)))
                .collect();
            if chosen.is_empty() {
                chosen = (0..goods.zones.len()).collect();
            }
            let sum: f64 = chosen.iter().filter_map(|at| goods.zones.get(*at)).map(|zone| zone.share.value.best).sum();
            let zones = chosen
                .iter()
                .filter_map(|at| {
                    let zone = goods.zones.get(*at)?;
                    let weight = if chosen.len() == 1 || sum <= 0.0 {
                        one.clone()
                    } else if (sum - 1.0).abs() < 1e-9 {
                        zone.share.clone()
                    } else {
                        let value = (zone.share.value * (1.0 / sum)).min(Interval::ONE);
                        worked_share("{0} of what is worked on", value, vec![("", zone.share.clone())])
                    };
                    Some((*at, weight))
                })
                .collect();
            targets.push(Target { state, zones, share });
        }
        targets
    }
}

/// A share without its spread: what was spread evenly before stays so, whatever the share; its spread counts once, in the
/// dry weight.
fn settled(share: &Figure) -> Figure {
    if share.value.is_exact() {
        return share.clone();
    }
    worked_share("{0}, best value", Interval::exact(share.value.best), vec![("", share.clone())])
}

/// Whether a zone is among those named. Zones of a layout share the front.
fn means(wanted: &[ZoneRef], key: ZoneKey, liquid: bool, back_up: bool) -> bool {
    if wanted.is_empty() {
        // Nothing said: powder falls on the side that lies up, liquor runs through.
        return liquid || key.face != Some(if back_up { Face::Front } else { Face::Back });
    }
    wanted.iter().any(|zone| match zone {
        ZoneRef::Front => key.face != Some(Face::Back),
        ZoneRef::Back => key.face != Some(Face::Front),
        ZoneRef::BothSides | ZoneRef::AllOver => true,
        ZoneRef::Ice => false,
        ZoneRef::Of(layout, at) => key.layout == Some((*layout, *at)) && key.face != Some(Face::Back),
    })
}

/// Halves of the goods, front and back. Taken as equal: a spread here would count twice in everything held by the
/// kilogram, once above and once below the stroke.
fn half() -> Figure {
    exact_share(0.5, "share of one side", "front and back taken as equal")
}

/// Both sides in order.
const FACES: [Face; 2] = [Face::Front, Face::Back];
