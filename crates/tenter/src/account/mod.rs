//! How goods and liquors stand, named and put into words: shared by every command that shows the rehearsal.

pub mod names;
pub mod words;
