//! The findings told in the editor are those the command line tells.

#![allow(clippy::unwrap_used, reason = "a test that finds nothing has failed")]

use std::path::{Path, PathBuf};

use tenter_features::Workspace;
use tenter_resolve::Library;
use tenter_rules::{Scale, check_document};

fn folder(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests").join(name)
}

#[allow(clippy::disallowed_methods, reason = "a test reads its fixtures")]
fn texts(name: &str) -> Vec<(String, String)> {
    let mut found: Vec<(String, String)> = std::fs::read_dir(folder(name))
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "dye"))
        .map(|path| (path.file_name().unwrap().to_string_lossy().into_owned(), std::fs::read_to_string(&path).unwrap()))
        .collect();
    found.sort();
    assert!(found.len() > 10);
    found
}

#[test]
fn findings_are_those_of_the_command_line() {
    for name in ["recipes", "broken"] {
        let texts = texts(name);
        let mut workspace = Workspace::new();
        for (path, text) in &texts {
            workspace.open(path, text);
        }
        let snapshot = workspace.snapshot();
        for (path, _) in &texts {
            let analysis = snapshot.analyse(path).unwrap();
            let library: &dyn Library = &snapshot;
            let checked = check_document(&analysis.file.document, path, library, Scale::AsWritten);
            assert_eq!(format!("{:#?}", checked.findings), format!("{:#?}", analysis.findings), "{path}");
        }
    }
}

#[test]
fn a_listed_file_is_outlined_as_a_read_one() {
    for name in ["recipes", "broken"] {
        for (path, text) in texts(name) {
            let read = tenter_features::Outline::of(&tenter_syntax::Document::parse(&text), &path);
            assert_eq!(tenter_features::Outline::scan(&text, &path), read, "{path}");
        }
    }
}
