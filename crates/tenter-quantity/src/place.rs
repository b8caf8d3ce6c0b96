//! Where something was written: a block of the sheet and a stretch of bytes inside it.

/// A stretch of text inside one block, so that an edit elsewhere in the sheet moves nothing.
#[derive(Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Debug, serde::Serialize)]
pub struct Place {
    /// Index of the block in the sheet being resolved.
    pub block: u32,
    /// First byte inside that block.
    pub start: u32,
    /// One past the last byte inside that block.
    pub end: u32,
}
