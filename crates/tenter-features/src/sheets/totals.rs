//! The totals of a recipe with the state at one line: what a panel beside the text shows.

use tenter_account::Picked;
use tenter_account::totals::text::text;

use crate::analysis::FileAnalysis;
use crate::sheets::{choose, marked, state};

/// A page for a panel.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Totals {
    /// The recipe, with its variant.
    pub title: String,
    /// The line the state is that of, from 1; none where the line does nothing.
    pub line: Option<u32>,
    /// How everything stands there, as text; empty where there is nothing to tell.
    pub state: String,
    /// The totals, as `tenter totals` prints them.
    pub totals: String,
}

impl Totals {
    /// All of it as text.
    pub fn text(&self) -> String {
        if self.state.is_empty() { self.totals.clone() } else { format!("{}\n{}", self.state, self.totals) }
    }

    /// All of it as HTML: sections with a heading, every character of the recipe escaped.
    pub fn html(&self) -> String {
        marked::html(&self.text())
    }
}

/// The totals of the recipe at an offset. None where no recipe stands.
pub fn totals(analysis: &FileAnalysis, offset: usize) -> Option<Totals> {
    let chosen = choose(analysis, offset)?;
    let (line, state) = state::at(analysis, &chosen).unzip();
    let picked = std::slice::from_ref(&chosen.picked);
    let totals = text(picked, &*analysis.file);
    Some(Totals { title: chosen.picked.title(), line, state: state.unwrap_or_default(), totals })
}

/// The recipe at an offset, for those who lay it out themselves.
pub fn picked(analysis: &FileAnalysis, offset: usize) -> Option<Picked<'_>> {
    choose(analysis, offset).map(|chosen| chosen.picked)
}
