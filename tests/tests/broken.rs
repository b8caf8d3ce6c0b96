//! The broken recipes: each mistake gives the finding its comment names, and nothing else is found.

mod support;

use support::{Folder, brief, collection, folder, read};

/// The findings the comments of a file name: line and rule.
fn expected(text: &str) -> Vec<(usize, String)> {
    let mut found = Vec::new();
    for (index, line) in text.lines().enumerate() {
        if let Some((_, names)) = line.split_once("# finding:") {
            found.extend(names.split(',').map(|name| (index + 1, name.trim().to_owned())));
        }
    }
    found.sort();
    found
}

#[test]
fn every_mistake_is_found_and_nothing_else() {
    let mut wrong = Vec::new();
    for (name, text) in collection("broken") {
        let wanted = expected(&text);
        assert!(!wanted.is_empty(), "{name} names no finding");
        let read = read(&text, &name, &Folder(folder("broken")));
        let told = read.told();
        let mut got: Vec<(usize, String)> = told.iter().map(|(line, rule, _)| (*line, (*rule).to_owned())).collect();
        got.sort();
        got.dedup();
        for missing in wanted.iter().filter(|each| !got.contains(each)) {
            wrong.push(format!("{name}: missing line {} {}", missing.0, missing.1));
        }
        for (line, rule, finding) in &told {
            if !wanted.contains(&(*line, (*rule).to_owned())) {
                wrong.push(format!("{name}: unexpected {}", brief(*line, finding)));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}
