//! The configuration of a collection, `tenter.toml` in its top folder: read here for the command and the language
//! server alike, so that both follow the same words. Files and places in them are the faces' business.
//!
//! ```toml
//! [levels]
//! mix-never-used = "advice"
//! dust-before-protection = { level = "warning", reason = "dyes come as liquids" }
//!
//! [accept]
//! undyeable-share = "the stretch is wanted"
//! ```

use std::collections::BTreeMap;
use std::ops::Range;

use tenter_rules::{Levels, Refused, Rule, rule};
use toml::Spanned;
use toml::de::{DeTable, DeValue};

/// Its name in the top folder of a collection.
pub const NAME: &str = "tenter.toml";
/// What marks the top folder of a collection.
pub const MARKS: [&str; 2] = [NAME, ".git"];

/// What a configuration says. Ranges count bytes of its text.
#[derive(Debug, Default)]
pub struct Configuration {
    /// What it says about rules.
    pub levels: Levels,
    /// Where it accepts what a rule finds.
    pub accepts: BTreeMap<&'static str, Range<usize>>,
    /// What is to be told of the file itself, in order of place; the rest of it is followed all the same.
    pub remarks: Vec<Remark>,
    /// What keeps it from being followed.
    pub troubles: Vec<Trouble>,
}

/// A finding about the configuration itself.
#[derive(Debug)]
pub struct Remark {
    /// The rule it belongs to.
    pub rule: &'static Rule,
    /// Where.
    pub at: Range<usize>,
    /// What is wrong.
    pub message: String,
    /// What to do.
    pub help: String,
}

/// Something that cannot be read.
#[derive(Debug, PartialEq, Eq)]
pub struct Trouble {
    /// Where.
    pub at: Range<usize>,
    /// What is wrong.
    pub what: String,
}

/// The tables a configuration may hold.
const TABLES: [&str; 2] = ["levels", "accept"];
/// The keys of a level with a reason.
const KEYS: [&str; 2] = ["level", "reason"];

impl Configuration {
    /// Reads a configuration.
    pub fn read(text: &str) -> Self {
        let mut reading = Self::default();
        match DeTable::parse(text) {
            Ok(table) => reading.tables(table.get_ref()),
            Err(error) => reading.trouble(error.span().unwrap_or_default(), error.message()),
        }
        reading.remarks.sort_by_key(|remark| (remark.at.start, remark.at.end, remark.rule.name));
        reading
    }

    fn tables(&mut self, root: &DeTable<'_>) {
        for (key, value) in root {
            let name: &str = key.get_ref();
            match (name, value.get_ref()) {
                ("levels", DeValue::Table(table)) => in_order(table).into_iter().for_each(|entry| self.level(entry)),
                ("accept", DeValue::Table(table)) => in_order(table).into_iter().for_each(|entry| self.accept(entry)),
                ("levels" | "accept", _) => {
                    self.trouble(value.span(), &format!("`{name}` is a table: write `[{name}]`"));
                }
                _ => self.unknown_key(key, &TABLES),
            }
        }
    }

    fn level(&mut self, (key, value): Entry<'_, '_>) {
        let name: &str = key.get_ref();
        let (word, reason) = match value.get_ref() {
            DeValue::String(word) => (Some((&**word, value.span())), None),
            DeValue::Table(table) => {
                for (inner, _) in table.iter().filter(|(inner, _)| !KEYS.contains(&&**inner.get_ref())) {
                    self.unknown_key(inner, &KEYS);
                }
                let text =
                    |wanted: &str| table.get(wanted).and_then(|value| Some((value.get_ref().as_str()?, value.span())));
                (text("level"), text("reason"))
            }
            _ => (None, None),
        };
        let Some((word, at)) = word else {
            let what = format!("write `{name} = \"warning\"`, or `{name} = {{ level = \"warning\", reason = \"…\" }}`");
            return self.trouble(value.span(), &what);
        };
        if let Err(refused) = self.levels.set(name, word, reason.as_ref().map(|(text, _)| *text)) {
            self.refused(name, key.span(), at, refused);
        }
    }

    fn accept(&mut self, (key, value): Entry<'_, '_>) {
        let name: &str = key.get_ref();
        let Some(reason) = value.get_ref().as_str() else {
            return self.trouble(value.span(), &format!("write the reason: `{name} = \"…\"`"));
        };
        match self.levels.accept(name, reason) {
            Ok(()) => {
                // What is only made milder is told all the same.
                if let Some(rule) = rule(name).filter(|rule| !rule.is_safety()) {
                    self.accepts.insert(rule.name, key.span());
                }
            }
            Err(refused) => self.refused(name, key.span(), value.span(), refused),
        }
    }

