//! Goods are put into a liquor and taken out of it: what they bring, what they carry off, what goes on to the fibre.

use crate::bench::Bench;
use crate::contents::Contents;
use crate::event::EventKind;
use crate::exhaustion::Exhausted;
use crate::figures::{self, PRACTICE, portion, rest, share, worked_share};
use crate::state::ZoneState;
use crate::warmth::{capacity, lumped, mixed};
use std::sync::Arc;
use tenter_quantity::standard::{LITRE, LITRE_PER_KILOGRAM_GOODS};
use tenter_quantity::{Dimension, Figure, Interval};
use tenter_reference::Role;

impl Bench<'_> {
    /// Goods are put into a bath: what they hold mixes into it.
    pub(crate) fn enter(&mut self, state: usize, liquor: usize) {
        let Some(goods) = self.goods.get(state).map(Arc::clone) else { return };
        if goods.inside == Some(liquor) {
            return;
        }
        if goods.inside.is_some() {
            self.leave(state, &share(1.5, 2.2, 3.0, "water held", PRACTICE), Interval::ONE);
        }
        let Some(goods) = self.goods.get(state).map(Arc::clone) else { return };
        // Dye on the cloth holds on to it; what is still loose bleeds into the liquor in part.
        let bleeds = share(0.05, 0.2, 0.5, "loose dye that bleeds into the liquor", PRACTICE);
        let stays = rest(&bleeds);
        let mut brought = Contents::default();
        let mut kept: Vec<Contents> = Vec::with_capacity(goods.zones.len());
        for zone in &goods.zones {
            let mut on_cloth = Contents::default();
            if let Some(water) = &zone.contents.water {
                brought.add_water(water.clone());
            }
            for (id, figure) in &zone.contents.parts {
                if !self.substances.is_dye(*id) {
                    brought.add_part(*id, figure.clone());
                } else if goods.washed_off {
                    on_cloth.parts.push((*id, figure.clone()));
                } else {
                    brought.add_part(*id, portion(figure, &bleeds));
                    on_cloth.parts.push((*id, portion(figure, &stays)));
                }
            }
            kept.push(on_cloth);
        }
        let heat = capacity(brought.water_mass(), goods.dry.value);
        let of_zone = |zone: &Arc<ZoneState>| capacity(zone.contents.water_mass(), zone.dry.value);
        let Some(warm) = lumped(goods.zones.iter().map(|zone| (&zone.temperature, of_zone(zone)))) else { return };
        let now = self.clock.elapsed;
        let Some(bath) = self.liquors.get(liquor).map(Arc::clone) else { return };
        let bath_heat = capacity(bath.contents.water_mass(), Interval::ZERO);
        let temperature = mixed((&bath.temperature, bath_heat), (&warm, heat));
        let water = brought.water.clone();
        let came = brought.masses();
        if !came.is_empty() {
            let had = bath.contents.masses();
            self.emit(EventKind::Mixed { liquor: Some(bath.name), had, came, vessel: bath.vessel });
        }
        if let Some(bath) = self.liquor_mut(liquor) {
            if !bath.heated {
                bath.temperature = temperature;
                bath.temperature_at = now;
            }
            bath.contents.add(brought);
            let warm = bath.temperature.value;
            bath.warmest = Some(bath.warmest.filter(|_| !bath.inside.is_empty()).map_or(warm, |have| have.max(warm)));
            bath.inside.push(state);
            if let Some(water) = water
                && let Some(volume) = bath.volume.take()
            {
                let more = figures::volume("{0}, 1 kg of water being 1 L", water.value * 1e-3, vec![("", water)]);
                bath.volume = Some(Figure::sum(vec![volume, more], LITRE));
            }
        }
        self.note_together(liquor, now);
        if let Some(goods) = self.goods_mut(state) {
            goods.inside = Some(liquor);
            goods.inside_since = now;
            for (zone, kept) in goods.zones.iter_mut().zip(kept) {
                let zone = Arc::make_mut(zone);
                zone.contents = kept;
                zone.powder = false;
                zone.acidity = std::sync::OnceLock::new();
            }
        }
    }

    /// Tells that goods lie in a bath, with its liquor ratio and depth.
    pub(crate) fn tell_immersed(&mut self, state: usize, liquor: usize) {
        let (Some(goods), Some(bath)) = (self.goods.get(state), self.liquors.get(liquor)) else { return };
        let dry: Vec<Figure> =
            bath.inside.iter().filter_map(|at| self.goods.get(*at)).map(|goods| goods.dry.clone()).collect();
        let dry = Figure::sum(dry, tenter_quantity::standard::KILOGRAM);
        let liquor_ratio = bath.volume.as_ref().filter(|_| dry.value.best > 0.0).map(|volume| {
            Figure::worked(
                "{0} ÷ {1}",
                volume.value / dry.value,
                Dimension::VolumePerMass,
                LITRE_PER_KILOGRAM_GOODS,
                vec![("liquor", volume.clone()), ("dry goods", dry.clone())],
            )
        });
        // A kilogram of dry cotton displaces about 0.65 L, and never packs without gaps: 0.65 to 1.5 L.
        let fills = bath.volume.as_ref().map(|volume| {
            let goods = dry.value * Interval::new(0.65e-3, 0.8e-3, 1.5e-3);
            figures::volume(
                "{0} and the room of {1}",
                volume.value + goods,
                vec![("", volume.clone()), ("dry goods", dry.clone())],
            )
        });
        let salt = match bath.volume.as_ref().map(|volume| volume.value) {
            Some(volume) if volume.best > 0.0 => self.substances.mass_of_role(&bath.contents, Role::Salt) / volume,
            _ => Interval::ZERO,
        };
        let event = EventKind::Immersed {
            liquor,
            goods: goods.goods,
            volume: bath.volume.clone(),
            liquor_ratio,
            fills,
            vessel: bath.vessel,
            salt,
            temperature: bath.temperature.clone(),
            dye: self.substances.dye(&bath.contents),
        };
        self.emit(event);
    }

    /// Goods come out with their pickup: liquor in its share of the bath, and of each dye what has gone on to the fibre.
    /// `wetted` is how far the liquor went through; the unwetted part stays dry. Gives the liquor carried off, kg.
    pub(crate) fn leave(&mut self, state: usize, pickup: &Figure, wetted: Interval) -> Option<Figure> {
        let goods = self.goods.get(state).map(Arc::clone)?;
        let liquor = goods.inside?;
        let bath = self.liquors.get(liquor).map(Arc::clone)?;
        let water = bath.contents.water.clone()?;
        let wanted = figures::mass(
            "{0} × {1}",
            pickup.value * goods.dry.value * wetted,
            vec![("water held", pickup.clone()), ("dry goods", goods.dry.clone())],
        );
        let value = if water.value.best > 0.0 { wanted.value / water.value } else { Interval::ZERO };
        let part = worked_share("{0} ÷ {1}", value, vec![("carried off", wanted), ("water in the bath", water)]);
        let contact = (self.clock.elapsed - goods.inside_since).clamp_low(0.0);
        let on_fibre = self.exhaustion(&bath, &goods.dry, contact);
        let (taken, left) = self.parted(&bath.contents, &part, &on_fibre)?;
        let kept = rest(&part);
        let carried = taken.water.clone();
        if let Some(bath) = self.liquor_mut(liquor) {
            bath.contents = left;
            bath.volume = bath.volume.as_ref().map(|volume| portion(volume, &kept));
            bath.inside.retain(|inside| *inside != state);
        }
        let temperature = bath.temperature.clone();
        let dyed: Vec<_> = taken.parts.iter().filter(|(id, _)| self.substances.is_dye(*id)).cloned().collect();
        if let Some(goods) = self.goods_mut(state) {
            goods.inside = None;
            for zone in &mut goods.zones {
                let zone = Arc::make_mut(zone);
                zone.contents.add(taken.share(&zone.share));
                zone.powder = false;
                zone.temperature = temperature.clone();
                zone.acidity = std::sync::OnceLock::new();
            }
        }
        let keys: Vec<_> = goods.zones.iter().map(|zone| (zone.key, zone.share.clone())).collect();
        for (dye, figure) in dyed {
            for (key, share) in &keys {
                if self.accounts.find(state, *key, dye).is_none() {
                    self.laid(state, *key, dye, &portion(&figure, share), false);
                }
            }
        }
        carried
    }

    /// Ends of a sum can say more than was ever weighed out: held to that.
    pub(crate) fn no_more_than_there_is(&self, contents: &mut Contents) {
        for (id, figure) in &mut contents.parts {
            let Some(all) = self.introduced.get(id.0) else { continue };
            if figure.value.high > all.high {
                *figure = figures::mass(
                    "{0}, but no more than was weighed out",
                    figure.value.min(*all),
                    vec![("", figure.clone())],
                );
            }
        }
    }

    /// What goods carry off and what stays in the bath: every material in the share of the water, dye in that of what has
    /// gone on to the fibre besides.
    pub(crate) fn parted(&self, bath: &Contents, part: &Figure, on_fibre: &Exhausted) -> Option<(Contents, Contents)> {
        let kept = rest(part);
        let water = bath.water.as_ref()?;
        let mut taken = Contents { water: Some(portion(water, part)), parts: Vec::with_capacity(bath.parts.len()) };
        let mut left = Contents { water: Some(portion(water, &kept)), parts: Vec::with_capacity(bath.parts.len()) };
        for (id, figure) in &bath.parts {
            match on_fibre.of(self.substances.get(*id)) {
                Some(on) => {
                    let goes = worked_share(
                        "{0} gone on to the fibre, and of the rest {1}",
                        on.value + (Interval::ONE - on.value) * part.value,
                        vec![("", on.clone()), ("", part.clone())],
                    );
                    taken.parts.push((*id, portion(figure, &goes)));
                    left.parts.push((*id, portion(figure, &rest(&goes))));
                }
                None => {
                    taken.parts.push((*id, portion(figure, part)));
                    left.parts.push((*id, portion(figure, &kept)));
                }
            }
        }
        Some((taken, left))
    }
}
