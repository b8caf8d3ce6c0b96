//! All the reference data, loaded and indexed.

use crate::files::Files;
use crate::fold::Folded;
use crate::load::{Form, LoadError, load};
use crate::names::{Entry, Name};
use crate::source::Source;
use crate::{Dye, DyeClass, DyeFamily, Fibre, Group, HazardStatement, Material, NeverMix};
use std::sync::LazyLock;

static BUNDLED: LazyLock<Reference> = LazyLock::new(|| load(&Files::digested(), Form::Json).unwrap_or_default());

/// All the reference data. Iterators follow the order of the files.
#[derive(Debug, Clone, Default)]
pub struct Reference {
    pub(crate) sources: Vec<&'static Source>,
    pub(crate) hazards: Vec<HazardStatement>,
    pub(crate) groups: Vec<Group>,
    pub(crate) never_mix: Vec<NeverMix>,
    pub(crate) classes: Vec<DyeClass>,
    pub(crate) dyes: Vec<Dye>,
    pub(crate) fibres: Vec<Fibre>,
    pub(crate) materials: Vec<Material>,
    /// Sorted by key.
    pub(crate) names: Vec<Name>,
    /// Id to place, sorted by id.
    pub(crate) ids: Vec<Name>,
    pub(crate) longest_name_words: usize,
}

impl Reference {
    /// The data built into the program, read on first use. The tests make sure that it loads.
    pub fn bundled() -> &'static Self {
        &BUNDLED
    }

    /// Reads the data from text. The table of sources stays in memory to the end of the program, so load once, not
    /// in a loop.
    ///
    /// # Errors
    /// Names the file and the entry that is wrong, and what is wrong with it.
    pub fn load(files: &Files<'_>) -> Result<Self, LoadError> {
        load(files, Form::Toml)
    }

    /// The material with this id.
    pub fn material(&self, id: &str) -> Option<&Material> {
        match self.by_id(id)? {
            Entry::Material(material) => Some(material),
            Entry::Dye(_) | Entry::Fibre(_) | Entry::Class(_) => None,
        }
    }

    /// The dye with this id.
    pub fn dye(&self, id: &str) -> Option<&Dye> {
        match self.by_id(id)? {
            Entry::Dye(dye) => Some(dye),
            Entry::Material(_) | Entry::Fibre(_) | Entry::Class(_) => None,
        }
    }

    /// The fibre with this id.
    pub fn fibre(&self, id: &str) -> Option<&Fibre> {
        match self.by_id(id)? {
            Entry::Fibre(fibre) => Some(fibre),
            Entry::Material(_) | Entry::Dye(_) | Entry::Class(_) => None,
        }
    }

    /// The dye class with this id.
    pub fn class(&self, id: &str) -> Option<&DyeClass> {
        match self.by_id(id)? {
            Entry::Class(class) => Some(class),
            Entry::Material(_) | Entry::Dye(_) | Entry::Fibre(_) => None,
        }
    }

    /// Whatever has this id.
    pub fn by_id(&self, id: &str) -> Option<Entry<'_>> {
        let at = self.ids.binary_search_by(|name| name.key.as_str().cmp(id)).ok()?;
        self.ids.get(at).and_then(|name| self.entry_of(name))
    }

    /// The source with this id.
    pub fn source(&self, id: &str) -> Option<&'static Source> {
        self.sources.iter().copied().find(|source| source.id == id)
    }

    /// The hazard statement with this code.
    pub fn hazard(&self, code: &str) -> Option<&HazardStatement> {
        self.hazards.iter().find(|hazard| hazard.code == code)
    }

    /// The group of the never-mix table with this id.
    pub fn group(&self, id: &str) -> Option<&Group> {
        self.groups.iter().find(|group| group.id == id)
    }

    /// Vessel groups of the never-mix table that a vessel of this stuff belongs to, however the stuff is spelt.
    pub fn vessel_groups<'a>(&'a self, stuff: &str) -> impl Iterator<Item = &'a Group> + use<'a> {
        let wanted = Folded::new(stuff);
        self.groups.iter().filter(move |group| group.words.iter().any(|word| Folded::new(word).key() == wanted.key()))
    }

    /// Pairs that must never meet between two lists of groups, either way round.
    pub fn never_mix_between<'a>(
        &'a self,
        first: &'a [String],
        second: &'a [String],
    ) -> impl Iterator<Item = &'a NeverMix> {
        self.never_mix.iter().filter(move |pair| {
            (first.contains(&pair.a) && second.contains(&pair.b))
                || (first.contains(&pair.b) && second.contains(&pair.a))
        })
    }

    /// Dye classes of a family.
    pub fn classes_of(&self, family: DyeFamily) -> impl Iterator<Item = &DyeClass> {
        self.classes.iter().filter(move |class| class.family == family)
    }

    /// All sources.
    pub fn sources(&self) -> impl Iterator<Item = &'static Source> {
        self.sources.iter().copied()
    }

    /// All hazard statements.
    pub fn hazards(&self) -> impl Iterator<Item = &HazardStatement> {
        self.hazards.iter()
    }

    /// All groups of the never-mix table.
    pub fn groups(&self) -> impl Iterator<Item = &Group> {
        self.groups.iter()
    }

    /// All pairs that must never meet.
    pub fn never_mix(&self) -> impl Iterator<Item = &NeverMix> {
        self.never_mix.iter()
    }

    /// All dye classes.
    pub fn classes(&self) -> impl Iterator<Item = &DyeClass> {
        self.classes.iter()
    }

    /// All dyes.
    pub fn dyes(&self) -> impl Iterator<Item = &Dye> {
        self.dyes.iter()
    }

    /// All fibres.
    pub fn fibres(&self) -> impl Iterator<Item = &Fibre> {
        self.fibres.iter()
    }

    /// All materials.
    pub fn materials(&self) -> impl Iterator<Item = &Material> {
        self.materials.iter()
    }

    /// Every entry that a name can mean.
    pub fn entries(&self) -> impl Iterator<Item = Entry<'_>> {
        let materials = self.materials.iter().map(Entry::Material);
        let dyes = self.dyes.iter().map(Entry::Dye);
        let fibres = self.fibres.iter().map(Entry::Fibre);
        let classes = self.classes.iter().map(Entry::Class);
        materials.chain(dyes).chain(fibres).chain(classes)
    }
}
