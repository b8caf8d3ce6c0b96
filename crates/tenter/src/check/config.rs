//! The configuration of a collection, its places turned into files, lines and columns.

use std::collections::BTreeMap;

use tenter_config::Configuration;
use tenter_rules::Levels;

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

impl Config {
    /// A configuration that cannot be read at all.
    pub fn unreadable(name: &str, what: &str) -> Self {
        Self { troubles: vec![(name.to_owned(), what.to_owned())], ..Self::default() }
    }

    /// Reads a configuration.
    pub fn read(file: SourceFile) -> Self {
        if let Some(what) = file.encoding_trouble() {
            let troubles = vec![(file.name.clone(), what)];
            return Self { troubles, file: Some(file), ..Self::default() };
        }
        let read = Configuration::read(&file.text);
        let stretch = |at: &std::ops::Range<usize>| Stretch::of(&file, at.start, at.end, false);
        let reports = read.remarks.into_iter().map(|remark| Report {
            rule: remark.rule.name,
            level: remark.rule.level,
            at: stretch(&remark.at),
            message: remark.message,
            help: remark.help,
            notes: Vec::new(),
            fixes: Vec::new(),
            accepted: None,
            reason: None,
            fingerprint: String::new(),
        });
        let place = |at: usize| {
            let spot = file.spot(at);
            format!("{}:{}:{}", file.name, spot.line, spot.column)
        };
        Self {
            reports: reports.collect(),
            accepts: read.accepts.iter().map(|(rule, at)| (*rule, stretch(at))).collect(),
            troubles: read.troubles.into_iter().map(|trouble| (place(trouble.at.start), trouble.what)).collect(),
            levels: read.levels,
            file: Some(file),
        }
    }
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
}
