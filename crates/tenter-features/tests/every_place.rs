//! No feature ends badly at any place of any file, whole or cut off anywhere.

#![allow(clippy::unwrap_used, reason = "a test that finds nothing has failed")]

use std::path::Path;

use tenter_features::actions::actions;
use tenter_features::{
    Workspace, calls, colours, completion, folding, formatting, hints, hover, lenses, links, navigation, rename,
    selection, signature, symbols, tokens,
};

#[allow(clippy::disallowed_methods, reason = "a test reads its fixtures")]
fn texts() -> Vec<String> {
    let mut found = Vec::new();
    for name in ["recipes", "broken"] {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests").join(name);
        let mut paths: Vec<_> = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
        paths.sort();
        let dye = paths.iter().filter(|path| path.extension().is_some_and(|ending| ending == "dye"));
        found.extend(dye.map(|path| std::fs::read_to_string(path).unwrap()));
    }
    assert!(found.len() > 20);
    found
}

fn ask_everything(text: &str, step: usize) {
    let mut workspace = Workspace::new();
    let file = workspace.open("a.dye", text);
    let snapshot = workspace.snapshot();
    let analysis = snapshot.analyse("a.dye").unwrap();
    let whole = 0..text.len();
    let inside = |range: &tenter_features::Range| {
        assert!(range.start <= range.end && text.get(range.clone()).is_some(), "{range:?} in {text}");
    };
    hints::hints(&analysis, &whole, &|_| true).iter().for_each(|hint| inside(&(hint.offset..hint.offset)));
    tokens::tokens(&analysis, &whole).iter().for_each(|token| inside(&token.range));
    lenses::lenses(&analysis, &|_| true).iter().for_each(|lens| inside(&lens.range));
    symbols::document(&file).iter().for_each(|symbol| inside(&symbol.range));
    colours::colours(&file).iter().for_each(|colour| inside(&colour.range));
    links::links(&snapshot, &file).iter().for_each(|link| inside(&link.range));
    folding::folds(&file);
    formatting::document(&file).iter().for_each(|edit| inside(&edit.at.range()));
    for offset in (0..=text.len()).step_by(step) {
        let offset = file.clamp(offset);
        if let Some(found) = hover::hover(&snapshot, "a.dye", offset) {
            inside(&found.range);
        }
        for item in completion::complete(&snapshot, "a.dye", offset) {
            inside(&item.range);
            assert!(item.range.end <= offset);
        }
        signature::signature(&snapshot, "a.dye", offset);
        navigation::definition(&snapshot, "a.dye", offset);
        navigation::references(&snapshot, "a.dye", offset, true).iter().for_each(|place| inside(&place.range()));
        selection::selections(&file, offset).iter().for_each(inside);
        for action in actions(&snapshot, "a.dye", &(offset..offset), Some("2026-05-03")) {
            action.edits.iter().for_each(|edit| inside(&edit.at.range()));
        }
        if rename::prepare(&snapshot, "a.dye", offset).is_ok() {
            rename::linked(&snapshot, "a.dye", offset).iter().for_each(inside);
        }
        if let Some(party) = calls::prepare(&snapshot, "a.dye", offset) {
            calls::incoming(&snapshot, &party);
            calls::outgoing(&snapshot, &party);
        }
        formatting::range(&file, &(offset..offset));
    }
}

#[test]
fn whole_files() {
    for text in texts() {
        ask_everything(&text, 101);
        ask_everything(&text.replace('\n', "\r\n"), 503);
    }
}

#[test]
fn files_cut_off() {
    for text in texts() {
        for end in (0..text.len()).step_by(613) {
            if let Some(part) = text.get(..end) {
                ask_everything(part, part.len().max(2) / 2);
            }
        }
    }
}

#[test]
fn hostile_texts() {
    let bits = [
        "use \"",
        "use a from \"\"",
        "zone",
        "  zone %",
        "accept",
        "\u{feff}recipe é",
        "mix \"\"",
        "  60 g/ /",
        "#",
        "\u{200b}",
        "steps\n  soak tees in for",
        "goods  \n  weight each",
        "variant x\n  in",
        "  9 g/",
        "log\n  made",
    ];
    for a in bits {
        for b in bits {
            ask_everything(&format!("{a}\n{b}\n"), 1);
        }
    }
}
