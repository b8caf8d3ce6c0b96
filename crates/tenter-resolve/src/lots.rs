//! Scaling by lots: a lot stays as large as it is, there are only more of them or fewer. What is written for one lot keeps
//! its amounts, and who goes through all lots goes through all there are.

use crate::recipe::{Goods, GroupId, LiquorKind, LotsUse, MixId, Recipe, StepGroup, Substance};

/// What a recipe does lot by lot, read off the recipe as written.
#[derive(Debug, Default)]
pub(crate) struct ByLot {
    groups: Vec<GroupId>,
    mixes: Vec<MixId>,
    /// How many lots are written.
    last: u32,
}

impl ByLot {
    pub(crate) fn of(recipe: &Recipe) -> Self {
        let Some(last) = count(&recipe.goods) else { return Self::default() };
        let repeats = |(_, step): (GroupId, &crate::recipe::Step)| step.lots.and(step.repeats_group);
        let groups: Vec<GroupId> = recipe.steps().filter_map(repeats).collect();
        let made = recipe
            .steps()
            .filter(|(group, step)| groups.contains(group) && step.verb.is_some_and(|verb| verb.name == "make"))
            .flat_map(|(_, step)| {
                let applied = step.applied.iter().filter_map(|each| match each.what {
                    Substance::Mix(id) => Some(id),
                    Substance::Material(_) => None,
                });
                let liquor = step.liquor.iter().filter_map(|liquor| match liquor.kind {
                    LiquorKind::Mix(id) => Some(id),
                    _ => None,
                });
                applied.chain(liquor).collect::<Vec<_>>()
            })
            .collect();
        Self { groups, mixes: made, last }
    }

    /// The scale a group of steps is read at.
    pub(crate) fn scale_of_group(&self, group: GroupId, scale: f64) -> f64 {
        if self.groups.contains(&group) { 1.0 } else { scale }
    }

    /// The scale a mix is read at.
    pub(crate) fn scale_of_mix(&self, mix: MixId, scale: f64) -> f64 {
        if self.mixes.contains(&mix) { 1.0 } else { scale }
    }

    /// `repeat … for lot 3` of three lots stands for that lot and for those that came to be after it; a lot that is no
    /// longer there is passed over.
    pub(crate) fn go_on(&self, groups: &mut [StepGroup], goods: &[Goods]) {
        let now = count(goods).unwrap_or(self.last);
        for step in groups.iter_mut().flat_map(|group| &mut group.steps) {
            if let (Some(_), Some(LotsUse::One(lot))) = (step.repeats_group, step.lots)
                && (lot == self.last || (now < lot && lot < self.last))
            {
                step.lots = Some(LotsUse::From(lot));
            }
        }
    }
}

/// How many lots goods are in.
pub(crate) fn count(goods: &[Goods]) -> Option<u32> {
    goods.iter().filter_map(|goods| goods.lots.as_ref()).map(|lots| lots.count).max()
}
