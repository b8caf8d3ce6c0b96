//! What a rule declares of itself.

use crate::context::Context;
use crate::finding::{Finding, Level};

/// What a rule is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Group {
    /// The text itself and its names.
    Writing,
    /// What is weighed, made and used.
    Amounts,
    /// Soda and its kin.
    Alkali,
    /// Dyes and fibres.
    Dye,
    /// Water, salt and what they stand in.
    WaterAndSalt,
    /// How warm and how long.
    HeatAndTime,
    /// What colours do side by side and over each other.
    Colour,
    /// Washing off and what follows.
    Finish,
    /// Those who do the work.
    People,
}

impl Group {
    /// All groups, in the order of the reference.
    pub const ALL: [Self; 9] = [
        Self::People,
        Self::Alkali,
        Self::Dye,
        Self::HeatAndTime,
        Self::WaterAndSalt,
        Self::Finish,
        Self::Colour,
        Self::Amounts,
        Self::Writing,
    ];

    /// The heading it stands under.
    pub const fn title(self) -> &'static str {
        match self {
            Self::Writing => "Writing",
            Self::Amounts => "Amounts",
            Self::Alkali => "Alkali",
            Self::Dye => "Dye and fibre",
            Self::WaterAndSalt => "Water and salt",
            Self::HeatAndTime => "Heat and time",
            Self::Colour => "Colour",
            Self::Finish => "Finish",
            Self::People => "People",
        }
    }
}

/// One rule of the book.
#[derive(Debug)]
pub struct Rule {
    /// Kebab-case plain words.
    pub name: &'static str,
    /// What it looks for, in one line.
    pub summary: &'static str,
    /// What it is about.
    pub group: Group,
    /// Level unless a finding says otherwise.
    pub level: Level,
    /// Edition of the notation it came with.
    pub since: &'static str,
    /// Its page, in Markdown.
    pub page: &'static str,
    /// Looks through a recipe.
    pub check: fn(&Context<'_>, &mut Vec<Finding>),
}

impl Rule {
    /// A rule about somebody's safety can be lowered by a level, never silenced.
    pub fn is_safety(&self) -> bool {
        self.group == Group::People
    }
}
