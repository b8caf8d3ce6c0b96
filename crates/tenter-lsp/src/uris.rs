//! Addresses of documents, and paths inside a collection. Addresses are kept as the client wrote them.

use std::path::{Component, Path, PathBuf};

use tower_lsp::lsp_types::Url;

/// The path of a `file:` address, dots resolved as text; the disk is never asked.
pub(crate) fn to_path(uri: &Url) -> Option<PathBuf> {
    if uri.scheme() != "file" {
        return None;
    }
    uri.to_file_path().ok().map(|path| plain(&path))
}

fn plain(path: &Path) -> PathBuf {
    let mut out = PathBuf::new();
    for part in path.components() {
        match part {
            Component::CurDir => {}
            Component::ParentDir => {
                out.pop();
            }
            other => out.push(other),
        }
    }
    out
}

/// A path below a folder as a path inside the collection, with `/`.
pub(crate) fn inside(folder: &Path, path: &Path) -> Option<String> {
    let below = path.strip_prefix(folder).ok()?;
    let parts: Vec<String> = below.components().map(|part| part.as_os_str().to_string_lossy().into_owned()).collect();
    (!parts.is_empty()).then(|| parts.join("/"))
}

/// The address of a path inside a collection.
pub(crate) fn to_uri(folder: &Path, path: &str) -> Option<Url> {
    let mut whole = folder.to_path_buf();
    whole.extend(path.split('/'));
    Url::from_file_path(whole).ok()
}
