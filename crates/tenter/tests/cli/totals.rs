//! The sheet to weigh from.

use serde_json::Value;

use crate::bench::{Bench, SOUND, bundled, project, run_in};

#[test]
fn the_sheet_reads_like_a_bench_sheet() {
    let text = SOUND
        .replace("  6 g      sea", "  2 tsp    sea")
        .replace("colour   #1d5fa6", "colour   #1d5fa6\n  price    24 EUR per 500 g")
        .replace("steps\n", "variant twice the soda\n  in mix soda soak\n  120 g/L  soda ash\n\nsteps\n");
    // A variant stands behind what it changes.
    let (head, steps) = text.split_once("variant").unwrap();
    let (variant, steps) = steps.split_once("\n\n").unwrap();
    let text = format!("{head}{steps}\nvariant{variant}\n");
    let run = Bench::with("a.dye", text).run(&["totals", "a.dye"]);
    insta::assert_snapshot!(run.out);
}

#[test]
fn amounts_follow_the_recipe() {
    // By hand: 60 g/L × 3 L = 180 g; 180 g on 2 × 160 g = 56.25 %; 90 g a piece; 1 g/L × 10 L × 2 = 20 g.
    let run = Bench::with("a.dye", SOUND).run(&["totals", "a.dye", "--format", "json"]);
    assert_eq!(run.status, 0, "{run:?}");
    let value: Value = serde_json::from_str(&run.out).unwrap();
    let recipe = &value[0];
    let best = |value: &Value| value["best"].as_f64().unwrap();
    let material = |name: &str| {
        recipe["materials"].as_array().unwrap().iter().find(|entry| entry["material"] == name).unwrap().clone()
    };
    assert_eq!(recipe["name"], "Sound");
    assert_eq!(best(&recipe["goods"][0]["pieces"]), 2.0);
    assert_eq!(best(&recipe["goods"][0]["dry_mass_g"]), 320.0);
    assert_eq!(best(&material("soda ash")["mass_g"]), 180.0);
    assert_eq!(best(&material("soda ash")["owg_percent"]), 56.25);
    assert_eq!(best(&material("soda ash")["per_piece_g"]), 90.0);
    assert_eq!(best(&material("textile detergent")["mass_g"]), 20.0);
    assert_eq!(recipe["mixes"][0]["name"], "soda soak");
    assert!((best(&recipe["mixes"][0]["volume_ml"]) - 3000.0).abs() < 300.0);
}

#[test]
fn scaling_follows_the_pieces() {
    let bench = Bench::with("a.dye", SOUND);
    let mass = |arguments: &[&str]| {
        let run = bench.run(arguments);
        let value: Value = serde_json::from_str(&run.out).unwrap();
        let all = value[0]["materials"].as_array().unwrap().clone();
        all.iter().find(|entry| entry["material"] == "soda ash").unwrap()["mass_g"]["best"].as_f64().unwrap()
    };
    assert_eq!(mass(&["totals", "a.dye", "--format", "json", "--pieces", "6"]), 540.0);
    assert_eq!(mass(&["totals", "a.dye", "--format", "json", "--pieces", "2"]), 180.0);
}

#[test]
fn lots_stay_whole() {
    let bench = Bench::with("a.dye", SOUND.replace("pieces   2", "pieces   4 in 2 lots of 2"));
    assert_eq!(bench.run(&["totals", "a.dye", "--pieces", "6"]).status, 0);
    let run = bench.run(&["totals", "a.dye", "--pieces", "5"]);
    assert_eq!((run.status, run.out.as_str()), (2, ""), "{run:?}");
    assert_eq!(run.err, "a.dye: 5 pieces are no whole number of lots of 2; 4 or 6 would be\n");
}

#[test]
fn gaps_are_told_and_end_with_one() {
    let text = SOUND.replace("60 g/L   soda ash", "60 g/L   sodda ash");
    let run = Bench::with("a.dye", text).run(&["totals", "a.dye"]);
    assert_eq!(run.status, 1, "{run:?}");
    assert!(run.err.contains("tenter check a.dye"), "{run:?}");
}

#[test]
fn every_bundled_sheet_fits_the_page() {
    for path in bundled("recipes").into_iter().chain(bundled("broken")) {
        let run = run_in(&project(), &["totals", path.to_str().unwrap()], b"");
        for line in run.out.lines() {
            assert!(line.chars().count() <= 80, "{path:?}: {line}");
        }
    }
}
