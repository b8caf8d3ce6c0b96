//! Levels of a whole collection: what its configuration says about rules, put onto findings.
//!
//! Faces read the configuration; what it means is decided here, so that the command and the language server agree.

use std::collections::BTreeMap;

use crate::finding::{Finding, Level};
use crate::registry::{RULES, rule};
use crate::rule::Rule;

/// What a collection says about rules.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Levels {
    at: BTreeMap<&'static str, Setting>,
    accepted: BTreeMap<&'static str, String>,
}

#[derive(Clone, Debug, PartialEq)]
enum Setting {
    At(Level),
    Off,
    /// A rule about people's safety, one level milder for a reason.
    Milder(String),
}

/// Why something about a rule is not taken.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refused {
    /// No rule of that name.
    UnknownRule {
        /// The nearest one, if one is near.
        nearest: Option<&'static str>,
    },
    /// Neither a level nor `off`.
    UnknownLevel {
        /// The nearest one, if one is near.
        nearest: Option<&'static str>,
    },
    /// It needs a reason.
    NeedsReason,
    /// A rule about people's safety may not go so far down.
    TooMild {
        /// How far down it may go.
        at_most: Level,
    },
}

/// What becomes of a finding.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict<'a> {
    /// It is told, at the level it now has.
    Told,
    /// It is accepted, for this reason.
    Accepted(&'a str),
    /// The rule is off: as if it had not been found.
    Off,
}

/// The words a level is set by.
const WORDS: [&str; 4] = ["error", "warning", "advice", "off"];

impl Levels {
    /// Sets the level of a rule: `error`, `warning`, `advice` or `off`. A rule about people's safety goes down by one
    /// level at most, and for a reason.
    ///
    /// # Errors
    /// Why the setting is not taken; the rule then keeps its own level.
    pub fn set(&mut self, name: &str, word: &str, reason: Option<&str>) -> Result<(), Refused> {
        let rule = known(name)?;
        let level = match word {
            "error" => Some(Level::Error),
            "warning" => Some(Level::Warning),
            "advice" => Some(Level::Advice),
            "off" => None,
            _ => return Err(Refused::UnknownLevel { nearest: near(word, WORDS) }),
        };
        let setting = if rule.is_safety() { for_people(rule, level, reason)? } else { plain(level) };
        self.at.insert(rule.name, setting);
        Ok(())
    }

    /// Accepts what a rule finds in the whole collection. A rule about people's safety goes down by one level instead.
    ///
    /// # Errors
    /// Why it is not accepted.
    pub fn accept(&mut self, name: &str, reason: &str) -> Result<(), Refused> {
        let rule = known(name)?;
        let reason = reason.trim();
        if reason.is_empty() {
            return Err(Refused::NeedsReason);
        }
        if rule.is_safety() {
            self.at.insert(rule.name, Setting::Milder(reason.to_owned()));
        } else {
            self.accepted.insert(rule.name, reason.to_owned());
        }
        Ok(())
    }

    /// Puts what is set onto a finding. What the recipe accepts itself stays as it is.
    pub fn apply(&self, finding: &mut Finding) -> Verdict<'_> {
        match self.at.get(finding.rule) {
            Some(Setting::Off) => return Verdict::Off,
            Some(Setting::At(level)) => {
                // What can hurt somebody only ever goes up this way.
                let safety = rule(finding.rule).is_some_and(Rule::is_safety);
                finding.level = if safety { finding.level.min(*level) } else { *level };
            }
            Some(Setting::Milder(reason)) if !finding.lowered => {
                finding.level = finding.level.lowered();
                finding.lowered = true;
                let said = format!("One level milder in this collection, because {reason}.");
                finding.help = if finding.help.is_empty() { said } else { format!("{} {said}", finding.help) };
            }
            Some(Setting::Milder(_)) | None => {}
        }
        match self.accepted.get(finding.rule) {
            Some(reason) if finding.accepted.is_none() => Verdict::Accepted(reason),
            _ => Verdict::Told,
        }
    }
}

fn plain(level: Option<Level>) -> Setting {
    level.map_or(Setting::Off, Setting::At)
}

fn for_people(rule: &Rule, level: Option<Level>, reason: Option<&str>) -> Result<Setting, Refused> {
    let at_most = rule.level.lowered();
    match level {
        Some(level) if level <= rule.level => Ok(Setting::At(level)),
        Some(level) if level == at_most => match reason.map(str::trim) {
            Some(reason) if !reason.is_empty() => Ok(Setting::Milder(reason.to_owned())),
            _ => Err(Refused::NeedsReason),
        },
        _ => Err(Refused::TooMild { at_most }),
    }
}

