//! An acid dye kept off by alkali.

use tenter_quantity::Figure;
use tenter_reference::{DyeFamily, FibreFamily, Role};
use tenter_rehearse::LiquorState;

use crate::bench::{bath_of, grams};
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "acid-dye-in-alkali",
    summary: "The bath of an acid dye has more alkali in it than acid.",
    group: Group::Dye,
    level: Level::Warning,
    since: "1",
    page: include_str!("acid_dye_in_alkali.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    let mut told = Vec::new();
    for dyeing in context.dyeings() {
        let acid = context.class(dyeing.dye).is_some_and(|class| class.family == DyeFamily::Acid);
        let cellulose = context.share_of(dyeing.goods, FibreFamily::Cellulose).is_some_and(|share| share >= 0.5);
        let Some((index, _)) =
            bath_of(context, dyeing).filter(|(index, _)| acid && !cellulose && !told.contains(index))
        else {
            continue;
        };
        let mut bathed = context
            .rehearsal
            .frames
            .iter()
            .filter(|frame| !context.washes(frame.place))
            .filter_map(|frame| frame.liquors.get(index))
            .filter(|liquor| !liquor.inside.is_empty() && liquor.contents.mass(dyeing.dye).high > 0.0)
            .peekable();
        if bathed.peek().is_none() {
            continue;
        }
        let mut alkali = None;
        let mut soured = false;
        // Acid may go in late: it is the best moment that counts.
        let always = bathed.all(|liquor| {
            let (base, acid) = (
                context.rehearsal.substances.base(&liquor.contents),
                context.rehearsal.substances.acid(&liquor.contents),
            );
            alkali = lasting(context, liquor).cloned();
            soured |= acid.high > 0.0;
            alkali.is_some() && base.low > acid.high
        });
        // No acid at all is told by another rule.
        let Some(alkali) = alkali.filter(|_| always && soured) else { continue };
        told.push(index);
        let mut finding = Finding::new(
            &RULE,
            context.laid_at(dyeing),
            format!(
                "{} is an acid dye, and {} of alkali in its bath takes up all the acid there is",
                context.material(dyeing.dye).name,
                grams(alkali.value)
            ),
        )
        .figure(&alkali)
        .help("Leave the alkali out. Acid dye goes on in acid: ammonium sulfate, vinegar or citric acid.");
        if let Some(written) = alkali.places().first() {
            finding = finding.note(*written, "the alkali is written here");
        }
        found.push(finding);
    }
}

/// An alkali that heat does not drive off.
fn lasting<'a>(context: &Context<'_>, liquor: &'a LiquorState) -> Option<&'a Figure> {
    liquor
        .contents
        .parts
        .iter()
        .find(|(id, mass)| {
            let material = context.material(*id);
            mass.value.low > 0.0 && material.role() == Role::Alkali && !material.name.contains("ammoni")
        })
        .map(|(_, mass)| mass)
}
