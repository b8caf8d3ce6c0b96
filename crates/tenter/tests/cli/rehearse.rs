//! The recipe carried out on paper.

use serde_json::Value;

use crate::bench::{Bench, SOUND, bundled, project, run_in};

fn best(value: &Value) -> f64 {
    value["best"].as_f64().unwrap_or_else(|| panic!("no number: {value}"))
}

fn rehearsed(text: &str) -> Value {
    let run = Bench::with("a.dye", text).run(&["rehearse", "a.dye", "--format", "json"]);
    assert_eq!(run.status, 0, "{run:?}");
    serde_json::from_str(&run.out).unwrap()
}

fn step<'a>(recipe: &'a Value, verb: &str) -> &'a Value {
    recipe["steps"].as_array().unwrap().iter().find(|step| step["verb"] == verb).unwrap_or_else(|| panic!("{verb}"))
}

#[test]
fn every_step_says_how_the_goods_stand() {
    let value = rehearsed(SOUND);
    let recipe = &value[0];
    let steps = recipe["steps"].as_array().unwrap();
    assert_eq!(steps.len(), 9);
    let clocks: Vec<f64> = steps.iter().map(|step| best(&step["clock_min"])).collect();
    assert!(clocks.is_sorted(), "{clocks:?}");
    // 20 min of soaking and a day of batching are written.
    assert!(clocks[8] > 20.0 + 24.0 * 60.0, "{clocks:?}");

    // 2 tees of 160 g wrung to 100 % hold about 320 g of a soak of 60 g soda ash to each litre of water.
    let wrung = &step(recipe, "squeeze")["goods"][0]["zones"][0];
    let (water, alkali) = (best(&wrung["water_g"]), best(&wrung["alkali_g"]));
    assert!((water - 320.0).abs() < 20.0, "{wrung}");
    assert!((alkali / water - 0.060).abs() < 0.002, "{wrung}");
    assert_eq!(wrung["dyes"], Value::Array(vec![]));

    // 90 mL of the bottle on each: 180 of about 218 mL with 6 g of dye.
    let squirted = &step(recipe, "squirt")["goods"][0]["zones"];
    let laid: f64 = squirted.as_array().unwrap().iter().map(|zone| best(&zone["dyes"][0]["laid_g"])).sum();
    assert!((laid - 6.0 * 180.0 / 218.0).abs() < 0.2, "{squirted}");
    let share = |verb: &str| best(&step(recipe, verb)["goods"][0]["zones"][0]["dyes"][0]["reacted_share"]);
    assert!(share("squirt") < 0.2 && share("batch") > 0.8, "{} {}", share("squirt"), share("batch"));

    // Washing takes the alkali out; drying takes the water.
    let zone = |verb: &str| step(recipe, verb)["goods"][0]["zones"][0].clone();
    assert!(best(&zone("soap off")["alkali_g"]) < 0.1 * best(&zone("batch")["alkali_g"]));
    assert!(best(&zone("soap off")["ph"]) < best(&zone("batch")["ph"]) - 0.5);
    assert_eq!(zone("dry")["ph"], Value::Null);
    assert!(best(&zone("dry")["water_g"]) < 0.1 * best(&zone("dry")["dry_g"]));
}

#[test]
fn totals_and_rehearsal_tell_the_same() {
    let bench = Bench::with("a.dye", SOUND);
    let read =
        |verb: &str| -> Value { serde_json::from_str(&bench.run(&[verb, "a.dye", "--format", "json"]).out).unwrap() };
    let (totals, account) = (read("totals"), read("rehearse"));
    assert_eq!(totals[0]["mixes"][0]["ph"], account[0]["mixes"][0]["ph"]);
    assert!(best(&totals[0]["mixes"][0]["ph"]) > 11.0);
    assert_eq!(totals[0]["clock_min"], account[0]["clock_min"]);
    let (states, steps) = (&totals[0]["states"], &account[0]["steps"]);
    assert_eq!(states.as_array().unwrap().len(), steps.as_array().unwrap().len());
    for (state, step) in states.as_array().unwrap().iter().zip(steps.as_array().unwrap()) {
        assert_eq!((&state["line"], &state["clock_min"]), (&step["line"], &step["clock_min"]));
        let (short, long) = (&state["zones"][0], &step["goods"][0]["zones"][0]);
        assert_eq!(short["ph"], long["ph"]);
        let share = 100.0 * best(&long["water_g"]) / best(&long["dry_g"]);
        assert!((best(&short["water_percent"]) - share).abs() < 1e-6 * share.max(1.0), "{state}");
    }
}

#[test]
fn every_bundled_recipe_reads_at_eighty_columns_and_twice_the_same() {
    for path in bundled("recipes") {
        let arguments = ["rehearse", path.to_str().unwrap()];
        let run = run_in(&project(), &arguments, b"");
        assert!(run.status < 2, "{path:?}: {run:?}");
        assert!(!run.out.contains('\u{1b}'), "{path:?}");
        for line in run.out.lines() {
            assert!(line.chars().count() <= 80, "{path:?}: {line}");
        }
        assert_eq!(run_in(&project(), &arguments, b"").out, run.out, "{path:?}");
    }
}

#[test]
fn steps_stand_under_the_name_of_their_block() {
    let text = SOUND.replace("steps\n", "steps first evening\n");
    let run = Bench::with("a.dye", text).run(&["rehearse", "a.dye"]);
    assert!(run.out.contains("\nSteps: first evening\n"), "{}", run.out);
    for part in ["of a full batch", "clock 21 min", "soda soak: ", "pH 11.", "In all 33 h", " of it work"] {
        assert!(run.out.contains(part), "{part} is not in {}", run.out);
    }
}

#[test]
fn a_wide_result_says_what_to_measure() {
    let text = SOUND.replace("squeeze  tees to 100% pickup", "squeeze  tees to 60 to 180% pickup");
    let run = Bench::with("a.dye", text).run(&["rehearse", "a.dye"]);
    assert!(run.out.contains("Wide results; to narrow them, measure\n"), "{}", run.out);
    assert!(run.out.contains("60 to 180% (line 28)"), "{}", run.out);
}

#[test]
fn more_pieces_need_more_and_stand_alike() {
    let bench = Bench::with("a.dye", SOUND);
    let read = |arguments: &[&str]| -> Value { serde_json::from_str(&bench.run(arguments).out).unwrap() };
    let two = read(&["rehearse", "a.dye", "--format", "json"]);
    let six = read(&["rehearse", "a.dye", "--format", "json", "--pieces", "6"]);
    let zone = |value: &Value| step(&value[0], "soak")["goods"][0]["zones"][0].clone();
    assert!((best(&zone(&six)["alkali_g"]) / best(&zone(&two)["alkali_g"]) - 3.0).abs() < 1e-6);
    // A larger bath cools more slowly, by a degree or so: the same liquor, not quite as warm.
    let warmer = best(&zone(&six)["temperature_c"]) - best(&zone(&two)["temperature_c"]);
    assert!((0.0..2.0).contains(&warmer), "{warmer}");
    assert!((best(&zone(&six)["ph"]) - best(&zone(&two)["ph"])).abs() < 0.03);
}
