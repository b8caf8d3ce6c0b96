//! The grammar, compiled, and the ways to run it.

use pest::Parser;
use pest::iterators::Pairs;

/// The parser pest makes of `notation.pest`.
#[allow(missing_docs)]
mod generated {
    #[derive(pest_derive::Parser)]
    #[grammar = "notation.pest"]
    pub(crate) struct Notation;
}

pub(crate) use generated::{Notation, Rule};

/// The normative grammar, as text.
pub const GRAMMAR: &str = include_str!("notation.pest");

/// Runs the grammar over part of a body. It reads every text; `None` would mean a fault in the grammar.
pub(crate) fn run(body: &str) -> Option<Pairs<'_, Rule>> {
    Notation::parse(Rule::body, body).ok()
}

/// The bare grammar, for benchmarks: the number of lines it saw.
#[doc(hidden)]
pub fn pest_only(block_body: &str) -> usize {
    run(block_body).and_then(|mut pairs| pairs.next()).map_or(0, |body| body.into_inner().count())
}
