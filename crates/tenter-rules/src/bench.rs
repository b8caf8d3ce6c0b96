//! What the account of the rehearsal says, in the terms rules compare.

use tenter_quantity::standard::{GRAM, GRAM_PER_LITRE, MILLILITRE, PER_CENT};
use tenter_quantity::{Interval, Place, show};
use tenter_reference::{DyeClass, DyeFamily, FibreFamily, HazardClaim, Role};
use tenter_rehearse::{Contents, Dyeing, Face, LiquorState, Medium, ZoneKey};
use tenter_resolve::recipe::{Goods, GoodsId, LiquorKind, MaterialId, MixId, Source, Step, Substance, VesselId};

use crate::context::Context;

/// Verbs that wash: dye met there is dye coming off.
const WASHING: [&str; 9] = ["rinse", "soap off", "wash", "scour", "soften", "neutralise", "strip", "bleach", "wet out"];

impl<'a> Context<'a> {
    /// The step of a line.
    pub fn step_at(&self, place: Place) -> Option<&'a Step> {
        self.steps().find(|step| step.place == place)
    }

    /// The verb of the step of a line.
    pub fn verb_at(&self, place: Place) -> Option<&'static str> {
        self.step_at(place).and_then(|step| step.verb).map(|verb| verb.name)
    }

    /// Whether the step of a line washes dye off rather than bringing it on.
    pub fn washes(&self, place: Place) -> bool {
        self.verb_at(place).is_some_and(|verb| WASHING.contains(&verb))
    }

    /// What became of each dye that was meant to go on: what comes off in washing is left out.
    pub fn dyeings(&self) -> impl Iterator<Item = &'a Dyeing> {
        let context = *self;
        self.rehearsal.dyeings.iter().filter(move |dyeing| {
            !dyeing.superseded
                && dyeing.laid.iter().any(|place| !context.washes(*place))
                && dyeing.mass.value.best > 0.0
        })
    }

    /// The first step that laid a dye.
    pub fn laid_at(&self, dyeing: &Dyeing) -> Place {
        dyeing.laid.first().copied().unwrap_or_else(|| self.material(dyeing.dye).place)
    }

    /// The goods behind an index.
    pub fn goods(&self, id: GoodsId) -> Option<&'a Goods> {
        self.recipe.goods.get(id.0)
    }

    /// The name of goods.
    pub fn goods_name(&self, id: GoodsId) -> &'a str {
        self.goods(id).map_or("the goods", |goods| &goods.name.text)
    }

    /// Share of the weight that is of a family of fibres; `None` where a fibre is not known.
    pub fn share_of(&self, id: GoodsId, family: FibreFamily) -> Option<f64> {
        let goods = self.goods(id)?;
        if goods.fibres.is_empty() {
            return None;
        }
        let mut share = 0.0;
        for part in &goods.fibres {
            if part.fibre?.family == family {
                share += part.share.value.best;
            }
        }
        Some(share)
    }

    /// The class of a dye.
    pub fn class(&self, dye: MaterialId) -> Option<&'static DyeClass> {
        self.material(dye).class
    }

    /// Whether a dye is a reactive one.
    pub fn is_reactive(&self, dye: MaterialId) -> bool {
        self.class(dye).is_some_and(|class| class.family == DyeFamily::Reactive)
    }

    /// The first of these hazard statements that holds for a material at the strength it has.
    pub fn hazard(&self, id: MaterialId, codes: &[&str]) -> Option<&'a HazardClaim> {
        let material = self.material(id);
        let strength = material.purity.as_ref().map(|purity| purity.value * 100.0);
        material.reference?.hazards.iter().find(|claim| {
            codes.contains(&claim.code.as_str())
                && strength.is_none_or(|strength| {
                    claim.at_least_percent.is_none_or(|from| strength.high >= from)
                        && claim.below_percent.is_none_or(|to| strength.low < to)
                })
        })
    }

    /// Whether something that could have brought alkali, dye or time was not understood.
    pub fn uncertain_bench(&self) -> bool {
        self.troubled_steps() || self.troubled_mixes() || self.troubled_materials() || self.doubtful_weight()
    }

    /// The line of a mix that brings its first alkali.
    pub fn alkali_line(&self, mix: MixId) -> Option<Place> {
        self.materials_of_mix(mix)
            .into_iter()
            .find(|(id, _)| self.material(*id).role() == Role::Alkali)
            .map(|(_, place)| place)
    }

    /// A part of the goods as a dyer would call it: "the rim of tees", "the back of tees".
    pub fn zone_name(&self, goods: GoodsId, key: ZoneKey) -> String {
        let name = self.goods_name(goods);
        let zone = key
            .layout
            .and_then(|(layout, zone)| self.recipe.layouts.get(layout.0)?.zones.get(zone))
            .map(|zone| &*zone.name.text);
        match (zone, key.face) {
            (None, None) => name.to_owned(),
            (None, Some(Face::Front)) => format!("the front of {name}"),
            (None, Some(Face::Back)) => format!("the back of {name}"),
            (Some(zone), None) => format!("{zone} of {name}"),
            (Some(zone), Some(Face::Front)) => format!("{zone}, front of {name}"),
            (Some(zone), Some(Face::Back)) => format!("{zone}, back of {name}"),
        }
    }

    /// The vessel a bath stands in: the one said, else the only one there is when no step says what it is for.
    pub fn vessel_of(&self, said: Option<VesselId>) -> Option<VesselId> {
        if said.is_some() {
            return said;
        }
        let [vessel] = self.recipe.vessels.as_slice() else { return None };
        let named = self.steps().any(|step| {
            matches!(step.source, Some(Source::Vessel(_)))
                || matches!(step.liquor.as_ref().map(|liquor| &liquor.kind), Some(LiquorKind::Vessel(_)))
                || self.text(step.place).to_lowercase().contains(&vessel.name.text.to_lowercase())
        });
        (!named).then_some(VesselId(0))
    }

    /// Whether there is any material of a role, with its place in the recipe.
    pub fn holds(&self, contents: &Contents, role: Role) -> bool {
        contents.parts.iter().any(|(id, figure)| figure.value.high > 0.0 && self.material(*id).role() == role)
    }
}

