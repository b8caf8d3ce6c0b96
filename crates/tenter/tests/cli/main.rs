//! The command as a dyer or a script meets it: the real program, its streams and its exit status.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

mod bath;
mod bench;
mod collection;
mod config;
mod diff;
mod exit_status;
mod explain;
mod fix;
mod formatting;
mod hostile;
mod json;
mod lsp;
mod materials;
mod readme;
mod rehearse;
mod reports;
mod sarif;
mod shells;
mod totals;
