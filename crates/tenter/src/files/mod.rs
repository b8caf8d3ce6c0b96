//! Everything that touches the disk.

pub mod atomic;
pub mod collection;
pub mod path;
pub mod source;
pub mod walk;
pub mod written_out;