/// The bath a dye went on from, with its index in the frames: where it met its alkali, else the one it was laid from.
/// Dyes that want no alkali, or get none, have only the latter.
pub(crate) fn bath_of<'a>(context: &Context<'a>, dyeing: &'a Dyeing) -> Option<(usize, &'a LiquorState)> {
    if let (Medium::Bath(index), Some(bath)) = (dyeing.medium, &dyeing.bath_then) {
        return Some((index, bath));
    }
    dyeing.laid.iter().find_map(|place| {
        if !context.verb_at(*place).is_some_and(|verb| BATHING.contains(&verb)) {
            return None;
        }
        let frame = context.rehearsal.frame_at(*place)?;
        let holds = |liquor: &LiquorState| !liquor.gone && liquor.contents.mass(dyeing.dye).high > 0.0;
        let found = |wanted: &dyn Fn(&LiquorState) -> bool| {
            frame.liquors.iter().enumerate().find(|(_, liquor)| holds(liquor) && wanted(liquor))
        };
        let (index, bath) = found(&|liquor| !liquor.inside.is_empty()).or_else(|| found(&|_| true))?;
        Some((index, bath.as_ref()))
    })
}

/// What goods lay in last before a step, by name: the first line of that mix that is not water, else its header.
pub(crate) fn lay_in_before(context: &Context<'_>, goods: GoodsId, place: Place) -> Option<Place> {
    let earlier = context.steps().take_while(|step| step.place != place);
    let mix = earlier
        .filter(|step| step.goods.contains(&goods))
        .filter_map(|step| match step.liquor.as_ref().map(|liquor| &liquor.kind) {
            Some(LiquorKind::Mix(id)) => context.recipe.mixes.get(id.0),
            _ => None,
        })
        .last()?;
    let dissolved = mix.ingredients.iter().find(|each| match each.what {
        Substance::Material(id) => !context.material(id).is_water() && !context.material(id).is_dye,
        Substance::Mix(_) => true,
    });
    Some(dissolved.map_or(mix.name.place, |each| each.place))
}

