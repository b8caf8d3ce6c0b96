//! Where the numbers on a line come from.

#![allow(clippy::disallowed_methods, reason = "a sum by hand does not look at the last digit")]

use serde_json::Value;

use crate::bench::{Bench, SOUND, bundled, project, run_in};

/// The output with wrapped lines joined.
fn explained(text: &str, line: usize) -> String {
    let run = Bench::with("a.dye", text).run(&["explain", &format!("a.dye:{line}")]);
    assert_eq!(run.status, 0, "{run:?}");
    run.out.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn line_of(text: &str, start: &str) -> usize {
    1 + text.lines().position(|line| line.trim_start().starts_with(start)).unwrap()
}

/// The number printed behind some words.
fn behind(text: &str, words: &str) -> f64 {
    let (_, rest) = text.split_once(words).unwrap_or_else(|| panic!("{words} is not in {text}"));
    let number: String = rest.trim_start().chars().take_while(|c| "0123456789.e-".contains(*c)).collect();
    number.trim_end_matches('.').parse().unwrap_or_else(|_| panic!("{words}: {number}"))
}

#[test]
fn the_ph_of_a_soak_follows_by_hand_from_what_is_printed() {
    for celsius in [20, 40, 80] {
        let text = SOUND.replace("3 L      water at 40 °C", &format!("8 L water at {celsius} °C"));
        let told = explained(&text, line_of(&text, "mix soda soak"));
        // 60 g/L × 8 L; molar mass 2 × 22.990 + 12.011 + 3 × 15.999 (IUPAC standard atomic weights, 2021).
        let put_in = behind(&told, "soda ash:");
        assert_eq!(put_in, 480.0);
        let molar = 2.0 * 22.990 + 12.011 + 3.0 * 15.999;
        let carbonate = put_in / molar / behind(&told, "mol, in");
        // CO₃²⁻ + H₂O = HCO₃⁻ + OH⁻: as much of the one as of the other, x.
        let (pk_water, pk2) = (behind(&told, "pKw ="), behind(&told, "pK2 of carbonic acid ="));
        let gamma = |ion: &str| behind(&told, &format!("γ({ion}) ="));
        let water = behind(&told, "aw =");
        let k = 10_f64.powf(pk2 - pk_water) * gamma("CO₃²⁻") * water / (gamma("HCO₃⁻") * gamma("OH⁻"));
        let x = 0.5 * (-k + (k * k + 4.0 * k * carbonate).sqrt());
        let by_hand = pk_water + (x * gamma("OH⁻") / water).log10();
        let run = Bench::with("a.dye", &text).run(&["totals", "a.dye", "--format", "json"]);
        let totals: Value = serde_json::from_str(&run.out).unwrap();
        let tool = totals[0]["mixes"][0]["ph"]["best"].as_f64().unwrap();
        assert!((by_hand - tool).abs() < 0.005, "{celsius} °C: {by_hand} by hand, {tool} by the tool");
        // The printed molalities balance too.
        let m = |ion: &str| behind(&told, &format!("m({ion}) ="));
        let negative = 2.0 * m("CO₃²⁻") + m("HCO₃⁻") + m("OH⁻");
        assert!((m("Na⁺") - negative).abs() < 0.002 * negative, "{} {negative}", m("Na⁺"));
        // And the pair of carbonate and bicarbonate gives the same.
        let pair = pk2 + (m("CO₃²⁻") * gamma("CO₃²⁻") / (m("HCO₃⁻") * gamma("HCO₃⁻"))).log10();
        assert!((pair - tool).abs() < 0.005, "{celsius} °C: {pair}, {tool}");
    }
}

#[test]
fn an_amount_shows_its_arithmetic_with_its_lines() {
    let told = explained(SOUND, line_of(SOUND, "60 g/L"));
    assert!(told.contains("soda ash: 180 g = 60 g/L (line 18) × 3 L (line 17)"), "{told}");
    let told = explained(SOUND, line_of(SOUND, "weight"));
    assert!(told.contains("320 g = 160 g a piece (line 8) × 2 pieces (line 7)"), "{told}");
}

#[test]
fn a_step_shows_what_it_did() {
    let told = explained(SOUND, line_of(SOUND, "squirt"));
    for part in ["sea bottle used here in all: 180 mL = 90 mL/piece", "clock after it:", "sea on tees", "water in tees"]
    {
        assert!(told.contains(part), "{part} is not in {told}");
    }
    let told = explained(SOUND, line_of(SOUND, "batch"));
    assert!(told.contains("of a full batch"), "{told}");
}

#[test]
fn a_guess_says_what_to_measure() {
    let text = SOUND.replace("20 g     urea", "2 tbsp   urea").replace("recipe Sound", "recipe Sound\n  measures US");
    let told = explained(&text, line_of(&text, "2 tbsp"));
    assert!(told.contains("bulk density of urea"), "{told}");
}

#[test]
fn rules_are_explained_as_before_and_lines_that_are_not_there_are_told() {
    let bench = Bench::with("a.dye", SOUND);
    assert!(bench.run(&["explain", "mix-overdrawn"]).out.starts_with("# mix-overdrawn"));
    for wrong in ["a.dye:999", "b.dye:1", "a.dye:0", "no-such-rule"] {
        let run = bench.run(&["explain", wrong]);
        assert_eq!((run.status, run.out.as_str()), (2, ""), "{wrong}: {run:?}");
        assert!(!run.err.is_empty());
    }
    let run = bench.fed(&["explain", "-:18"], SOUND.as_bytes());
    assert!(run.out.contains("180 g = 60 g/L"), "{run:?}");
    let run = bench.run(&["explain", "a.dye:2"]);
    assert_eq!(run.status, 0);
    assert!(run.out.contains("No number on this line"), "{run:?}");
}

#[test]
fn any_line_of_a_recipe_can_be_asked_for() {
    for path in bundled("recipes").into_iter().step_by(9) {
        let lines = std::fs::read_to_string(&path).unwrap().lines().count();
        for line in (1..=lines).step_by(2) {
            let run = run_in(&project(), &["explain", &format!("{}:{line}", path.to_str().unwrap())], b"");
            assert_eq!(run.status, 0, "{path:?}:{line}: {run:?}");
            for line in run.out.lines() {
                assert!(line.chars().count() <= 80, "{path:?}: {line}");
            }
        }
    }
}
