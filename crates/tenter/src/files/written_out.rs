//! Files that git wrote out to be compared: they lie in a folder for temporary files, away from their neighbours.

#![allow(clippy::disallowed_methods, reason = "the command knows where it was started")]

use std::path::{Path, PathBuf};

use crate::files::path::absolute;
use crate::files::walk::find;

/// Characters git puts before a name to make it its own.
const OWN: usize = 6;

/// Where the file belongs, for what it uses from others: itself when it lies where the command was started or below;
/// else the only file of its name there, as git starts a command at the top of the working tree and says nothing else.
pub fn home(path: &Path) -> PathBuf {
    let path = absolute(path);
    let Ok(here) = std::env::current_dir() else { return path };
    if path.starts_with(&here) {
        return path;
    }
    let Some(name) = path.file_name().and_then(|name| name.to_str()) else { return path };
    let found = find(std::slice::from_ref(&here)).files;
    let named = |wanted: &str| -> Vec<&PathBuf> {
        let same = |path: &&PathBuf| path.file_name().is_some_and(|name| name.to_str() == Some(wanted));
        found.iter().map(|(_, path)| path).filter(same).collect()
    };
    // Git writes a folder of its own with `name.dye` in it; it used to write `a1b2c3_name.dye`.
    let bare = name.split_once('_').filter(|(own, _)| own.chars().count() == OWN).map(|(_, bare)| bare);
    for wanted in [Some(name), bare].into_iter().flatten() {
        match named(wanted)[..] {
            [] => {}
            [only] => return absolute(only),
            _ => break,
        }
    }
    path
}
