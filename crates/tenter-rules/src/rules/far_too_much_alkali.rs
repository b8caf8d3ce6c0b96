//! Alkali by the shovel.

use crate::bench::grams_per_litre;
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_reference::FibreFamily;
use tenter_rehearse::EventKind;

pub(crate) const RULE: Rule = Rule {
    name: "far-too-much-alkali",
    summary: "Far more alkali than the trade ever uses.",
    group: Group::Alkali,
    level: Level::Warning,
    since: "1",
    page: include_str!("far_too_much_alkali.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for event in context.events() {
        let EventKind::SoakUptake { mix, goods, strength_nominal: Some(nominal), .. } = &event.kind else { continue };
        let protein = context.share_of(*goods, FibreFamily::Protein).is_some_and(|share| share > 0.2);
        let most = if protein { MOST_PROTEIN } else { MOST };
        if nominal.value.low <= most || context.troubled_line(event.place) {
            continue;
        }
        let place = mix.and_then(|mix| context.alkali_line(mix)).unwrap_or(event.place);
        let why = if protein {
            "wool and silk are harmed by it"
        } else {
            "it stays in the cloth, dries to a crust and is hard to rinse out"
        };
        found.push(
            Finding::new(&RULE, place, format!("{} of soda ash; {why}", grams_per_litre(nominal.value)))
                .note(event.place, "the goods are soaked here")
                .figure(nominal)
                .help(format!("Soaks have 30 to 67 g/L (common practice); above {most} g/L a slip of the pen is likelier. Soda ash stops dissolving near 200 g/L in cold water.")),
        );
    }
}

/// g/L as soda ash.
const MOST: f64 = 150.0;
/// The same for wool, silk and hair.
const MOST_PROTEIN: f64 = 20.0;
