//! Keeps the account of each dye on each zone while the steps go on.

use std::collections::BTreeMap;
use std::sync::Arc;

use tenter_quantity::Place;
use tenter_resolve::recipe::MaterialId;

use crate::bench::Bench;
use crate::dyeing::Dyeing;
use crate::event::Medium;
use crate::state::{GoodsState, LiquorState, ZoneKey, ZoneState};

/// The accounts, and what was looked at last so that untouched zones cost nothing.
#[derive(Default)]
pub(crate) struct Accounts {
    open: Vec<Dyeing>,
    /// The account that stands for each dye on each zone: index into `open`.
    standing: BTreeMap<(usize, ZoneKey, MaterialId), usize>,
    seen: Vec<Option<Arc<GoodsState>>>,
    seen_bath: Vec<Option<Arc<LiquorState>>>,
}

impl Accounts {
    pub(crate) fn done(mut self, goods: &[Arc<GoodsState>]) -> Vec<Dyeing> {
        for entry in &mut self.open {
            if let Some(zone) = goods.get(entry.state).and_then(|state| state.zone(entry.zone)) {
                entry.spell = zone.spell.or(entry.spell);
            }
        }
        self.open
    }

    /// The account of a dye on a zone.
    pub(crate) fn find(&mut self, state: usize, zone: ZoneKey, dye: MaterialId) -> Option<&mut Dyeing> {
        let at = *self.standing.get(&(state, zone, dye))?;
        self.open.get_mut(at)
    }

    /// The goods were divided anew: accounts of the old parts are closed, the new ones remember who laid the dye.
    pub(crate) fn divided(&mut self, state: usize, keys: &[ZoneKey]) {
        let old: Vec<usize> = (0..self.open.len())
            .filter(|at| self.open.get(*at).is_some_and(|entry| entry.state == state && !entry.superseded))
            .collect();
        for at in old {
            let Some(entry) = self.open.get_mut(at) else { continue };
            entry.superseded = true;
            let entry = entry.clone();
            self.standing.remove(&(state, entry.zone, entry.dye));
            for key in keys {
                if let std::collections::btree_map::Entry::Vacant(slot) = self.standing.entry((state, *key, entry.dye))
                {
                    slot.insert(self.open.len());
                    self.open.push(Dyeing {
                        zone: *key,
                        superseded: false,
                        usable: tenter_quantity::Interval::ZERO,
                        zone_then: None,
                        ..entry.clone()
                    });
                }
            }
        }
        if let Some(slot) = self.seen.get_mut(state) {
            *slot = None;
        }
    }
}