fn known(name: &str) -> Result<&'static Rule, Refused> {
    rule(name).ok_or_else(|| Refused::UnknownRule { nearest: near(name, RULES.iter().map(|rule| rule.name)) })
}

/// The nearest of some words, if one is near.
fn near(word: &str, among: impl IntoIterator<Item = &'static str>) -> Option<&'static str> {
    among
        .into_iter()
        .map(|each| (strsim::normalized_damerau_levenshtein(each, word), each))
        .filter(|(score, _)| *score >= 0.6)
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, each)| each)
}

#[cfg(test)]
mod tests {
    use tenter_quantity::Place;

    use super::*;

    const NOWHERE: Place = Place { block: 0, start: 0, end: 0 };

    fn finding(name: &str) -> Finding {
        Finding::new(rule(name).unwrap(), NOWHERE, "so it is")
    }

    fn judged(levels: &Levels, name: &str) -> (Level, bool) {
        let mut finding = finding(name);
        let told = levels.apply(&mut finding) == Verdict::Told;
        (finding.level, told)
    }

    #[test]
    fn a_level_is_set_and_off_is_off() {
        let mut levels = Levels::default();
        assert_eq!(levels.set("mix-never-used", "advice", None), Ok(()));
        assert_eq!(levels.set("hard-water", "error", None), Ok(()));
        assert_eq!(levels.set("undyeable-share", "off", None), Ok(()));
        assert_eq!(judged(&levels, "mix-never-used"), (Level::Advice, true));
        assert_eq!(judged(&levels, "hard-water"), (Level::Error, true));
        assert_eq!(levels.apply(&mut finding("undyeable-share")), Verdict::Off);
        assert_eq!(judged(&levels, "no-alkali"), (rule("no-alkali").unwrap().level, true));
    }

    #[test]
    fn what_can_hurt_goes_down_once_and_for_a_reason() {
        for rule in RULES.iter().filter(|rule| rule.is_safety()) {
            let mut levels = Levels::default();
            let milder = rule.level.lowered();
            assert!(levels.set(rule.name, "off", Some("we know")).is_err(), "{}", rule.name);
            if milder != rule.level {
                assert_eq!(levels.set(rule.name, milder.word(), None), Err(Refused::NeedsReason));
                assert_eq!(levels.set(rule.name, milder.word(), Some("  ")), Err(Refused::NeedsReason));
            }
            if rule.level == Level::Error {
                let refused = Err(Refused::TooMild { at_most: Level::Warning });
                assert_eq!(levels.set(rule.name, "advice", Some("we know")), refused);
            }
            assert_eq!(levels, Levels::default(), "nothing refused leaves a trace");
            assert_eq!(levels.accept(rule.name, "a hood is always on"), Ok(()));
            assert_eq!(judged(&levels, rule.name), (milder, true), "accepting never silences {}", rule.name);
            // Lowered in the recipe already: not a second time.
            let mut once = finding(rule.name);
            once.lowered = true;
            assert_eq!((levels.apply(&mut once), once.level), (Verdict::Told, rule.level));
        }
    }

    #[test]
    fn raising_what_can_hurt_never_lowers_a_graver_finding() {
        let rule = RULES.iter().find(|rule| rule.is_safety() && rule.level == Level::Warning).unwrap();
        let mut levels = Levels::default();
        assert_eq!(levels.set(rule.name, "warning", None), Ok(()));
        let mut grave = finding(rule.name).level(Level::Error);
        levels.apply(&mut grave);
        assert_eq!(grave.level, Level::Error);
    }

    #[test]
    fn slips_find_the_nearest() {
        let mut levels = Levels::default();
        let nearest = Some("mix-never-used");
        assert_eq!(levels.set("mix-nevr-used", "off", None), Err(Refused::UnknownRule { nearest }));
        assert_eq!(levels.accept("xyzzy", "why not"), Err(Refused::UnknownRule { nearest: None }));
        let nearest = Some("warning");
        assert_eq!(levels.set("mix-never-used", "warn", None), Err(Refused::UnknownLevel { nearest: None }));
        assert_eq!(levels.set("mix-never-used", "warnings", None), Err(Refused::UnknownLevel { nearest }));
        assert_eq!(levels.accept("mix-never-used", " "), Err(Refused::NeedsReason));
        assert_eq!(levels, Levels::default());
    }

    #[test]
    fn what_is_accepted_keeps_its_reason() {
        let mut levels = Levels::default();
        assert_eq!(levels.accept("mix-never-used", " stands by "), Ok(()));
        assert_eq!(levels.apply(&mut finding("mix-never-used")), Verdict::Accepted("stands by"));
        let mut already = finding("mix-never-used");
        already.accepted = Some(NOWHERE);
        assert_eq!(levels.apply(&mut already), Verdict::Told);
    }
}
