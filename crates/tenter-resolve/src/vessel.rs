//! `vessel` blocks.

use tenter_quantity::Dimension;
use tenter_syntax::{BlockKind, fold_name};

use crate::binder::{Binder, prose, tidy};
use crate::names::unquoted;
use crate::recipe::{Named, Vessel};

/// Reads all `vessel` blocks.
pub(crate) fn bind(binder: &mut Binder<'_>) {
    for body in binder.of_kind(BlockKind::Vessel) {
        let mut vessel = Vessel {
            name: Named { text: tidy(unquoted(body.name())), place: body.place(body.block.name) },
            holds: None,
            material: None,
            rated: None,
            food: None,
            closed: None,
        };
        for row in &body.rows {
            let Some(head) = &row.line.head else {
                crate::keys::stray(binder, row);
                continue;
            };
            match &*head.word {
                "holds" => {
                    let phrases = binder.phrases(row);
                    vessel.holds = binder.value_of(row, &phrases, &[Dimension::Volume], "what it holds", "holds 5 L");
                }
                "rated" => {
                    let phrases = binder.phrases(row);
                    vessel.rated = binder.value_of(
                        row,
                        &phrases,
                        &[Dimension::Temperature],
                        "the heat it is rated for",
                        "rated 100 °C",
                    );
                }
                "material" => vessel.material = prose(row),
                "food" => {
                    let answer = prose(row);
                    let text = answer.as_ref().map(|answer| fold_name(&answer.text)).unwrap_or_default();
                    let place = answer.map_or_else(|| row.place(row.line.span), |answer| answer.place);
                    vessel.food = match text.as_str() {
                        "never" | "no" | "not" => Some((false, place)),
                        "" => None,
                        _ => Some((true, place)),
                    };
                }
                "closed" => {
                    let answer = prose(row).map(|answer| fold_name(&answer.text)).unwrap_or_default();
                    vessel.closed =
                        (!matches!(answer.as_str(), "no" | "never" | "not")).then(|| row.place(row.line.span));
                }
                "accept" => {}
                _ => crate::keys::known_or_told(binder, row, body.block.kind),
            }
        }
        binder.vessels.push(vessel);
    }
}
