//! The whole measure: run over every recipe and every operator, counted and shown.

use std::collections::BTreeMap;

use crate::good::{self, Good};
use crate::judge::{caught, told};
use crate::mutant::Operator;
use crate::{operators, survivors};

/// A finding over a good recipe that nobody accepted.
#[derive(Clone, Debug)]
pub struct FalseAlarm {
    /// File.
    pub file: String,
    /// Line, rule and message.
    pub what: String,
}

/// A mutant that would do harm and is not caught.
#[derive(Clone, Debug)]
pub struct Survivor {
    /// The operator.
    pub operator: &'static str,
    /// File.
    pub file: String,
    /// What was changed.
    pub change: String,
    /// What is told instead, about other things.
    pub instead: String,
    /// Why, if it is known.
    pub why: Option<&'static str>,
}

/// What became of the mutants of one operator.
#[derive(Clone, Debug, Default)]
pub struct Tally {
    /// Mutants made.
    pub made: usize,
    /// Of these, the ones that would do harm.
    pub harmful: usize,
    /// Harmful and caught.
    pub caught: usize,
    /// Harmless by the guard.
    pub harmless: usize,
    /// By which rules.
    pub by: BTreeMap<&'static str, usize>,
}

/// Both figures with all they rest on.
#[derive(Clone, Debug, Default)]
pub struct Report {
    /// Good recipes looked at.
    pub recipes: usize,
    /// Findings over them.
    pub alarms: Vec<FalseAlarm>,
    /// Each operator's count.
    pub tallies: BTreeMap<&'static str, Tally>,
    /// Who survived.
    pub survivors: Vec<Survivor>,
}

impl Report {
    /// Harmful mutants.
    pub fn harmful(&self) -> usize {
        self.tallies.values().map(|tally| tally.harmful).sum()
    }

    /// Harmful mutants caught.
    pub fn caught(&self) -> usize {
        self.tallies.values().map(|tally| tally.caught).sum()
    }

    /// Caught of a hundred harmful ones.
    pub fn rate(&self) -> f64 {
        100.0 * self.caught() as f64 / self.harmful().max(1) as f64
    }

    fn add(&mut self, other: Self) {
        self.recipes += other.recipes;
        self.alarms.extend(other.alarms);
        self.survivors.extend(other.survivors);
        for (name, tally) in other.tallies {
            let have = self.tallies.entry(name).or_default();
            have.made += tally.made;
            have.harmful += tally.harmful;
            have.caught += tally.caught;
            have.harmless += tally.harmless;
            for (rule, count) in tally.by {
                *have.by.entry(rule).or_default() += count;
            }
        }
    }
}

/// Measures the checker. `only` keeps the operators whose name contains it.
pub fn measure(only: &str) -> Report {
    let goods = good::all();
    let operators: Vec<Operator> = operators::all().into_iter().filter(|each| each.name.contains(only)).collect();
    let mut report = Report::default();
    for operator in &operators {
        report.tallies.insert(operator.name, Tally::default());
    }
    let workers = std::thread::available_parallelism().map_or(1, std::num::NonZero::get);
    let parts: Vec<Report> = std::thread::scope(|scope| {
        let handles: Vec<_> = (0..workers)
            .map(|worker| {
                let (goods, operators) = (&goods, &operators);
                scope.spawn(move || {
                    let mut part = Report::default();
                    for good in goods.iter().skip(worker).step_by(workers) {
                        part.add(one(good, operators));
                    }
                    part
                })
            })
            .collect();
        handles.into_iter().filter_map(|handle| handle.join().ok()).collect()
    });
    for part in parts {
        report.add(part);
    }
    report.alarms.sort_by(|a, b| (&a.file, &a.what).cmp(&(&b.file, &b.what)));
    report.survivors.sort_by(|a, b| (a.operator, &a.file, &a.change).cmp(&(b.operator, &b.file, &b.change)));
    report
}

fn one(good: &Good, operators: &[Operator]) -> Report {
    let mut report = Report { recipes: usize::from(good.recipe().is_some()), ..Report::default() };
    for told in told(good) {
        let what = format!("line {}: {}: {}", told.line, told.finding.rule, told.finding.message);
        report.alarms.push(FalseAlarm { file: good.name.clone(), what });
    }
    for operator in operators {
        let tally = report.tallies.entry(operator.name).or_default();
        for mutant in (operator.make)(good) {
            let after = good.with_text(mutant.text.clone());
            tally.made += 1;
            if !(operator.harms)(good, &after) {
                tally.harmless += 1;
                continue;
            }
            tally.harmful += 1;
            if let Some(rule) = caught(good, &after, operator, &mutant) {
                tally.caught += 1;
                *tally.by.entry(rule).or_default() += 1;
                continue;
            }
            let others: Vec<String> =
                told(&after).iter().map(|told| format!("{} at line {}", told.finding.rule, told.line)).collect();
            report.survivors.push(Survivor {
                operator: operator.name,
                file: good.name.clone(),
                why: survivors::explained(operator.name, &good.name, &mutant.change),
                change: mutant.change,
                instead: others.join(", "),
            });
        }
    }
    report
}

impl std::fmt::Display for Report {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        writeln!(f, "Silence: {} good recipes, {} false alarms", self.recipes, self.alarms.len())?;
        for alarm in &self.alarms {
            writeln!(f, "  {} {}", alarm.file, alarm.what)?;
        }
        writeln!(
            f,
            "Catch: {} of {} harmful mutants by {} operators: {:.1}%",
            self.caught(),
            self.harmful(),
            self.tallies.len(),
            self.rate()
        )?;
        writeln!(f, "\n  {:<34} {:>5} {:>8} {:>7}  by", "operator", "made", "harmful", "caught")?;
        for (name, tally) in &self.tallies {
            let mut by: Vec<(&str, usize)> = tally.by.iter().map(|(rule, count)| (*rule, *count)).collect();
            by.sort_by_key(|(rule, count)| (std::cmp::Reverse(*count), *rule));
            let by: Vec<String> = by.iter().map(|(rule, count)| format!("{rule} {count}")).collect();
            writeln!(f, "  {name:<34} {:>5} {:>8} {:>7}  {}", tally.made, tally.harmful, tally.caught, by.join(", "))?;
        }
        writeln!(f, "\nSurvivors: {}", self.survivors.len())?;
        for each in &self.survivors {
            writeln!(f, "  {} | {} | {}", each.operator, each.file, each.change)?;
            if !each.instead.is_empty() {
                writeln!(f, "      told instead: {}", each.instead)?;
            }
            writeln!(f, "      {}", each.why.unwrap_or("NOT EXPLAINED"))?;
        }
        Ok(())
    }
}
