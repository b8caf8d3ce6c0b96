//! Checks that span crates.
