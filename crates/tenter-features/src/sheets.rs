//! Whole pages on a recipe, for a panel beside the text or for the bench: the same figures and words as the command's.

mod bench;
mod marked;
mod state;
mod totals;

use tenter_account::{Picked, Source};
use tenter_rehearse::Rehearsal;

use crate::analysis::{FileAnalysis, SheetView};
use crate::file::File;

pub use bench::{BenchSheet, bench_sheet};
pub use totals::{Totals, picked, totals};

impl Source for File {
    fn name(&self) -> &str {
        &self.path
    }

    fn line(&self, block: usize, byte: u32) -> Option<u32> {
        let start = self.block(block)?.start;
        Some(self.line_number(start + byte as usize))
    }
}

/// A recipe or variant with the paper account of it.
struct Chosen<'a> {
    view: SheetView<'a>,
    picked: Picked<'a>,
    rehearsal: &'a Rehearsal,
    /// Block and byte of the place asked about.
    at: (u32, u32),
}

/// The recipe a place belongs to: the variant whose block it stands in, else the recipe as written. A place before the
/// first recipe belongs to the first.
fn choose(analysis: &FileAnalysis, offset: usize) -> Option<Chosen<'_>> {
    let (view, block, at) = analysis.home_at(offset)?;
    // Anywhere on a line is on what the line says.
    let at = at + u32::try_from(analysis.file.line_range(offset).end.saturating_sub(offset)).ok()?;
    let recipe = view.recipe()?;
    if !recipe.is_recipe() && recipe.groups.is_empty() {
        return None;
    }
    let rehearsal = view.rehearsal()?;
    let picked = Picked { sheet: view.sheet, recipe: recipe.clone() };
    Some(Chosen { view, picked, rehearsal, at: (block, at) })
}

/// Whether an offset stands on the line that opens a recipe.
pub fn on_title(analysis: &FileAnalysis, offset: usize) -> bool {
    let here = analysis.home_at(offset).and_then(|(view, number, at)| {
        let block = &view.sheet.blocks.get(number as usize)?.block;
        Some(block.kind == tenter_syntax::BlockKind::Recipe && at <= block.name.end)
    });
    here.unwrap_or(false)
}
