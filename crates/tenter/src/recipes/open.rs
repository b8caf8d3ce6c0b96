//! Opens the file of a command that shows recipes.

use std::path::Path;

use tenter_resolve::{Scale, Sheet};

use crate::arguments::Chosen;
use crate::exit::Outcome;
use crate::files::collection::Collections;
use crate::files::path::{absolute, shown};
use crate::files::source::SourceFile;
use crate::output::Output;
use crate::recipes::pick::{Picked, pick};

/// A file and its sheets.
pub struct Opened {
    /// The name to show.
    pub name: String,
    /// The file.
    pub file: SourceFile,
    /// Its sheets.
    pub sheets: Vec<Sheet>,
}

/// Reads a file, or standard input under a file's name; what goes wrong is said.
pub fn open(file: &Path, stdin_filename: Option<&Path>, output: &mut Output) -> Option<Opened> {
    let stdin = stdin_filename.is_some() || file.as_os_str() == "-";
    let path = stdin_filename.unwrap_or(file);
    let name = if path.as_os_str() == "-" { "<stdin>".to_owned() } else { shown(path) };
    let read = if stdin { SourceFile::standard_input(name.clone()) } else { SourceFile::read(path, name.clone()) };
    let file = match read {
        Ok(file) => file,
        Err(error) => {
            output.trouble(&name, &error.to_string());
            return None;
        }
    };
    if let Some(trouble) = file.encoding_trouble() {
        output.trouble(&name, &trouble);
    }
    let (collection, inside) = Collections::new(&[]).of(&absolute(path));
    let sheets = tenter_resolve::sheets(&file.document, &inside, &*collection);
    Some(Opened { name, file, sheets })
}

/// How the recipes are to be scaled; a number that makes no sense is said.
pub fn scale(wanted: &Chosen, output: &mut Output) -> Option<Scale> {
    scale_to(wanted.pieces, output)
}

/// Scaled to so many pieces, or as written; a number that makes no sense is said.
pub fn scale_to(pieces: Option<f64>, output: &mut Output) -> Option<Scale> {
    match pieces {
        None => Some(Scale::AsWritten),
        Some(pieces) if pieces.is_finite() && pieces > 0.0 && pieces <= 1e6 => Some(Scale::Pieces(pieces)),
        Some(pieces) => {
            output.tell(&format!("--pieces {pieces}: give a number above zero and not above a million"));
            None
        }
    }
}

impl Opened {
    /// The recipes and variants wanted; a name that nothing bears is said.
    pub fn picked(&self, wanted: Option<&str>, scale: Scale, output: &mut Output) -> Option<Vec<Picked<'_>>> {
        let all = pick(&self.sheets, scale);
        if scale != Scale::AsWritten
            && let Some(what) = all.iter().find_map(Picked::broken_lots)
        {
            output.trouble(&self.name, &what);
            return None;
        }
        let Some(recipe) = wanted else {
            if all.is_empty() {
                output.trouble(&self.name, "there is no recipe in this file, only definitions for others");
            }
            return self.whole_lots(all, scale, output);
        };
        let known: Vec<String> = all.iter().map(Picked::title).collect();
        let chosen: Vec<Picked<'_>> = all.into_iter().filter(|entry| entry.is(recipe)).collect();
        if chosen.is_empty() {
            let names = if known.is_empty() { "there is none".to_owned() } else { known.join(", ") };
            output.trouble(&self.name, &format!("no recipe or variant is named {recipe}; known: {names}"));
            return None;
        }
        self.whole_lots(chosen, scale, output)
    }

    /// A number of pieces that makes no whole lots is said.
    fn whole_lots<'a>(&self, picked: Vec<Picked<'a>>, scale: Scale, output: &mut Output) -> Option<Vec<Picked<'a>>> {
        if let (Scale::Pieces(_), Some(why)) = (scale, picked.iter().find_map(Picked::broken_lots)) {
            output.trouble(&self.name, &why);
            return None;
        }
        Some(picked)
    }
}

/// Says when what could not be read leaves gaps in what was shown.
pub fn gaps(picked: &[Picked<'_>], name: &str, what: &str, output: &mut Output) -> Outcome {
    let errors = picked.iter().map(Picked::errors).max().unwrap_or(0);
    if errors == 0 {
        return Outcome::Clean;
    }
    let (things, leave) = if errors == 1 { ("thing", "leaves") } else { ("things", "leave") };
    output.tell(&format!(
        "{errors} {things} in this recipe could not be read and {leave} {what} open: tenter check {name}"
    ));
    Outcome::Findings
}
