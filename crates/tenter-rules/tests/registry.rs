//! The register of rules is in order.
#![allow(clippy::disallowed_methods)]

use std::collections::BTreeSet;

use tenter_rules::{RULES, rule};

#[test]
fn names_are_sorted_unique_and_plain_words() {
    for pair in RULES.windows(2) {
        assert!(pair[0].name < pair[1].name, "{} and {}", pair[0].name, pair[1].name);
    }
    for each in RULES {
        assert!(!each.name.is_empty());
        assert!(
            each.name.split('-').all(|word| !word.is_empty() && word.bytes().all(|byte| byte.is_ascii_lowercase())),
            "{}",
            each.name
        );
        assert!(each.summary.ends_with(['.', '?']), "{}: {}", each.name, each.summary);
        assert_eq!(each.since, "1");
        assert_eq!(rule(each.name).map(|found| found.name), Some(each.name));
    }
    assert!(rule("no-such-rule").is_none());
}

#[test]
fn each_rule_has_a_file_and_a_page_of_its_own_and_no_file_is_left_over() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/src/rules");
    let found: BTreeSet<String> = std::fs::read_dir(folder)
        .expect("the folder of rules")
        .map(|entry| entry.expect("an entry").file_name().to_string_lossy().into_owned())
        .collect();
    let expected: BTreeSet<String> = RULES
        .iter()
        .flat_map(|rule| ["rs", "md"].map(|end| format!("{}.{end}", rule.name.replace('-', "_"))))
        .collect();
    assert_eq!(found, expected);
}

#[test]
fn the_reference_of_rules_is_up_to_date() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../spec/rules.md");
    let written = std::fs::read_to_string(path).unwrap_or_default();
    assert!(
        written == tenter_rules::reference_chapter(),
        "spec/rules.md is out of date: run `cargo run -p tenter-rules --example write_spec`"
    );
}
