//! Fixes made in files, or shown.

use std::path::PathBuf;

use rayon::prelude::*;

use crate::check::fix::{Fixed, fixed};
use crate::check::one::Run;
use crate::exit::Outcome;
use crate::files::atomic::replace;
use crate::files::source::SourceFile;
use crate::fmt::diff;
use crate::output::Output;
use crate::text::count::counted;

/// What came of it.
pub enum Done {
    /// The changes were shown and nothing was written.
    Shown(Outcome),
    /// They were made.
    Made {
        /// What standard input has become, where that was read.
        text: Option<SourceFile>,
        /// What could not be fixed.
        troubles: Vec<(String, String)>,
    },
}

/// Fixes the files, or `given` in place of the only one. All are worked out before the first is written, for one may
/// rest on another; each is written whole or not at all.
pub fn fix_all(files: &[(String, PathBuf)], given: Option<&SourceFile>, run: Run<'_>, output: &mut Output) -> Done {
    let worked: Vec<Result<(SourceFile, Fixed), String>> = files
        .par_iter()
        .map(|(name, path)| {
            let file = match given {
                Some(given) => SourceFile::from_bytes(name.clone(), given.text.clone().into_bytes()),
                None => SourceFile::read(path, name.clone()).map_err(|error| error.to_string())?,
            };
            if let Some(trouble) = given.and_then(SourceFile::encoding_trouble) {
                return Err(format!("{trouble} Not fixed."));
            }
            let fixed = fixed(&file, path, run)?;
            Ok((file, fixed))
        })
        .collect();
    let mut troubles = Vec::new();
    let mut text = given.map(|given| given.text.clone());
    let (mut made, mut changed) = (0, 0);
    for ((name, path), worked) in files.iter().zip(worked) {
        let (file, fixed) = match worked {
            Ok(worked) => worked,
            Err(what) => {
                text = None;
                troubles.push((name.clone(), what));
                continue;
            }
        };
        if fixed.stopped {
            troubles.push((name.clone(), "the fixes never came to an end; made as far as they held".to_owned()));
        }
        if fixed.made == 0 || fixed.text == file.text {
            continue;
        }
        if run.wanted.diff {
            diff(name, &file.text, &fixed.text, output);
        } else if given.is_some() {
            text = Some(fixed.text);
        } else if let Err(error) = replace(path, &fixed.text) {
            troubles.push((name.clone(), format!("not fixed: {error}")));
            continue;
        }
        made += fixed.made;
        changed += 1;
    }
    let would = if run.wanted.diff { "to be made" } else { "made" };
    let count = counted(made, "fix", "fixes");
    output.tell(&format!("{count} {would} in {}", counted(changed, "file", "files")));
    if run.wanted.diff {
        for (name, what) in &troubles {
            output.trouble(name, what);
        }
        let found = if changed > 0 && !run.wanted.exit_zero { Outcome::Findings } else { Outcome::Clean };
        return Done::Shown(if troubles.is_empty() { found } else { Outcome::Failed });
    }
    if let (Some(text), Some(_)) = (&text, given) {
        // The text goes back where it came from, byte for byte: an editor reads it, not a person.
        output.raw(text);
    }
    let text = text.zip(files.first()).map(|(text, (name, _))| SourceFile::from_bytes(name.clone(), text.into_bytes()));
    Done::Made { text, troubles }
}
