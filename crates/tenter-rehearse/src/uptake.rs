//! In, time, out: what a soak leaves in the goods and in the bath.

use crate::bench::{Bench, Pass};
use crate::event::EventKind;
use crate::figures::{self};
use crate::state::LiquorName;
use std::sync::Arc;
use tenter_chemistry::soak::{wetted_share, wetting_time};
use tenter_quantity::standard::GRAM_PER_LITRE;
use tenter_quantity::{Dimension, Figure, Interval};

impl Bench<'_> {
    /// Alkali of a bath as it was made, for each litre of liquid put in, which is how the recipe writes it; and how many litres
    /// of finished bath a litre put in makes.
    fn nominal_strength(&self, liquor: usize) -> (Option<Figure>, f64) {
        let Some(bath) = self.liquors.get(liquor) else { return (None, 1.0) };
        let made = self.mixes.iter().rfind(|made| made.name == bath.name).unwrap_or(bath);
        let put_in = match made.name {
            LiquorName::Mix(id) => self.recipe.mixes.get(id.0).and_then(|mix| mix.liquid_in.clone()),
            LiquorName::Vessel(_) | LiquorName::InPlace(_) => None,
        };
        let volume = made.made_volume.clone().or_else(|| made.volume.clone());
        let per_litre = match (&put_in, &volume) {
            (Some(put_in), Some(volume)) if put_in.value.best > 0.0 => volume.value.best / put_in.value.best,
            _ => 1.0,
        };
        let alkali = self.substances.alkali_as_soda_ash(&made.contents);
        let nominal = alkali.zip(put_in.or(volume)).map(|(alkali, volume)| alkali.over(&volume, GRAM_PER_LITRE));
        (nominal, per_litre)
    }

    /// In, time, out: soaks, scours, dips. Gives how long it took.
    pub(crate) fn bathe(&mut self, pass: &Pass<'_>, liquor: usize, share_in: Option<&Figure>) -> Interval {
        let (nominal, per_litre) = self.nominal_strength(liquor);
        let working = self.working.clone();
        let mut before = Vec::with_capacity(working.len());
        for state in &working {
            let water: Vec<Figure> = self
                .goods
                .get(*state)
                .map(|goods| goods.zones.iter().filter_map(|zone| zone.contents.water.clone()).collect())
                .unwrap_or_default();
            let water = if water.is_empty() {
                figures::assumed(Interval::ZERO, tenter_quantity::standard::GRAM, "water in the goods", "dry")
            } else {
                Figure::sum(water, tenter_quantity::standard::GRAM)
            };
            before.push(water);
        }
        let bath_before = self.liquors.get(liquor).and_then(|bath| bath.volume.clone());
        for state in &working {
            self.enter(*state, liquor);
            self.tell_immersed(*state, liquor);
        }
        self.account();
        let time = self.duration(pass);
        self.pass_time(time, None);
        let temperature = self.liquors.get(liquor).map(|bath| bath.temperature.clone());
        for (state, water_before) in working.iter().zip(before) {
            let Some(goods) = self.goods.get(*state).map(Arc::clone) else { continue };
            let pickup = self.coming_pickup(pass, *state);
            let (packing, wettability) = (goods.packing, goods.wettability);
            let wet = water_before.value.best > 0.1 * goods.dry.value.best;
            let share_at = |t: f64| wetted_share(packing, wettability, t);
            let wetted = if wet {
                Interval::ONE
            } else {
                Interval::new(share_at(time.low).0, share_at(time.best).1, share_at(time.high).2)
            };
            let wetted = share_in.map_or(wetted, |part| wetted * part.value);
            let actual = self.liquors.get(liquor).and_then(|bath| {
                let alkali = self.substances.alkali_as_soda_ash(&bath.contents)?;
                Some(strength(alkali, bath.volume.clone()?, per_litre))
            });
            let Some(carried) = self.leave(*state, &pickup, wetted) else { continue };
            let (low, best, high) = wetting_time(packing, wettability);
            let earlier_uses = self.uses.get(liquor).copied().unwrap_or(0);
            let left = self.liquors.get(liquor).and_then(|bath| bath.volume.clone());
            let mix = self.mix_of(liquor);
            let Some(temperature) = temperature.clone() else { continue };
            self.emit(EventKind::SoakUptake {
                mix,
                liquor,
                goods: goods.goods,
                lot: goods.lot,
                earlier_uses,
                water_before,
                strength_nominal: nominal.clone(),
                strength_actual: actual,
                carried,
                bath: bath_before.clone(),
                left,
                wetted,
                time: self.time.clone(),
                wetting_time: Interval::new(low, best, high),
                temperature,
            });
        }
        if let Some(uses) = self.uses.get_mut(liquor) {
            *uses += 1;
        }
        time
    }
}

/// Strength for each litre of liquid put in.
fn strength(alkali: Figure, volume: Figure, per_litre: f64) -> Figure {
    let value = alkali.value / volume.value * per_litre;
    Figure::worked(
        "{0} ÷ {1}, told for each litre of liquid put in",
        value,
        Dimension::MassConcentration,
        GRAM_PER_LITRE,
        vec![("", alkali), ("bath with what the goods brought", volume)],
    )
}
