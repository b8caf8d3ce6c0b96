//! The published interfaces keep to their schemas.

use serde_json::Value;

use crate::bench::{Bench, bundled, overdrawn, project, run_in, unused_mix};

fn schema(name: &str) -> jsonschema::Validator {
    #[allow(clippy::disallowed_methods, reason = "tests read the schemas")]
    let text = std::fs::read_to_string(project().join("spec").join(name)).unwrap();
    let schema: Value = serde_json::from_str(&text).unwrap();
    assert!(jsonschema::meta::is_valid(&schema), "{name} is no schema");
    jsonschema::validator_for(&schema).unwrap()
}

fn must_fit(validator: &jsonschema::Validator, value: &Value, what: &str) {
    let troubles: Vec<String> =
        validator.iter_errors(value).map(|error| format!("{}: {error}", error.instance_path())).take(5).collect();
    assert!(troubles.is_empty(), "{what}: {troubles:#?}");
}

#[test]
fn findings_keep_to_their_schema() {
    let validator = schema("check.schema.json");
    for folder in ["recipes", "broken"] {
        let path = format!("tests/{folder}");
        let run = run_in(&project(), &["check", "--format", "json", "--accepted", &path], b"");
        let value: Value = serde_json::from_str(&run.out).unwrap();
        must_fit(&validator, &value, folder);
        if folder == "broken" {
            assert!(value.as_array().unwrap().len() >= bundled("broken").len() / 2, "hardly anything was found");
        }
    }
}

#[test]
fn the_schemas_refuse_what_is_wrong() {
    let check = schema("check.schema.json");
    let run = Bench::with("a.dye", overdrawn()).run(&["check", "--format", "json"]);
    let good: Value = serde_json::from_str(&run.out).unwrap();
    must_fit(&check, &good, "good");
    for (key, wrong) in [
        ("rule", Value::from("Not Kebab")),
        ("level", Value::from("fatal")),
        ("line", Value::from(0)),
        ("column", Value::from("3")),
        ("surprise", Value::from(1)),
    ] {
        let mut bad = good.clone();
        bad[0][key] = wrong;
        assert!(!check.is_valid(&bad), "{key}");
    }
    let totals = schema("totals.schema.json");
    let run = Bench::with("a.dye", overdrawn()).run(&["totals", "--format", "json", "a.dye"]);
    let mut value: Value = serde_json::from_str(&run.out).unwrap();
    must_fit(&totals, &value, "totals");
    value[0]["goods"][0]["pieces"] = Value::from(2);
    assert!(!totals.is_valid(&value));
}

#[test]
fn totals_keep_to_their_schema() {
    let validator = schema("totals.schema.json");
    for path in bundled("recipes").into_iter().chain(bundled("broken")) {
        let run = run_in(&project(), &["totals", "--format", "json", path.to_str().unwrap()], b"");
        assert!(run.status < 2, "{path:?}: {run:?}");
        let value: Value = serde_json::from_str(&run.out).unwrap();
        must_fit(&validator, &value, path.to_str().unwrap());
    }
}

#[test]
fn rehearsals_keep_to_their_schema() {
    let validator = schema("rehearse.schema.json");
    for path in bundled("recipes").into_iter().chain(bundled("broken")) {
        let run = run_in(&project(), &["rehearse", "--format", "json", path.to_str().unwrap()], b"");
        assert!(run.status < 2, "{path:?}: {run:?}");
        let value: Value = serde_json::from_str(&run.out).unwrap();
        must_fit(&validator, &value, path.to_str().unwrap());
        for (key, wrong) in [("name", Value::from(3)), ("surprise", Value::from(1)), ("steps", Value::Null)] {
            let mut bad = value.clone();
            if let Some(first) = bad.get_mut(0) {
                first[key] = wrong;
                assert!(!validator.is_valid(&bad), "{key}");
            }
        }
    }
}

#[test]
fn baths_keep_to_their_schema() {
    let validator = schema("bath.schema.json");
    for amounts in [
        "8 L water at 40 °C, 60 g/L soda ash",
        "1 L water at 5 °C, 500 g/L soda ash, 3 tsp C.I. Reactive Blue 4",
        "100 g soda ash, 50 g urea",
        "1 L chlorine bleach, 1 L vinegar",
        "60 g/L soda ash",
        "nonsense, 3 of it",
    ] {
        let run = Bench::new().run(&["bath", "--format", "json", amounts]);
        assert!(run.status < 2, "{amounts}: {run:?}");
        must_fit(&validator, &serde_json::from_str(&run.out).unwrap(), amounts);
    }
}

#[test]
fn a_finding_says_where_it_stands_in_characters() {
    let text = unused_mix().replace("spare bottle", "sp小é bottle");
    let run = Bench::with("a.dye", text).run(&["check", "--format", "json"]);
    let value: Value = serde_json::from_str(&run.out).unwrap();
    let finding = &value[0];
    assert_eq!(finding["rule"], "mix-never-used");
    assert_eq!((&finding["line"], &finding["column"]), (&Value::from(25), &Value::from(5)), "{finding}");
    assert_eq!((&finding["end_line"], &finding["end_column"]), (&Value::from(25), &Value::from(16)), "{finding}");
}

#[test]
fn nothing_found_is_an_empty_array() {
    let run = Bench::new().run(&["check", "--format", "json"]);
    assert_eq!((run.status, run.out.as_str()), (0, "[]\n"));
}

#[test]
fn github_annotations_stop_at_ten_of_a_kind_and_say_so() {
    let bench = Bench::new();
    for number in 10..23 {
        bench.put(&format!("{number}.dye"), overdrawn());
    }
    bench.put("30.dye", unused_mix());
    let run = bench.run(&["check", "--format", "github"]);
    assert_eq!(run.out.lines().filter(|line| line.starts_with("::error ")).count(), 10, "{run:?}");
    assert_eq!(run.out.lines().filter(|line| line.starts_with("::warning ")).count(), 1, "{run:?}");
    assert_eq!(run.out.lines().filter(|line| line.contains(": error[mix-overdrawn]: ")).count(), 13, "{run:?}");
    assert!(run.out.ends_with("3 more are in the log above without an annotation\n"), "{run:?}");
    assert!(
        run.out.starts_with("::error file=10.dye,line=30,endLine=30,col=3,endColumn=54,title=mix-overdrawn::"),
        "{run:?}"
    );
}
