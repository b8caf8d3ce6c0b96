//! The index of names: whole-name lookup and the longest name at the front of a list of words.

use crate::fold::Folded;
use crate::{Dye, DyeClass, Fibre, Material, Reference};

/// What a name means.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Entry<'a> {
    /// A material.
    Material(&'a Material),
    /// A dye.
    Dye(&'a Dye),
    /// A fibre.
    Fibre(&'a Fibre),
    /// A class of dye.
    Class(&'a DyeClass),
}

impl<'a> Entry<'a> {
    /// Id of the entry.
    pub fn id(self) -> &'a str {
        match self {
            Self::Material(entry) => &entry.id,
            Self::Dye(entry) => &entry.id,
            Self::Fibre(entry) => &entry.id,
            Self::Class(entry) => &entry.id,
        }
    }

    /// Name to show.
    pub fn name(self) -> &'a str {
        match self {
            Self::Material(entry) => &entry.name,
            Self::Dye(entry) => &entry.name,
            Self::Fibre(entry) => &entry.name,
            Self::Class(entry) => &entry.name,
        }
    }

    /// Other names.
    pub fn synonyms(self) -> &'a [String] {
        match self {
            Self::Material(entry) => &entry.synonyms,
            Self::Dye(entry) => &entry.synonyms,
            Self::Fibre(entry) => &entry.synonyms,
            Self::Class(entry) => &entry.synonyms,
        }
    }

    /// What kind of thing it is.
    pub const fn kind(self) -> Kind {
        match self {
            Self::Material(_) => Kind::Material,
            Self::Dye(_) => Kind::Dye,
            Self::Fibre(_) => Kind::Fibre,
            Self::Class(_) => Kind::Class,
        }
    }
}

/// Kinds of entry, to narrow a search.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Kind {
    /// Materials.
    Material,
    /// Dyes.
    Dye,
    /// Fibres.
    Fibre,
    /// Dye classes.
    Class,
}

/// A name as written in the data, its key and what it belongs to.
#[derive(Debug, Clone)]
pub(crate) struct Name {
    pub(crate) key: String,
    pub(crate) written: String,
    pub(crate) kind: Kind,
    pub(crate) index: usize,
    /// Whether it is the name to show rather than another name.
    pub(crate) primary: bool,
}

/// Words that say only how a dry material comes; a known name may carry one at its end.
const FORM_WORDS: [&str; 7] = [" powder", " powdered", " crystals", " granules", " flakes", " prills", " pearls"];

/// Keys of words that stand before a name without belonging to it, while no more has been read.
const LEADS: [&str; 8] = ["", "the", "some", "an", "a", "ci", "c", "c i"];

impl Reference {
    /// What a whole name means, however it is spelt (see [`crate::fold`]). Does not allocate.
    pub fn find(&self, name: &str) -> Option<Entry<'_>> {
        self.find_folded(&Folded::new(name))
    }

    /// As [`Reference::find`], for a name already folded.
    pub fn find_folded(&self, name: &Folded) -> Option<Entry<'_>> {
        let key = name.key();
        self.exact(key).or_else(|| {
            let bare = FORM_WORDS.iter().find_map(|word| key.strip_suffix(word))?;
            match self.exact(bare)? {
                entry @ Entry::Material(material) if material.form.is_dry() => Some(entry),
                entry @ Entry::Dye(_) => Some(entry),
                Entry::Material(_) | Entry::Fibre(_) | Entry::Class(_) => None,
            }
        })
    }

    /// The longest known name that the words open with, and how many words it takes. Does not allocate.
    pub fn longest_match(&self, words: &[&str]) -> Option<(Entry<'_>, usize)> {
        let mut folded = Folded::default();
        let mut longest = None;
        for (index, word) in words.iter().take(self.longest_name_words + 3).enumerate() {
            folded.push(word);
            let entry = self.find_folded(&folded);
            let key = folded.key();
            if let Some(entry) = entry {
                longest = Some((entry, index + 1));
            } else if !LEADS.contains(&key) && !self.opens_a_name(key) {
                break;
            }
        }
        longest
    }

    /// Whether some name starts with this key, so that more words could still make a name.
    fn opens_a_name(&self, key: &str) -> bool {
        let at = self.names.partition_point(|name| name.key.as_str() < key);
        self.names.get(at).is_some_and(|name| name.key.starts_with(key))
    }

    fn exact(&self, key: &str) -> Option<Entry<'_>> {
        let at = self.names.binary_search_by(|name| name.key.as_str().cmp(key)).ok()?;
        self.names.get(at).and_then(|name| self.entry_of(name))
    }

    pub(crate) fn entry_of(&self, name: &Name) -> Option<Entry<'_>> {
        match name.kind {
            Kind::Material => self.materials.get(name.index).map(Entry::Material),
            Kind::Dye => self.dyes.get(name.index).map(Entry::Dye),
            Kind::Fibre => self.fibres.get(name.index).map(Entry::Fibre),
            Kind::Class => self.classes.get(name.index).map(Entry::Class),
        }
    }
}
