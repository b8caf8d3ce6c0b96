//! The configuration of a collection: `tenter.toml` in its top folder.
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

use tenter_rules::{Levels, Refused, rule};
use toml::Spanned;
use toml::de::{DeTable, DeValue};

use crate::check::locate::Stretch;
use crate::check::report::Report;
use crate::files::source::SourceFile;

/// What a configuration says.
#[derive(Debug, Default)]
pub struct Config {
    /// What it says about rules.
    pub levels: Levels,
    /// Where it accepts what a rule finds.
    pub accepts: BTreeMap<&'static str, Stretch>,
    /// What is to be told of the file itself.
    pub reports: Vec<Report>,
    /// What keeps it from being followed: the place it is about and what is wrong.
    pub troubles: Vec<(String, String)>,
    /// The file; none where there is no configuration.
    pub file: Option<SourceFile>,
}

/// The tables a configuration may hold.
const TABLES: [&str; 2] = ["levels", "accept"];
/// The keys of a level with a reason.
const KEYS: [&str; 2] = ["level", "reason"];

impl Config {
    /// A configuration that cannot be read at all.
    pub fn unreadable(name: &str, what: &str) -> Self {
        Self { troubles: vec![(name.to_owned(), what.to_owned())], ..Self::default() }
    }

    /// Reads a configuration.
    pub fn read(file: SourceFile) -> Self {
        let mut reading = Reading { file: &file, config: Self::default() };
        if let Some(what) = file.encoding_trouble() {
            reading.config.troubles.push((file.name.clone(), what));
        } else {
            match DeTable::parse(&file.text) {
                Ok(table) => reading.tables(table.get_ref()),
                Err(error) => reading.trouble(error.span().unwrap_or_default(), error.message()),
            }
        }
        let mut config = reading.config;
        config.reports.sort_by_key(|report| (report.at.bytes, report.rule));
        config.file = Some(file);
        config
    }
}

struct Reading<'a> {
    file: &'a SourceFile,
    config: Config,
}

type Entry<'a, 'b> = (&'b Spanned<std::borrow::Cow<'a, str>>, &'b Spanned<DeValue<'a>>);

impl Reading<'_> {
    fn tables(&mut self, root: &DeTable<'_>) {
        for (key, value) in root {
            let name: &str = key.get_ref();
            match (name, value.get_ref()) {
                ("levels", DeValue::Table(table)) => in_order(table).into_iter().for_each(|entry| self.level(entry)),
                ("accept", DeValue::Table(table)) => in_order(table).into_iter().for_each(|entry| self.accept(entry)),
                ("levels" | "accept", _) => {
                    self.trouble(value.span(), &format!("`{name}` is a table: write `[{name}]`"))
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
        if let Err(refused) = self.config.levels.set(name, word, reason.as_ref().map(|(text, _)| *text)) {
            self.refused(name, key.span(), at, refused);
        }
    }

    fn accept(&mut self, (key, value): Entry<'_, '_>) {
        let name: &str = key.get_ref();
        let Some(reason) = value.get_ref().as_str() else {
            return self.trouble(value.span(), &format!("write the reason: `{name} = \"…\"`"));
        };
        match self.config.levels.accept(name, reason) {
            Ok(()) => {
                let at = self.stretch(key.span());
                // What is only made milder is told all the same.
                if let Some(rule) = rule(name).filter(|rule| !rule.is_safety()) {
                    self.config.accepts.insert(rule.name, at);
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
                self.report("unknown-rule", key, format!("there is no rule `{name}`, so this does nothing"), help);
            }
            Refused::UnknownLevel { nearest } => {
                let near = nearest.map_or_else(String::new, |near| format!("did you mean `{near}`? "));
                self.trouble(value, &format!("no such level; {near}there are `error`, `warning`, `advice` and `off`"));
            }
            Refused::NeedsReason => self.report(
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
        self.report("unknown-key", key.span(), format!("there is no key `{name}` here, so it does nothing"), help);
    }

    fn report(&mut self, name: &str, at: Range<usize>, message: String, help: String) {
        let Some(rule) = rule(name) else { return };
        let at = self.stretch(at);
        self.config.reports.push(Report {
            rule: rule.name,
            level: rule.level,
            at,
            message,
            help,
            notes: Vec::new(),
            fixes: Vec::new(),
            accepted: None,
            reason: None,
            fingerprint: String::new(),
        });
    }

    fn trouble(&mut self, at: Range<usize>, what: &str) {
        let spot = self.file.spot(at.start);
        let place = format!("{}:{}:{}", self.file.name, spot.line, spot.column);
        self.config.troubles.push((place, what.to_owned()));
    }

    fn stretch(&self, at: Range<usize>) -> Stretch {
        Stretch::of(self.file, at.start, at.end, false)
    }
}

/// The entries in the order they are written.
fn in_order<'a, 'b>(table: &'b DeTable<'a>) -> Vec<Entry<'a, 'b>> {
    let mut entries: Vec<Entry<'a, 'b>> = table.iter().collect();
    entries.sort_by_key(|(key, _)| key.span().start);
    entries
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> Config {
        Config::read(SourceFile::from_bytes("tenter.toml".into(), text.as_bytes().to_vec()))
    }

    #[test]
    fn what_is_known_is_followed_and_the_rest_is_told() {
        let config = read(
            "[levels]\nmix-never-used = 'off'\nhard-watr = 'off'\nnever-mix = 'warning'\n\
             [accept]\nundyeable-share = 'wanted'\nno-alkali = ' '\n[acept]\n",
        );
        let told: Vec<(&str, u32, u32)> =
            config.reports.iter().map(|report| (report.rule, report.at.line, report.at.column)).collect();
        assert_eq!(
            told,
            [
                ("unknown-rule", 3, 1),
                ("accept-without-reason", 4, 1),
                ("accept-without-reason", 7, 1),
                ("unknown-key", 8, 2)
            ]
        );
        assert_eq!(config.reports.first().map(|report| report.help.as_str()), Some("Did you mean `hard-water`?"));
        assert_eq!(config.accepts.keys().copied().collect::<Vec<_>>(), ["undyeable-share"]);
        assert!(config.troubles.is_empty(), "{:?}", config.troubles);
    }

    #[test]
    fn what_cannot_be_followed_says_where() {
        for (text, place) in [
            ("[levels\n", "tenter.toml:1:8"),
            ("levels = 3\n", "tenter.toml:1:10"),
            ("[levels]\nmix-never-used = 'loud'\n", "tenter.toml:2:18"),
            ("[levels]\nmix-never-used = 3\n", "tenter.toml:2:18"),
            ("[levels]\nnever-mix = { level = 'off', reason = 'x' }\n", "tenter.toml:2:23"),
            ("[accept]\nmix-never-used = true\n", "tenter.toml:2:18"),
        ] {
            let config = read(text);
            let places: Vec<&str> = config.troubles.iter().map(|(place, _)| place.as_str()).collect();
            assert_eq!(places, [place], "{text}: {:?}", config.troubles);
        }
    }

    #[test]
    fn hostile_text_brings_nothing_down() {
        for text in ["[".repeat(50_000), "a = ".to_owned() + &"[".repeat(50_000), "\u{feff}é = '\u{202e}'".to_owned()]
        {
            let _ = read(&text);
        }
    }
}
