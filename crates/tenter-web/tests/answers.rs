//! Questions as a page asks them, over the bundled collection.

#![allow(clippy::disallowed_methods, clippy::unwrap_used, reason = "tests read files, and may fail")]

use serde_json::{Value, json};
use tenter_web::Engine;

fn ask(engine: &mut Engine, question: &Value) -> Value {
    serde_json::from_str(&engine.answer(&question.to_string())).unwrap()
}

fn collection() -> Vec<(String, String)> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/recipes");
    let mut files: Vec<(String, String)> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "dye"))
        .map(|path| (path.file_name().unwrap().to_string_lossy().into_owned(), std::fs::read_to_string(&path).unwrap()))
        .collect();
    files.sort();
    assert!(files.len() > 10);
    files
}

#[test]
fn every_bundled_recipe_is_told_without_a_warning() {
    let mut engine = Engine::default();
    let files = collection();
    ask(&mut engine, &json!({ "ask": "store", "files": files }));
    for (path, text) in &files {
        let look = ask(&mut engine, &json!({ "ask": "look", "path": path, "text": text }));
        let loud = look["findings"].as_array().unwrap().iter().filter(|found| found["level"] != "advice");
        assert_eq!(loud.count(), 0, "{path}: {}", look["findings"]);
        let units: Vec<u16> = text.encode_utf16().collect();
        let mut end = 0;
        for token in look["tokens"].as_array().unwrap() {
            let (from, to) = (token[0].as_u64().unwrap() as usize, token[1].as_u64().unwrap() as usize);
            assert!(end <= from && from < to && to <= units.len(), "{path}: {token}");
            end = to;
        }
        let account = ask(&mut engine, &json!({ "ask": "account", "path": path }));
        if text.lines().any(|line| line.starts_with("steps")) {
            assert!(!account["recipes"].as_array().unwrap().is_empty(), "{path}");
        }
        for recipe in account["recipes"].as_array().unwrap() {
            assert_eq!(recipe["open"], 0);
            assert_eq!(recipe["totals"]["title"], recipe["account"]["title"]);
        }
    }
}

#[test]
fn a_slip_is_told_with_what_settles_it_and_the_fix_settles_it() {
    let mut engine = Engine::default();
    let text = "edition 1\n\nrecipe A\n\ngoods tées\n  pieces   2\n  weight   160 g each\n  fibre    100% coton\n";
    let look = ask(&mut engine, &json!({ "ask": "look", "path": "a.dye", "text": text }));
    let found = look["findings"].as_array().unwrap().iter().find(|found| found["rule"] == "unknown-name");
    let found = found.unwrap_or_else(|| panic!("{look}"));
    assert_eq!((&found["line"], &found["column"]), (&json!(8), &json!(17)));
    let change = &found["fixes"][0]["changes"][0];
    let units: Vec<u16> = text.encode_utf16().collect();
    let (from, to) = (change["from"].as_u64().unwrap() as usize, change["to"].as_u64().unwrap() as usize);
    assert_eq!(String::from_utf16(&units[from..to]).unwrap(), "coton");
    let mended = text.replace("coton", change["insert"].as_str().unwrap());
    let look = ask(&mut engine, &json!({ "ask": "look", "path": "a.dye", "text": mended }));
    assert!(look["findings"].as_array().unwrap().iter().all(|found| found["rule"] != "unknown-name"), "{look}");
}

#[test]
fn pieces_scale_what_it_comes_to() {
    let mut engine = Engine::default();
    let text = "recipe A\n\ngoods tees\n  pieces   2\n  weight   160 g each\n  fibre    100% cotton\n\nmix soak\n  \
                1 L/piece water\n  60 g/L   soda ash\n\nsteps\n  wear     gloves, goggles\n  soak     tees in soak for 20 min\n";
    ask(&mut engine, &json!({ "ask": "look", "path": "a.dye", "text": text }));
    let mut weighed = |pieces: Value| {
        let account = ask(&mut engine, &json!({ "ask": "account", "path": "a.dye", "pieces": pieces }));
        let parts = account["recipes"][0]["totals"]["parts"].as_array().unwrap().clone();
        let part = parts.into_iter().find(|part| part["heading"] == "Weigh out").unwrap();
        part["content"][0]["of"]["rows"][0]["cells"][1].clone()
    };
    assert_eq!(weighed(Value::Null), "120 g");
    assert_eq!(weighed(json!(6)), "360 g");
    let wrong = ask(&mut engine, &json!({ "ask": "account", "path": "a.dye", "pieces": -1 }));
    assert!(wrong["trouble"].is_string(), "{wrong}");
}

#[test]
fn proposals_and_words_come_in_the_pages_units() {
    let mut engine = Engine::default();
    // A character of two units and four bytes stands before what is asked for.
    let text = "recipe 👩 A\n\ngoods tees\n  fibre    100% cot\n";
    ask(&mut engine, &json!({ "ask": "look", "path": "a.dye", "text": text }));
    let at = text.encode_utf16().count() - 1;
    let proposals = ask(&mut engine, &json!({ "ask": "complete", "path": "a.dye", "at": at }));
    let cotton = proposals.as_array().unwrap().iter().find(|item| item["label"] == "cotton").unwrap().clone();
    assert_eq!((&cotton["from"], &cotton["to"]), (&json!(at - 3), &json!(at)));
    let hover = ask(&mut engine, &json!({ "ask": "hover", "path": "a.dye", "at": text.encode_utf16().count() - 15 }));
    assert!(hover["markdown"].as_str().is_some_and(|words| words.contains("fibre")), "{hover}");
}

#[test]
fn nothing_asked_brings_it_down() {
    let mut engine = Engine::default();
    for question in
        ["", "{}", "null", "{\"ask\":\"fly\"}", "{\"ask\":\"hover\",\"path\":\"no.dye\",\"at\":99}", "\u{0}"]
    {
        let answer: Value = serde_json::from_str(&engine.answer(question)).unwrap();
        assert!(answer["error"].is_string(), "{question}: {answer}");
    }
    ask(&mut engine, &json!({ "ask": "look", "path": "a.dye", "text": "steps\n  soak" }));
    for at in [0, 3, 12, 99, usize::MAX] {
        for kind in ["hover", "complete"] {
            ask(&mut engine, &json!({ "ask": kind, "path": "a.dye", "at": at }));
        }
    }
    for pieces in [f64::MAX, f64::MIN_POSITIVE, 0.0] {
        ask(&mut engine, &json!({ "ask": "account", "path": "a.dye", "pieces": pieces }));
        ask(&mut engine, &json!({ "ask": "scale", "path": "a.dye", "at": 0, "pieces": pieces }));
    }
}
