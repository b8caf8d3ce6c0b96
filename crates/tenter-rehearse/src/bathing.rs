//! Which liquor a step works in, and how wet goods come out of it.

use crate::bench::{Bench, Pass};
use crate::event::EventKind;
use crate::figures::{PRACTICE, share};
use crate::state::LiquorName;
use crate::usual;
use std::sync::Arc;
use tenter_quantity::{Figure, Interval};
use tenter_resolve::recipe::{LiquorKind, MixId, Step, VesselId};

impl Bench<'_> {
    /// The liquor a step works in, made now if need be; `None` for running water and where nothing is said.
    pub(crate) fn liquor(&mut self, pass: &Pass<'_>) -> Option<usize> {
        let recipe_step = pass.step;
        let index = match recipe_step.liquor.as_ref().map(|liquor| (&liquor.kind, liquor.place)) {
            Some((LiquorKind::Mix(id), _)) => self.standing(*id, 0),
            Some((LiquorKind::Bath(ingredients), place)) => Some(self.bath_of(pass, ingredients, place)),
            Some((LiquorKind::Vessel(id), _)) => self.in_vessel(*id),
            Some((LiquorKind::Current, _)) => {
                self.current.filter(|at| !self.liquors.get(*at).is_some_and(|liquor| liquor.gone))
            }
            Some((LiquorKind::Water(_) | LiquorKind::Words, _)) | None => None,
        }?;
        self.settle(index);
        self.current = Some(index);
        self.touched.push(index);
        if let (Some((id, _)), Some(state)) = (recipe_step.vessel, self.liquors.get(index))
            && state.vessel.is_none()
            && let Some(state) = self.liquor_mut(index)
        {
            state.vessel = Some(id);
        }
        Some(index)
    }

    /// What stands in a vessel.
    pub(crate) fn in_vessel(&self, id: VesselId) -> Option<usize> {
        self.liquors
            .iter()
            .rposition(|liquor| !liquor.gone && (liquor.vessel == Some(id) || liquor.name == LiquorName::Vessel(id)))
    }

    /// The mix behind a liquor.
    pub(crate) fn mix_of(&self, liquor: usize) -> Option<MixId> {
        match self.liquors.get(liquor)?.name {
            LiquorName::Mix(id) => Some(id),
            LiquorName::Vessel(_) | LiquorName::InPlace(_) => None,
        }
    }

    /// Materials of `with` go into a bath.
    pub(crate) fn with(&mut self, pass: &Pass<'_>, liquor: usize) {
        for ingredient in &pass.step.with {
            let part = self.take(pass, ingredient);
            let came = part.materials();
            let Some(state) = self.liquors.get(liquor) else { return };
            let (name, vessel) = (state.name, state.vessel);
            let had = state.contents.masses();
            if !came.is_empty() {
                self.emit(EventKind::Mixed { liquor: Some(name), had, came, vessel });
            }
            let now = self.clock.elapsed;
            if let Some(state) = self.liquor_mut(liquor) {
                state.contents.add(part.contents);
            }
            self.note_together(liquor, part.alkali_with_dye.unwrap_or(now));
        }
    }

    /// Liquor of a mix used as a bath: its age told.
    pub(crate) fn used_as_bath(&mut self, liquor: usize) {
        if let (Some(mix), Some(state)) = (self.mix_of(liquor), self.liquors.get(liquor).map(Arc::clone)) {
            let event = self.drawn(mix, &state, None, state.volume.clone());
            self.emit(event);
        }
    }

    /// The pickup that goods will have when they come out: of this step, else of the next that wrings them, else as usual.
    pub(crate) fn coming_pickup(&self, pass: &Pass<'_>, state: usize) -> Figure {
        if let Some(pickup) = &pass.step.pickup {
            return pickup.clone();
        }
        let id = self.goods.get(state).map(|goods| goods.goods);
        for next in pass.next {
            if !id.is_some_and(|id| next.goods.contains(&id)) {
                continue;
            }
            let verb = next.verb.map_or("", |verb| verb.name);
            match verb {
                "squeeze" | "spin" | "drip" | "drain" | "lift" => {
                    if let Some(pickup) = next.pickup.clone().or_else(|| usual::pickup(verb)) {
                        return pickup;
                    }
                }
                "untie" | "wear" | "make" | "weigh" | "turn" | "cover" | "check" | "add" | "stir" | "batch"
                | "rest" => {}
                _ => break,
            }
        }
        usual::pickup(pass.verb()).unwrap_or_else(|| share(1.5, 2.2, 3.0, "water held", PRACTICE))
    }

    /// Goods leave any bath they are in before they are worked elsewhere.
    pub(crate) fn out_of_baths(&mut self, pass: &Pass<'_>) {
        for state in self.working.clone() {
            if self.goods.get(state).is_some_and(|goods| goods.inside.is_some()) {
                let pickup = pass
                    .step
                    .pickup
                    .clone()
                    .or_else(|| usual::pickup(pass.verb()))
                    .unwrap_or_else(|| share(1.5, 2.2, 3.0, "water held", PRACTICE));
                self.leave(state, &pickup, Interval::ONE);
            }
        }
    }

    /// The temperature a step names for its water.
    pub(crate) fn water_temperature(&self, step: &Step) -> Option<Figure> {
        match step.liquor.as_ref().map(|liquor| &liquor.kind) {
            Some(LiquorKind::Water(figure)) => Some(step.temperature.clone().unwrap_or_else(|| figure.clone())),
            _ => step.temperature.clone(),
        }
    }
}
