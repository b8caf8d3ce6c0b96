//! A soak of a few minutes.

use crate::bench::per_cent;
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_rehearse::EventKind;

pub(crate) const RULE: Rule = Rule {
    name: "soak-too-short",
    summary: "The soak is over before the liquor has gone through.",
    group: Group::Alkali,
    level: Level::Warning,
    since: "1",
    page: include_str!("soak_too_short.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    for event in context.events() {
        let EventKind::SoakUptake { goods, time, wetted, strength_nominal, .. } = &event.kind else { continue };
        let Some(step) = context.step_at(event.place) else { continue };
        let Some(written) = step.duration.as_ref().filter(|_| strength_nominal.is_some()) else { continue };
        if written.value.best >= SHORT || wetted.best >= 0.97 || context.troubled_line(event.place) {
            continue;
        }
        found.push(
            Finding::new(
                &RULE,
                event.place,
                format!(
                    "{} soak for {}; about {} of the cloth is wetted through by then",
                    context.goods_name(*goods),
                    written.show(),
                    per_cent(libm::round(wetted.best * 20.0) / 20.0)
                ),
            )
            .noted(written, "the time written")
            .figure(time)
            .help("Give it 15 to 30 min (common practice); there is no upper limit while the goods stay wet."),
        );
    }
}

/// 8 min in s.
const SHORT: f64 = 480.0;
