//! The page of a rule, or the list of them.

use tenter_rules::RULES;

use crate::exit::Outcome;
use crate::output::{Output, WIDTH};
use crate::text::table::{Edge, Table};

/// Shows the page of a rule; the list of all where none is named.
pub fn run(rule: Option<&str>, output: &mut Output) -> Outcome {
    let Some(name) = rule else {
        let mut table = Table::new(&[("", Edge::Left), ("", Edge::Left), ("", Edge::Left)]);
        for rule in RULES {
            table.row(vec![rule.name.to_owned(), rule.level.word().to_owned()], vec![rule.summary.to_owned()]);
        }
        output.raw(&table.render(0, WIDTH));
        return Outcome::Clean;
    };
    let folded = name.trim().to_lowercase().replace([' ', '_'], "-");
    if let Some(rule) = tenter_rules::rule(&folded) {
        output.print(rule.page.trim_end());
        output.raw("\n");
        return Outcome::Clean;
    }
    let near = RULES
        .iter()
        .map(|rule| (strsim::osa_distance(rule.name, &folded), rule.name))
        .filter(|(slips, name)| slips * 3 <= name.len())
        .min();
    let hint = near.map_or_else(|| "tenter explain lists all".to_owned(), |(_, name)| format!("the nearest is {name}"));
    output.tell(&format!("there is no rule {name}; {hint}"));
    Outcome::Failed
}
