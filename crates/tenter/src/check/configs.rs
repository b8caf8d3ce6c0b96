//! Which configuration holds for which collection.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};

use tenter_config::NAME;

use crate::arguments::Check;
use crate::check::config::Config;
use crate::files::path::shown;
use crate::files::source::SourceFile;

/// The configurations met in one run.
#[derive(Debug)]
pub struct Configs {
    /// The one that holds for all, where the command line says so.
    only: Option<Arc<Config>>,
    known: Mutex<BTreeMap<PathBuf, Arc<Config>>>,
}

impl Configs {
    /// As the command line wants it: one file for all, none at all, or each collection's own.
    pub fn new(wanted: &Check) -> Self {
        let only = match &wanted.config {
            Some(path) => Some(read(path)),
            None => wanted.isolated.then(Config::default),
        };
        Self { only: only.map(Arc::new), known: Mutex::default() }
    }

    /// What holds in the collection with this top folder.
    pub fn of(&self, root: &Path) -> Arc<Config> {
        if let Some(only) = &self.only {
            return Arc::clone(only);
        }
        let mut known = self.known.lock().unwrap_or_else(PoisonError::into_inner);
        let config = known.entry(root.to_owned()).or_insert_with(|| {
            let path = root.join(NAME);
            Arc::new(if path.exists() { read(&path) } else { Config::default() })
        });
        Arc::clone(config)
    }

    /// All that were met, with the top folder of their collection where they are its own, in order of their folders.
    pub fn met(&self) -> Vec<(Option<PathBuf>, Arc<Config>)> {
        let known = self.known.lock().unwrap_or_else(PoisonError::into_inner);
        let own = known.iter().map(|(root, config)| (Some(root.clone()), Arc::clone(config)));
        self.only.iter().map(|config| (None, Arc::clone(config))).chain(own).collect()
    }
}

fn read(path: &Path) -> Config {
    let name = shown(path);
    match SourceFile::read(path, name.clone()) {
        Ok(file) => Config::read(file),
        Err(error) => Config::unreadable(&name, &error.to_string()),
    }
}
