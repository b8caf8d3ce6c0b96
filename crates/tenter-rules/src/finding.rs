//! What a rule has to say.

use tenter_quantity::{Figure, Place};

use crate::rule::Rule;

/// How bad it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Level {
    /// The totals or the recipe cannot be trusted, or somebody could be hurt.
    Error,
    /// The piece will likely disappoint.
    Warning,
    /// Worth knowing.
    Advice,
}

impl Level {
    /// The word shown.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Error => "error",
            Self::Warning => "warning",
            Self::Advice => "advice",
        }
    }

    /// One level milder.
    pub const fn lowered(self) -> Self {
        match self {
            Self::Error => Self::Warning,
            Self::Warning | Self::Advice => Self::Advice,
        }
    }
}

/// One thing to tell the dyer.
#[derive(Clone, Debug)]
pub struct Finding {
    /// Name of the rule.
    pub rule: &'static str,
    /// How bad.
    pub level: Level,
    /// Where.
    pub place: Place,
    /// What is wrong, with the numbers.
    pub message: String,
    /// The other numbers, and where they were written.
    pub notes: Vec<Note>,
    /// What to do.
    pub help: String,
    /// Changes to the text that would settle it.
    pub fixes: Vec<Fix>,
    /// The numbers that decided, each able to say where it came from.
    pub figures: Vec<Figure>,
    /// The line that accepts it, when one does.
    pub accepted: Option<Place>,
    /// Made one level milder for a reason already; that is done once.
    pub lowered: bool,
}

/// Something said about another place.
#[derive(Clone, Debug, PartialEq)]
pub struct Note {
    /// Where.
    pub place: Place,
    /// What.
    pub text: String,
}

/// A change of the text.
#[derive(Clone, Debug, PartialEq)]
pub struct Fix {
    /// What it does: "write `60 g/L`".
    pub title: String,
    /// Certain enough to be made without asking.
    pub safe: bool,
    /// The edits, none overlapping another.
    pub edits: Vec<Edit>,
}

/// One stretch of text replaced.
#[derive(Clone, Debug, PartialEq)]
pub struct Edit {
    /// What is replaced; empty to insert.
    pub place: Place,
    /// What stands there then.
    pub new_text: String,
}

impl Fix {
    /// Replaces one stretch.
    pub fn replace(place: Place, new_text: impl Into<String>, safe: bool) -> Self {
        let new_text = new_text.into();
        let title =
            if new_text.is_empty() { "leave it out".to_owned() } else { format!("write `{}`", new_text.trim()) };
        Self { title, safe, edits: vec![Edit { place, new_text }] }
    }

    /// The same under another title.
    pub fn titled(mut self, title: impl Into<String>) -> Self {
        self.title = title.into();
        self
    }
}

impl Finding {
    /// A finding of a rule, at the rule's own level.
    pub fn new(rule: &Rule, place: Place, message: impl Into<String>) -> Self {
        Self {
            rule: rule.name,
            level: rule.level,
            place,
            message: message.into(),
            notes: Vec::new(),
            help: String::new(),
            fixes: Vec::new(),
            figures: Vec::new(),
            accepted: None,
            lowered: false,
        }
    }

    /// With a word on another place.
    pub fn note(mut self, place: Place, text: impl Into<String>) -> Self {
        self.notes.push(Note { place, text: text.into() });
        self
    }

    /// With a note where a figure was written, if it was.
    pub fn noted(self, figure: &Figure, text: impl Into<String>) -> Self {
        match figure.places().first() {
            Some(place) => self.note(*place, text),
            None => self,
        }
    }

    /// With what to do.
    pub fn help(mut self, text: impl Into<String>) -> Self {
        self.help = text.into();
        self
    }

    /// With a change that would settle it.
    pub fn fix(mut self, fix: Fix) -> Self {
        self.fixes.push(fix);
        self
    }

    /// With a number that decided.
    pub fn figure(mut self, figure: &Figure) -> Self {
        self.figures.push(figure.clone());
        self
    }

    /// At another level than the rule's own.
    pub fn level(mut self, level: Level) -> Self {
        self.level = level;
        self
    }
}