impl Bench<'_> {
    /// A step laid a dye on a zone.
    pub(crate) fn laid(
        &mut self,
        state: usize,
        zone: ZoneKey,
        dye: MaterialId,
        mass: &tenter_quantity::Figure,
        dry: bool,
    ) {
        let place = self.place;
        if let Some(entry) = self.accounts.find(state, zone, dye).filter(|entry| entry.washed.is_none()) {
            entry.laid.push(place);
            return;
        }
        let Some(goods) = self.goods.get(state) else { return };
        self.accounts.standing.insert((state, zone, dye), self.accounts.open.len());
        self.accounts.open.push(Dyeing {
            goods: goods.goods,
            state,
            lot: goods.lot,
            zone,
            dye,
            laid: vec![place],
            mass: mass.clone(),
            all_dye: tenter_quantity::Interval::ZERO,
            dry,
            medium: Medium::Cloth,
            usable: tenter_quantity::Interval::ZERO,
            base: tenter_quantity::Interval::ZERO,
            acid: tenter_quantity::Interval::ZERO,
            zone_then: None,
            bath_then: None,
            warmest: None,
            steamed: false,
            batch: None,
            wetted: !dry,
            came_through: false,
            washed: None,
            superseded: false,
            spell: None,
        });
    }

    /// Dye came through from the other side.
    pub(crate) fn came_through(
        &mut self,
        state: usize,
        zone: ZoneKey,
        dye: MaterialId,
        mass: &tenter_quantity::Figure,
    ) {
        self.laid(state, zone, dye, mass, false);
        if let Some(entry) = self.accounts.find(state, zone, dye) {
            entry.came_through = true;
        }
    }

    /// Looks at every zone that a step changed.
    pub(crate) fn account(&mut self) {
        self.accounts.seen.resize(self.goods.len(), None);
        self.accounts.seen_bath.resize(self.goods.len(), None);
        for state in 0..self.goods.len() {
            let Some(goods) = self.goods.get(state).map(Arc::clone) else { continue };
            if let Some(bath) = goods.inside.and_then(|bath| self.liquors.get(bath)).map(Arc::clone) {
                let same = self
                    .accounts
                    .seen_bath
                    .get(state)
                    .is_some_and(|seen| seen.as_ref().is_some_and(|seen| Arc::ptr_eq(seen, &bath)));
                if !same && !goods.washed_off {
                    self.account_bath(state, &goods, &bath);
                }
                if let Some(slot) = self.accounts.seen_bath.get_mut(state) {
                    *slot = Some(bath);
                }
            }
            let before = self.accounts.seen.get(state).and_then(|seen| seen.as_ref().map(Arc::clone));
            if before.as_ref().is_some_and(|before| Arc::ptr_eq(before, &goods)) {
                continue;
            }
            for (at, zone) in goods.zones.iter().enumerate() {
                let same = before
                    .as_ref()
                    .and_then(|before| before.zones.get(at))
                    .is_some_and(|before| Arc::ptr_eq(before, zone));
                if !same {
                    self.account_zone(state, zone);
                }
            }
            if let Some(slot) = self.accounts.seen.get_mut(state) {
                *slot = Some(goods);
            }
        }
    }

    fn account_zone(&mut self, state: usize, zone: &Arc<ZoneState>) {
        let dyes = zone.contents.parts.iter().filter(|(id, _)| self.substances.is_dye(*id));
        let mut numbers = None;
        for (id, mass) in dyes {
            let Some(entry) = self.accounts.find(state, zone.key, *id) else { continue };
            entry.spell = zone.spell.or(entry.spell);
            if entry.washed.is_some() {
                continue;
            }
            if mass.value.best > entry.mass.value.best {
                entry.mass = mass.clone();
            }
            entry.wetted |= !zone.powder;
            let (usable, base, acid, dye) = *numbers.get_or_insert_with(|| {
                let contents = &zone.contents;
                let table = &self.substances;
                (zone.usable(table), table.base(contents), table.acid(contents), table.dye(contents))
            });
            if dye.best > entry.all_dye.best {
                entry.all_dye = dye;
            }
            let better =
                usable.best > entry.usable.best || (usable.best == entry.usable.best && base.best >= entry.base.best);
            if entry.zone_then.is_none() && entry.bath_then.is_none() || better {
                entry.usable = usable;
                entry.base = base;
                entry.acid = acid;
                entry.zone_then = Some(Arc::clone(zone));
                entry.bath_then = None;
                entry.medium = Medium::Cloth;
            }
        }
    }

    fn account_bath(&mut self, state: usize, goods: &Arc<GoodsState>, bath: &Arc<LiquorState>) {
        let index = goods.inside.unwrap_or(0);
        let table = Arc::clone(&self.substances);
        let usable = table.usable_after(&bath.contents, bath.decarbonated);
        let (base, acid) = (table.base(&bath.contents), table.acid(&bath.contents));
        let dye = table.dye(&bath.contents);
        let keys: Vec<ZoneKey> = goods.zones.iter().map(|zone| zone.key).collect();
        // Dye that stays on the cloth meets the alkali of the bath.
        for zone in &goods.zones {
            for (id, _) in zone.contents.parts.iter().filter(|(id, _)| table.is_dye(*id)) {
                let Some(entry) = self.accounts.find(state, zone.key, *id).filter(|entry| entry.washed.is_none())
                else {
                    continue;
                };
                if usable.best > entry.usable.best {
                    entry.usable = usable;
                    entry.base = base;
                    entry.acid = acid;
                    entry.all_dye = dye + table.dye(&zone.contents);
                    entry.bath_then = Some(Arc::clone(bath));
                    entry.zone_then = None;
                    entry.medium = Medium::Bath(index);
                }
                entry.wetted = true;
            }
        }
        for (id, mass) in bath.contents.parts.iter().filter(|(id, _)| table.is_dye(*id)) {
            for key in &keys {
                if self.accounts.find(state, *key, *id).is_none_or(|entry| entry.washed.is_some()) {
                    self.laid(state, *key, *id, mass, false);
                }
                let Some(entry) = self.accounts.find(state, *key, *id) else { continue };
                let better = usable.best > entry.usable.best || entry.bath_then.is_none() && entry.zone_then.is_none();
                if better || (usable.best == entry.usable.best && base.best >= entry.base.best) {
                    entry.mass = mass.clone();
                    entry.usable = usable;
                    entry.base = base;
                    entry.acid = acid;
                    entry.all_dye = dye;
                    entry.bath_then = Some(Arc::clone(bath));
                    entry.zone_then = None;
                    entry.medium = Medium::Bath(index);
                }
                entry.wetted = true;
            }
        }
    }

    /// The zone's dyes were heated.
    pub(crate) fn warmed(&mut self, state: usize, zone: usize, steam: bool) {
        let Some(zone) = self.goods.get(state).and_then(|goods| goods.zones.get(zone)).map(Arc::clone) else { return };
        let place = self.place;
        for (id, _) in zone.contents.parts.iter().filter(|(id, _)| self.substances.is_dye(*id)) {
            if let Some(entry) = self.accounts.find(state, zone.key, *id).filter(|entry| entry.washed.is_none()) {
                entry.steamed |= steam;
                if entry.warmest.as_ref().is_none_or(|(have, _)| have.value.best < zone.temperature.value.best) {
                    entry.warmest = Some((zone.temperature.clone(), place));
                }
            }
        }
    }

    /// Goods with dye were left to react, or washed.
    pub(crate) fn each_account(&mut self, state: usize, mut change: impl FnMut(&mut Dyeing, Place)) {
        let place = self.place;
        for entry in self.accounts.open.iter_mut().filter(|entry| entry.state == state && !entry.superseded) {
            change(entry, place);
        }
    }
}
