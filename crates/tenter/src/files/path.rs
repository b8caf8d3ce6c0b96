//! Paths as they are shown: relative to where the command was started if they lie below it, with `/` everywhere.

#![allow(clippy::disallowed_methods, reason = "the command knows where it was started")]

use std::path::{Component, Path, PathBuf};

/// The path to show. Bytes that are no text show as `�`.
pub fn shown(path: &Path) -> String {
    let here = std::env::current_dir().ok();
    let relative = here.as_deref().and_then(|here| path.strip_prefix(here).ok()).unwrap_or(path);
    slashed(relative)
}

/// A path with `/` between its parts, `.` left out.
pub fn slashed(path: &Path) -> String {
    let mut text = String::new();
    for part in path.components() {
        let word = match part {
            Component::CurDir => continue,
            Component::RootDir => {
                text.push('/');
                continue;
            }
            Component::Prefix(prefix) => prefix.as_os_str().to_string_lossy(),
            Component::ParentDir => "..".into(),
            Component::Normal(name) => name.to_string_lossy(),
        };
        if !text.is_empty() && !text.ends_with('/') {
            text.push('/');
        }
        text.push_str(&word);
    }
    if text.is_empty() { ".".to_owned() } else { text }
}

/// An absolute path without touching the disk, for a file that need not be there.
pub fn absolute(path: &Path) -> PathBuf {
    std::path::absolute(path).unwrap_or_else(|_| path.to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn dots_go_and_parents_stay() {
        assert_eq!(slashed(Path::new("./a/./b.dye")), "a/b.dye");
        assert_eq!(slashed(Path::new("../a.dye")), "../a.dye");
        assert_eq!(slashed(Path::new("/a/b")), "/a/b");
        assert_eq!(slashed(Path::new(".")), ".");
    }
}
