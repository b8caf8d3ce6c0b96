//! Writing down today's evening: a log entry begun from the recipe.

use tenter_syntax::BlockKind;

use crate::actions::{Action, ActionKind};
use crate::analysis::FileAnalysis;
use crate::text::{Edit, Range};

/// On the line that opens a recipe, offers to begin a log entry.
pub(super) fn offer(analysis: &FileAnalysis, range: &Range, today: Option<&str>, found: &mut Vec<Action>) {
    let Some(today) = today else { return };
    let Some((view, number, at)) = analysis.home_at(range.start) else { return };
    let Some(block) = view.sheet.blocks.get(number as usize).map(|entry| &entry.block) else { return };
    if matches!(block.kind, BlockKind::Recipe | BlockKind::Log) && at <= block.name.end {
        found.push(Action {
            title: format!("begin a log entry for {today}"),
            kind: ActionKind::Source,
            settles: None,
            preferred: false,
            edits: log_entry(analysis, range.start, today).into_iter().collect(),
            creates: None,
        });
    }
}

/// The edit that adds a log entry to the recipe at an offset.
pub fn log_entry(analysis: &FileAnalysis, offset: usize, today: &str) -> Option<Edit> {
    let (view, ..) = analysis.home_at(offset)?;
    let recipe = view.recipe().filter(|recipe| recipe.is_recipe())?;
    let file = &analysis.file;
    let last = view.sheet.blocks.iter().filter(|entry| entry.file.is_none()).map(|entry| entry.position).max()?;
    let placed = file.block(last)?;
    let at = placed.start + placed.block.text.trim_end().len();
    let made: Vec<String> =
        recipe.goods.iter().map(|goods| format!("{} {}", number(&goods.pieces), goods.name.text)).collect();
    let made = if made.is_empty() { String::new() } else { format!("\n  made     {}", made.join(", ")) };
    let text = format!("\n\nlog {today}{made}\n  changed  \n  found    ");
    let text = if file.text.contains("\r\n") { text.replace('\n', "\r\n") } else { text };
    Some(Edit::new(&file.path, at..at, text))
}

fn number(pieces: &tenter_quantity::Figure) -> String {
    tenter_quantity::show_number(pieces.value)
}
