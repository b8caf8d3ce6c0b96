//! A name nothing goes by.

use tenter_resolve::{NameKind, ProblemKind};

use crate::context::Context;
use crate::finding::{Edit, Finding, Fix, Level};
use crate::problems::told_by;
use crate::rule::{Group, Rule};
use crate::say;

pub(crate) const RULE: Rule = Rule {
    name: "unknown-name",
    summary: "A name that nothing in the recipe or the reference goes by.",
    group: Group::Writing,
    level: Level::Error,
    since: "1",
    page: include_str!("unknown_name.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let mut told = Vec::new();

    for problem in told_by(context, RULE.name) {
        let ProblemKind::UnknownName { written, expected, nearest } = &problem.kind else { continue };
        // A line that should have brought it is told already.
        if should_have_been_brought(context, written) {
            continue;
        }
        let otherwise = match expected {
            NameKind::Mix => "write a `mix` block of that name",
            NameKind::Zone => "write a `zone` line of that name in the layout the goods are folded as",
            NameKind::Goods => "write a `goods` block of that name",
            NameKind::Layout => "write a `layout` block of that name",
            NameKind::Vessel => "write a `vessel` block of that name",
            NameKind::Steps => "write a `steps` block of that name",
            NameKind::Fibre => "`tenter materials` lists the fibres that are known",
            NameKind::DyeClass => "`tenter materials` lists the classes that are known",
            NameKind::Material | NameKind::Any => {
                "write a `dye` or `chemical` block of that name, or use a name `tenter materials` lists"
            }
        };
        let what = match expected {
            NameKind::Mix => "no mix",
            NameKind::Zone => "no zone",
            NameKind::Goods => "no goods",
            NameKind::Layout => "no layout",
            NameKind::Vessel => "no vessel",
            NameKind::Steps => "no group of steps",
            NameKind::Fibre => "no fibre",
            NameKind::DyeClass => "no class of dye",
            NameKind::Material => "no material",
            NameKind::Any => "nothing here",
        };
        // A name used on many lines is one mistake: the first is told, with the others beside it.
        if told.iter().any(|(name, kind)| (name, kind) == (&written, &expected)) {
            continue;
        }
        told.push((written, expected));
        let others: Vec<_> = told_by(context, RULE.name)
            .filter(|other| other.place != problem.place)
            .filter(|other| matches!(&other.kind, ProblemKind::UnknownName { written: name, expected: kind, .. } if (name, kind) == (written, expected)))
            .map(|other| other.place)
            .collect();
        let mut finding = Finding::new(&RULE, problem.place, format!("{what} is called `{written}`"))
            .help(say::sentence(&say::did_you_mean(nearest, otherwise)));
        for near in nearest {
            let mut fix = Fix::replace(problem.place, &**near, nearest.len() == 1);
            fix.edits.extend(others.iter().map(|place| Edit { place: *place, new_text: near.to_string() }));
            finding = finding.fix(fix);
        }
        for place in others.iter().take(8) {
            finding = finding.note(*place, "and here");
        }
        found.push(finding);
    }
}

fn should_have_been_brought(context: &Context<'_>, written: &str) -> bool {
    let written = tenter_syntax::fold_name(written);
    let wanted = written.strip_prefix("steps ").unwrap_or(&written);
    told_by(context, "broken-use").any(|problem| tenter_syntax::fold_name(context.text(problem.place)) == wanted)
}
