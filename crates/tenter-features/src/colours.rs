//! The screen colours of dyes and goods.

use tenter_syntax::Item;

use crate::file::File;
use crate::text::{Range, meet};

/// A colour and where it is written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Colour {
    /// `#1d5fa6`.
    pub range: Range,
    /// Red, green, blue.
    pub rgb: [u8; 3],
}

/// The colours of a file.
pub fn colours(file: &File) -> Vec<Colour> {
    let mut found = Vec::new();
    for (position, placed) in file.document.blocks.iter().enumerate() {
        let block = &placed.block;
        for line in &block.lines {
            let items = line.items.iter().chain(line.clauses.iter().flat_map(|clause| &clause.items));
            for item in items {
                if let Item::Colour(span) = item
                    && let Some(rgb) = read(block.slice(*span))
                {
                    found.push(Colour { range: file.range(position, *span), rgb });
                }
            }
        }
    }
    found
}

/// How another colour would be written in the place of one; none where no colour stands.
pub fn written(file: &File, range: &Range, rgb: [u8; 3]) -> Option<String> {
    colours(file).iter().find(|colour| meet(&colour.range, range))?;
    Some(hex(rgb))
}

/// `#1d5fa6`.
pub fn hex([red, green, blue]: [u8; 3]) -> String {
    format!("#{red:02x}{green:02x}{blue:02x}")
}

fn read(text: &str) -> Option<[u8; 3]> {
    let digits = text.strip_prefix('#').filter(|digits| digits.len() == 6)?;
    let part = |at: usize| digits.get(at..at + 2).and_then(|pair| u8::from_str_radix(pair, 16).ok());
    Some([part(0)?, part(2)?, part(4)?])
}
