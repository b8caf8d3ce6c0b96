//! Amounts taken in hand: out of a jar, out of a mix.

use crate::bench::{Bench, Pass};
use crate::contents::Contents;
use crate::event::EventKind;
use crate::figures::{self, exact_share, portion, worked_share};
use crate::state::{LiquorName, LiquorState};
use std::sync::Arc;
use tenter_chemistry::reaction::{Spell, bottle, stock_life};
use tenter_quantity::standard::HOUR;
use tenter_quantity::{Basis, Dimension, Figure, Interval, Place};
use tenter_resolve::recipe::{Ingredient, MaterialId, MixId, Substance};

/// An amount taken in hand.
#[derive(Default)]
pub(crate) struct Portion {
    pub contents: Contents,
    /// Volume of liquid, m³.
    pub volume: Option<Figure>,
    pub temperature: Option<Figure>,
    pub mix: Option<MixId>,
    /// When alkali and reactive dye came together in what it was drawn from, s since the start.
    pub alkali_with_dye: Option<Interval>,
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

    pub(crate) fn take_factor(&mut self, ingredient: &Ingredient, factor: Option<&Figure>, depth: u32) -> Portion {
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
        Portion { contents, volume, temperature, mix: None, alkali_with_dye: None }
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
        let alkali_with_dye = state.alkali_with_dye;
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
        Portion { contents, volume, temperature, mix: Some(id), alkali_with_dye }
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
