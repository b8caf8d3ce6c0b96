//! The pages of the rules are true: the bad recipe gives exactly that finding, the good one none.

use std::collections::BTreeSet;

use tenter_resolve::NoLibrary;
use tenter_rules::{HEADINGS, Page, RULES, Scale, check_document};
use tenter_syntax::Document;

fn fired(text: &str) -> Vec<(String, String)> {
    let document = Document::parse(text);
    check_document(&document, "page.dye", &NoLibrary, Scale::AsWritten)
        .findings
        .into_iter()
        .filter(|told| told.finding.accepted.is_none())
        .map(|told| (told.finding.rule.to_owned(), told.finding.message))
        .collect()
}

#[test]
fn bad_recipes_fire_their_rule_and_good_ones_nothing() {
    let mut wrong = Vec::new();
    for rule in RULES {
        let page = Page::read(rule.page);
        let (bad, good) = match (page.example("Bad"), page.example("Good")) {
            (Ok(bad), Ok(good)) => (bad, good),
            (bad, good) => {
                wrong.push(format!("{}: {:?} {:?}", rule.name, bad.err(), good.err()));
                continue;
            }
        };
        let mut allowed: BTreeSet<&str> = page.also().into_iter().collect();
        allowed.insert(rule.name);
        let told = fired(bad);
        let names: BTreeSet<&str> = told.iter().map(|(name, _)| name.as_str()).collect();
        if names != allowed {
            wrong.push(format!("{}: the bad recipe gives {told:?}, not {allowed:?}", rule.name));
        }
        let told = fired(good);
        if !told.is_empty() {
            wrong.push(format!("{}: the good recipe gives {told:?}", rule.name));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn every_page_has_every_section_in_order() {
    for rule in RULES {
        let page = Page::read(rule.page);
        assert_eq!(page.headings(), HEADINGS, "{}", rule.name);
        assert!(rule.page.starts_with(&format!("# {}\n", rule.name)), "{}", rule.name);
        for heading in HEADINGS {
            assert!(page.section(heading).is_some_and(|text| text.trim().len() > 20), "{}: {heading}", rule.name);
        }
    }
}
