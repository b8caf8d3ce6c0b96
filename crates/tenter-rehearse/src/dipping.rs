//! Part of the goods goes into a liquor: the zones from the first listed to the one named.

use std::sync::Arc;

use tenter_quantity::{Figure, Interval};
use tenter_resolve::recipe::{LayoutId, MaterialId};

use crate::bench::{Bench, Pass};
use crate::contents::Contents;
use crate::event::EventKind;
use crate::figures::{PRACTICE, mass, portion, rest, share, worked_share};

impl Bench<'_> {
    /// Dips zones `0..=depth` of a layout for the time of the step. Each takes up liquor to its pickup.
    pub(crate) fn dip_zones(&mut self, pass: &Pass<'_>, liquor: usize, layout: LayoutId, depth: usize) {
        let working = self.working.clone();
        let time = self.duration(pass);
        for state in working {
            let count = self.goods.get(state).map_or(0, |goods| goods.zones.len());
            for at in 0..count {
                let Some(zone) = self.goods.get(state).and_then(|goods| goods.zones.get(at)).map(Arc::clone) else {
                    continue;
                };
                if !zone.key.layout.is_some_and(|(of, index)| of == layout && index <= depth) {
                    continue;
                }
                self.dip_zone(pass, state, at, liquor, time);
            }
        }
        self.pass_time(time, None);
    }

    fn dip_zone(&mut self, pass: &Pass<'_>, state: usize, at: usize, liquor: usize, time: Interval) {
        let Some(goods) = self.goods.get(state).map(Arc::clone) else { return };
        let Some(zone) = goods.zones.get(at).map(Arc::clone) else { return };
        let pickup = self.coming_pickup(pass, state);
        // What the zone holds changes places with the bath by and by; dye on it stays but for what bleeds.
        let reached = |tau: f64, t: f64| -libm::expm1(-t / tau);
        let gone = Interval::new(reached(900.0, time.low), reached(300.0, time.best), reached(100.0, time.high));
        let exchanged = worked_share(
            "share of the liquor held that changes places with the bath in {0}",
            gone,
            vec![("", self.time.clone())],
        );
        let stays = rest(&exchanged);
        let bleeds = share(0.0, 0.1, 0.3, "dye that bleeds into the bath", PRACTICE);
        let mut kept =
            Contents { water: zone.contents.water.as_ref().map(|water| portion(water, &stays)), parts: vec![] };
        let mut given =
            Contents { water: zone.contents.water.as_ref().map(|water| portion(water, &exchanged)), parts: vec![] };
        for (id, figure) in &zone.contents.parts {
            let (goes, remains) = if self.substances.is_dye(*id) {
                (bleeds.clone(), rest(&bleeds))
            } else {
                (exchanged.clone(), stays.clone())
            };
            kept.parts.push((*id, portion(figure, &remains)));
            given.parts.push((*id, portion(figure, &goes)));
        }
        if let Some(bath) = self.liquor_mut(liquor) {
            bath.contents.add(given);
        }
        let now = self.clock.elapsed;
        self.note_together(liquor, now);
        let Some(bath) = self.liquors.get(liquor).map(Arc::clone) else { return };
        let Some(water) = bath.contents.water.clone() else { return };
        let still = kept.water_mass();
        let inputs = vec![("water held", pickup.clone()), ("dry goods of the zone", zone.dry.clone())];
        let most = (pickup.value * zone.dry.value).max(still);
        let holds = mass("{0} × {1}", Interval::new(most.low, most.best, most.high), inputs);
        let wanted = mass(
            "{0} × {1} less what stayed in it",
            pickup.value * zone.dry.value - still,
            vec![("water held", pickup), ("dry goods of the zone", zone.dry.clone())],
        );
        let value = if water.value.best > 0.0 { wanted.value / water.value } else { Interval::ZERO };
        let part = worked_share("{0} ÷ {1}", value, vec![("carried off", wanted), ("water in the bath", water)]);
        let on_fibre = self.exhaustion(&bath, &zone.dry, time);
        let Some((taken, left)) = self.parted(&bath.contents, &part, &on_fibre) else { return };
        let temperature = bath.temperature.clone();
        if let Some(bath) = self.liquor_mut(liquor) {
            bath.contents = left;
            bath.volume = bath.volume.as_ref().map(|volume| portion(volume, &rest(&part)));
        }
        let (key, id, lot) = (zone.key, goods.goods, goods.lot);
        let dyes: Vec<(MaterialId, Figure)> =
            taken.parts.iter().filter(|(id, _)| self.substances.is_dye(*id)).cloned().collect();
        for (dye, figure) in dyes {
            self.laid(state, key, dye, &figure, false);
            self.emit(EventKind::DyeLaid { goods: id, lot, zone: key, dye, mass: figure, dry: false, ice: false });
        }
        let fresh = self.exchanged(&zone.contents, &bath.contents, &holds, &exchanged);
        kept.add(taken);
        // The zone comes out with its pickup, whatever the ends of what changed places say; and what is dissolved in it lies
        // between what the liquor held before and what the bath holds.
        kept.water = Some(holds);
        for (id, figure) in &mut kept.parts {
            if let Some(closer) = fresh.part(*id).filter(|_| !self.substances.is_dye(*id)) {
                let (sum, mean) = (figure.value, closer.value);
                let value =
                    Interval::new(sum.low.max(mean.low).min(sum.best), sum.best, sum.high.min(mean.high).max(sum.best));
                *figure = mass(
                    "{0}, lying between what the liquor held and what the bath holds: {1}",
                    value,
                    vec![("", figure.clone()), ("", closer.clone())],
                );
            }
        }
        self.no_more_than_there_is(&mut kept);
        if let Some(zone) = self.zone_mut(state, at) {
            zone.contents = kept;
            zone.temperature = temperature;
            zone.powder = false;
        }
        self.wets_out(state, at, false);
    }

    /// What is dissolved in the liquor of a zone after a share of it has changed places with the bath, kg: a mean of two
    /// strengths. Each end takes one share for both, so that dip after dip does not widen it.
    fn exchanged(&self, had: &Contents, bath: &Contents, holds: &Figure, share: &Figure) -> Contents {
        let mut out = Contents::default();
        let water = bath.water_mass();
        if water.low <= 0.0 {
            return out;
        }
        for (id, figure) in bath.parts.iter().chain(&had.parts) {
            if self.substances.is_dye(*id) || out.part(*id).is_some() {
                continue;
            }
            let before = had.mass(*id);
            let after = bath.mass(*id) / water * holds.value;
            let at = |before: f64, after: f64, share: f64| before + (after - before) * share;
            let (s, b, a) = (share.value, before, after);
            let value = Interval::new(
                at(b.low, a.low, s.low).min(at(b.low, a.low, s.high)),
                at(b.best, a.best, s.best),
                at(b.high, a.high, s.low).max(at(b.high, a.high, s.high)),
            );
            let inputs = vec![("", figure.clone()), ("", share.clone()), ("liquor held", holds.clone())];
            out.add_part(*id, mass("{0} as the bath holds it, {1} of the way, in {2}", value, inputs));
        }
        out
    }

    /// A bath written in place is poured away when the goods are out of it.
    pub(crate) fn step_out_of_place(&mut self, pass: &Pass<'_>, liquor: usize) {
        let in_place = self
            .liquors
            .get(liquor)
            .is_some_and(|bath| matches!(bath.name, crate::state::LiquorName::InPlace(_)) && bath.inside.is_empty());
        if in_place && !pass.next.iter().any(|next| next.liquor.is_some()) {
            self.pour_away(liquor);
        }
    }

    /// A liquor is poured away.
    pub(crate) fn pour_away(&mut self, liquor: usize) {
        let Some(bath) = self.liquors.get(liquor).filter(|bath| !bath.gone).map(Arc::clone) else { return };
        self.emit(EventKind::Discharged { liquor, volume: bath.volume.clone(), contents: Arc::clone(&bath) });
        self.drained.push(bath.contents.clone());
        if let Some(bath) = self.liquor_mut(liquor) {
            bath.gone = true;
            bath.contents = Contents::default();
            bath.volume = bath.volume.take().map(|volume| Figure { value: Interval::ZERO, ..volume });
        }
    }
}
