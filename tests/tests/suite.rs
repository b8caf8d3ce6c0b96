//! The measured checker: silent over good recipes, and it speaks when one is spoiled.
//! `cargo run -p tenter-tests --example suite` prints what is asserted here.

use tenter_tests::report::measure;
use tenter_tests::{good, operators};

/// The figure reached, per cent. It may only rise.
const CAUGHT: f64 = 99.0;

#[test]
fn silent_over_good_recipes_and_loud_over_spoiled_ones() {
    let report = measure("");
    let shown = report.to_string();
    assert!(report.recipes >= 40, "{} good recipes", report.recipes);
    assert!(report.alarms.is_empty(), "{shown}");
    assert!(report.tallies.len() >= 30, "{} operators", report.tallies.len());
    for (name, tally) in &report.tallies {
        assert!(tally.harmful > 0, "{name} did no harm anywhere: {} mutants", tally.made);
    }
    assert!(report.rate() >= CAUGHT, "{shown}");
    assert!(report.survivors.iter().all(|each| each.why.is_some()), "{shown}");
}

#[test]
fn operators_have_names_of_their_own_and_answer_with_rules_there_are() {
    let all = operators::all();
    let mut names: Vec<&str> = all.iter().map(|each| each.name).collect();
    names.sort_unstable();
    names.dedup();
    assert_eq!(names.len(), all.len());
    for operator in &all {
        assert!(!operator.what.is_empty());
        for answer in operator.answers {
            assert!(tenter_rules::rule(answer).is_some(), "{}: no rule {answer}", operator.name);
        }
    }
}

#[test]
fn a_mutant_differs_from_its_recipe() {
    for good in good::all() {
        for operator in operators::all() {
            for mutant in (operator.make)(&good) {
                assert_ne!(mutant.text, good.text, "{} {}", operator.name, good.name);
                assert!(!mutant.lines.is_empty());
            }
        }
    }
}
