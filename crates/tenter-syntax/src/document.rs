//! A whole file: split into blocks, read, and read again after an edit.

use std::collections::BTreeMap;
use std::sync::Arc;

use crate::block::parse_block;
use crate::split::split;
use crate::tree::{Block, Document, PlacedBlock};

impl Document {
    /// Reads a file. Every text can be read.
    pub fn parse(text: &str) -> Self {
        let blocks = split(text)
            .into_iter()
            .filter_map(|(start, end)| Some(PlacedBlock { start, block: Arc::new(parse_block(text.get(start..end)?)) }))
            .collect();
        Self { blocks }
    }

    /// Reads the file again after an edit, keeping every block whose text is the same as before.
    ///
    /// The result equals [`Document::parse`] of the new text.
    pub fn reparse(&self, text: &str) -> Self {
        let ranges = split(text);
        let same =
            |placed: &PlacedBlock, range: &(usize, usize)| text.get(range.0..range.1) == Some(&*placed.block.text);
        let front = self.blocks.iter().zip(&ranges).take_while(|(old, new)| same(old, new)).count();
        let left = self.blocks.len().min(ranges.len()) - front;
        let back = self
            .blocks
            .iter()
            .rev()
            .zip(ranges.iter().rev())
            .take(left)
            .take_while(|(old, new)| same(old, new))
            .count();
        let moved: BTreeMap<&str, &Arc<Block>> = self
            .blocks
            .get(front..self.blocks.len() - back)
            .unwrap_or(&[])
            .iter()
            .map(|placed| (&*placed.block.text, &placed.block))
            .collect();
        let shift = self.blocks.len() as isize - ranges.len() as isize;
        let blocks = ranges
            .iter()
            .enumerate()
            .filter_map(|(index, (start, end))| {
                let part = text.get(*start..*end)?;
                let kept = if index < front {
                    self.blocks.get(index).map(|placed| &placed.block)
                } else if index >= ranges.len() - back {
                    self.blocks.get(index.checked_add_signed(shift)?).map(|placed| &placed.block)
                } else {
                    moved.get(part).copied()
                };
                let block = kept.map_or_else(|| Arc::new(parse_block(part)), Arc::clone);
                Some(PlacedBlock { start: *start, block })
            })
            .collect();
        Self { blocks }
    }

    /// The file's text, put together again from its blocks.
    pub fn text(&self) -> String {
        self.blocks.iter().map(|placed| &*placed.block.text).collect()
    }

    /// The index of the block that holds a byte of the file; the last one for an offset at or behind the end.
    pub fn block_at(&self, offset: usize) -> Option<usize> {
        let after = self.blocks.partition_point(|placed| placed.start <= offset);
        after.checked_sub(1)
    }
}
