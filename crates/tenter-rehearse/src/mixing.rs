//! Mixes made and drawn on, amounts turned into contents.

use std::sync::{Arc, OnceLock};

use tenter_chemistry::reaction::{Spell, bottle, stock_life};
use tenter_quantity::standard::{HOUR, LITRE};
use tenter_quantity::{Basis, Dimension, Figure, Interval, Place};
use tenter_reference::{Form, Role};
use tenter_resolve::recipe::{Ingredient, MaterialId, MixId, Substance};

use crate::bench::{Bench, Pass};
use crate::contents::Contents;
use crate::event::EventKind;
use crate::figures::{self, exact_share, portion, worked_share};
use crate::state::{LiquorName, LiquorState};
use crate::usual;
use crate::warmth::{Cooling, capacity, mixed};

/// Mixes within mixes are followed to this depth.
const DEEPEST: u32 = 8;

/// An amount taken in hand.
#[derive(Default)]
pub(crate) struct Portion {
    pub contents: Contents,
    /// Volume of liquid, m³.
    pub volume: Option<Figure>,
    pub temperature: Option<Figure>,
    pub mix: Option<MixId>,
}

impl Portion {
    pub(crate) fn materials(&self) -> Vec<(MaterialId, Interval)> {
        self.contents.masses()
    }
}