    fn refused(&mut self, name: &str, key: Range<usize>, value: Range<usize>, refused: Refused) {
        match refused {
            Refused::UnknownRule { nearest } => {
                let help = nearest.map_or_else(
                    || "`tenter explain` lists the rules.".to_owned(),
                    |near| format!("Did you mean `{near}`?"),
                );
                self.remark("unknown-rule", key, format!("there is no rule `{name}`, so this does nothing"), help);
            }
            Refused::UnknownLevel { nearest } => {
                let near = nearest.map_or_else(String::new, |near| format!("did you mean `{near}`? "));
                self.trouble(value, &format!("no such level; {near}there are `error`, `warning`, `advice` and `off`"));
            }
            Refused::NeedsReason => self.remark(
                "accept-without-reason",
                key,
                format!("no reason is given for what is said of `{name}`, so it is not followed"),
                "Write what speaks for it: whoever reads the recipes next wants to know.".to_owned(),
            ),
            Refused::TooMild { at_most } => self.trouble(
                value,
                &format!("`{name}` is about people's safety: it goes down to {} at most, for a reason", at_most.word()),
            ),
        }
    }

    fn unknown_key(&mut self, key: &Spanned<std::borrow::Cow<'_, str>>, known: &[&str]) {
        let name: &str = key.get_ref();
        let near = known
            .iter()
            .map(|each| (strsim::normalized_damerau_levenshtein(each, name), each))
            .filter(|(score, _)| *score >= 0.5)
            .max_by(|a, b| a.0.total_cmp(&b.0));
        let help = near.map_or_else(
            || format!("There are {}.", known.iter().map(|each| format!("`{each}`")).collect::<Vec<_>>().join(" and ")),
            |(_, near)| format!("Did you mean `{near}`?"),
        );
        self.remark("unknown-key", key.span(), format!("there is no key `{name}` here, so it does nothing"), help);
    }

    fn remark(&mut self, name: &str, at: Range<usize>, message: String, help: String) {
        if let Some(rule) = rule(name) {
            self.remarks.push(Remark { rule, at, message, help });
        }
    }

    fn trouble(&mut self, at: Range<usize>, what: &str) {
        self.troubles.push(Trouble { at, what: what.to_owned() });
    }
}

type Entry<'a, 'b> = (&'b Spanned<std::borrow::Cow<'a, str>>, &'b Spanned<DeValue<'a>>);

/// The entries in the order they are written.
fn in_order<'a, 'b>(table: &'b DeTable<'a>) -> Vec<Entry<'a, 'b>> {
    let mut entries: Vec<Entry<'a, 'b>> = table.iter().collect();
    entries.sort_by_key(|(key, _)| key.span().start);
    entries
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_known_is_followed_and_the_rest_is_told() {
        let text =
            "[levels]\nmix-never-used = 'off'\nhard-watr = 'off'\n[accept]\nundyeable-share = 'wanted'\n[acept]\n";
        let read = Configuration::read(text);
        let told: Vec<(&str, &str)> =
            read.remarks.iter().map(|remark| (remark.rule.name, &text[remark.at.clone()])).collect();
        assert_eq!(told, [("unknown-rule", "hard-watr"), ("unknown-key", "acept")]);
        assert_eq!(read.accepts.get("undyeable-share").map(|at| &text[at.clone()]), Some("undyeable-share"));
        let mut levels = Levels::default();
        levels.set("mix-never-used", "off", None).unwrap();
        levels.accept("undyeable-share", "wanted").unwrap();
        assert_eq!(read.levels, levels);
    }

    #[test]
    fn what_cannot_be_followed_says_where() {
        let text = "[levels]\nmix-never-used = 'loud'\n";
        let read = Configuration::read(text);
        assert_eq!(read.troubles.iter().map(|it| &text[it.at.clone()]).collect::<Vec<_>>(), ["'loud'"]);
        assert_eq!(read.levels, Levels::default());
    }

    #[test]
    fn hostile_text_brings_nothing_down() {
        for text in ["[".repeat(50_000), "a = ".to_owned() + &"[".repeat(50_000), "\u{feff}é = '\u{202e}'".to_owned()]
        {
            let _ = Configuration::read(&text);
        }
    }
}
