//! What a rule may look at.

use tenter_quantity::Place;
use tenter_rehearse::{Event, Rehearsal};
use tenter_resolve::recipe::{Ingredient, Material, MaterialId, MixId, Step, Substance};
use tenter_resolve::{NameKind, Problem, ProblemKind, Recipe, Sheet};
use tenter_syntax::{BlockKind, fold_name};

/// A recipe, the text it came from and what became of it when carried out on paper.
#[derive(Clone, Copy, Debug)]
pub struct Context<'a> {
    /// The blocks.
    pub sheet: &'a Sheet,
    /// What they say.
    pub recipe: &'a Recipe,
    /// What became of it, carried out on paper.
    pub rehearsal: &'a Rehearsal,
}

impl<'a> Context<'a> {
    /// The text at a place.
    pub fn text(&self, place: Place) -> &'a str {
        self.sheet.text(place)
    }

    /// The whole line a place stands on, if it stands on a body line.
    pub fn line(&self, place: Place) -> Option<Place> {
        let entry = self.sheet.blocks.get(place.block as usize)?;
        entry
            .block
            .lines
            .iter()
            .map(|line| line.span)
            .find(|span| !span.is_empty() && span.start <= place.start && place.start <= span.end)
            .map(|span| Place { block: place.block, start: span.start, end: span.end })
    }

    /// The line, or the place itself when it is on none.
    pub fn whole_line(&self, place: Place) -> Place {
        self.line(place).unwrap_or(place)
    }

    /// The kind of the block a place stands in.
    pub fn block_kind(&self, place: Place) -> Option<BlockKind> {
        self.sheet.blocks.get(place.block as usize).map(|entry| entry.block.kind)
    }

    /// The troubles of reading that make something unknown.
    fn unknowns(&self) -> impl Iterator<Item = &'a Problem> {
        self.recipe.problems.iter().filter(|problem| {
            !matches!(
                problem.kind,
                ProblemKind::Oddity(_)
                    | ProblemKind::AwkwardName { .. }
                    | ProblemKind::AmbiguousMeasure { .. }
                    | ProblemKind::AmountBehindName { .. }
                    | ProblemKind::Unreadable { .. }
            )
        })
    }

    /// Whether something on the line of a place could not be read.
    pub fn troubled_line(&self, place: Place) -> bool {
        let line = self.whole_line(place);
        self.unknowns().any(|problem| {
            problem.place.block == line.block && line.start <= problem.place.start && problem.place.start <= line.end
        })
    }

    /// Whether something in the block of a place could not be read.
    pub fn troubled_block(&self, place: Place) -> bool {
        self.unknowns().any(|problem| problem.place.block == place.block)
    }

    /// Whether some step could not be read: what it would have done is unknown.
    pub fn troubled_steps(&self) -> bool {
        self.unknowns().any(|problem| {
            matches!(self.block_kind(problem.place), Some(BlockKind::Steps | BlockKind::Unknown | BlockKind::Loose))
                && !matches!(problem.kind, ProblemKind::Shares { .. } | ProblemKind::DateForm { .. })
        })
    }

    /// Whether some mix could not be read in full.
    pub fn troubled_mixes(&self) -> bool {
        self.unknowns().any(|problem| {
            matches!(self.block_kind(problem.place), Some(BlockKind::Mix | BlockKind::Unknown | BlockKind::Loose))
        })
    }

    /// Whether a block that says what something is, or one of no known kind, could not be read in full.
    pub fn troubled_materials(&self) -> bool {
        self.unknowns().any(|problem| {
            matches!(self.block_kind(problem.place), Some(BlockKind::Dye | BlockKind::Chemical | BlockKind::Use))
        })
    }

    /// Whether it is in doubt if a weight is that of a piece or of all.
    pub fn doubtful_weight(&self) -> bool {
        self.recipe.problems.iter().any(|problem| matches!(problem.kind, ProblemKind::WeightOfWhat { .. }))
    }

    /// Whether a name is spoken of on a line that could not be read, or a name nothing goes by was meant for it.
    pub fn named_in_trouble(&self, name: &str) -> bool {
        let wanted = fold_name(name);
        self.unknowns().any(|problem| {
            let meant = match &problem.kind {
                ProblemKind::UnknownName { nearest, .. } => nearest.iter().any(|near| fold_name(near) == wanted),
                _ => false,
            };
            meant || fold_name(self.text(self.whole_line(problem.place))).contains(&wanted)
        })
    }

    /// Whether some line names a mix that is not known: it may have been any of them.
    pub fn unknown_mix_named(&self) -> bool {
        self.unknowns().any(|problem| {
            matches!(
                problem.kind,
                ProblemKind::UnknownName { expected: NameKind::Mix | NameKind::Any | NameKind::Vessel, .. }
            )
        })
    }

    /// Every material of a mix, mixes within it followed, each with the line that brings it.
    pub fn materials_of_mix(&self, mix: MixId) -> Vec<(MaterialId, Place)> {
        let mut found = Vec::new();
        let mut waiting = vec![(mix, None)];
        let mut seen = Vec::new();
        while let Some((id, by)) = waiting.pop() {
            if seen.contains(&id) {
                continue;
            }
            seen.push(id);
            let Some(mix) = self.recipe.mixes.get(id.0) else { continue };
            for ingredient in &mix.ingredients {
                match ingredient.what {
                    Substance::Material(material) => found.push((material, by.unwrap_or(ingredient.place))),
                    Substance::Mix(inner) => waiting.push((inner, by.or(Some(ingredient.place)))),
                }
            }
        }
        found
    }

    /// Every material an ingredient brings.
    pub fn materials_of(&self, ingredient: &Ingredient) -> Vec<(MaterialId, Place)> {
        match ingredient.what {
            Substance::Material(material) => vec![(material, ingredient.place)],
            Substance::Mix(mix) => {
                self.materials_of_mix(mix).into_iter().map(|(material, _)| (material, ingredient.place)).collect()
            }
        }
    }

    /// The steps in the order written.
    pub fn steps(&self) -> impl Iterator<Item = &'a Step> {
        self.recipe.groups.iter().flat_map(|group| &group.steps)
    }

    /// What happened, in order.
    pub fn events(&self) -> impl Iterator<Item = &'a Event> {
        self.rehearsal.events.iter()
    }

    /// The material behind an index.
    pub fn material(&self, id: MaterialId) -> &'a Material {
        self.recipe.material(id)
    }
}
