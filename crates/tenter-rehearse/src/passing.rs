//! Time goes by: goods cool and dry, dye reacts.

use crate::bench::{Bench, Pass};
use crate::figures::{portion, rest, worked_share};
use crate::reaction::{Bathed, Spell};
use crate::usual;
use crate::warmth::Cooling;
use std::sync::Arc;
use tenter_chemistry::heat::Exposure;
use tenter_quantity::{Figure, Interval};
use tenter_resolve::recipe::Cover;

/// Wet enough for dye to react, kg/kg dry.
const WET: f64 = 0.15;

/// What is around the goods while time goes by.
pub(crate) struct Around {
    /// Temperature, K.
    pub temperature: Figure,
    /// Held at that temperature at once, as by steam.
    pub held: bool,
}

impl Bench<'_> {
    /// How long the step takes: as written, else as such steps take; and how much of it is work.
    pub(crate) fn duration(&mut self, pass: &Pass<'_>) -> Interval {
        let verb = pass.verb();
        let (low, best, high, hands) = usual::minutes(verb);
        let pieces: f64 = if usual::each_piece(verb) {
            self.working.iter().filter_map(|at| self.goods.get(*at)).map(|state| state.pieces.best).sum()
        } else {
            1.0
        };
        let scale = 60.0 * pieces.clamp(1.0, 1000.0);
        let usual = Interval::new(low * scale, best * scale, high * scale);
        let figure = match pass.step.duration.as_ref() {
            Some(written) => written.clone(),
            None if high == 0.0 => self.no_time.clone(),
            None => usual::time(pass.step.verb.map_or("time", |verb| verb.name), usual),
        };
        let time = figure.value.clamp_low(0.0);
        let work = if hands { time } else { time.min(Interval::new(0.0, 120.0, 600.0)) };
        self.clock.elapsed += time;
        self.clock.hands_on += work;
        self.time = figure;
        time
    }

    /// Time goes by for everything; `around` is for the goods of the step.
    pub(crate) fn pass_time(&mut self, time: Interval, around: Option<&Around>) {
        if time.high <= 0.0 {
            return;
        }
        for state in 0..self.goods.len() {
            let around = around.filter(|_| self.working.contains(&state));
            self.goods_pass(state, time, around);
        }
        // A bath that nobody heats cools with the goods in it.
        for liquor in 0..self.liquors.len() {
            if self.liquors.get(liquor).is_some_and(|bath| !bath.inside.is_empty()) {
                self.settle(liquor);
            }
        }
    }

    fn goods_pass(&mut self, state: usize, time: Interval, around: Option<&Around>) {
        let Some(goods) = self.goods.get(state).map(Arc::clone) else { return };
        if let Some(bath) = goods.inside {
            self.bath_spell(state, bath, time);
            return;
        }
        let air = around.map_or(self.room.value, |around| around.temperature.value);
        let mut left = time;
        if goods.ice.is_some() && !around.is_some_and(|around| around.held) {
            left = self.melt(state, time, air);
        }
        if left.high <= 0.0 {
            return;
        }
        let Some(goods) = self.goods.get(state).map(Arc::clone) else { return };
        let pieces = goods.pieces.best.max(1.0);
        let water: Interval = goods.zones.iter().map(|zone| zone.contents.water_mass()).sum();
        let dry = goods.dry.value.best / pieces;
        let cooling = Cooling::of_goods(dry, water * (1.0 / pieces), goods.cover, air);
        let kept = if around.is_some_and(|around| around.held) { Interval::ZERO } else { cooling.left(left) };
        let held = around.filter(|around| around.held);
        let mut last: Option<(Figure, Figure)> = None;
        for at in 0..goods.zones.len() {
            let Some(zone) = goods.zones.get(at) else { continue };
            let wet = zone.water_ratio().best > WET;
            let dyed = wet && !zone.powder && !goods.washed_off && self.substances.dye(&zone.contents).high > 0.0;
            let start = zone.temperature.value;
            let settled = (start.best - cooling.aim.best).abs() < 0.3 && start.low >= cooling.aim.low - 0.3;
            if dyed {
                let spell = match held {
                    Some(around) => {
                        Spell::new(zone.spell, left, around.temperature.value, None, Bathed::Zone(Arc::clone(zone)))
                    }
                    None => {
                        let cooling = (!settled).then_some(cooling);
                        Spell::new(zone.spell, left, start, cooling, Bathed::Zone(Arc::clone(zone)))
                    }
                };
                let index = self.spells.len() as u32;
                self.spells.push(spell);
                if let Some(zone) = self.zone_mut(state, at) {
                    zone.spell = Some(index);
                }
            }
            if let Some(around) = held {
                let figure = around.temperature.clone();
                if let Some(zone) = self.zone_mut(state, at) {
                    zone.temperature = figure;
                }
            } else if !settled {
                // Zones at one temperature share one figure.
                let figure = match &last {
                    Some((from, to)) if Arc::ptr_eq(&from.origin, &zone.temperature.origin) => to.clone(),
                    _ => {
                        let around = around.map_or(&self.room, |around| &around.temperature);
                        cooling.figure(&zone.temperature, around, &self.time, kept)
                    }
                };
                last = Some((zone.temperature.clone(), figure.clone()));
                if let Some(zone) = self.zone_mut(state, at) {
                    zone.temperature = figure;
                }
            }
        }
        self.evaporate(state, left, goods.cover);
    }

    /// Uncovered wet goods dry: about 7 % of the dry weight an hour when bunched (lumped model, a factor of 1.5 to 2 either
    /// way); nothing where it is covered, and from nothing up where the recipe does not say.
    fn evaporate(&mut self, state: usize, time: Interval, cover: Option<Cover>) {
        if time.best < 600.0 || matches!(cover, Some(Cover::SealedBag | Cover::Covered | Cover::UnderPlastic)) {
            return;
        }
        let Some(goods) = self.goods.get(state).map(Arc::clone) else { return };
        let water: Interval = goods.zones.iter().map(|zone| zone.contents.water_mass()).sum();
        if water.best <= 0.0 {
            return;
        }
        let pieces = goods.pieces.best.max(1.0);
        let (_, surface) = Exposure::Bunched.surface(goods.dry.value.best / pieces);
        let flux =
            if cover.is_some() { Interval::new(0.7e-5, 1.35e-5, 2.7e-5) } else { Interval::new(0.0, 0.9e-5, 2.7e-5) };
        let lost = flux * time * (surface * pieces);
        let part = worked_share(
            "what dries off in {0}, of the water held",
            (lost / water).clamp_low(0.0).min(Interval::ONE),
            vec![("", self.time.clone())],
        );
        let kept = rest(&part);
        for at in 0..goods.zones.len() {
            if let Some(zone) = self.zone_mut(state, at) {
                zone.contents.water = zone.contents.water.as_ref().map(|water| portion(water, &kept));
            }
        }
    }

    /// Dye in a bath with goods in it reacts.
    fn bath_spell(&mut self, state: usize, bath: usize, time: Interval) {
        let Some(liquor) = self.liquors.get(bath).map(Arc::clone) else { return };
        let dyed = self.substances.dye(&liquor.contents).high > 0.0;
        if self.goods.get(state).is_some_and(|goods| goods.washed_off) {
            return;
        }
        let now = liquor.temperature.value;
        let cooling = self.bath_cooling(&liquor);
        let zones = self.goods.get(state).map_or(0, |goods| goods.zones.len());
        for at in 0..zones {
            let Some(zone) = self.goods.get(state).and_then(|goods| goods.zones.get(at)).map(Arc::clone) else {
                continue;
            };
            if !dyed && self.substances.dye(&zone.contents).high <= 0.0 {
                continue;
            }
            let index = self.spells.len() as u32;
            let spell = Spell::new(zone.spell, time, now, cooling, Bathed::Bath(Arc::clone(&liquor), zone));
            self.spells.push(match self.brought {
                Some((at, from)) if at == bath => spell.brought_from(from),
                _ => spell,
            });
            if let Some(zone) = self.zone_mut(state, at) {
                zone.spell = Some(index);
            }
        }
    }
}
