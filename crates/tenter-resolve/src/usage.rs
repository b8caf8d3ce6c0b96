//! `use soda soak, rings from "house.dye"`: names taken from another file of the same collection.
//!
//! Nothing is read here: the caller's [`Library`] hands over documents it has, by a path inside the
//! collection, and a path that would leave the collection never reaches it.

use std::sync::Arc;

use tenter_quantity::Place;
use tenter_syntax::fold_name;
use tenter_syntax::{BlockKind, Document, Span};

use crate::problem::{Problem, ProblemKind};
use crate::sheet::{Sheet, SheetBlock};

/// Other files of the collection.
pub trait Library {
    /// The document at a path inside the collection (`house/soaks.dye`, with `/`), if there is one.
    fn document(&self, path: &str) -> Option<Arc<Document>>;
}

/// A collection of one file.
#[derive(Clone, Copy, Debug, Default)]
pub struct NoLibrary;

impl Library for NoLibrary {
    fn document(&self, _path: &str) -> Option<Arc<Document>> {
        None
    }
}

/// Shared files may use shared files, to this depth.
const DEEPEST: usize = 8;

/// What a `use` line asks for.
#[derive(Clone, Debug, PartialEq)]
pub struct Use<'a> {
    /// Names wanted, each with its span in the block; empty for `everything`.
    pub names: Vec<(&'a str, Span)>,
    /// The path between the quotes, with its span.
    pub path: (&'a str, Span),
}

/// Reads the header phrase of a `use` block: `NAMES from "PATH"`.
pub fn read_use(phrase: &str, offset: u32) -> Result<Use<'_>, &'static str> {
    let open = phrase.find('"').ok_or("the file's name must stand between double quotes")?;
    let close =
        phrase[open + 1..].find('"').map(|at| open + 1 + at).ok_or("the file's name lacks its closing quote")?;
    let before = phrase[..open].trim_end();
    let names = before
        .strip_suffix("from")
        .filter(|rest| rest.ends_with(char::is_whitespace) || rest.is_empty())
        .ok_or("write the names, then `from`, then the file: use soda soak from \"house.dye\"")?;
    let mut wanted = Vec::new();
    let mut at = 0;
    for part in names.split(',') {
        let trimmed = part.trim();
        let start = at + (part.len() - part.trim_start().len());
        at += part.len() + 1;
        if !trimmed.is_empty() {
            wanted.push((trimmed, Span::new(offset + start as u32, offset + (start + trimmed.len()) as u32)));
        }
    }
    if wanted.is_empty() {
        return Err("no name is asked for: name what is wanted, or write `everything`");
    }
    if wanted.len() == 1 && fold_name(wanted[0].0) == "everything" {
        wanted.clear();
    }
    let path = &phrase[open + 1..close];
    Ok(Use { names: wanted, path: (path, Span::new(offset + open as u32, offset + close as u32 + 1)) })
}

/// Resolves a path written in `from` against the folder of the file it stands in, inside the collection.
pub fn inside_collection(from: &str, written: &str) -> Result<String, &'static str> {
    if written.is_empty() {
        return Err("the file's name is empty");
    }
    let drive = written.as_bytes().get(1) == Some(&b':');
    if written.starts_with('/') || written.starts_with('~') || written.contains('\\') || drive {
        return Err("only a path inside the collection may stand here, with `/` between folders");
    }
    let mut parts: Vec<&str> = from.split('/').collect();
    parts.pop();
    for part in written.split('/') {
        match part {
            "" | "." => {}
            ".." => {
                if parts.pop().is_none() {
                    return Err("the path leads out of the collection");
                }
            }
            name => parts.push(name),
        }
    }
    Ok(parts.join("/"))
}

