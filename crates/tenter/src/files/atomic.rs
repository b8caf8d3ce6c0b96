//! Writing a file whole or not at all.

#![allow(clippy::disallowed_methods, clippy::disallowed_types, reason = "files are written here")]

use std::io::Write;
use std::path::Path;

/// Replaces what is in a file. Until the new text is on the disk the old one stays; the permissions are kept, and a
/// link stays a link to the file that is replaced.
///
/// # Errors
/// Whatever the disk says; the file is then as it was.
pub fn replace(path: &Path, text: &str) -> std::io::Result<()> {
    let real = path.canonicalize()?;
    let permissions = std::fs::metadata(&real)?.permissions();
    if permissions.readonly() {
        return Err(std::io::Error::new(std::io::ErrorKind::PermissionDenied, "the file is read-only"));
    }
    let folder = real.parent().unwrap_or(Path::new("."));
    let mut fresh = tempfile::Builder::new().prefix(".tenter-").tempfile_in(folder)?;
    fresh.write_all(text.as_bytes())?;
    fresh.as_file().set_permissions(permissions)?;
    fresh.as_file().sync_all()?;
    fresh.persist(&real).map_err(|error| error.error)?;
    Ok(())
}

/// Writes a file that must not exist yet.
///
/// # Errors
/// [`std::io::ErrorKind::AlreadyExists`] if it does; else whatever the disk says.
pub fn create(path: &Path, text: &str) -> std::io::Result<()> {
    let mut file = std::fs::OpenOptions::new().write(true).create_new(true).open(path)?;
    file.write_all(text.as_bytes())
}

/// Writes a file into a folder, whether either is there or not.
///
/// # Errors
/// Whatever the disk says.
pub fn put(folder: &Path, name: &str, text: &str) -> std::io::Result<()> {
    std::fs::create_dir_all(folder)?;
    let path = folder.join(name);
    if path.exists() { replace(&path, text) } else { create(&path, text) }
}
