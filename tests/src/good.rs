//! A recipe with what is known of it, and the edits an operator makes to its text.

use std::ops::Range;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use tenter_reference::{DyeFamily, FibreFamily, Role};
use tenter_rehearse::Rehearsal;
use tenter_resolve::recipe::{Ingredient, LiquorKind, Material, Step, Substance};
use tenter_resolve::{Library, Recipe};
use tenter_rules::{Checked, Place, Scale, check_document};
use tenter_syntax::{BlockKind, Document, Encoding, LineIndex};

use crate::mutant::Mutant;

/// A file read and checked.
#[derive(Clone, Debug)]
pub struct Good {
    /// Folder within this package.
    pub folder: &'static str,
    /// File name.
    pub name: String,
    /// Its text.
    pub text: String,
    /// Read.
    pub document: Document,
    /// Checked.
    pub checked: Checked,
}

/// The folders of good recipes.
pub const FOLDERS: [&str; 3] = ["recipes", "published", "good"];

struct Folder(PathBuf);

impl Library for Folder {
    #[allow(clippy::disallowed_methods)]
    fn document(&self, path: &str) -> Option<Arc<Document>> {
        std::fs::read_to_string(self.0.join(path)).ok().map(|text| Arc::new(Document::parse(&text)))
    }
}

fn folder(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(name)
}

/// All good recipes, in order of folder and name.
#[allow(clippy::disallowed_methods)]
pub fn all() -> Vec<Good> {
    let mut found = Vec::new();
    for name in FOLDERS {
        let mut paths: Vec<PathBuf> = std::fs::read_dir(folder(name))
            .into_iter()
            .flatten()
            .filter_map(|entry| Some(entry.ok()?.path()))
            .filter(|path| path.extension().is_some_and(|end| end == "dye"))
            .collect();
        paths.sort();
        for path in paths {
            let file = path.file_name().map_or_else(String::new, |file| file.to_string_lossy().into_owned());
            if let Ok(text) = std::fs::read_to_string(&path) {
                found.push(Good::read(name, &file, text));
            }
        }
    }
    found
}

impl Good {
    /// Reads and checks a text as if it stood in a folder.
    pub fn read(folder_name: &'static str, name: &str, text: String) -> Self {
        let document = Document::parse(&text);
        let checked = check_document(&document, name, &Folder(folder(folder_name)), Scale::AsWritten);
        Self { folder: folder_name, name: name.to_owned(), text, document, checked }
    }

    /// The same file with another text.
    pub fn with_text(&self, text: String) -> Self {
        Self::read(self.folder, &self.name, text)
    }

    /// The recipe as written; `None` for a shared file.
    pub fn recipe(&self) -> Option<&Recipe> {
        self.checked.results.first()?.recipes.first().filter(|recipe| recipe.is_recipe())
    }

    /// The recipe carried out on paper.
    pub fn rehearsal(&self) -> Option<&Rehearsal> {
        self.checked.results.first()?.rehearsals.first()
    }

    /// Bytes of a place in the file; `None` in another file.
    pub fn range(&self, sheet: usize, place: Place) -> Option<Range<usize>> {
        let entry = self.checked.sheets.get(sheet)?.blocks.get(place.block as usize)?;
        if entry.file.is_some() {
            return None;
        }
        let start = self.document.blocks.get(entry.position)?.start;
        Some(start + place.start as usize..start + place.end as usize)
    }

    /// Line of a place, from 1.
    pub fn line(&self, sheet: usize, place: Place) -> Option<usize> {
        let at = self.range(sheet, place)?.start;
        Some(LineIndex::new(&self.text).position(&self.text, at, Encoding::Utf8).line as usize + 1)
    }

    /// The words at a place.
    pub fn words(&self, place: Place) -> &str {
        self.range(0, place).and_then(|range| self.text.get(range)).unwrap_or("")
    }

    /// A line, from 1.
    pub fn text_of(&self, line: usize) -> &str {
        self.text.lines().nth(line.saturating_sub(1)).unwrap_or("")
    }

    /// The header's line of the block a line stands in.
    pub fn header(&self, line: usize) -> usize {
        let lines: Vec<&str> = self.text.lines().take(line).collect();
        lines.iter().rposition(|text| !text.is_empty() && !text.starts_with([' ', '#'])).map_or(line, |at| at + 1)
    }

    /// Each step with its line and verb.
    pub fn steps(&self) -> Vec<(usize, &'static str, &Step)> {
        let steps = self.recipe().into_iter().flat_map(Recipe::steps);
        steps.filter_map(|(_, step)| Some((self.line(0, step.place)?, step.verb?.name, step))).collect()
    }

    /// The lines of the steps of a verb.
    pub fn verb_lines(&self, verb: &str) -> Vec<usize> {
        self.steps().iter().filter(|(_, name, _)| *name == verb).map(|(line, _, _)| *line).collect()
    }

    /// What stands on a line of its own: in mixes, and what steps lay or add.
    pub fn amounts(&self) -> Vec<&Ingredient> {
        let Some(recipe) = self.recipe() else { return Vec::new() };
        let mixes = recipe.mixes.iter().flat_map(|mix| &mix.ingredients);
        let steps = recipe.steps().flat_map(|(_, step)| &step.applied);
        mixes.chain(steps).filter(|each| self.range(0, each.place).is_some()).collect()
    }

