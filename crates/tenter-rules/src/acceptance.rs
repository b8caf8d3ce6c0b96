//! What the writer accepts, with a reason.

use tenter_quantity::Place;
use tenter_resolve::recipe::{Acceptance, Scope};

use crate::context::Context;
use crate::finding::{Finding, Note};
use crate::registry::rule;

/// Marks what the recipe accepts. Gives the places of the `accept` lines that had something to accept.
pub(crate) fn apply(context: &Context<'_>, findings: &mut [Finding]) -> Vec<Place> {
    let mut used = Vec::new();
    for acceptance in &context.recipe.acceptances {
        let Some(reason) = &acceptance.reason else {
            // Without a reason nothing is accepted; that is told, and once is enough.
            used.push(acceptance.place);
            continue;
        };
        let Some(rule) = rule(&acceptance.rule.text) else {
            used.push(acceptance.place);
            continue;
        };
        for finding in findings.iter_mut().filter(|finding| finding.rule == rule.name) {
            if !covers(context, acceptance, finding) {
                continue;
            }
            used.push(acceptance.place);
            if !rule.is_safety() {
                finding.accepted = Some(acceptance.place);
            } else if !finding.lowered {
                finding.level = finding.level.lowered();
                finding.lowered = true;
                finding.notes.push(Note {
                    place: acceptance.place,
                    text: format!(
                        "one level milder, because {}; what can hurt somebody is never left out",
                        reason.text
                    ),
                });
            }
        }
    }
    used
}

/// Whether an acceptance is about a finding. A finding is about its own place and the places it names.
fn covers(context: &Context<'_>, acceptance: &Acceptance, finding: &Finding) -> bool {
    match acceptance.scope {
        Scope::Recipe => true,
        Scope::Block(block) => about(finding).any(|place| place.block == block),
        Scope::Line(line) => about(finding).any(|place| {
            let told = context.whole_line(place);
            told.block == line.block && told.start < line.end && line.start < told.end
        }),
    }
}

fn about(finding: &Finding) -> impl Iterator<Item = Place> {
    std::iter::once(finding.place).chain(finding.notes.iter().map(|note| note.place))
}
