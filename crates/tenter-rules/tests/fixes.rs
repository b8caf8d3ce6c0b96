//! What a rule offers to change can be changed: a safe fix settles its finding, and every edit fits the text.

use tenter_resolve::NoLibrary;
use tenter_rules::{Checked, Edit, Fix, Page, RULES, Scale, Told, check_document};
use tenter_syntax::Document;

fn checked(text: &str) -> (Document, Checked) {
    let document = Document::parse(text);
    let checked = check_document(&document, "page.dye", &NoLibrary, Scale::AsWritten);
    (document, checked)
}

/// The text with the edits of a fix made, from the last to the first.
fn fixed(text: &str, document: &Document, checked: &Checked, told: &Told, fix: &Fix) -> String {
    let mut places: Vec<(usize, usize, &Edit)> = fix
        .edits
        .iter()
        .map(|edit| {
            let entry = &checked.sheets[told.sheet].blocks[edit.place.block as usize];
            assert!(entry.file.is_none(), "an edit in another file");
            let start = document.blocks[entry.position].start;
            (start + edit.place.start as usize, start + edit.place.end as usize, edit)
        })
        .collect();
    places.sort_by_key(|(start, _, _)| std::cmp::Reverse(*start));
    let mut changed = text.to_owned();
    let mut before = usize::MAX;
    for (start, end, edit) in places {
        assert!(start <= end && end <= before, "{}: edits overlap", told.finding.rule);
        changed.replace_range(start..end, &edit.new_text);
        before = start;
    }
    changed
}

#[test]
fn a_fix_settles_its_finding_and_brings_no_unreadable_text() {
    let mut safe = 0;
    for rule in RULES {
        let text = Page::read(rule.page).example("Bad").expect("a bad recipe");
        let (document, before) = checked(text);
        for told in before.findings.iter().filter(|told| told.finding.rule == rule.name) {
            for fix in &told.finding.fixes {
                let text = fixed(text, &document, &before, told, fix);
                let (_, after) = checked(&text);
                let same = after.findings.iter().filter(|later| later.finding.rule == rule.name).count();
                let rest: Vec<&str> = after.findings.iter().map(|later| later.finding.rule).collect();
                if fix.safe {
                    safe += 1;
                    assert!(
                        same < before.findings.iter().filter(|t| t.finding.rule == rule.name).count(),
                        "{}: {rest:?}\n{text}",
                        rule.name
                    );
                    assert!(
                        rest.iter().all(|name| before.findings.iter().any(|t| t.finding.rule == *name)),
                        "{}: {rest:?}",
                        rule.name
                    );
                }
                assert!(
                    !rest.contains(&"unreadable") || rule.name == "unreadable",
                    "{}: {}\n{text}",
                    rule.name,
                    fix.title
                );
            }
        }
    }
    assert!(safe >= 6, "only {safe} safe fixes seen");
}
