//! One bath at the bench.

use serde_json::Value;

use crate::bench::{Bench, Run, SOUND};

fn bath(amounts: &str) -> Run {
    Bench::new().run(&["bath", amounts])
}

fn reckoned(amounts: &str) -> Value {
    let run = Bench::new().run(&["bath", amounts, "--format", "json"]);
    serde_json::from_str(&run.out).unwrap_or_else(|_| panic!("{run:?}"))
}

fn best(value: &Value) -> f64 {
    value["best"].as_f64().unwrap_or_else(|| panic!("no number: {value}"))
}

#[test]
fn a_soak_is_reckoned_like_the_mix_of_a_recipe() {
    let value = reckoned("3 L water at 40 °C, 60 g/L soda ash");
    // 60 g/L × 3 L.
    assert_eq!(best(&value["ingredients"][1]["mass_g"]), 180.0);
    assert_eq!(best(&value["temperature_c"]), 40.0);
    let run = Bench::with("a.dye", SOUND).run(&["totals", "a.dye", "--format", "json"]);
    let totals: Value = serde_json::from_str(&run.out).unwrap();
    let mix = &totals[0]["mixes"][0];
    assert_eq!((&value["volume_ml"], &value["mass_g"], &value["ph"]), (&mix["volume_ml"], &mix["mass_g"], &mix["ph"]));
    let density = best(&value["mass_g"]) / best(&value["volume_ml"]);
    assert!((best(&value["density_g_per_ml"]) - density).abs() < 1e-3, "{value}");
    let run = bath("3 L water at 40 °C, 60 g/L soda ash");
    assert_eq!(run.status, 0, "{run:?}");
    for part in
        ["volume", "mass", "density", "pH            11.", " ± 0.05 at 40 °C", "dissolves", "H319", "data sheet"]
    {
        assert!(run.out.contains(part), "{part} is not in {}", run.out);
    }
}

#[test]
fn what_does_not_dissolve_is_told_with_the_temperature_at_which_it_would() {
    // Soda ash in 100 g of water: 21.5 g at 20 °C, 38.8 g at 30 °C (handbook values, from memory).
    let value = reckoned("2 L water at 20 °C, 300 g/L soda ash");
    let soda = &value["saturation"][0];
    assert!((best(&soda["dissolves_g_per_kg_water"]) - 215.0).abs() < 10.0, "{soda}");
    assert!(soda["full_percent"]["low"].as_f64().unwrap() > 100.0, "{soda}");
    let from = soda["dissolves_from_c"].as_f64().unwrap();
    assert!((21.0..30.0).contains(&from), "{soda}");
    let run = bath("2 L water at 20 °C, 300 g/L soda ash");
    assert!(run.out.contains("does not all dissolve"), "{}", run.out);
    let warm = reckoned("2 L water at 40 °C, 300 g/L soda ash");
    assert!(warm["saturation"][0]["full_percent"]["high"].as_f64().unwrap() < 100.0, "{warm}");
}

#[test]
fn more_soda_never_lowers_the_ph_and_vinegar_does() {
    let ph = |amounts: &str| best(&reckoned(amounts)["ph"]);
    let soak = ph("2 L water at 20 °C, 20 g/L soda ash");
    assert!(ph("2 L water at 20 °C, 40 g/L soda ash") > soak);
    assert!(ph("2 L water at 20 °C, 20 g/L soda ash, 400 mL vinegar") < soak - 0.5);
}

#[test]
fn what_must_not_meet_is_told_with_cautions_and_ends_with_one() {
    let run = bath("1 L chlorine bleach; 100 mL vinegar");
    assert_eq!(run.status, 1, "{run:?}");
    assert!(run.out.contains("[never-mix]") && run.out.contains("chlorine gas"), "{}", run.out);
}

#[test]
fn what_cannot_be_read_is_told_as_in_a_recipe() {
    for (amounts, rule) in [
        ("2 L water, 0,5 g soda ash", "number-form"),
        ("60 g/L soda ash", "missing-value"),
        ("2 L water, 10 g sodda ash", "unknown-name"),
    ] {
        let value = reckoned(amounts);
        let rules: Vec<&str> =
            value["findings"].as_array().unwrap().iter().map(|found| found["rule"].as_str().unwrap()).collect();
        assert!(rules.contains(&rule), "{amounts}: {rules:?}");
    }
    let run = bath(" , ");
    assert_eq!((run.status, run.out.as_str()), (2, ""), "{run:?}");
}

#[test]
fn words_need_no_quotes_and_nothing_steers_the_terminal() {
    let run = Bench::new().run(&["bath", "2", "L", "water,", "10", "g", "urea"]);
    assert!(run.out.starts_with("2 L water, 10 g urea\n"), "{run:?}");
    for form in ["text", "json"] {
        let run = Bench::new().run(&["bath", "2 L water, 5 g \u{1b}[31mred\u{202e}", "--format", form]);
        assert!(!run.out.contains(['\u{1b}', '\u{202e}']), "{run:?}");
    }
}

#[test]
fn a_spoon_says_what_to_measure() {
    let run = bath("1 L water, 3 tsp C.I. Reactive Blue 4");
    assert!(run.out.contains("to narrow this, measure"), "{}", run.out);
}
