//! Writes the reference of rules, `spec/rules.md`, from their pages.
#![allow(clippy::print_stderr, clippy::disallowed_methods)]

fn main() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../spec/rules.md");
    if let Err(error) = std::fs::write(path, tenter_rules::reference_chapter()) {
        eprintln!("{path}: {error}");
    }
}
