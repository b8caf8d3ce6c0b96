//! The page of a rule, taken apart.

use std::fmt;

/// The parts of a page that are executed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Page<'a> {
    /// Text of each section, by its heading.
    sections: Vec<(&'a str, &'a str)>,
}

/// What a page lacks.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PageError(String);

impl fmt::Display for PageError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl std::error::Error for PageError {}

/// Headings every page has, in order.
pub const HEADINGS: [&str; 6] =
    ["What it looks for", "Why it matters at the bench", "What decides", "Bad", "Good", "How to accept it"];

impl<'a> Page<'a> {
    /// Takes a page apart.
    pub fn read(text: &'a str) -> Self {
        let mut sections = Vec::new();
        let mut rest = text;
        while let Some(at) = heading(rest) {
            let body = &rest[at + 3..];
            let (title, after) = body.split_once('\n').unwrap_or((body, ""));
            let end = heading(after).unwrap_or(after.len());
            sections.push((title.trim(), &after[..end]));
            rest = &after[end..];
        }
        Self { sections }
    }

    /// The text under a heading.
    pub fn section(&self, title: &str) -> Option<&'a str> {
        self.sections.iter().find(|(name, _)| *name == title).map(|(_, text)| *text)
    }

    /// The headings in order.
    pub fn headings(&self) -> Vec<&'a str> {
        self.sections.iter().map(|(name, _)| *name).collect()
    }

    /// The first recipe under a heading.
    ///
    /// # Errors
    /// When the heading or the recipe is missing.
    pub fn example(&self, title: &str) -> Result<&'a str, PageError> {
        let text = self.section(title).ok_or_else(|| PageError(format!("no section `{title}`")))?;
        let (_, after) = text.split_once("```dye\n").ok_or_else(|| PageError(format!("no recipe under `{title}`")))?;
        let (recipe, _) =
            after.split_once("\n```").ok_or_else(|| PageError(format!("the recipe under `{title}` never ends")))?;
        Ok(recipe)
    }

    /// Other rules the bad recipe fires as well, said on a line `also: RULE, RULE` under it.
    pub fn also(&self) -> Vec<&'a str> {
        self.section("Bad")
            .into_iter()
            .flat_map(str::lines)
            .filter_map(|line| line.strip_prefix("also: "))
            .flat_map(|names| names.split(','))
            .map(|name| name.trim().trim_matches('`'))
            .collect()
    }
}

/// Where the next second-level heading starts, outside fenced blocks.
fn heading(text: &str) -> Option<usize> {
    let mut at = 0;
    let mut fenced = false;
    for line in text.split_inclusive('\n') {
        if line.starts_with("```") {
            fenced = !fenced;
        } else if !fenced && line.starts_with("## ") {
            return Some(at);
        }
        at += line.len();
    }
    None
}
