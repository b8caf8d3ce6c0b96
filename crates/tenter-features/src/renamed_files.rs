//! When a file gets another place or name, the `use` lines that name it follow.

use std::sync::Arc;

use tenter_resolve::inside_collection;
use tenter_resolve::usage::read_use;
use tenter_syntax::BlockKind;

use crate::file::File;
use crate::text::Edit;
use crate::workspace::Snapshot;

/// The edits of `use` lines for files that move, given as pairs of paths inside the collection.
pub fn edits(snapshot: &Snapshot, moves: &[(String, String)]) -> Vec<Edit> {
    let moved = |path: &str| moves.iter().find(|(old, _)| old == path).map(|(_, new)| new.as_str());
    let mut edits = Vec::new();
    let touched: Vec<Arc<str>> = snapshot
        .outlines()
        .filter(|(path, outline)| {
            let uses = outline.uses.iter().any(|target| moved(target).is_some());
            uses || (moved(path).is_some() && !outline.uses.is_empty())
        })
        .map(|(path, _)| path)
        .collect();
    for path in touched {
        if let Some(file) = snapshot.file_once(&path) {
            of_file(&file, moved(&path), &moved, &mut edits);
        }
    }
    edits
}

fn of_file<'m>(file: &File, new_home: Option<&str>, moved: &dyn Fn(&str) -> Option<&'m str>, edits: &mut Vec<Edit>) {
    for (position, placed) in file.document.blocks.iter().enumerate() {
        let block = &placed.block;
        if block.kind != BlockKind::Use {
            continue;
        }
        let Ok(request) = read_use(block.slice(block.name), block.name.start) else { continue };
        let Ok(target) = inside_collection(&file.path, request.path.0) else { continue };
        let new_target = moved(&target).unwrap_or(&target);
        let home = new_home.unwrap_or(&file.path);
        let new_path = relative(home, new_target);
        if inside_collection(&file.path, &new_path) != Ok(target.clone()) || new_home.is_some() {
            let text = format!("\"{new_path}\"");
            if block.slice(request.path.1) != text {
                edits.push(Edit::new(&file.path, file.range(position, request.path.1), text));
            }
        }
    }
}

/// The path from the folder of one file to another, with `/`.
pub(crate) fn relative(from: &str, to: &str) -> String {
    let mut here: Vec<&str> = from.split('/').collect();
    here.pop();
    let there: Vec<&str> = to.split('/').collect();
    let same = here.iter().zip(&there).take_while(|(a, b)| a == b).count().min(there.len().saturating_sub(1));
    let mut parts = vec![".."; here.len() - same];
    parts.extend(there.iter().skip(same));
    parts.join("/")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn paths_lead_from_folder_to_file() {
        assert_eq!(relative("a.dye", "house.dye"), "house.dye");
        assert_eq!(relative("tees/a.dye", "house.dye"), "../house.dye");
        assert_eq!(relative("tees/a.dye", "tees/b.dye"), "b.dye");
        assert_eq!(relative("a.dye", "shared/house.dye"), "shared/house.dye");
        assert_eq!(relative("x/y/a.dye", "x/z/b.dye"), "../z/b.dye");
    }
}
