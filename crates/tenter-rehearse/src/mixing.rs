//! Mixes and baths made, and standing on the bench.

use crate::bench::{Bench, Pass};
use crate::contents::Contents;
use crate::drawing::Portion;
use crate::event::EventKind;
use crate::figures::{self};
use crate::state::{LiquorName, LiquorState};
use crate::warmth::{Cooling, capacity, mixed};
use std::sync::{Arc, OnceLock};
use tenter_quantity::standard::LITRE;
use tenter_quantity::{Dimension, Figure, Interval, Place};
use tenter_reference::{Form, Role};
use tenter_resolve::recipe::{Ingredient, MaterialId, MixId};

/// Usable alkali that does not count, mol in a kilogram of water.
const TRACE_OF_ALKALI: f64 = 0.002;
/// Mixes within mixes are followed to this depth.
const DEEPEST: u32 = 8;

impl Bench<'_> {
    /// The liquor of a mix, made now if it does not stand there yet.
    pub(crate) fn standing(&mut self, id: MixId, depth: u32) -> Option<usize> {
        let found = self.liquors.iter().rposition(|liquor| liquor.name == LiquorName::Mix(id));
        match found {
            Some(index) => Some(index),
            None => self.make(id, false, depth),
        }
    }

    /// Makes a mix.
    pub(crate) fn make(&mut self, id: MixId, by_step: bool, depth: u32) -> Option<usize> {
        if depth > DEEPEST {
            return None;
        }
        let recipe = self.recipe;
        let mix = recipe.mixes.get(id.0)?;
        let mut contents = Contents::default();
        let mut warm: Option<(Figure, Interval)> = None;
        let mut since: Option<Interval> = None;
        for ingredient in &mix.ingredients {
            let part = self.take_factor(ingredient, None, depth + 1);
            since = earlier(since, part.alkali_with_dye);
            let came = part.materials();
            let had = contents.masses();
            if !came.is_empty() {
                self.emit(EventKind::Mixed { liquor: Some(LiquorName::Mix(id)), had, came, vessel: None });
            }
            let heat = capacity(part.contents.water_mass(), Interval::ZERO);
            if let Some(temperature) = &part.temperature
                && heat.high > 0.0
            {
                warm = Some(match warm {
                    None => (temperature.clone(), heat),
                    Some((have, c)) => (mixed((temperature, heat), (&have, c)), c + heat),
                });
            }
            contents.add(part.contents);
        }
        self.make_up(mix, &mut contents);
        let temperature = warm.map_or_else(|| self.room.clone(), |(temperature, _)| temperature);
        let index = self.stand(LiquorName::Mix(id), contents, mix.volume.clone(), temperature, by_step);
        if let Some(since) = since {
            self.note_together(index, since);
        }
        if !by_step {
            let at = self.clock.elapsed;
            self.emit(EventKind::Made { liquor: index, mix: id, implied: true, at });
        }
        Some(index)
    }

    /// Water that fills a mix up to its written volume or mass.
    fn make_up(&mut self, mix: &tenter_resolve::recipe::Mix, contents: &mut Contents) {
        let Some(target) = &mix.made_up_to else { return };
        let have = contents.total_mass();
        let room = match target.dimension {
            Dimension::Mass => target.value,
            // Solids take up about 0.6 L a kilogram in the volume made up.
            Dimension::Volume => {
                let solids = have - self.substances.liquor(contents);
                target.value * 1000.0 + solids.clamp_low(0.0) * 0.4
            }
            _ => return,
        };
        let more = (room - have).clamp_low(0.0);
        if more.best > 0.0 {
            contents.add_water(figures::mass(
                "{0} less what else is put in",
                more,
                vec![("made up to", target.clone())],
            ));
        }
    }

    /// Puts a liquor on the bench.
    pub(crate) fn stand(
        &mut self,
        name: LiquorName,
        contents: Contents,
        volume: Option<Figure>,
        temperature: Figure,
        by_step: bool,
    ) -> usize {
        let together = self.together(&contents);
        let warm = temperature.value;
        let state = Arc::new(LiquorState {
            name,
            contents,
            made_volume: volume.clone(),
            volume,
            temperature,
            temperature_at: self.clock.elapsed,
            decarbonated: Interval::ZERO,
            heated: false,
            made_at: self.clock.elapsed,
            made_by: self.place,
            made_by_step: by_step,
            alkali_with_dye: together.then_some(self.clock.elapsed),
            warm_then: together.then_some(warm),
            inside: Vec::new(),
            warmest: None,
            vessel: None,
            gone: false,
            acidity: OnceLock::new(),
        });
        if matches!(name, LiquorName::Mix(_)) {
            self.mixes.push(Arc::clone(&state));
        }
        self.liquors.push(state);
        self.uses.push(0);
        self.touched.push(self.liquors.len() - 1);
        self.liquors.len() - 1
    }

    /// Whether reactive dye and alkali it can use cold are both in it. Bicarbonate is none until it is heated, and what goods
    /// carried over from a scour they were rinsed after does not count: below some 0.2 g of soda ash a litre next to nothing reacts.
    pub(crate) fn together(&self, contents: &Contents) -> bool {
        let reactive =
            contents.parts.iter().any(|(id, _)| self.substances.get(*id).is_some_and(|entry| entry.reactive.is_some()));
        reactive && self.substances.usable_alkali(contents).best > TRACE_OF_ALKALI * contents.water_mass().best
    }

    /// How a liquor cools; `None` where it is kept hot, or at the temperature of the room.
    pub(crate) fn bath_cooling(&self, liquor: &LiquorState) -> Option<Cooling> {
        let room = self.room.value;
        if liquor.heated || (liquor.temperature.value.best - room.best).abs() < 0.5 {
            return None;
        }
        Some(Cooling::of_bath(liquor.contents.water_mass().clamp_low(0.05), room))
    }

    /// Lets a liquor cool to now.
    pub(crate) fn settle(&mut self, index: usize) {
        let now = self.clock.elapsed;
        let room = self.room.clone();
        let Some(state) = self.liquors.get(index) else { return };
        let passed = (now - state.temperature_at).clamp_low(0.0);
        if passed.best < 30.0 {
            return;
        }
        let Some(cooling) = self.bath_cooling(state) else { return };
        let stood = figures::seconds(passed, "standing", "the steps since");
        let figure = cooling.figure(&state.temperature, &room, &stood, cooling.left(passed));
        if let Some(state) = self.liquor_mut(index) {
            state.temperature = figure;
            state.temperature_at = now;
        }
    }

    /// A bath written in place, or water by a word.
    pub(crate) fn bath_of(&mut self, pass: &Pass<'_>, ingredients: &[Ingredient], place: Place) -> usize {
        let mut contents = Contents::default();
        let mut volume: Vec<Figure> = Vec::new();
        let mut since: Option<Interval> = None;
        let mut warm: Option<(Figure, Interval)> = None;
        for ingredient in ingredients {
            let part = self.take(pass, ingredient);
            let heat = capacity(part.contents.water_mass(), Interval::ZERO);
            if let Some(temperature) = &part.temperature
                && heat.high > 0.0
            {
                warm = Some(match warm {
                    None => (temperature.clone(), heat),
                    Some((have, c)) => (mixed((temperature, heat), (&have, c)), c + heat),
                });
            }
            volume.extend(part.volume.clone());
            since = earlier(since, part.alkali_with_dye);
            self.meet(LiquorName::InPlace(place), &contents, &part);
            contents.add(part.contents);
        }
        let temperature = warm
            .map(|(temperature, _)| temperature)
            .or_else(|| pass.step.temperature.clone())
            .unwrap_or_else(|| self.tap());
        let volume = (!volume.is_empty()).then(|| Figure::sum(volume, LITRE));
        let index = self.stand(LiquorName::InPlace(place), contents, volume, temperature, true);
        if let Some(since) = since {
            self.note_together(index, since);
        }
        index
    }

    /// Tap water nobody gave a temperature.
    pub(crate) fn tap(&self) -> Figure {
        figures::celsius(8.0, 15.0, 25.0, "temperature of the water", "not said; common practice, no source")
    }

    fn meet(&mut self, name: LiquorName, had: &Contents, came: &Portion) {
        if !came.contents.parts.is_empty() {
            let had = had.masses();
            self.emit(EventKind::Mixed { liquor: Some(name), had, came: came.materials(), vessel: None });
        }
    }

    /// Whether a material is ice.
    pub(crate) fn is_ice(&self, id: MaterialId) -> bool {
        self.substances.get(id).is_some_and(|entry| entry.role == Role::Ice)
    }

    /// Whether a contents holds powder that would have to dissolve.
    pub(crate) fn holds_powder(&self, contents: &Contents) -> bool {
        contents.parts.iter().any(|(id, _)| {
            self.recipe.materials.get(id.0).is_some_and(|material| {
                !material.liquid && material.reference.is_none_or(|entry| entry.form != Form::Liquid)
            })
        })
    }
}

/// The earlier of two moments.
fn earlier(one: Option<Interval>, other: Option<Interval>) -> Option<Interval> {
    match (one, other) {
        (Some(one), Some(other)) => Some(if other.best < one.best { other } else { one }),
        (one, other) => one.or(other),
    }
}
