//! `tenter check --format sarif`, against the schema OASIS publishes beside the standard.

use serde_json::Value;

use crate::bench::{Bench, Run, overdrawn, project, run_in, unused_mix};

fn validator() -> jsonschema::Validator {
    // A bracket on its own means itself in the regular expressions the schema is written in; ours wants it escaped.
    let text = include_str!("schemas/sarif-2.1.0.json").replace("[a-zA-Z]{2}]?$", "[a-zA-Z]{2}\\\\]?$");
    let schema: Value = serde_json::from_str(&text).unwrap();
    jsonschema::draft7::new(&schema).unwrap()
}

fn log(run: &Run) -> Value {
    serde_json::from_str(&run.out).unwrap_or_else(|error| panic!("{error}: {run:?}"))
}

fn results(log: &Value) -> &Vec<Value> {
    log["runs"][0]["results"].as_array().unwrap()
}

fn accepted() -> String {
    unused_mix().replace("mix spare bottle\n", "mix spare bottle\n  accept   mix-never-used because it stands by\n")
}

#[test]
fn every_bundled_recipe_gives_a_valid_log() {
    let validator = validator();
    for folder in ["recipes", "broken", "no-such-folder"] {
        let run = run_in(&project(), &["check", "--format", "sarif", &format!("tests/{folder}")], b"");
        let log = log(&run);
        let troubles: Vec<String> =
            validator.iter_errors(&log).map(|error| format!("{}: {error}", error.instance_path())).take(5).collect();
        assert!(troubles.is_empty(), "{folder}: {troubles:#?}");
        let rules = log["runs"][0]["tool"]["driver"]["rules"].as_array().unwrap();
        for result in results(&log) {
            let index = usize::try_from(result["ruleIndex"].as_u64().unwrap()).unwrap();
            assert_eq!(rules[index]["id"], result["ruleId"]);
            let region = &result["locations"][0]["physicalLocation"]["region"];
            assert!(region["startLine"].as_u64().unwrap() >= 1 && region["startColumn"].as_u64().unwrap() >= 1);
        }
        assert!(rules.iter().all(|rule| rule["help"]["markdown"].as_str().unwrap().contains("## Why it matters")));
        let sound = log["runs"][0]["invocations"][0]["executionSuccessful"].as_bool().unwrap();
        assert_eq!(sound, folder != "no-such-folder", "{run:?}");
        assert_eq!(results(&log).is_empty(), folder == "no-such-folder", "{folder}");
    }
}

#[test]
fn the_schema_refuses_what_is_wrong() {
    let validator = validator();
    let good = log(&Bench::with("a.dye", overdrawn()).run(&["check", "--format", "sarif"]));
    assert!(validator.is_valid(&good));
    for (pointer, wrong) in [
        ("/version", Value::from("2.0.0")),
        ("/runs/0/columnKind", Value::from("bytes")),
        ("/runs/0/results/0/level", Value::from("advice")),
        ("/runs/0/results/0/message", Value::from("text")),
        ("/runs/0/results/0/locations/0/physicalLocation/region/startColumn", Value::from(0)),
        ("/runs/0/results/0/suppressions", Value::from("none")),
    ] {
        let mut bad = good.clone();
        *bad.pointer_mut(pointer).unwrap() = wrong;
        assert!(!validator.is_valid(&bad), "{pointer}");
    }
}

#[test]
fn a_result_says_where_in_characters_and_under_which_name() {
    let bench = Bench::with("a b/é.dye", unused_mix().replace("spare bottle", "sp小é bottle"));
    let log = log(&bench.run(&["check", "--format", "sarif"]));
    assert_eq!(log["runs"][0]["columnKind"], "unicodeCodePoints");
    let result = &results(&log)[0];
    let at = &result["locations"][0]["physicalLocation"];
    assert_eq!(at["artifactLocation"]["uri"], "a%20b/%C3%A9.dye");
    let expected = serde_json::json!({ "startLine": 25, "startColumn": 5, "endLine": 25, "endColumn": 16 });
    assert_eq!(at["region"], expected);
    assert_eq!((&result["level"], &result["ruleId"]), (&Value::from("warning"), &Value::from("mix-never-used")));
}

#[test]
fn what_is_accepted_is_a_suppressed_result() {
    let run = Bench::with("a.dye", accepted()).run(&["check", "--format", "sarif"]);
    assert_eq!(run.status, 0, "{run:?}");
    let log = log(&run);
    assert!(validator().is_valid(&log));
    let suppression = &results(&log)[0]["suppressions"][0];
    assert_eq!(suppression["kind"], "inSource");
    assert_eq!(suppression["justification"], "it stands by");
    assert_eq!(suppression["location"]["physicalLocation"]["region"]["startLine"], 26);
    let bench = Bench::with("a.dye", unused_mix());
    bench.put("tenter.toml", "[accept]\nmix-never-used = \"one always stands by\"\n");
    let log = self::log(&bench.run(&["check", "--format", "sarif"]));
    let suppression = &results(&log)[0]["suppressions"][0];
    assert_eq!(suppression["kind"], "external");
    assert_eq!(suppression["justification"], "one always stands by");
    assert_eq!(suppression["location"]["physicalLocation"]["artifactLocation"]["uri"], "tenter.toml");
}

#[test]
fn fingerprints_outlive_moved_lines_and_tell_alike_ones_apart() {
    let prints = |text: &str| -> Vec<String> {
        let log = log(&Bench::with("a.dye", text).run(&["check", "--format", "sarif"]));
        results(&log)
            .iter()
            .map(|result| result["partialFingerprints"]["primaryLocationLineHash"].as_str().unwrap().to_owned())
            .collect()
    };
    let text = overdrawn();
    let first = prints(&text);
    assert_eq!(first.len(), 1);
    assert_eq!(prints(&format!("# moved\n\n\n{text}")), first);
    assert_eq!(prints(&text.replace("squirt   140", "squirt  140")), first);
    assert_ne!(prints(&text.replace("140 mL", "150 mL")), first);
    let twice = prints(&format!("{text}\n{}", text.replace("edition 1\n\n", "").replace("Sound", "Other")));
    assert_eq!(twice.len(), 2);
    assert_eq!(twice[0], first[0]);
    assert_eq!(twice[1], first[0].replace(":1", ":2"));
}

#[test]
fn fixes_and_notes_come_along() {
    let bench = Bench::with("a.dye", overdrawn().replace("  room ", "  roon "));
    let log = log(&bench.run(&["check", "--format", "sarif"]));
    assert!(validator().is_valid(&log));
    let slip = results(&log).iter().find(|result| result["ruleId"] == "unknown-key").unwrap();
    let replacement = &slip["fixes"][0]["artifactChanges"][0]["replacements"][0];
    assert_eq!(replacement["insertedContent"]["text"], "room");
    assert_eq!(replacement["deletedRegion"]["startLine"], 4);
}

#[test]
fn two_runs_give_the_same_log() {
    let runs = || run_in(&project(), &["check", "--format", "sarif", "tests/broken"], b"").out;
    assert_eq!(runs(), runs());
}
