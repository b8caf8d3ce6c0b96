//! What can be folded away: blocks, runs of comments, runs of `use` lines.

use tenter_syntax::BlockKind;

use crate::file::File;

/// A stretch of lines, from 0, both ends included.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fold {
    /// First line; it stays visible.
    pub first: u32,
    /// Last line.
    pub last: u32,
    /// What it holds.
    pub kind: FoldKind,
}

/// Kinds of folds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs)]
pub enum FoldKind {
    Block,
    Comment,
    Imports,
}

/// The folds of a file, in order of their first line.
pub fn folds(file: &File) -> Vec<Fold> {
    let mut folds = Vec::new();
    let mut imports: Option<(u32, u32)> = None;
    let blocks = &file.document.blocks;
    for (index, placed) in blocks.iter().enumerate() {
        let block = &placed.block;
        let first = file.lines.line_of(placed.start + block.keyword.start as usize);
        let last = last_line(file, index);
        if block.kind == BlockKind::Use {
            imports = Some(imports.map_or((first, last), |(start, _)| (start, last)));
            continue;
        }
        if let Some((start, end)) = imports.take() {
            push(&mut folds, start, end, FoldKind::Imports);
        }
        if block.kind == BlockKind::Recipe {
            // A recipe owns the blocks up to the next one.
            let next = (index + 1..blocks.len())
                .find(|later| blocks.get(*later).is_some_and(|it| it.block.kind == BlockKind::Recipe));
            let end = next.map_or(blocks.len(), |next| next).saturating_sub(1);
            push(&mut folds, first, last_line(file, end), FoldKind::Block);
        } else if block.kind != BlockKind::Loose {
            push(&mut folds, first, last, FoldKind::Block);
        }
    }
    if let Some((start, end)) = imports {
        push(&mut folds, start, end, FoldKind::Imports);
    }
    comments(file, &mut folds);
    folds.sort_by_key(|fold| (fold.first, std::cmp::Reverse(fold.last)));
    folds.dedup_by_key(|fold| fold.first);
    folds
}

fn push(folds: &mut Vec<Fold>, first: u32, last: u32, kind: FoldKind) {
    if last > first {
        folds.push(Fold { first, last, kind });
    }
}

/// The last line of a block that holds something.
fn last_line(file: &File, index: usize) -> u32 {
    file.document.blocks.get(index).map_or(0, |placed| {
        let held = placed.block.text.trim_end().len();
        file.lines.line_of(placed.start + held.saturating_sub(1))
    })
}

fn comments(file: &File, folds: &mut Vec<Fold>) {
    let mut run: Option<(u32, u32)> = None;
    for line in 0..u32::try_from(file.lines.line_count()).unwrap_or(u32::MAX) {
        let text = file.slice(file.lines.line_range(line));
        if text.trim_start().starts_with('#') {
            run = Some(run.map_or((line, line), |(first, _)| (first, line)));
        } else if let Some((first, last)) = run.take() {
            push(folds, first, last, FoldKind::Comment);
        }
    }
    if let Some((first, last)) = run {
        push(folds, first, last, FoldKind::Comment);
    }
}
