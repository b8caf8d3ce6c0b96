//! Liquor meets dye, and what cloth cannot hold runs off.

use crate::bench::Bench;
use crate::contents::Contents;
use crate::event::EventKind;
use crate::figures::{mass, portion, rest, worked_share};
use crate::state::ZoneKey;
use crate::usual;
use std::sync::Arc;
use tenter_chemistry::soak::Packing;
use tenter_quantity::{Figure, Interval};

impl Bench<'_> {
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
