//! Part of the goods goes into a liquor: the zones from the first listed to the one named.

use std::sync::Arc;

use tenter_quantity::{Figure, Interval};
use tenter_resolve::recipe::LayoutId;

use crate::bench::{Bench, Pass};
use crate::event::EventKind;
use crate::figures::{mass, portion, worked_share};
use crate::usual;

impl Bench<'_> {
    /// Dips zones `0..=depth` of a layout for the time of the step. Each takes up liquor to its pickup; what it held before
    /// mixes with the bath first.
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
                self.dip_zone(pass, state, at, liquor);
            }
        }
        self.pass_time(time, None);
    }

    fn dip_zone(&mut self, pass: &Pass<'_>, state: usize, at: usize, liquor: usize) {
        let Some(goods) = self.goods.get(state).map(Arc::clone) else { return };
        let Some(zone) = goods.zones.get(at).map(Arc::clone) else { return };
        let pickup = pass.step.pickup.clone().or_else(|| usual::pickup("squeeze"));
        let Some(pickup) = pickup else { return };
        // The zone's liquor joins the bath; the share it then carries off is by water.
        if let Some(bath) = self.liquor_mut(liquor) {
            bath.contents.add(zone.contents.clone());
        }
        let now = self.clock.elapsed;
        self.note_together(liquor, now);
        let Some(bath) = self.liquors.get(liquor).map(Arc::clone) else { return };
        let Some(water) = bath.contents.water.clone() else { return };
        let wanted = mass(
            "{0} × {1}",
            pickup.value * zone.dry.value,
            vec![("water held", pickup), ("dry goods of the zone", zone.dry.clone())],
        );
        let value = if water.value.best > 0.0 { wanted.value / water.value } else { Interval::ZERO };
        let part = worked_share("{0} ÷ {1}", value, vec![("carried off", wanted), ("water in the bath", water)]);
        let Some(bath) = self.liquor_mut(liquor) else { return };
        let taken = bath.contents.take(&part);
        let temperature = bath.temperature.clone();
        let dyes: Vec<(tenter_resolve::recipe::MaterialId, Figure)> =
            taken.parts.iter().filter(|(id, _)| self.substances.is_dye(*id)).cloned().collect();
        let (key, id, lot) = (zone.key, goods.goods, goods.lot);
        for (dye, figure) in dyes {
            self.laid(state, key, dye, &figure, false);
            self.emit(EventKind::DyeLaid { goods: id, lot, zone: key, dye, mass: figure, dry: false, ice: false });
        }
        let warm = portion(&temperature, &crate::figures::exact_share(1.0, "all", ""));
        if let Some(zone) = self.zone_mut(state, at) {
            zone.contents = taken;
            zone.temperature = warm;
            zone.powder = false;
        }
        self.wets_out(state, at, false);
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
            bath.contents = crate::contents::Contents::default();
            bath.volume = bath.volume.take().map(|volume| Figure { value: Interval::ZERO, ..volume });
        }
    }
}
