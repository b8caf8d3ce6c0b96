//! Giving a name another spelling, wherever it stands in the collection.

use std::fmt;

use tenter_reference::Reference;
use tenter_syntax::{Connector, fold_name, lookup_kind, verbs};

use crate::names::SymbolKind;
use crate::navigation::{Target, everywhere, name_at};
use crate::text::{Edit, Location, Range};
use crate::workspace::Snapshot;

/// Why a name cannot be changed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refusal {
    /// No name stands there.
    NoName,
    /// The name belongs to the reference data.
    Reference(String),
    /// The new name is empty or holds what no name can.
    Unfit(&'static str),
    /// Something else is called so.
    Taken(String),
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoName => f.write_str("no name stands here"),
            Self::Reference(name) => write!(
                f,
                "`{name}` is a name of the reference data; declare a `chemical` or `dye` of your own to give it another name"
            ),
            Self::Unfit(why) => f.write_str(why),
            Self::Taken(name) => write!(f, "something here is called `{name}` already"),
        }
    }
}

impl std::error::Error for Refusal {}

/// The name at an offset, when it can be changed: where it stands, and the name as declared.
pub fn prepare(snapshot: &Snapshot, path: &str, offset: usize) -> Result<(Range, String), Refusal> {
    let analysis = snapshot.analyse(path).ok_or(Refusal::NoName)?;
    let found = name_at(&analysis, offset).ok_or(Refusal::NoName)?;
    if found.declared.is_none() {
        return Err(Refusal::Reference(found.symbol.name.clone()));
    }
    let here = analysis.locate_here(found.view.sheet, found.occurrence.place).ok_or(Refusal::NoName)?;
    Ok((here, found.symbol.name.clone()))
}

/// The edits that give the name at an offset another spelling.
pub fn rename(snapshot: &Snapshot, path: &str, offset: usize, new_name: &str) -> Result<Vec<Edit>, Refusal> {
    let analysis = snapshot.analyse(path).ok_or(Refusal::NoName)?;
    let found = name_at(&analysis, offset).ok_or(Refusal::NoName)?;
    if found.declared.is_none() {
        return Err(Refusal::Reference(found.symbol.name.clone()));
    }
    let new_name = new_name.trim();
    fit(new_name)?;
    let key = fold_name(new_name);
    let alone = matches!(found.symbol.kind, SymbolKind::Recipe | SymbolKind::Variant);
    let names = found.view.names();
    let taken = names.symbols.iter().any(|symbol| {
        let other = symbol.declared.is_some() && symbol.declared != found.symbol.declared;
        // A zone may share a name with a zone of another layout, never with other things.
        let apart = matches!(symbol.kind, SymbolKind::Recipe | SymbolKind::Variant)
            || (symbol.kind == SymbolKind::Zone && found.symbol.kind == SymbolKind::Zone);
        other && !apart && symbol.key == key
    });
    if taken && !alone {
        return Err(Refusal::Taken(new_name.to_owned()));
    }
    let old_key = found.symbol.key.clone();
    let mut edits = Vec::new();
    everywhere(snapshot, &analysis, &Target::of(&found), &mut |location, _| {
        let text = written(snapshot, &location);
        edits.push(Edit { new_text: spelled(&old_key, &fold_name(&text), new_name), at: location });
    });
    edits.sort();
    edits.dedup();
    Ok(edits)
}

fn written(snapshot: &Snapshot, location: &Location) -> String {
    snapshot.file_once(&location.path).map(|file| file.slice(location.range()).to_owned()).unwrap_or_default()
}

/// `tee` for one of the `tees` stays one: `shirt` of the `shirts`.
fn spelled(declared: &str, written: &str, new_name: &str) -> String {
    let one_of = declared.strip_suffix('s') == Some(written);
    match new_name.strip_suffix('s') {
        Some(singular) if one_of => singular.to_owned(),
        _ => new_name.to_owned(),
    }
}

fn fit(name: &str) -> Result<(), Refusal> {
    if name.is_empty() {
        return Err(Refusal::Unfit("a name needs a word"));
    }
    if name.contains(['\n', '\r', '"', '#', ',', '(', ')']) {
        return Err(Refusal::Unfit("a name stands on one line, without quotes, commas, brackets or `#`"));
    }
    let words: Vec<&str> = name.split_whitespace().collect();
    if words.iter().any(|word| Connector::from_word(word).is_some()) {
        return Err(Refusal::Unfit("a connecting word (`in`, `with`, `on` …) inside a name would be read as one"));
    }
    if words.first().is_some_and(|word| word.starts_with(|c: char| c.is_ascii_digit())) {
        return Err(Refusal::Unfit("a name does not begin with a number"));
    }
    if words.len() == 1 && (lookup_kind(name).is_some() || verbs().any(|verb| verb.name == fold_name(name))) {
        return Err(Refusal::Unfit("that word already has a meaning of its own"));
    }
    let known = Reference::bundled().find(name);
    if let Some(entry) = known.filter(|_| words.len() == 1 && tenter_quantity::lookup_unit(&words, None).is_some()) {
        return Err(Refusal::Taken(entry.name().to_owned()));
    }
    Ok(())
}

/// The places of this file that change together while a name is typed: the declaration and its uses, when all are
/// spelled alike.
pub fn linked(snapshot: &Snapshot, path: &str, offset: usize) -> Vec<Range> {
    let Ok((_, name)) = prepare(snapshot, path, offset) else { return Vec::new() };
    let ranges = crate::navigation::highlights(snapshot, path, offset);
    let Some(file) = snapshot.file(path) else { return Vec::new() };
    let alike: Vec<Range> =
        ranges.into_iter().map(|(range, _)| range).filter(|range| file.slice(range.clone()) == name).collect();
    let here = alike.iter().any(|range| range.start <= offset && offset <= range.end);
    if here && alike.len() > 1 { alike } else { Vec::new() }
}
