//! How much liquor stands in each bath as the steps go on, so that `40 g/L` added to it has litres to refer to.
//!
//! Wet goods bring their water. Nothing here is chemistry; the rehearsal has the full account.

use std::collections::BTreeMap;

use tenter_quantity::{Basis, Dimension, Figure, Interval};

use crate::amounts::volume_unit;
use crate::binder::Binder;
use crate::recipe::{GoodsId, LiquorKind, Step, Substance, Wetness};

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Bath {
    Mix(usize),
    Vessel(usize),
    InPlace,
}

/// Running account of the baths.
pub(crate) struct Ledger {
    volumes: BTreeMap<Bath, Figure>,
    current: Option<Bath>,
    held: Vec<Option<Figure>>,
    inside: Vec<Option<Bath>>,
}

/// Water held after a step that does not say, as a share of the dry weight. Common practice, no source.
fn usual_pickup(verb: &str) -> Option<(Interval, &'static str)> {
    Some(match verb {
        "spin" => (Interval::new(0.5, 0.6, 0.7), "spun in a domestic machine: 50 to 70 %"),
        "squeeze" => (Interval::new(1.0, 1.2, 1.5), "wrung by hand: 100 to 150 %"),
        "drip" | "drain" | "lift" => (Interval::new(1.5, 2.0, 2.5), "dripping wet: 150 to 250 %"),
        "wet out" | "soak" | "scour" | "wash" | "rinse" | "immerse" | "dip" | "soap off" | "neutralise" | "soften" => {
            (Interval::new(1.5, 2.2, 3.0), "straight out of the water: 150 to 300 %")
        }
        "dry" => (Interval::ZERO, "dried"),
        _ => return None,
    })
}

/// The pickup a verb leaves when the step does not say.
pub(crate) fn assumed_pickup(verb: &str) -> Option<Figure> {
    let (value, why) = usual_pickup(verb)?;
    Some(share(value, "water held", why))
}

fn share(value: Interval, what: &'static str, why: &'static str) -> Figure {
    Figure::assumed(value, Dimension::PerCent, Dimension::PerCent.usual_unit(Basis::Absolute), what, why)
}

impl Ledger {
    pub(crate) fn new(binder: &Binder<'_>) -> Self {
        let volumes = binder
            .mixes
            .iter()
            .enumerate()
            .filter_map(|(index, mix)| {
                mix.liquid_in.clone().or_else(|| mix.volume.clone()).map(|volume| (Bath::Mix(index), volume))
            })
            .collect();
        let held = binder
            .goods
            .iter()
            .map(|goods| match (&goods.state.pickup, goods.state.wetness) {
                (Some(pickup), _) => Some(pickup.clone()),
                (None, Some(Wetness::Damp)) => Some(share(
                    Interval::new(0.3, 0.6, 1.0),
                    "water held",
                    "damp: 30 to 100 %; common practice, no source",
                )),
                (None, Some(Wetness::Wet)) => Some(share(
                    Interval::new(1.0, 1.8, 3.0),
                    "water held",
                    "wet: 100 to 300 %; common practice, no source",
                )),
                (None, Some(Wetness::Dry) | None) => None,
            })
            .collect();
        Self { volumes, current: None, held, inside: vec![None; binder.goods.len()] }
    }

    /// Whether goods are, or were last, in a bath that a step may go on with.
    pub(crate) fn has_bath(&self) -> bool {
        self.current.is_some()
    }

    fn bath_of(&self, step: &Step) -> Option<Bath> {
        match &step.liquor.as_ref()?.kind {
            LiquorKind::Mix(id) => Some(Bath::Mix(id.0)),
            LiquorKind::Vessel(id) => Some(Bath::Vessel(id.0)),
            LiquorKind::Bath(_) => Some(Bath::InPlace),
            LiquorKind::Current => self.current,
            LiquorKind::Water(_) | LiquorKind::Words => None,
        }
    }

