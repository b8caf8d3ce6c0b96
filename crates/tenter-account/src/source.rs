//! The file a recipe stands in, as far as its account points to it.

/// A file that was read.
pub trait Source {
    /// The name to show.
    fn name(&self) -> &str;

    /// The line, from 1, on which a byte of one of its blocks stands; `None` when there is no such block. `block`
    /// counts the blocks of the file, `byte` the bytes from the start of that block.
    fn line(&self, block: usize, byte: u32) -> Option<u32>;
}
