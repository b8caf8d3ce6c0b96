//! From text to checked entries. Anything wrong is reported with its file and entry; nothing is guessed or skipped.

use crate::files::Files;
use crate::index::index;
use crate::reference::Reference;
use crate::source::{Source, Sourced, Stated};
use crate::{convert, raw};
use serde::de::DeserializeOwned;
use std::fmt;
use toml::{Table, Value};

/// What is wrong with a data file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LoadError {
    /// File name, such as `materials.toml`.
    pub file: &'static str,
    /// Id of the entry, or its place in the file if it has none.
    pub entry: Option<String>,
    /// What is wrong.
    pub message: String,
}

impl fmt::Display for LoadError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match &self.entry {
            Some(entry) => write!(f, "{}: {entry}: {}", self.file, self.message),
            None => write!(f, "{}: {}", self.file, self.message),
        }
    }
}

impl std::error::Error for LoadError {}

/// An error of one entry, before it is known which file it stands in.
pub(crate) type EntryResult<T> = Result<T, String>;

/// Looks up sources while entries are converted.
pub(crate) struct Sources {
    all: Vec<&'static Source>,
}

impl Sources {
    pub(crate) fn get(&self, id: &str) -> EntryResult<&'static Source> {
        let found = self.all.iter().copied().find(|source| source.id == id);
        found.ok_or_else(|| format!("no source {id:?} in sources.toml"))
    }

    pub(crate) fn figure(&self, figure: &raw::Figure) -> EntryResult<Sourced> {
        let source = self.get(&figure.source)?;
        let (low, best, high) = match (figure.value, figure.low, figure.best, figure.high) {
            (Some(value), None, None, None) => (value, value, value),
            (None, Some(low), Some(best), Some(high)) => (low, best, high),
            (None, Some(low), None, Some(high)) => (low, f64::midpoint(low, high), high),
            _ => {
                return Err("a figure needs either `value`, or `low` and `high` and maybe `best`".to_owned());
            }
        };
        if low.is_finite() && high.is_finite() && low <= best && best <= high {
            Ok(Sourced { low, best, high, source })
        } else {
            Err(format!("low {low}, best {best}, high {high} are out of order"))
        }
    }

    pub(crate) fn maybe(&self, figure: Option<&raw::Figure>) -> EntryResult<Option<Sourced>> {
        figure.map(|figure| self.figure(figure)).transpose()
    }

    pub(crate) fn stated<T>(&self, stated: Option<raw::Stated<T>>) -> EntryResult<Option<Stated<T>>> {
        stated.map(|stated| Ok(Stated { source: self.get(&stated.source)?, value: stated.value })).transpose()
    }
}

/// What the text of the files is written in.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Form {
    Toml,
    Json,
}

pub(crate) fn load(files: &Files<'_>, form: Form) -> Result<Reference, LoadError> {
    let mut file = File::parse("sources.toml", files.sources, form)?;
    let mut sources = Sources { all: Vec::new() };
    for source in file
        .entries("source", "id", |raw: raw::Source| Ok(Source { id: raw.id, kind: raw.kind, citation: raw.citation }))?
    {
        // Lives as long as the program, as the figures that point to it do.
        sources.all.push(Box::leak(Box::new(source)));
    }
    file.done()?;

    let mut reference = Reference::default();
    let mut file = File::parse("hazards.toml", files.hazards, form)?;
    reference.hazards = file.entries("hazard", "code", |raw| convert::statement(raw, &sources))?;
    file.done()?;

    let mut file = File::parse("incompatible.toml", files.incompatible, form)?;
    reference.groups = file.entries("group", "id", |raw| Ok(convert::group(raw)))?;
    reference.never_mix = file.entries("never_mix", "a", |raw| convert::pair(raw, &reference, &sources))?;
    file.done()?;

    let mut file = File::parse("dye_classes.toml", files.dye_classes, form)?;
    reference.classes = file.entries("class", "id", |raw| convert::class(raw, &sources))?;
    file.done()?;

    let mut file = File::parse("dyes.toml", files.dyes, form)?;
    let powder: raw::Powder = file.table("powder")?;
    reference.dyes = file.entries("dye", "id", |raw| convert::dye(raw, &powder, &reference, &sources))?;
    file.done()?;

    let mut file = File::parse("fibres.toml", files.fibres, form)?;
    reference.fibres = file.entries("fibre", "id", |raw| convert::fibre(raw, &sources))?;
    file.done()?;

    let mut file = File::parse("materials.toml", files.materials, form)?;
    reference.materials = file.entries("material", "id", |raw| convert::material(raw, &reference, &sources))?;
    file.done()?;
    convert::link_materials(&mut reference.materials).map_err(|(entry, message)| LoadError {
        file: "materials.toml",
        entry: Some(entry),
        message,
    })?;

    reference.sources = sources.all;
    index(&mut reference)?;
    Ok(reference)
}

/// A parsed file, from which entries are taken until nothing is left.
struct File {
    name: &'static str,
    table: Table,
}

impl File {
    fn parse(name: &'static str, text: &str, form: Form) -> Result<Self, LoadError> {
        let table = match form {
            Form::Toml => text.parse::<Table>().map_err(|error| error.to_string()),
            Form::Json => serde_json::from_str::<Table>(text).map_err(|error| error.to_string()),
        };
        let table = table.map_err(|message| LoadError { file: name, entry: None, message })?;
        Ok(Self { name, table })
    }

    fn table<T: DeserializeOwned>(&mut self, key: &str) -> Result<T, LoadError> {
        let value = self.table.remove(key).unwrap_or_else(|| Value::Table(Table::new()));
        value.try_into().map_err(|error: toml::de::Error| self.error(key.to_owned(), error.message().to_owned()))
    }

    fn entries<Raw: DeserializeOwned, Out>(
        &mut self,
        key: &str,
        id: &str,
        mut convert: impl FnMut(Raw) -> EntryResult<Out>,
    ) -> Result<Vec<Out>, LoadError> {
        let Some(Value::Array(values)) = self.table.remove(key) else {
            return Err(self.error(key.to_owned(), format!("the file has no [[{key}]] entries")));
        };
        let mut entries = Vec::with_capacity(values.len());
        for (index, value) in values.into_iter().enumerate() {
            let name = match value.get(id).and_then(Value::as_str) {
                Some(id) => format!("{key} {id:?} (number {})", index + 1),
                None => format!("{key} number {}", index + 1),
            };
            let raw: Result<Raw, toml::de::Error> = value.try_into();
            let entry = raw.map_err(|error| error.message().to_owned()).and_then(&mut convert);
            entries.push(entry.map_err(|message| self.error(name, message))?);
        }
        Ok(entries)
    }

    fn done(&self) -> Result<(), LoadError> {
        match self.table.keys().next() {
            Some(key) => Err(self.error(key.clone(), "not known in this file".to_owned())),
            None => Ok(()),
        }
    }

    const fn error(&self, entry: String, message: String) -> LoadError {
        LoadError { file: self.name, entry: Some(entry), message }
    }
}
