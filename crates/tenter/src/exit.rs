//! How the command ends.

use std::process::ExitCode;

/// What the exit status tells a script.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Outcome {
    /// 0: nothing at error level, nothing to change.
    Clean,
    /// 1: findings at error level, files to format, totals with gaps.
    Findings,
    /// 2: something could not be run: bad arguments, a file that cannot be read, a name nobody knows.
    Failed,
}

impl From<Outcome> for ExitCode {
    fn from(outcome: Outcome) -> Self {
        match outcome {
            Outcome::Clean => Self::SUCCESS,
            Outcome::Findings => Self::from(1),
            Outcome::Failed => Self::from(2),
        }
    }
}
