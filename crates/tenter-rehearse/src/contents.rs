//! What is in a liquor, or on a zone of the goods: water and materials, each a mass that can say where it came from.

use tenter_quantity::standard::GRAM;
use tenter_quantity::{Figure, Interval};
use tenter_resolve::recipe::MaterialId;

use crate::figures::{portion, rest};

/// Water and materials, kg.
#[derive(Clone, Debug, Default)]
pub struct Contents {
    /// Plain water, kg; water inside crystals or solutions counts with its material.
    pub water: Option<Figure>,
    /// Every other material, kg, in the order of the recipe's materials.
    pub parts: Vec<(MaterialId, Figure)>,
}

impl Contents {
    /// Plain water, kg.
    pub fn water_mass(&self) -> Interval {
        self.water.as_ref().map_or(Interval::ZERO, |figure| figure.value)
    }

    /// The figure of one material, kg.
    pub fn part(&self, id: MaterialId) -> Option<&Figure> {
        let at = self.parts.binary_search_by_key(&id, |(id, _)| *id).ok()?;
        self.parts.get(at).map(|(_, figure)| figure)
    }

    /// Mass of one material, kg.
    pub fn mass(&self, id: MaterialId) -> Interval {
        self.part(id).map_or(Interval::ZERO, |figure| figure.value)
    }

    /// Every material but water with its mass, kg.
    pub fn masses(&self) -> Vec<(MaterialId, Interval)> {
        self.parts.iter().map(|(id, figure)| (*id, figure.value)).collect()
    }

    /// Everything together, kg.
    pub fn total_mass(&self) -> Interval {
        self.parts.iter().map(|(_, figure)| figure.value).sum::<Interval>() + self.water_mass()
    }

    /// Whether there is nothing in it.
    pub fn is_empty(&self) -> bool {
        self.water.is_none() && self.parts.is_empty()
    }

    /// Puts water in.
    pub(crate) fn add_water(&mut self, more: Figure) {
        self.water = Some(match self.water.take() {
            Some(have) => joined(have, more),
            None => more,
        });
    }

    /// Puts a material in.
    pub(crate) fn add_part(&mut self, id: MaterialId, more: Figure) {
        match self.parts.binary_search_by_key(&id, |(id, _)| *id) {
            Ok(at) => {
                if let Some((_, figure)) = self.parts.get_mut(at) {
                    *figure = joined(figure.clone(), more);
                }
            }
            Err(at) => self.parts.insert(at, (id, more)),
        }
    }

    /// Puts everything of another in.
    pub(crate) fn add(&mut self, other: Self) {
        if self.is_empty() {
            *self = other;
            return;
        }
        if let Some(water) = other.water {
            self.add_water(water);
        }
        for (id, figure) in other.parts {
            self.add_part(id, figure);
        }
    }

    /// A share of everything.
    pub(crate) fn share(&self, share: &Figure) -> Self {
        Self {
            water: self.water.as_ref().map(|water| portion(water, share)),
            parts: self.parts.iter().map(|(id, figure)| (*id, portion(figure, share))).collect(),
        }
    }

    /// Takes a share of everything out; the rest stays.
    pub(crate) fn take(&mut self, share: &Figure) -> Self {
        let taken = self.share(share);
        if share.value.low >= 1.0 {
            *self = Self::default();
        } else {
            *self = self.share(&rest(share));
        }
        taken
    }
}

fn joined(have: Figure, more: Figure) -> Figure {
    if have.value == Interval::ZERO {
        return more;
    }
    if more.value == Interval::ZERO {
        return have;
    }
    Figure::sum(vec![have, more], GRAM)
}
