//! Loose dye left in.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_quantity::Figure;
use tenter_reference::DyeFamily;
use tenter_rehearse::EventKind;

pub(crate) const RULE: Rule = Rule {
    name: "too-few-soapings",
    summary: "Reactive or vat dye is never soaped off hot.",
    group: Group::Finish,
    level: Level::Warning,
    since: "1",
    page: include_str!("too_few_soapings.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    let mut told = Vec::new();
    for (goods, dye, laid) in crate::rules::class_cannot_dye_fibre::first_laid(context) {
        let soaped_off = |family| matches!(family, DyeFamily::Reactive | DyeFamily::Vat);
        if told.contains(&goods) || !context.class(dye).is_some_and(|class| soaped_off(class.family)) {
            continue;
        }
        told.push(goods);
        let mut hottest: Option<&Figure> = None;
        let mut last = None;
        let mut soaped = false;
        for event in context.events() {
            let EventKind::Rinse { goods: rinsed, soap, temperature, dye: true, .. } = &event.kind else { continue };
            if *rinsed != goods {
                continue;
            }
            last = Some(event.place);
            soaped |= *soap;
            if hottest.is_none_or(|most| temperature.value.best > most.value.best) {
                hottest = Some(temperature);
            }
        }
        // Never washed at all is another rule's business.
        let (Some(last), Some(hottest)) = (last, hottest) else { continue };
        if hottest.value.best >= HOT {
            continue;
        }
        let how = if soaped { "soaped" } else { "rinsed" };
        found.push(
            Finding::new(&RULE, last, format!("{} are {how} in nothing hotter than {}: loose dye stays in", context.goods_name(goods), hottest.show()))
                .note(laid, "the dye comes here")
                .figure(hottest)
                .help("After the cold rinse, soap off at 60 °C or more, twice. Otherwise it comes out in the first wash, over everything else."),
        );
    }
}

/// 50 °C in K.
const HOT: f64 = 323.15;