/// Whether the alkali with a dye is mixed, more bicarbonate than soda: the pH stays near 9.5, and bottles of it keep for hours.
pub(crate) fn buffered(dyeing: &Dyeing) -> bool {
    let bicarbonate = dyeing.base.best - 2.0 * dyeing.usable.best;
    dyeing.usable.best > 0.0 && bicarbonate > dyeing.usable.best
}

/// Verbs that bring goods and a bath together.
const BATHING: [&str; 12] =
    ["dip", "immerse", "dye", "lower", "simmer", "boil", "hold", "add", "stir", "soak", "raise", "heat"];

/// A mass in kg, as grams.
pub(crate) fn grams(kilograms: Interval) -> String {
    show(kilograms, GRAM)
}

/// A mass in kg that is enough, as one would weigh it out: in grams, rounded up to two figures, to the tenth at the finest.
pub(crate) fn weighable(kilograms: f64) -> String {
    grams(Interval::exact(enough(kilograms * 1000.0, 0.1) / 1000.0))
}

/// A volume in m³ that is enough, as one would measure it: rounded up to two figures, to the millilitre at the finest.
pub(crate) fn measurable(cubic_metres: f64) -> String {
    show(Interval::exact(enough(cubic_metres * 1e6, 1.0) / 1e6), MILLILITRE)
}

/// Rounded up to two figures, to `finest` at the finest.
fn enough(wanted: f64, finest: f64) -> f64 {
    let step = if wanted < 10.0 { finest } else { libm::pow(10.0, libm::floor(libm::log10(wanted)) - 1.0) };
    libm::ceil(wanted / step - 1e-6) * step
}

/// A strength in kg/m³, as g/L.
pub(crate) fn grams_per_litre(strength: Interval) -> String {
    show(strength, GRAM_PER_LITRE)
}

/// A volume in m³, as litres or millilitres.
pub(crate) fn litres(volume: f64) -> String {
    let step = if volume < 1e-3 { 1e-5 } else { 1e-4 };
    show(Interval::exact(libm::round(volume / step) * step), MILLILITRE)
}

/// Every material a step brings to the goods, mixes taken apart.
pub(crate) fn materials_of_step(context: &Context<'_>, step: &Step) -> Vec<(MaterialId, Place)> {
    let mut found: Vec<(MaterialId, Place)> = Vec::new();
    for ingredient in step.applied.iter().chain(&step.with) {
        found.extend(context.materials_of(ingredient));
    }
    match step.liquor.as_ref().map(|liquor| &liquor.kind) {
        Some(LiquorKind::Mix(id)) => found.extend(context.materials_of_mix(*id)),
        Some(LiquorKind::Bath(ingredients)) => {
            for ingredient in ingredients {
                found.extend(context.materials_of(ingredient));
            }
        }
        _ => {}
    }
    if let Some(Source::Mix(id)) = step.source {
        found.extend(context.materials_of_mix(id));
    }
    found
}

/// A share as per cent.
pub(crate) fn per_cent(share: f64) -> String {
    show(Interval::exact(share), PER_CENT)
}

/// A plain number with its spread.
pub(crate) fn number(value: f64) -> String {
    let rounded = if value.abs() >= 10.0 { libm::round(value) } else { libm::round(value * 10.0) / 10.0 };
    tenter_quantity::show_number(Interval::exact(rounded))
}
