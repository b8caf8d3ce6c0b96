//! Time goes by: goods cool and dry, ice melts, dye reacts.

use std::sync::Arc;

use tenter_chemistry::heat::{Exposure, melting_time_range};
use tenter_chemistry::soak::Packing;
use tenter_quantity::{Figure, Interval};
use tenter_resolve::recipe::Cover;

use crate::bench::{Bench, Pass};
use crate::contents::Contents;
use crate::event::EventKind;
use crate::figures::{PRACTICE, mass, portion, rest, share, temperature, worked_share};
use crate::reaction::{Bathed, Spell};
use crate::state::{Ice, ZoneKey};
use crate::usual;
use crate::warmth::Cooling;

/// Relative humidity of the room, which nobody writes; the pace of drying spans far more than this.
const HUMIDITY: f64 = 0.5;
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
                    _ => temperature(
                        "{0} drawn toward {1} over {2}",
                        cooling.after(start, kept),
                        vec![
                            ("", zone.temperature.clone()),
                            ("around", around.map_or(&self.room, |around| &around.temperature).clone()),
                            ("", self.time.clone()),
                        ],
                    ),
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
        let zones = self.goods.get(state).map_or(0, |goods| goods.zones.len());
        for at in 0..zones {
            let Some(zone) = self.goods.get(state).and_then(|goods| goods.zones.get(at)).map(Arc::clone) else {
                continue;
            };
            if !dyed && self.substances.dye(&zone.contents).high <= 0.0 {
                continue;
            }
            let index = self.spells.len() as u32;
            self.spells.push(Spell::new(zone.spell, time, now, None, Bathed::Bath(Arc::clone(&liquor), zone)));
            if let Some(zone) = self.zone_mut(state, at) {
                zone.spell = Some(index);
            }
        }
    }

    /// Ice melts at an even pace over the time such a heap takes; water goes down through the goods, what they cannot hold
    /// runs off. Gives the time left without ice.
    fn melt(&mut self, state: usize, time: Interval, air: Interval) -> Interval {
        let Some(goods) = self.goods.get(state).map(Arc::clone) else { return time };
        let Some(ice) = goods.ice.as_ref().map(Arc::clone) else { return time };
        let (Some(mass_left), Some(heaped)) = (ice.mass.clone(), ice.heaped.clone()) else { return time };
        let melts = melting_time(heaped.value, goods.pieces, air);
        let pace = heaped.value.best.max(1e-9);
        let gone = Interval::new(
            time.low / melts.high.max(1.0),
            time.best / melts.best.max(1.0),
            time.high / melts.low.max(1.0),
        ) * (pace / mass_left.value.best.max(1e-9));
        let part = worked_share("{0} of the time the ice takes to melt", gone, vec![("", self.time.clone())]);
        let water = portion(&mass_left, &part);
        let mut powder = ice.powder.clone();
        let fallen = powder.take(&part);
        let all = part.value.low >= 1.0 || part.value.best >= 1.0;
        if let Some(goods) = self.goods_mut(state) {
            goods.ice = (!all)
                .then(|| Arc::new(Ice { mass: Some(portion(&mass_left, &rest(&part))), powder, ..(*ice).clone() }));
        }
        let cold = temperature(
            "wet cloth under ice at {0}",
            Interval::new(273.15, 277.15, 283.15).min(Interval::new(air.low, air.best, air.high)),
            vec![("", self.room.clone())],
        );
        let count = goods.zones.len();
        let weights: Vec<Figure> = goods.zones.iter().map(|zone| zone.share.clone()).collect();
        for (at, weight) in weights.iter().enumerate().take(count) {
            let came = portion(&water, weight);
            let dust = fallen.share(weight);
            self.drip_on(state, at, came, dust, &cold);
        }
        // The cold spell: dye that is wet reacts slowly while the ice lasts.
        let cold_time = time.min(melts);
        for at in 0..count {
            let Some(zone) = self.goods.get(state).and_then(|goods| goods.zones.get(at)).map(Arc::clone) else {
                continue;
            };
            if self.substances.dye(&zone.contents).high > 0.0 {
                let index = self.spells.len() as u32;
                self.spells.push(Spell::new(zone.spell, cold_time, cold.value, None, Bathed::Zone(Arc::clone(&zone))));
                if let Some(zone) = self.zone_mut(state, at) {
                    zone.spell = Some(index);
                }
            }
        }
        (time - cold_time).clamp_low(0.0)
    }

    fn drip_on(&mut self, state: usize, at: usize, water: Figure, powder: Contents, cold: &Figure) {
        let Some(zone) = self.goods.get(state).and_then(|goods| goods.zones.get(at)).map(Arc::clone) else { return };
        let key = zone.key;
        let dyes: Vec<_> = powder.parts.iter().filter(|(id, _)| self.substances.is_dye(*id)).cloned().collect();
        for (dye, figure) in dyes {
            self.laid(state, key, dye, &figure, true);
        }
        // What was there before the melt came is what the dye meets first.
        let dyed = self.substances.dye(&powder).high > 0.0 || self.substances.dye(&zone.contents).high > 0.0;
        if let Some(zone) = self.zone_mut(state, at) {
            zone.contents.add(powder);
        }
        if dyed {
            self.wets_out(state, at, true);
        }
        if let Some(zone) = self.zone_mut(state, at) {
            zone.contents.add_water(water);
            zone.temperature = cold.clone();
            zone.powder = false;
        }
        // Slow melt displaces liquor without mixing all of it.
        let mixing = share(0.15, 0.35, 0.8, "how far slow meltwater mixes with what it runs through", PRACTICE);
        self.run_off(state, at, &mixing);
    }

    /// Dye on a zone meets liquor: tells the rules with the numbers of that moment.
    pub(crate) fn wets_out(&mut self, state: usize, at: usize, gradual: bool) {
        let Some(goods) = self.goods.get(state) else { return };
        let Some(zone) = goods.zones.get(at).map(Arc::clone) else { return };
        let (id, lot) = (goods.goods, goods.lot);
        let Some(dye) = self.substances.dye_figure(&zone.contents) else { return };
        let usable = zone.usable(&self.substances);
        let alkali = self.substances.alkali_as_soda_ash(&zone.contents);
        let acid = self.substances.acid(&zone.contents);
        let powder = zone.powder;
        if powder && let Some(zone) = self.zone_mut(state, at) {
            zone.powder = false;
        }
        self.emit(EventKind::WettingOut { goods: id, lot, zone, usable, alkali, dye, acid, powder, gradual });
    }

    /// What a zone cannot hold runs off with a share of what is dissolved in it: through to the other side of the same
    /// zone where the sides are told apart, and from there away.
    pub(crate) fn run_off(&mut self, state: usize, at: usize, mixing: &Figure) {
        let Some((key, away)) = self.runs_off(state, at, mixing, true) else { return };
        let other = self.goods.get(state).and_then(|goods| {
            goods.zones.iter().position(|zone| zone.key.layout == key.layout && zone.key.face != key.face)
        });
        let Some(other) = other else {
            self.drained.push(away);
            return;
        };
        let dyes: Vec<_> = away.parts.iter().filter(|(id, _)| self.substances.is_dye(*id)).cloned().collect();
        let Some(there) = self.goods.get(state).and_then(|goods| goods.zones.get(other)).map(|zone| zone.key) else {
            return;
        };
        for (dye, figure) in dyes {
            if self.accounts.find(state, there, dye).is_none() {
                self.came_through(state, there, dye, &figure);
            }
        }
        if let Some(zone) = self.zone_mut(state, other) {
            zone.contents.add(away);
        }
        if let Some((_, away)) = self.runs_off(state, other, mixing, false) {
            self.drained.push(away);
        }
    }

    fn runs_off(&mut self, state: usize, at: usize, mixing: &Figure, first: bool) -> Option<(ZoneKey, Contents)> {
        let goods = self.goods.get(state)?;
        if goods.lies_in_vessel {
            return None;
        }
        let bound = goods.packing == Packing::Bound;
        let (id, zone) = (goods.goods, goods.zones.get(at).map(Arc::clone)?);
        let held = zone.contents.water.clone()?;
        let room_for = usual::capacity(bound);
        let over = (held.value - room_for.value * zone.dry.value).clamp_low(0.0);
        if over.high <= 0.0 {
            return None;
        }
        let inputs = vec![("", room_for.clone()), ("dry goods", zone.dry.clone())];
        let most = mass("{0} × {1}", room_for.value * zone.dry.value, inputs);
        // 1 − room ÷ held: each of the two counts once, so that nothing is wider than it must be.
        let above = |room: f64, held: f64| if held > room { 1.0 - room / held } else { 0.0 };
        let part = worked_share(
            "what {0} is above {1}, as a share of it",
            Interval::new(
                above(most.value.high, held.value.low),
                above(most.value.best, held.value.best),
                above(most.value.low, held.value.high),
            ),
            vec![("held", held.clone()), ("room for", most.clone())],
        );
        let inputs = vec![("", part.clone()), ("mixed", mixing.clone())];
        let leaves = worked_share("{0} × {1}", part.value * mixing.value, inputs);
        let stays = rest(&leaves);
        let dye = self.substances.dye(&zone.contents) * leaves.value;
        let through = first && zone.key.face.is_some();
        let inputs = vec![("held", held.clone()), ("room for", most.clone())];
        let stays_on = mass("the lesser of {0} and {1}", held.value.min(most.value), inputs);
        let runs_off = mass("what {0} is above {1}", over, vec![("held", held.clone()), ("room for", most.clone())]);
        let mut away = Contents { water: Some(runs_off.clone()), parts: Vec::new() };
        let state = self.zone_mut(state, at)?;
        state.contents.water = Some(stays_on);
        for (id, figure) in &mut state.contents.parts {
            away.parts.push((*id, portion(figure, &leaves)));
            *figure = portion(figure, &stays);
        }
        self.emit(EventKind::Overflow { goods: id, zone: zone.key, held, capacity: most, runs_off, dye, through });
        Some((zone.key, away))
    }
}

/// Time a heap takes to melt in the room, s: between one heap a piece and one heap for all.
pub(crate) fn melting_time(heaped: Interval, pieces: Interval, air: Interval) -> Interval {
    let each = heaped.best / pieces.best.max(1.0);
    let (low, _, _) = melting_time_range(each, air.high, HUMIDITY);
    let (_, best, _) = melting_time_range(each, air.best, HUMIDITY);
    let (_, _, each_high) = melting_time_range(each, air.low, HUMIDITY);
    let (_, all_best, _) = melting_time_range(heaped.best, air.low, HUMIDITY);
    let cap = |t: f64| if t.is_finite() { t } else { 1e7 };
    Interval::new(cap(low), cap(best), cap(each_high.max(all_best)))
}
