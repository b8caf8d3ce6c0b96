//! Ice melts and goes down through the goods.

use crate::bench::Bench;
use crate::contents::Contents;
use crate::figures::{PRACTICE, portion, rest, share, temperature, worked_share};
use crate::reaction::{Bathed, Spell};
use crate::state::Ice;
use std::sync::Arc;
use tenter_chemistry::heat::melting_time_range;
use tenter_quantity::{Figure, Interval};

/// Relative humidity of the room, which nobody writes; the pace of drying spans far more than this.
const HUMIDITY: f64 = 0.5;

impl Bench<'_> {
    /// Ice melts at an even pace over the time such a heap takes; water goes down through the goods, what they cannot hold
    /// runs off. Gives the time left without ice.
    pub(crate) fn melt(&mut self, state: usize, time: Interval, air: Interval) -> Interval {
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