    /// The liquor a step's g/L refers to, m³: that of the bath it names, else the one the goods are in.
    pub(crate) fn volume(&self, step: &Step) -> Option<Figure> {
        let bath = match &step.liquor {
            Some(_) => self.bath_of(step),
            None if step.verb.is_some_and(|verb| matches!(verb.name, "add" | "top up" | "dissolve" | "stir")) => {
                self.current
            }
            None => None,
        };
        self.volumes.get(&bath?).cloned()
    }

    /// Takes note of what a step does to the baths.
    pub(crate) fn record(&mut self, binder: &Binder<'_>, step: &Step) {
        let verb = step.verb.map_or("", |verb| verb.name);
        if let Some(crate::recipe::Liquor { kind: LiquorKind::Bath(ingredients), .. }) = &step.liquor {
            let liquids: Vec<Figure> =
                ingredients.iter().filter_map(|ingredient| ingredient.amount.as_ref()?.volume.clone()).collect();
            if !liquids.is_empty() {
                self.volumes.insert(Bath::InPlace, Figure::sum(liquids, volume_unit()));
            }
        }
        let bath = self.bath_of(step);
        if bath.is_some() {
            self.current = bath;
        }
        let Some(bath) = bath.or(if verb == "add" { self.current } else { None }) else {
            self.dry_or_wet(verb, step);
            return;
        };
        if matches!(verb, "add" | "top up" | "pour" | "dissolve") {
            self.add(binder, bath, step);
        }
        if matches!(verb, "immerse" | "dip" | "soak" | "lower" | "wet out" | "scour" | "dye" | "wash") {
            for goods in step.goods.clone() {
                self.enter(binder, bath, goods);
            }
        }
        if verb == "drain" {
            self.volumes.remove(&bath);
        }
        self.dry_or_wet(verb, step);
    }

    fn add(&mut self, binder: &Binder<'_>, bath: Bath, step: &Step) {
        for ingredient in &step.applied {
            let volume = match (&ingredient.amount, ingredient.what) {
                (Some(amount), what) if crate::mix::is_liquid(binder, what) => amount.volume.clone(),
                (None, Substance::Mix(id)) => binder.mixes.get(id.0).and_then(|mix| mix.volume.clone()),
                _ => None,
            };
            if let Some(volume) = volume {
                let sum = match self.volumes.get(&bath) {
                    Some(have) => Figure::sum(vec![have.clone(), volume], volume_unit()),
                    None => volume,
                };
                self.volumes.insert(bath, sum);
            }
        }
    }

    fn enter(&mut self, binder: &Binder<'_>, bath: Bath, goods: GoodsId) {
        let Some(slot) = self.inside.get_mut(goods.0) else {
            return;
        };
        if *slot == Some(bath) {
            return;
        }
        *slot = Some(bath);
        let water = self
            .held
            .get(goods.0)
            .and_then(Clone::clone)
            .zip(binder.goods.get(goods.0).and_then(|goods| goods.dry_mass.clone()));
        let (Some((pickup, dry)), Some(have)) = (water, self.volumes.get(&bath)) else {
            return;
        };
        if pickup.value.high <= 0.0 {
            return;
        }
        // A kilogram of water is a litre here: within half a per cent.
        let brought = Figure::worked(
            "{0} × {1}, 1 kg of water being 1 L",
            pickup.value * dry.value * 0.001,
            Dimension::Volume,
            volume_unit(),
            vec![("water held", pickup), ("dry goods", dry)],
        );
        let sum = Figure::sum(vec![have.clone(), brought], volume_unit());
        self.volumes.insert(bath, sum);
    }

    fn dry_or_wet(&mut self, verb: &str, step: &Step) {
        let Some(pickup) = step.pickup.clone().or_else(|| assumed_pickup(verb)) else {
            return;
        };
        for goods in &step.goods {
            if let Some(held) = self.held.get_mut(goods.0) {
                *held = Some(pickup.clone());
            }
            if matches!(verb, "lift" | "squeeze" | "spin" | "drip" | "rinse" | "dry" | "drain")
                && let Some(inside) = self.inside.get_mut(goods.0)
            {
                *inside = None;
            }
        }
    }
}
