//! The two streams, and whether they may be coloured. Results go to standard output, summaries and troubles to
//! standard error.

#![allow(clippy::disallowed_methods, reason = "the command reads its environment here and nowhere else")]

use std::io::{BufWriter, ErrorKind, IsTerminal, Write};

use crate::exit::Outcome;
use crate::text::json::json;
use crate::text::safe::{safe, safe_lines};

/// Where the command writes.
pub struct Output {
    out: BufWriter<std::io::Stdout>,
    /// The reader went away or the disk is full.
    failed: Option<std::io::Error>,
    /// Whether results may carry colour.
    pub coloured: bool,
}

pub use tenter_account::text::WIDTH;

impl Output {
    /// The process's own streams. Colour only on a terminal and without `NO_COLOR`.
    pub fn standard() -> Self {
        let plain = std::env::var_os("NO_COLOR").is_some_and(|value| !value.is_empty())
            || std::env::var_os("TERM").is_some_and(|value| value == "dumb");
        let stdout = std::io::stdout();
        let coloured = stdout.is_terminal() && !plain;
        Self { out: BufWriter::new(stdout), failed: None, coloured }
    }

    /// Writes text that is already safe to show: made up by us from parts that went through [`safe`].
    pub fn raw(&mut self, text: &str) {
        if self.failed.is_none()
            && let Err(error) = self.out.write_all(text.as_bytes())
        {
            self.failed = Some(error);
        }
    }

    /// Writes lines in which anything that could steer a terminal is made visible.
    pub fn print(&mut self, text: &str) {
        let shown = safe_lines(text);
        self.raw(&shown);
    }

    /// Writes JSON.
    pub fn json(&mut self, value: &impl serde::Serialize) {
        match json(value) {
            Ok(text) => self.raw(&text),
            Err(error) => self.failed = Some(std::io::Error::other(error)),
        }
    }

    /// Writes lines to standard error.
    pub fn tell(&mut self, text: &str) {
        // A summary nobody can read is no reason to fail.
        let _ = writeln!(std::io::stderr(), "{}", safe_lines(text));
    }

    /// Says what could not be done, and where.
    pub fn trouble(&mut self, file: &str, what: &str) {
        let text = format!("{}: {}", safe(file), safe_lines(what));
        let _ = writeln!(std::io::stderr(), "{text}");
    }

    /// Ends: the last bytes go out; results that could not be written are a failure, unless the reader just left.
    pub fn finish(mut self, outcome: Outcome) -> Outcome {
        let result = match self.failed.take() {
            Some(error) => Err(error),
            None => self.out.flush(),
        };
        match result {
            Err(error) if error.kind() != ErrorKind::BrokenPipe => {
                self.tell(&format!("the results could not be written: {error}"));
                Outcome::Failed
            }
            _ => outcome,
        }
    }
}