impl Bench<'_> {
    /// Share of a relative amount (per piece, owg, liquor ratio) that falls to this pass: the pieces of its lot.
    pub(crate) fn lot_share(&self, pass: &Pass<'_>, ingredient: &Ingredient) -> Option<Figure> {
        let lot = pass.lot?;
        let amount = ingredient.amount.as_ref()?;
        let relative = matches!(amount.written.basis, Basis::PerPiece | Basis::PerGoods)
            || matches!(amount.written.dimension, Dimension::LiquorRatio);
        let goods = self.working.first().and_then(|at| self.goods.get(*at)).filter(|state| state.lot == Some(lot))?;
        let all = self.recipe.goods.get(goods.goods.0)?.pieces.value.best;
        (relative && all > 0.0)
            .then(|| exact_share(goods.pieces.best / all, "share of the pieces in this lot", "as the lots are written"))
    }

    /// Takes an amount: from its jar, or out of a mix.
    pub(crate) fn take(&mut self, pass: &Pass<'_>, ingredient: &Ingredient) -> Portion {
        let factor = self.lot_share(pass, ingredient);
        self.take_factor(ingredient, factor.as_ref(), 0)
    }

    fn take_factor(&mut self, ingredient: &Ingredient, factor: Option<&Figure>, depth: u32) -> Portion {
        let scaled = |figure: &Figure| factor.map_or_else(|| figure.clone(), |factor| portion(figure, factor));
        let amount = ingredient.amount.as_ref();
        let mass = amount.and_then(|amount| amount.mass.as_ref()).map(scaled);
        let volume = amount.and_then(|amount| amount.volume.as_ref()).map(scaled);
        match ingredient.what {
            Substance::Material(id) => self.out_of_jar(id, mass, volume, ingredient),
            Substance::Mix(id) => self.draw(id, volume.or(mass), depth),
        }
    }

    fn out_of_jar(
        &mut self,
        id: MaterialId,
        mass: Option<Figure>,
        volume: Option<Figure>,
        ingredient: &Ingredient,
    ) -> Portion {
        let recipe = self.recipe;
        let Some(material) = recipe.materials.get(id.0) else { return Portion::default() };
        let liquid = material.liquid || material.is_water();
        let density = self.substances.get(id).map_or(Interval::exact(1000.0), |entry| entry.density);
        let mass = mass.or_else(|| {
            let volume = volume.as_ref().filter(|_| liquid)?;
            let water = material.is_water();
            let density = if water { Interval::new(985.0, 998.0, 1000.0) } else { density };
            let formula = if water { "{0}, 1 L of water being 0.985 to 1 kg" } else { "{0} × density" };
            Some(figures::mass(formula, volume.value * density, vec![("", volume.clone())]))
        });
        let volume = volume.filter(|_| liquid).or_else(|| {
            let mass = mass.as_ref().filter(|_| liquid)?;
            Some(figures::volume("{0} ÷ density", mass.value / density, vec![("", mass.clone())]))
        });
        let mut contents = Contents::default();
        if let Some(mass) = mass {
            if let Some(sum) = self.introduced.get_mut(id.0) {
                *sum += mass.value;
            }
            if material.is_water() {
                contents.add_water(mass);
            } else {
                self.powder(id, &mass, ingredient.place);
                contents.add_part(id, mass);
            }
        }
        let temperature = ingredient.temperature.clone();
        Portion { contents, volume, temperature, mix: None }
    }

    /// Dusty powder is handled.
    fn powder(&mut self, id: MaterialId, mass: &Figure, at: Place) {
        if self.recipe.materials.get(id.0).is_some_and(tenter_resolve::recipe::Material::dusty) {
            let worn = self.worn;
            self.emit(EventKind::PowderHandled {
                material: id,
                at,
                mass: Some(mass.clone()),
                respirator: worn.respirator,
                gloves: worn.gloves,
                eyes: worn.eyes,
            });
        }
    }

    /// Draws on a mix, making it first if nobody has.
    pub(crate) fn draw(&mut self, id: MixId, wanted: Option<Figure>, depth: u32) -> Portion {
        let Some(liquor) = self.standing(id, depth) else { return Portion::default() };
        self.settle(liquor);
        let Some(state) = self.liquors.get(liquor).map(Arc::clone) else { return Portion::default() };
        let there = state.volume.clone().or_else(|| {
            let total = state.contents.total_mass();
            (total.high > 0.0).then(|| figures::mass("what is in it", total, vec![]))
        });
        let part = match (&wanted, &there) {
            (Some(wanted), Some(there)) if wanted.dimension == there.dimension => share_of(wanted, there),
            (Some(wanted), Some(there)) if there.dimension == Dimension::Volume && there.value.best > 0.0 => {
                // A paste weighed out of a volume.
                let whole = state.contents.total_mass();
                let value = (wanted.value / whole).clamp_low(0.0).min(Interval::ONE);
                worked_share("{0} of what was made", value, vec![("", wanted.clone())])
            }
            _ => exact_share(1.0, "share of the mix", "all of it"),
        };
        let event = self.drawn(id, &state, wanted, there);
        self.emit(event);
        let Some(state) = self.liquor_mut(liquor) else { return Portion::default() };
        let contents = state.contents.take(&part);
        let volume = state.volume.as_ref().map(|volume| portion(volume, &part));
        if part.value.low >= 1.0 {
            state.gone = true;
            state.volume = state.volume.as_ref().map(|volume| Figure { value: Interval::ZERO, ..volume.clone() });
        } else {
            let kept = figures::rest(&part);
            state.volume = state.volume.as_ref().map(|volume| portion(volume, &kept));
        }
        let temperature = Some(state.temperature.clone());
        Portion { contents, volume, temperature, mix: Some(id) }
    }

    /// The event of drawing on a mix, or of using it as a bath.
    pub(crate) fn drawn(
        &self,
        id: MixId,
        state: &LiquorState,
        wanted: Option<Figure>,
        there: Option<Figure>,
    ) -> EventKind {
        let age = (self.clock.elapsed - state.made_at).clamp_low(0.0);
        let with = state.alkali_with_dye.map(|since| (self.clock.elapsed - since).clamp_low(0.0));
        let age = Figure::assumed(age, Dimension::Time, HOUR, "age of the mix", "the times of the steps between");
        let kelvin = state.temperature.value;
        // Between how warm it was made and how warm it is now, taken at the middle for the most likely.
        let warmest = kelvin.max(self.mixes_temperature(id).unwrap_or(kelvin));
        let class = state.contents.parts.iter().find_map(|(dye, _)| self.substances.get(*dye)?.reactive);
        let bottle_state = with.zip(class).map(|(with, class)| {
            let spell = |seconds: f64, temperature: f64| Spell { seconds, temperature, ph: None };
            let middle = 0.5 * (kelvin.best + warmest.best);
            let worst = bottle(class, &[spell(with.high, warmest.high)]).0;
            let likely = bottle(class, &[spell(with.best, middle)]).1;
            let kindest = bottle(class, &[spell(with.low, kelvin.low)]).2;
            (worst.max(likely), likely, kindest.min(likely))
        });
        let dye = self.substances.dye(&state.contents).high > 0.0;
        let keeps = (dye && with.is_none()).then(|| {
            let (low, high) = stock_life(kelvin.best);
            Interval::range(low, high)
        });
        EventKind::Drawn {
            mix: id,
            age,
            alkali_with_dye: with,
            wanted,
            there,
            temperature: state.temperature.clone(),
            state: bottle_state,
            keeps,
        }
    }

    fn mixes_temperature(&self, id: MixId) -> Option<Interval> {
        self.mixes.iter().rfind(|made| made.name == LiquorName::Mix(id)).map(|made| made.temperature.value)
    }

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
        for ingredient in &mix.ingredients {
            let part = self.take_factor(ingredient, None, depth + 1);
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
        if let Some(rest) = mix.rest.as_ref().filter(|_| by_step) {
            let time = rest.value.clamp_low(0.0);
            self.clock.elapsed += time;
            self.pass_time(time, None);
        }
        let at = self.clock.elapsed;
        self.emit(EventKind::Made { liquor: index, mix: id, implied: !by_step, at });
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
            inside: Vec::new(),
            vessel: None,
            gone: false,
            acidity: OnceLock::new(),
        });
        if matches!(name, LiquorName::Mix(_)) {
            self.mixes.push(Arc::clone(&state));
        }
        self.liquors.push(state);
        self.uses.push(0);
        self.liquors.len() - 1
    }

    /// Whether reactive dye and alkali are both in it.
    pub(crate) fn together(&self, contents: &Contents) -> bool {
        let reactive =
            contents.parts.iter().any(|(id, _)| self.substances.get(*id).is_some_and(|entry| entry.reactive.is_some()));
        reactive && self.substances.base(contents).high > 0.0
    }

    /// Lets a liquor cool to now.
    pub(crate) fn settle(&mut self, index: usize) {
        let now = self.clock.elapsed;
        let room = self.room.clone();
        let Some(state) = self.liquors.get(index) else { return };
        let passed = (now - state.temperature_at).clamp_low(0.0);
        let start = state.temperature.value;
        if passed.best < 30.0 || state.heated || (start.best - room.value.best).abs() < 0.5 {
            return;
        }
        let kg = state.contents.water_mass().clamp_low(0.05);
        let cooling = Cooling::of_bath(kg, room.value);
        let value = cooling.after(start, cooling.left(passed));
        let figure = figures::temperature(
            "{0}, standing in {1} since",
            value,
            vec![("", state.temperature.clone()), ("room", room)],
        );
        if let Some(state) = self.liquor_mut(index) {
            state.temperature = figure;
            state.temperature_at = now;
        }
    }

    /// A bath written in place, or water by a word.
    pub(crate) fn bath_of(&mut self, pass: &Pass<'_>, ingredients: &[Ingredient], place: Place) -> usize {
        let mut contents = Contents::default();
        let mut volume: Vec<Figure> = Vec::new();
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
            self.meet(LiquorName::InPlace(place), &contents, &part);
            contents.add(part.contents);
        }
        let temperature = warm
            .map(|(temperature, _)| temperature)
            .or_else(|| pass.step.temperature.clone())
            .unwrap_or_else(|| self.tap());
        let volume = (!volume.is_empty()).then(|| Figure::sum(volume, LITRE));
        self.stand(LiquorName::InPlace(place), contents, volume, temperature, true)
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

    /// Time a mix needs to be made counts only when a step makes it.
    pub(crate) fn making_time(&mut self, pass: &Pass<'_>) {
        let time = self.duration(pass);
        let _ = usual::each_piece(pass.verb());
        self.pass_time(time, None);
    }
}

fn share_of(wanted: &Figure, there: &Figure) -> Figure {
    let value = if there.value.best <= 0.0 { Interval::ONE } else { wanted.value / there.value };
    // Two spreads of one measuring would make even an exact emptying uncertain.
    let value = if (value.best - 1.0).abs() < 1e-9 || value.best > 1.0 { Interval::ONE } else { value };
    let value = value.clamp_low(0.0).min(Interval::ONE);
    if value == Interval::ONE {
        return exact_share(1.0, "share of the mix", "all that is left of it");
    }
    worked_share("{0} ÷ {1}", value, vec![("drawn", wanted.clone()), ("there", there.clone())])
}
