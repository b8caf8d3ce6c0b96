//! Builds the indexes of names and ids, and makes sure that a name means one thing only.

use crate::fold::Folded;
use crate::load::LoadError;
use crate::names::{Entry, Kind, Name};
use crate::reference::Reference;

pub(crate) fn index(reference: &mut Reference) -> Result<(), LoadError> {
    let mut names = Vec::new();
    let mut ids = Vec::new();
    let mut place = [0_usize; 4];
    for entry in reference.entries() {
        let kind = entry.kind();
        let Some(next) = place.get_mut(kind as usize) else {
            continue;
        };
        let index = *next;
        *next += 1;
        let id = entry.id().to_owned();
        ids.push(Name { key: id.clone(), written: id, kind, index, primary: true });
        names.extend(names_of(entry, kind, index)?);
    }
    for (list, what) in [(&mut names, "name"), (&mut ids, "id")] {
        list.sort_by(|a: &Name, b: &Name| a.key.cmp(&b.key));
        let mut pairs = list.iter().zip(list.iter().skip(1));
        if let Some((first, second)) = pairs.find(|(a, b)| a.key == b.key) {
            return Err(clash(reference, what, first, second));
        }
    }
    reference.longest_name_words = names.iter().map(|name| name.key.split(' ').count()).max().unwrap_or(0);
    reference.names = names;
    reference.ids = ids;
    Ok(())
}

/// Cites both sides of a name that two entries claim.
fn clash(reference: &Reference, what: &str, first: &Name, second: &Name) -> LoadError {
    let owner = |name: &Name| reference.entry_of(name).map_or("", Entry::id).to_owned();
    let message = format!(
        "the {what} {:?} is also the {what} {:?} of {:?} in {}",
        second.written,
        first.written,
        owner(first),
        file_of(first.kind)
    );
    LoadError { file: file_of(second.kind), entry: Some(owner(second)), message }
}

/// The names of one entry. Two spellings that fold alike are one name; an empty key is an error.
fn names_of(entry: Entry<'_>, kind: Kind, index: usize) -> Result<Vec<Name>, LoadError> {
    let mut names: Vec<Name> = Vec::new();
    let all = std::iter::once(entry.name()).chain(entry.synonyms().iter().map(String::as_str));
    for written in all {
        let key = Folded::new(written).key().to_owned();
        if key.is_empty() {
            let message = format!("the name {written:?} is empty or too long");
            let entry = Some(entry.id().to_owned());
            return Err(LoadError { file: file_of(kind), entry, message });
        }
        if !names.iter().any(|name| name.key == key) {
            let primary = names.is_empty();
            names.push(Name { key, written: written.to_owned(), kind, index, primary });
        }
    }
    Ok(names)
}

const fn file_of(kind: Kind) -> &'static str {
    match kind {
        Kind::Material => "materials.toml",
        Kind::Dye => "dyes.toml",
        Kind::Fibre => "fibres.toml",
        Kind::Class => "dye_classes.toml",
    }
}
