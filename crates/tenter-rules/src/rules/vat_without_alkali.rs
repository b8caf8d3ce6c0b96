//! Reduced, and still a powder.

use crate::bench::bath_of;
use tenter_reference::{DyeFamily, Role};

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "vat-without-alkali",
    summary: "An indigo or vat liquor with no alkali in it.",
    group: Group::Dye,
    level: Level::Warning,
    since: "1",
    page: include_str!("vat_without_alkali.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    for dyeing in context.dyeings() {
        let vat =
            context.class(dyeing.dye).is_some_and(|class| matches!(class.family, DyeFamily::Indigo | DyeFamily::Vat));
        let Some((_, bath)) = bath_of(context, dyeing).filter(|_| vat) else { continue };
        // Something the tables do not know may be what makes it alkaline: ash, a ferment.
        let alkali = bath.contents.parts.iter().any(|(id, mass)| {
            let material = context.material(*id);
            mass.value.high > 0.0
                && !material.is_dye
                && (material.reference.is_none() || matches!(material.role(), Role::Alkali | Role::Buffer))
        });
        if alkali || found.iter().any(|have| have.rule == RULE.name) {
            continue;
        }
        let name = &context.material(dyeing.dye).name;
        let mut finding = Finding::new(
            &RULE,
            context.laid_at(dyeing),
            format!(
                "{} of {name} stand in a bath with no alkali: it does not dissolve even when it is reduced",
                dyeing.mass.show()
            ),
        )
        .figure(&dyeing.mass)
        .help("A vat wants both: soda ash, lime or lye, and something that reduces. The class is at home near pH 11.");
        if let Some(written) = dyeing.mass.places().first() {
            finding = finding.note(*written, "the dye is written here");
        }
        found.push(finding);
    }
}