    /// Everything with an amount, what is put into a bath written in place included.
    pub fn all_amounts(&self) -> Vec<&Ingredient> {
        let mut found = self.amounts();
        for (_, step) in self.recipe().into_iter().flat_map(Recipe::steps) {
            found.extend(&step.with);
            if let Some(LiquorKind::Bath(inside)) = step.liquor.as_ref().map(|liquor| &liquor.kind) {
                found.extend(inside);
            }
        }
        found
    }

    /// The material of an ingredient.
    pub fn material(&self, ingredient: &Ingredient) -> Option<&Material> {
        match ingredient.what {
            Substance::Material(id) => self.recipe().map(|recipe| recipe.material(id)),
            Substance::Mix(_) => None,
        }
    }

    /// Amounts of a material of a role, on lines of their own.
    pub fn of_role(&self, role: Role) -> Vec<&Ingredient> {
        self.amounts()
            .into_iter()
            .filter(|each| self.material(each).is_some_and(|found| found.role() == role))
            .collect()
    }

    /// Whether the goods are at least half of a family of fibres.
    pub fn goods_are(&self, family: FibreFamily) -> bool {
        self.recipe().is_some_and(|recipe| {
            recipe.goods.iter().any(|goods| {
                goods
                    .fibres
                    .iter()
                    .filter(|part| part.fibre.is_some_and(|fibre| fibre.family == family))
                    .map(|part| part.share.value.best)
                    .sum::<f64>()
                    >= 0.5
            })
        })
    }

    /// Whether a dye of a family is used.
    pub fn dyes_with(&self, family: DyeFamily) -> bool {
        self.recipe().is_some_and(|recipe| {
            recipe.materials.iter().any(|each| each.class.is_some_and(|class| class.family == family))
        })
    }

    /// A reactive dye on cotton or its kin.
    pub fn reactive_on_cellulose(&self) -> bool {
        self.goods_are(FibreFamily::Cellulose) && self.dyes_with(DyeFamily::Reactive)
    }

    /// The lines of blocks of a kind that open with a key.
    pub fn key_lines(&self, kind: BlockKind, key: &str) -> Vec<usize> {
        let mut found = Vec::new();
        for placed in &self.document.blocks {
            if placed.block.kind != kind {
                continue;
            }
            let first = self.text.get(..placed.start).map_or(0, |before| before.matches('\n').count());
            for (index, text) in placed.block.text.lines().enumerate().skip(1) {
                if text.split_whitespace().next() == Some(key) {
                    found.push(first + index + 1);
                }
            }
        }
        found
    }

    fn mutant(&self, lines: &[String], touched: Vec<usize>, change: String) -> Mutant {
        let mut text = lines.join("\n");
        text.push('\n');
        Mutant { text, lines: touched, change }
    }

    fn owned(&self) -> Vec<String> {
        self.text.lines().map(str::to_owned).collect()
    }

    /// A line taken out. The header of its block and the lines beside it stand for it.
    pub fn without(&self, line: usize) -> Mutant {
        let mut lines = self.owned();
        let gone = lines.remove(line - 1);
        self.mutant(&lines, vec![self.header(line), line - 1, line], format!("without `{}`", gone.trim()))
    }

    /// Several lines taken out.
    pub fn without_all(&self, gone: &[usize]) -> Mutant {
        let lines: Vec<String> = self
            .owned()
            .into_iter()
            .enumerate()
            .filter(|(at, _)| !gone.contains(&(at + 1)))
            .map(|(_, line)| line)
            .collect();
        let first = gone.iter().min().copied().unwrap_or(1);
        let change = format!("without `{}` and so on", self.text_of(first).trim());
        self.mutant(&lines, vec![self.header(first), first - 1, first], change)
    }

    /// A line written anew.
    pub fn instead(&self, line: usize, new: String) -> Mutant {
        let mut lines = self.owned();
        let change = format!("`{}` for `{}`", new.trim(), self.text_of(line).trim());
        lines[line - 1] = new;
        self.mutant(&lines, vec![line], change)
    }

    /// Words in a line changed; `None` if they do not stand there.
    pub fn reword(&self, line: usize, from: &str, to: &str) -> Option<Mutant> {
        let old = self.text_of(line);
        old.contains(from).then(|| self.instead(line, old.replacen(from, to, 1)))
    }

    /// What stands at a place changed.
    pub fn put(&self, place: Place, new: &str) -> Option<Mutant> {
        let range = self.range(0, place)?;
        let line = self.line(0, place)?;
        let mut text = self.text.clone();
        let change = format!("`{new}` for `{}` in `{}`", self.text.get(range.clone())?, self.text_of(line).trim());
        text.replace_range(range, new);
        Some(Mutant { text, lines: vec![line], change })
    }

    /// A line written under another.
    pub fn insert(&self, under: usize, new: &str) -> Mutant {
        let mut lines = self.owned();
        lines.insert(under, new.to_owned());
        self.mutant(&lines, vec![under + 1], format!("with `{}`", new.trim()))
    }

    /// A line moved in front of another.
    pub fn moved_before(&self, line: usize, target: usize) -> Mutant {
        let mut lines = self.owned();
        let moved = lines.remove(line - 1);
        let at = if line < target { target - 1 } else { target };
        let change = format!("`{}` moved before `{}`", moved.trim(), self.text_of(target).trim());
        lines.insert(at - 1, moved);
        let left = if line < target { line } else { line + 1 };
        self.mutant(&lines, vec![at, at + 1, left.min(lines.len())], change)
    }
}
