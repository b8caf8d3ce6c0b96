//! Powder that stays powder.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "powder-never-wetted",
    summary: "Dye powder is strewn on and never gets wet.",
    group: Group::Dye,
    level: Level::Warning,
    since: "1",
    page: include_str!("powder_never_wetted.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.troubled_steps() {
        return;
    }
    for dyeing in context.dyeings() {
        let again = context
            .dyeings()
            .any(|other| other.wetted && (other.goods, other.lot, other.dye) == (dyeing.goods, dyeing.lot, dyeing.dye));
        if dyeing.wetted || !dyeing.dry || again {
            continue;
        }
        let place = context.laid_at(dyeing);
        if found.iter().any(|have| have.rule == RULE.name && have.place == place) {
            continue;
        }
        found.push(
            Finding::new(
                &RULE,
                place,
                format!(
                    "{} is strewn on {} and nothing wets it before it is washed off",
                    context.material(dyeing.dye).name,
                    context.zone_name(dyeing.goods, dyeing.zone)
                ),
            )
            .figure(&dyeing.mass)
            .help("Damp cloth, water from a can, steam or ice must dissolve the powder so that it can react."),
        );
    }
}
