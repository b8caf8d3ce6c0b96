//! All findings of one sheet: the recipe and its variants together.

use tenter_quantity::Place;
use tenter_rehearse::{Rehearsal, rehearse};
use tenter_resolve::{Recipe, Scale, Sheet, resolve};

use crate::acceptance;
use crate::consequences;
use crate::context::Context;
use crate::finding::Finding;
use crate::registry::RULES;
use crate::rules::unused_accept;

/// The findings of a sheet, and what they rest on. Depends on nothing but the sheet.
#[derive(Clone, Debug)]
pub struct SheetFindings {
    /// The recipe as written, then its variants.
    pub recipes: Vec<Recipe>,
    /// Each of them carried out on paper, in the same order.
    pub rehearsals: Vec<Rehearsal>,
    /// Findings in order of place and rule, each with the index of the recipe it was first met in.
    pub findings: Vec<(usize, Finding)>,
    /// `accept` lines that accept nothing in any of the recipes.
    pub unused: Vec<Place>,
}

/// The findings about one recipe, sorted by place and rule, accepted ones marked.
pub fn check(context: &Context<'_>) -> Vec<Finding> {
    let (mut findings, used) = judge(context);
    findings.extend(
        unused_accept::unused(context.recipe, &used).map(|place| unused_accept::finding(context.recipe, place)),
    );
    sort(&mut findings);
    findings
}

/// Resolves a sheet and checks the recipe and each of its variants; what is the same in both is told once. Of a scaled
/// recipe nothing can be changed in the text, and what it accepts may be needed as written: neither fixes nor unused
/// `accept` lines are told.
pub fn check_sheet(sheet: &Sheet, scale: Scale) -> SheetFindings {
    let recipes = resolve(sheet, scale);
    let mut findings: Vec<(usize, Finding)> = Vec::new();
    let mut used = Vec::new();
    let mut told_in = Vec::new();
    let rehearsals: Vec<Rehearsal> = recipes.iter().map(rehearse).collect();
    for (index, (recipe, rehearsal)) in recipes.iter().zip(&rehearsals).enumerate() {
        let context = Context { sheet, recipe, rehearsal };
        let (told, accepted) = judge(&context);
        told_in.extend(told.iter().filter(|finding| ONLY_IF_IN_ALL.contains(&finding.rule)).map(order));
        used.extend(accepted);
        for mut finding in told {
            if let Some(variant) = recipe.variant.as_ref().filter(|_| recipes.len() > 1) {
                finding = finding.note(variant.place, "only in this variant");
            }
            if !findings.iter().any(|(_, have)| same(have, &finding)) {
                findings.push((index, finding));
            }
        }
    }
    let everywhere = |finding: &Finding| recipes.len() == times(&told_in, finding);
    findings.retain(|(_, finding)| !ONLY_IF_IN_ALL.contains(&finding.rule) || everywhere(finding));
    if scale != Scale::AsWritten {
        findings.iter_mut().for_each(|(_, finding)| finding.fixes.clear());
    }
    let mut unused = Vec::new();
    for recipe in recipes.iter().filter(|_| scale == Scale::AsWritten) {
        for place in unused_accept::unused(recipe, &used) {
            if !unused.contains(&place) {
                unused.push(place);
            }
        }
    }
    findings.sort_by(|a, b| order(&a.1).cmp(&order(&b.1)));
    SheetFindings { recipes, rehearsals, findings, unused }
}

/// Rules that speak of something no recipe of the sheet needs: one that does makes them wrong.
const ONLY_IF_IN_ALL: [&str; 2] = ["mix-never-used", "goods-never-used"];

fn times(told: &[Key], finding: &Finding) -> usize {
    told.iter().filter(|key| **key == order(finding)).count()
}

type Key = (u32, u32, u32, &'static str);

fn judge(context: &Context<'_>) -> (Vec<Finding>, Vec<Place>) {
    let mut findings = Vec::new();
    for rule in RULES {
        (rule.check)(context, &mut findings);
    }
    sort(&mut findings);
    findings.dedup_by(|later, earlier| same(later, earlier));
    consequences::leave_out(&mut findings);
    let used = acceptance::apply(context, &mut findings);
    (findings, used)
}

fn sort(findings: &mut [Finding]) {
    findings.sort_by(|a, b| order(a).cmp(&order(b)));
}

pub(crate) fn order(finding: &Finding) -> Key {
    (finding.place.block, finding.place.start, finding.place.end, finding.rule)
}

fn same(a: &Finding, b: &Finding) -> bool {
    a.place == b.place && a.rule == b.rule
}
