//! Slips written by hand: good recipes with one plausible mistake, and the rule that has to speak.
//!
//! `tests/slips/NAME.slips` belongs to `tests/good/NAME.dye`. An entry is the words before, the words after (with `|` where
//! a line ends) and the rule:
//!
//! ```text
//! - add      3/4 lb soda ash
//! + add      3/4 oz soda ash
//! = too-little-alkali
//! ```

use std::path::Path;

use crate::good::Good;
use crate::judge::told;

/// One slip.
#[derive(Clone, Debug, Default)]
pub struct Slip {
    /// Words of the good recipe.
    pub before: String,
    /// What stands there instead.
    pub after: String,
    /// The rule that tells of it.
    pub rule: String,
}

/// The slips of every recipe that has some, in order of name.
#[allow(clippy::disallowed_methods)]
pub fn all() -> Vec<(String, Vec<Slip>)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("slips");
    let mut found: Vec<(String, Vec<Slip>)> = std::fs::read_dir(folder)
        .into_iter()
        .flatten()
        .filter_map(|entry| {
            let path = entry.ok()?.path();
            let name = path.file_stem()?.to_string_lossy().into_owned();
            Some((name, read(&std::fs::read_to_string(&path).ok()?)))
        })
        .collect();
    found.sort_by(|a, b| a.0.cmp(&b.0));
    found
}

fn read(text: &str) -> Vec<Slip> {
    let mut found: Vec<Slip> = Vec::new();
    for line in text.lines() {
        match line.split_at_checked(2) {
            Some(("- ", words)) => found.push(Slip { before: words.replace('|', "\n"), ..Slip::default() }),
            Some(("+ ", words)) => {
                if let Some(slip) = found.last_mut() {
                    slip.after = words.replace('|', "\n");
                }
            }
            Some(("= ", words)) => {
                if let Some(slip) = found.last_mut() {
                    words.clone_into(&mut slip.rule);
                }
            }
            _ => {}
        }
    }
    found
}

impl Slip {
    /// The recipe with the slip in it, and the lines it touches; `None` if the words before are not in it.
    pub fn made(&self, good: &Good) -> Option<(Good, Vec<usize>)> {
        let gone = self.after == "\n";
        let before = if gone { format!("  {}", self.before) } else { self.before.clone() };
        let at = good.text.find(&before)?;
        let text = good.text.replacen(&before, if gone { "" } else { &self.after }, 1);
        let line = good.text.get(..at)?.matches('\n').count() + 1;
        let lines = (line.saturating_sub(1)..=line + self.after.trim_end().matches('\n').count()).collect();
        Some((good.with_text(text), lines))
    }

    /// Whether its rule speaks where it did not, and whether it names the lines touched or their mix, dye or goods.
    pub fn told(&self, good: &Good, lines: &[usize], slipped: &Good) -> (bool, bool) {
        let known: Vec<(&str, String)> =
            told(good).iter().map(|have| (have.finding.rule, have.finding.message.clone())).collect();
        let new: Vec<_> = told(slipped)
            .into_iter()
            .filter(|have| have.finding.rule == self.rule)
            .filter(|have| !known.iter().any(|(rule, message)| *rule == self.rule && *message == have.finding.message))
            .collect();
        let near = new.iter().any(|have| {
            let notes = have.finding.notes.iter().map(|note| note.place);
            let figures = have.finding.figures.iter().flat_map(tenter_quantity::Figure::places);
            std::iter::once(have.line)
                .chain(notes.chain(figures).filter_map(|place| slipped.line(have.sheet, place)))
                .any(|line| lines.contains(&line))
                || lines.iter().any(|line| {
                    let header = slipped.text_of(slipped.header(*line));
                    let words = slipped.text_of(have.line);
                    header.split_once(' ').is_some_and(|(kind, name)| {
                        matches!(kind, "mix" | "dye" | "goods" | "vessel") && words.contains(name.trim())
                    }) || slipped.header(*line) == slipped.header(have.line)
                })
        });
        (!new.is_empty(), near)
    }
}
