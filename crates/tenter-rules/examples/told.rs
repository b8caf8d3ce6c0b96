//! What is told of some files, a line a finding; `-v` adds notes and help. For looking at rules while working on them.
#![allow(clippy::print_stdout)]

use std::path::Path;
use std::sync::Arc;

use tenter_resolve::Library;
use tenter_rules::{Scale, Told, check_document};
use tenter_syntax::{Document, Encoding, LineIndex};

struct Beside<'a>(&'a Path);

impl Library for Beside<'_> {
    #[allow(clippy::disallowed_methods)]
    fn document(&self, path: &str) -> Option<Arc<Document>> {
        std::fs::read_to_string(self.0.join(path)).ok().map(|text| Arc::new(Document::parse(&text)))
    }
}

#[allow(clippy::disallowed_methods)]
fn main() {
    let (options, files): (Vec<String>, Vec<String>) = std::env::args().skip(1).partition(|each| each.starts_with('-'));
    for file in files {
        let Ok(text) = std::fs::read_to_string(&file) else {
            println!("{file}: cannot be read");
            continue;
        };
        let folder = Path::new(&file).parent().unwrap_or(Path::new("."));
        let document = Document::parse(&text);
        let checked = check_document(&document, "told.dye", &Beside(folder), Scale::AsWritten);
        let lines = LineIndex::new(&text);
        for Told { sheet, finding, .. } in &checked.findings {
            let line = |place: tenter_rules::Place| {
                let entry = checked.sheets.get(*sheet)?.blocks.get(place.block as usize)?;
                let start = document.blocks.get(entry.position).filter(|_| entry.file.is_none())?.start;
                Some(lines.position(&text, start + place.start as usize, Encoding::Utf8).line + 1)
            };
            let shown = |place| line(place).map_or_else(|| "elsewhere".to_owned(), |line| line.to_string());
            let accepted = if finding.accepted.is_some() { " (accepted)" } else { "" };
            let (at, level) = (shown(finding.place), finding.level.word());
            println!("{file}:{at}: {level}{accepted}: {}: {}", finding.rule, finding.message);
            if options.iter().any(|each| each == "-v") {
                for note in &finding.notes {
                    println!("    {}: {}", shown(note.place), note.text);
                }
                println!("    {}", finding.help);
                for fix in &finding.fixes {
                    println!("    {}: {}", if fix.safe { "fix" } else { "suggestion" }, fix.title);
                }
            }
        }
    }
}
