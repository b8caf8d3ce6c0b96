//! `tenter check --fix`, and what it would do.

use std::collections::BTreeSet;

use serde_json::Value;

use crate::bench::{Bench, SOUND, overdrawn};
use tenter_rules::{Page, RULES};

/// The sound recipe with two slips of which the cure is certain.
fn slips() -> String {
    SOUND.replace("  room ", "  roon ").replace("  squeeze  tees", "  squeze   tees")
}

fn mended() -> String {
    SOUND.replace("  squeeze  tees", "  squeeze   tees")
}

fn findings(bench: &Bench) -> Vec<Value> {
    let run = bench.run(&["check", "--format", "json"]);
    serde_json::from_str(&run.out).unwrap()
}

#[test]
fn safe_fixes_are_made_and_the_rest_is_told() {
    let bench = Bench::with("a.dye", slips().replace("90 mL/piece", "140 mL/piece"));
    bench.put("sound.dye", SOUND);
    let run = bench.run(&["check", "--fix"]);
    assert_eq!(run.status, 1, "{run:?}");
    assert!(
        run.err.starts_with("2 fixes made in 1 file\n") && run.err.ends_with("1 error in 1 of 2 files\n"),
        "{run:?}"
    );
    assert!(run.out.contains("mix-overdrawn") && !run.out.contains("unknown-key"), "{run:?}");
    assert_eq!(bench.get("a.dye"), mended().replace("90 mL/piece", "140 mL/piece"));
    assert_eq!(bench.get("sound.dye"), SOUND);
    let again = bench.run(&["check", "--fix"]);
    assert!(again.err.starts_with("0 fixes made in 0 files\n"), "{again:?}");
}

#[test]
fn looking_shows_the_change_and_makes_none() {
    let bench = Bench::with("a.dye", slips());
    let run = bench.run(&["check", "--diff"]);
    assert_eq!(run.status, 1, "{run:?}");
    assert!(run.out.contains("--- a/a.dye\n+++ b/a.dye\n"), "{run:?}");
    assert!(run.out.contains("-  roon     22 °C\n+  room     22 °C\n"), "{run:?}");
    assert_eq!(bench.get("a.dye"), slips());
    assert_eq!(bench.run(&["check", "--diff", "--exit-zero"]).status, 0);
    let sound = Bench::with("a.dye", SOUND).run(&["check", "--diff"]);
    assert_eq!((sound.status, sound.out.as_str()), (0, ""), "{sound:?}");
}

#[test]
fn standard_input_comes_back_fixed() {
    let bench = Bench::new();
    let run = bench.fed(&["check", "--fix", "--stdin-filename", "a.dye"], slips().as_bytes());
    assert_eq!((run.status, run.out), (0, mended()), "{}", run.err);
    let run = bench.fed(&["check", "--fix", "-"], overdrawn().as_bytes());
    assert_eq!((run.status, run.out), (1, overdrawn()));
    assert!(run.err.contains("<stdin>:30:3: error[mix-overdrawn]: "), "{}", run.err);
    let run = bench.fed(&["check", "--diff", "-"], slips().as_bytes());
    assert!(run.status == 1 && run.out.contains("+  room"), "{run:?}");
}

#[test]
fn carriage_returns_stay() {
    let bench = Bench::with("a.dye", slips().replace('\n', "\r\n"));
    assert_eq!(bench.run(&["check", "--fix"]).status, 0);
    assert_eq!(bench.get("a.dye"), mended().replace('\n', "\r\n"));
}

#[test]
fn what_is_accepted_or_off_is_not_fixed() {
    let bench = Bench::with("a.dye", slips());
    bench.put("tenter.toml", "[levels]\nunknown-key = \"off\"\n[accept]\nunknown-verb = \"we talk so\"\n");
    let run = bench.run(&["check", "--fix"]);
    assert!(run.err.starts_with("0 fixes made"), "{run:?}");
    assert_eq!(bench.get("a.dye"), slips());
}

#[test]
fn what_cannot_go_together_is_refused() {
    let bench = Bench::with("a.dye", slips());
    for arguments in [
        &["check", "--suggested"][..],
        &["check", "--diff", "--format", "json"],
        &["check", "--fix", "--format", "json", "-"],
    ] {
        assert_eq!(bench.run(arguments).status, 2, "{arguments:?}");
    }
    assert_eq!(bench.get("a.dye"), slips());
}

#[test]
fn text_that_is_no_utf8_is_left_as_it_is() {
    let bench = Bench::new();
    let mut bytes = slips().into_bytes();
    bytes.extend(b"# caf\xe9\n");
    let path = bench.put("a.dye", &bytes);
    let run = bench.run(&["check", "--fix"]);
    assert_eq!(run.status, 2, "{run:?}");
    #[allow(clippy::disallowed_methods, reason = "tests read their own files")]
    let left = std::fs::read(path).unwrap();
    assert_eq!(left, bytes);
    let run = bench.fed(&["check", "--fix", "-"], &bytes);
    assert_eq!((run.status, run.out.as_str()), (2, ""), "{run:?}");
}

/// Each rule that offers a fix, on the bad recipe of its own page: the finding is gone, the text can be read, and
/// nothing but the lines of the fix has changed.
#[test]
fn a_fix_settles_its_finding_on_every_page() {
    let mut tried = BTreeSet::new();
    let mut wrong = Vec::new();
    for rule in RULES {
        let bad = format!("{}\n", Page::read(rule.page).example("Bad").unwrap());
        let bench = Bench::with("a.dye", &bad);
        let before = findings(&bench);
        let of = |found: &[Value], name: &str| found.iter().filter(|finding| finding["rule"] == name).count();
        let offered: Vec<&Value> = before
            .iter()
            .filter(|f| f["rule"] == rule.name && f["fixes"].as_array().is_some_and(|all| !all.is_empty()))
            .collect();
        if offered.is_empty() {
            continue;
        }
        tried.insert(rule.name);
        let run = bench.run(&["check", "--fix", "--suggested"]);
        let text = bench.get("a.dye");
        let after = findings(&bench);
        let left =
            after.iter().filter(|f| f["rule"] == rule.name && !f["fixes"].as_array().unwrap().is_empty()).count();
        if left > 0 {
            wrong.push(format!("{}: {left} left\n{}\n{text}", rule.name, run.err));
        }
        if of(&after, "unreadable") > of(&before, "unreadable") {
            wrong.push(format!("{}: became unreadable\n{text}", rule.name));
        }
        // Lines no fix is about are as they were, in their order.
        let edited: BTreeSet<u64> = before
            .iter()
            .flat_map(|finding| finding["fixes"].as_array().unwrap())
            .flat_map(|fix| fix["edits"].as_array().unwrap())
            .flat_map(|edit| edit["line"].as_u64().unwrap()..=edit["end_line"].as_u64().unwrap())
            .collect();
        let mut lines = text.lines();
        for (number, line) in bad.lines().enumerate().filter(|(number, _)| !edited.contains(&(*number as u64 + 1))) {
            if !lines.any(|other| other == line) {
                wrong.push(format!("{}: line {} is lost: {line}\n{text}", rule.name, number + 1));
                break;
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n----\n"));
    assert!(tried.len() >= 12, "{tried:?}");
}
