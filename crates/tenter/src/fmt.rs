//! `tenter fmt`: recipes set out in the usual form.

use std::path::Path;
use std::time::Duration;

use similar::TextDiff;
use tenter_syntax::format;

use crate::arguments::Fmt;
use crate::exit::Outcome;
use crate::files::atomic::replace;
use crate::files::path::shown;
use crate::files::source::SourceFile;
use crate::files::walk::find;
use crate::output::Output;
use crate::text::safe::safe;

/// Runs the command.
pub fn run(wanted: &Fmt, output: &mut Output) -> Outcome {
    let dash = wanted.paths.iter().any(|path| path.as_os_str() == "-");
    if dash || wanted.stdin_filename.is_some() {
        if dash && wanted.paths.len() > 1 {
            output.tell("- reads standard input and stands alone");
            return Outcome::Failed;
        }
        return standard_input(wanted, output);
    }
    let found = find(&wanted.paths);
    let mut outcome = Outcome::Clean;
    let mut changed = 0_usize;
    for (name, what) in &found.troubles {
        output.trouble(name, what);
        outcome = Outcome::Failed;
    }
    for (name, path) in &found.files {
        match one(name, path, wanted, output) {
            Ok(true) => changed += 1,
            Ok(false) => {}
            Err(what) => {
                output.trouble(name, &what);
                outcome = Outcome::Failed;
            }
        }
    }
    let total = found.files.len();
    let looking = wanted.check || wanted.diff;
    output.tell(&match (total, looking) {
        (0, _) => "no .dye files found".to_owned(),
        (_, true) => format!("{changed} of {} would change", files(total)),
        (_, false) => format!("{changed} of {} changed", files(total)),
    });
    if looking && changed > 0 { outcome.max(Outcome::Findings) } else { outcome }
}

fn files(count: usize) -> String {
    if count == 1 { "1 file".to_owned() } else { format!("{count} files") }
}

/// Whether the file changes or would change.
fn one(name: &str, path: &Path, wanted: &Fmt, output: &mut Output) -> Result<bool, String> {
    let file = SourceFile::read(path, name.to_owned()).map_err(|error| error.to_string())?;
    if let Some(trouble) = file.encoding_trouble() {
        return Err(format!("{trouble} Left as it is."));
    }
    let tidy = format(&file.text);
    if tidy == file.text {
        return Ok(false);
    }
    if wanted.diff {
        diff(name, &file.text, &tidy, output);
    } else if wanted.check {
        output.raw(&format!("{}\n", safe(name)));
    } else {
        replace(path, &tidy).map_err(|error| error.to_string())?;
        output.raw(&format!("{}\n", safe(name)));
    }
    Ok(true)
}

fn standard_input(wanted: &Fmt, output: &mut Output) -> Outcome {
    let name = wanted.stdin_filename.as_deref().map_or_else(|| "<stdin>".to_owned(), shown);
    let file = match SourceFile::standard_input(name.clone()) {
        Ok(file) => file,
        Err(error) => {
            output.trouble(&name, &error.to_string());
            return Outcome::Failed;
        }
    };
    if let Some(trouble) = file.encoding_trouble() {
        output.trouble(&name, &trouble);
        return Outcome::Failed;
    }
    let tidy = format(&file.text);
    let same = tidy == file.text;
    if wanted.diff {
        diff(&name, &file.text, &tidy, output);
    } else if !wanted.check {
        // The text goes back where it came from, byte for byte: an editor reads it, not a person.
        output.raw(&tidy);
    }
    let looking = wanted.check || wanted.diff;
    if looking && !same { Outcome::Findings } else { Outcome::Clean }
}

/// Shows what would change in a file.
pub fn diff(name: &str, before: &str, after: &str, output: &mut Output) {
    let name = safe(name);
    // Past this time it settles for a coarser difference, which is still a true one.
    let changes = TextDiff::configure().timeout(Duration::from_secs(3)).diff_lines(before, after);
    let text = changes.unified_diff().context_radius(3).header(&format!("a/{name}"), &format!("b/{name}")).to_string();
    output.print(&text);
}