/// Puts a block on the sheet; a `use` block also brings what it asks for.
pub(crate) fn follow(entry: &SheetBlock, index: usize, path: &str, library: &dyn Library, sheet: &mut Sheet) {
    sheet.blocks.push(entry.clone());
    if entry.block.kind != BlockKind::Use {
        return;
    }
    let mut seen = vec![path.to_owned()];
    let mut taken = Vec::new();
    let blocks = take(&entry.block, index as u32, path, library, &mut seen, 0, &mut sheet.problems);
    for block in blocks {
        // The same definition may arrive by two ways; once is enough.
        let key = (block.file.clone(), block.position);
        if !taken.contains(&key)
            && !sheet
                .blocks
                .iter()
                .any(|have| have.file == block.file && have.position == block.position && have.file.is_some())
        {
            taken.push(key);
            sheet.blocks.push(block);
        }
    }
}

fn take(
    block: &tenter_syntax::Block,
    index: u32,
    path: &str,
    library: &dyn Library,
    seen: &mut Vec<String>,
    depth: usize,
    problems: &mut Vec<Problem>,
) -> Vec<SheetBlock> {
    let broken = |problems: &mut Vec<Problem>, span: Span, why: String| {
        // Only the line in the file being read is complained about; a shared file is checked by itself.
        if depth == 0 {
            problems.push(Problem {
                place: Place { block: index, start: span.start, end: span.end },
                kind: ProblemKind::BrokenUse { why: why.into() },
            });
        }
    };
    let request = match read_use(block.slice(block.name), block.name.start) {
        Ok(request) => request,
        Err(why) => {
            broken(problems, block.name, why.to_owned());
            return Vec::new();
        }
    };
    let target = match inside_collection(path, request.path.0) {
        Ok(target) => target,
        Err(why) => {
            broken(problems, request.path.1, why.to_owned());
            return Vec::new();
        }
    };
    if seen.contains(&target) {
        broken(problems, request.path.1, format!("{target} uses this file in its turn"));
        return Vec::new();
    }
    let Some(document) = library.document(&target) else {
        broken(problems, request.path.1, format!("there is no file {target} in this collection"));
        return Vec::new();
    };
    seen.push(target.clone());
    let file: Arc<str> = target.as_str().into();
    let mut brought = Vec::new();
    let mut found = vec![false; request.names.len()];
    for (position, placed) in document.blocks.iter().enumerate() {
        let kind = placed.block.kind;
        if kind == BlockKind::Use && depth < DEEPEST {
            brought.extend(take(&placed.block, 0, &target, library, seen, depth + 1, problems));
            continue;
        }
        if !matches!(
            kind,
            BlockKind::Goods
                | BlockKind::Dye
                | BlockKind::Chemical
                | BlockKind::Mix
                | BlockKind::Layout
                | BlockKind::Vessel
                | BlockKind::Shelf
        ) {
            continue;
        }
        let name = fold_name(placed.block.slice(placed.block.name));
        let wanted = request.names.iter().position(|(wanted, _)| fold_name(wanted) == name);
        if let Some(at) = wanted {
            found[at] = true;
        }
        // What a wanted mix is made of must come along: dyes, chemicals and mixes of that file are taken with it.
        let needed = matches!(kind, BlockKind::Dye | BlockKind::Chemical | BlockKind::Mix | BlockKind::Shelf);
        if request.names.is_empty() || wanted.is_some() || needed {
            brought.push(SheetBlock {
                file: Some(Arc::clone(&file)),
                position,
                block: Arc::clone(&placed.block),
                shared: true,
            });
        }
    }
    for ((name, span), found) in request.names.iter().zip(found) {
        if found {
            continue;
        }
        let group = document.blocks.iter().any(|placed| {
            placed.block.kind == BlockKind::Steps
                && fold_name(placed.block.slice(placed.block.name)) == fold_name(name.trim_start_matches("steps "))
        });
        let why = if group {
            format!("{name} is a group of steps, and those stay in the recipe whose cloth they are done to")
        } else {
            format!("{target} holds nothing named {name}")
        };
        broken(problems, *span, why);
    }
    brought
}
