//! The recipes of a file, each variant on its own.

use tenter_quantity::Place;
use tenter_resolve::{ProblemKind, Recipe, Scale, Sheet, resolve};
use tenter_rules::{Level, rule, rule_of};
use tenter_syntax::fold_name;

use crate::source::Source;

/// A recipe or variant with the sheet its places refer to.
pub struct Picked<'a> {
    /// The blocks.
    pub sheet: &'a Sheet,
    /// What they say.
    pub recipe: Recipe,
}

/// Resolves every recipe and variant, in the order written.
pub fn pick(sheets: &[Sheet], scale: Scale) -> Vec<Picked<'_>> {
    sheets
        .iter()
        .flat_map(|sheet| resolve(sheet, scale).into_iter().map(move |recipe| Picked { sheet, recipe }))
        .filter(|picked| picked.recipe.is_recipe() || !picked.recipe.groups.is_empty())
        .collect()
}

impl Picked<'_> {
    /// Its name, with the variant's.
    pub fn title(&self) -> String {
        let name = self.recipe.name.as_ref().map_or("unnamed recipe", |name| &name.text);
        match &self.recipe.variant {
            Some(variant) => format!("{name}, {}", variant.text),
            None => name.to_owned(),
        }
    }

    /// Whether it goes by this name: the recipe's, the variant's, or both as shown.
    pub fn is(&self, wanted: &str) -> bool {
        let wanted = fold_name(wanted);
        let named = match (&self.recipe.variant, &self.recipe.name) {
            (Some(variant), _) => fold_name(&variant.text) == wanted,
            (None, Some(name)) => fold_name(&name.text) == wanted,
            (None, None) => false,
        };
        named || fold_name(&self.title()) == wanted
    }

    /// How many troubles of reading are errors.
    pub fn errors(&self) -> usize {
        let error = |name| rule(name).is_some_and(|rule| rule.level == Level::Error);
        self.recipe.problems.iter().filter(|problem| error(rule_of(&problem.kind))).count()
    }

    /// What to say when the pieces asked for make no whole number of lots.
    pub fn broken_lots(&self) -> Option<String> {
        self.recipe.problems.iter().find_map(|problem| match problem.kind {
            ProblemKind::LotsDoNotAdd { pieces, lots, each } => {
                let whole = |lots: u32| u64::from(lots) * u64::from(each);
                Some(format!(
                    "{pieces} pieces are no whole number of lots of {each}; {} or {} would be",
                    whole(lots),
                    whole(lots.saturating_add(1))
                ))
            }
            _ => None,
        })
    }

    /// The line of the file a place stands on, from 1; `None` when it stands in another file.
    pub fn line(&self, place: Place, file: &dyn Source) -> Option<u32> {
        let entry = self.sheet.blocks.get(place.block as usize)?;
        if entry.file.is_some() {
            return None;
        }
        file.line(entry.position, place.start)
    }

    /// Where something is written, in words: `line 31`.
    pub fn written(&self, place: Place, file: &dyn Source) -> String {
        match self.line(place, file) {
            Some(line) => format!("line {line}"),
            None => {
                let entry = self.sheet.blocks.get(place.block as usize);
                entry.and_then(|entry| entry.file.as_deref()).unwrap_or("this file").to_owned()
            }
        }
    }

    /// What is written at a place, breaks and runs of blanks made one blank.
    pub fn words(&self, place: Place) -> String {
        self.sheet.text(place).split_whitespace().collect::<Vec<_>>().join(" ")
    }
}
