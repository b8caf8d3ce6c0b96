//! White crusts where the soda fell.

use tenter_reference::Role;
use tenter_rehearse::EventKind;

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "soda-left-dry",
    summary: "Soda ash is strewn on damp cloth, and no water follows to spread it.",
    group: Group::Alkali,
    level: Level::Warning,
    since: "1",
    page: include_str!("soda_left_dry.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    let mut told = Vec::new();
    for (at, event) in context.rehearsal.events.iter().enumerate() {
        let EventKind::PowderLaid { goods, material, mass, water_ratio, ice: false, .. } = &event.kind else {
            continue;
        };
        if context.material(*material).role() != Role::Alkali || told.contains(&event.place) {
            continue;
        }
        let spread = context.rehearsal.events.iter().skip(at + 1).take_while(|later| !context.washes(later.place)).any(
            |later| match &later.kind {
                EventKind::LiquorLaid { goods: wetted, .. }
                | EventKind::Iced { goods: wetted, .. }
                | EventKind::Immersed { goods: wetted, .. }
                | EventKind::SoakUptake { goods: wetted, .. } => wetted == goods,
                EventKind::Heated { goods: heated, steam, .. } => heated == goods && *steam,
                _ => false,
            },
        );
        // Ice lies there already: its water comes.
        let ice = context
            .rehearsal
            .frames
            .get(event.frame)
            .is_some_and(|frame| frame.goods.iter().any(|state| state.goods == *goods && state.ice.is_some()));
        // Cloth that drips dissolves it where it falls.
        if spread || ice || water_ratio.best >= DRIPPING {
            continue;
        }
        told.push(event.place);
        found.push(
            Finding::new(
                &RULE,
                event.place,
                format!(
                    "{} of {} fall on cloth that holds {} of its weight of water, and no water follows",
                    mass.show(),
                    context.material(*material).name,
                    crate::bench::per_cent(libm::round(water_ratio.best * 20.0) / 20.0)
                ),
            )
            .figure(mass)
            .help("Pour or squirt liquor over it, or bring the soda in a soak or a bottle: lying dry it cakes, and the dye fixes under the crusts and nowhere else."),
        );
    }
}

/// Water to dry cloth from which powder dissolves where it falls.
const DRIPPING: f64 = 1.5;
