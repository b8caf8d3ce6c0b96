//! A measure of several countries or kinds.

use tenter_resolve::ProblemKind;

use crate::context::Context;
use crate::finding::{Finding, Fix, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};
use crate::say;

pub(crate) const RULE: Rule = Rule {
    name: "ambiguous-measure",
    summary: "An ounce or a cup, of which kind or country?",
    group: Group::Writing,
    level: Level::Warning,
    since: "1",
    page: include_str!("ambiguous_measure.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for problem in told_by(context, RULE.name) {
        let ProblemKind::AmbiguousMeasure { spelling, readings, settle } = &problem.kind else { continue };
        let told: Vec<String> = readings
            .iter()
            .map(|(name, value)| format!("{name} ({})", amount(context.text(problem.place), *value)))
            .collect();
        let mut finding = Finding::new(
            &RULE,
            problem.place,
            format!("`{spelling}` can mean more than one measure: {}", say::list(&told, "or")),
        )
        .help(format!(
            "Settle it with {settle}. Until then all readings are reckoned with, and every amount is that much wider."
        ));
        let line = context.text(problem.place);
        if let ("oz", Some(at)) = (&**spelling, line.find("oz"))
            && !line.contains("fl oz")
        {
            let start = problem.place.start + at as u32;
            let place = tenter_quantity::Place { start, end: start + 2, ..problem.place };
            finding = finding.fix(Fix::replace(place, "fl oz", false));
        }
        found.push(finding);
    }
}

/// An SI amount as litres or grams: the unit of the text tells which.
fn amount(written: &str, value: f64) -> String {
    let by_mass = written.contains("lb") || written.contains("ton");
    let unit = if by_mass { tenter_quantity::standard::GRAM } else { tenter_quantity::standard::MILLILITRE };
    tenter_quantity::show(tenter_quantity::Interval::exact(value), unit)
}
