//! A collection of 10,000 recipes checked by the real program, started afresh each time so that nothing is cached,
//! beside the grammar alone over the same texts on one core. What counts is the ratio of the two.

#![allow(missing_docs, clippy::disallowed_methods, clippy::unwrap_used)]

use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use divan::Bencher;
use tempfile::TempDir;
use tenter_syntax::{Document, pest_only};

const FILES: usize = 10_000;

fn main() {
    divan::main();
}

fn bundled() -> Vec<String> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/recipes");
    let mut paths: Vec<PathBuf> = std::fs::read_dir(folder)
        .unwrap()
        .flatten()
        .map(|entry| entry.path())
        .filter(|path| path.extension().is_some_and(|e| e == "dye"))
        .collect();
    paths.sort();
    paths
        .iter()
        .map(|path| std::fs::read_to_string(path).unwrap())
        // What uses another file would need that file beside every copy.
        .filter(|text| !text.contains("\nuse "))
        .collect()
}

fn collection() -> TempDir {
    let folder = tempfile::tempdir().unwrap();
    let texts = bundled();
    for number in 0..FILES {
        let shelf = folder.path().join(format!("{:02}", number % 100));
        std::fs::create_dir_all(&shelf).unwrap();
        std::fs::write(shelf.join(format!("recipe-{number}.dye")), &texts[number % texts.len()]).unwrap();
    }
    folder
}

#[divan::bench(sample_count = 3, sample_size = 1)]
fn a_grammar_alone_on_one_core(bencher: Bencher<'_, '_>) {
    let texts = bundled();
    let bodies: Vec<Vec<String>> = texts
        .iter()
        .map(|text| {
            let document = Document::parse(text);
            document
                .blocks
                .iter()
                .map(|placed| placed.block.text.split_once('\n').map_or("", |(_, body)| body).to_owned())
                .collect()
        })
        .collect();
    bencher.bench(|| {
        (0..FILES).flat_map(|number| &bodies[number % bodies.len()]).map(|body| pest_only(body)).sum::<usize>()
    });
}

#[divan::bench(sample_count = 3, sample_size = 1)]
fn b_check_by_the_program(bencher: Bencher<'_, '_>) {
    let folder = collection();
    bencher.bench(|| {
        Command::new(env!("CARGO_BIN_EXE_tenter"))
            .args(["check", "--format", "json", "--level", "error", "."])
            .current_dir(folder.path())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .status()
            .unwrap()
    });
}
