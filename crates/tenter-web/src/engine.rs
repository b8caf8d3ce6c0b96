//! Questions taken and answered.

use serde::{Deserialize, Serialize};
use serde_json::{Value, json};
use tenter_features::{Workspace, formatting};

use crate::account;
use crate::look::{self, Change};
use crate::offsets::Offsets;
use crate::words;

/// What can be asked. `path` is the name of a text inside the collection.
#[derive(Debug, Deserialize)]
#[serde(tag = "ask", rename_all = "kebab-case")]
enum Question {
    /// Takes texts in that others may use.
    Store { files: Vec<(String, String)> },
    /// Takes the text being written.
    Open { path: String, text: String },
    /// Takes the text being written and tells what is found in it.
    Look { path: String, text: String },
    /// What it comes to and how it goes, for so many pieces.
    Account { path: String, pieces: Option<f64> },
    /// What may stand at a place.
    Complete { path: String, at: usize },
    /// What is shown beside a proposal.
    Describe { kind: String, label: String },
    /// What stands at a place.
    Hover { path: String, at: usize },
    /// The text in its usual form.
    Format { path: String },
    /// The page of a rule.
    Rule { name: String },
    /// The same recipe for so many pieces, written anew.
    Scale { path: String, at: usize, pieces: f64 },
}

/// The texts of the page and the answers about them.
#[derive(Debug, Default)]
pub struct Engine {
    texts: Workspace,
}

impl Engine {
    /// Answers one question. What cannot be answered gives `{"error": …}`; nothing that is asked brings it down.
    pub fn answer(&mut self, question: &str) -> String {
        let answer = match serde_json::from_str::<Question>(question) {
            Ok(question) => self.asked(question),
            Err(error) => failed(&format!("not a question: {error}")),
        };
        answer.to_string()
    }

    fn asked(&mut self, question: Question) -> Value {
        match question {
            Question::Store { files } => {
                self.texts.store(files.into_iter().map(|(path, text)| (path.into(), Some(text.into()))));
                Value::Null
            }
            Question::Open { path, text } => {
                self.open(&path, &text);
                Value::Null
            }
            Question::Look { path, text } => {
                self.open(&path, &text);
                value(look::look(&self.texts.snapshot(), &path))
            }
            Question::Account { path, pieces } => value(account::account(&self.texts.snapshot(), &path, pieces)),
            Question::Complete { path, at } => self.at(&path, at, words::complete),
            Question::Describe { kind, label } => json!({ "markdown": words::describe(&kind, &label) }),
            Question::Hover { path, at } => self.at(&path, at, words::hover),
            Question::Format { path } => match self.texts.snapshot().file(&path) {
                Some(file) => {
                    let offsets = Offsets::new(&file);
                    value(formatting::document(&file).iter().map(|edit| Change::of(edit, &offsets)).collect::<Vec<_>>())
                }
                None => unknown(&path),
            },
            Question::Rule { name } => json!({ "markdown": tenter_features::hover::rule_words(&name) }),
            Question::Scale { path, at, pieces } => {
                self.at(&path, at, |snapshot, path, at| words::scaled(snapshot, path, at, pieces))
            }
        }
    }

    /// One text is written at a time: the one before is left to what was stored under its name.
    fn open(&mut self, path: &str, text: &str) {
        let snapshot = self.texts.snapshot();
        for other in snapshot.open_files().filter(|file| *file.path != *path) {
            self.texts.close(&other.path);
        }
        self.texts.open(path, text);
    }

    fn at<T: Serialize>(
        &self,
        path: &str,
        unit: usize,
        ask: impl Fn(&tenter_features::Snapshot, &str, usize) -> T,
    ) -> Value {
        let snapshot = self.texts.snapshot();
        match snapshot.file(path) {
            Some(file) => value(ask(&snapshot, path, Offsets::new(&file).byte(unit))),
            None => unknown(path),
        }
    }
}

fn value(answer: impl Serialize) -> Value {
    serde_json::to_value(answer).unwrap_or_else(|error| failed(&error.to_string()))
}

fn unknown(path: &str) -> Value {
    failed(&format!("no text is called {path}"))
}

fn failed(why: &str) -> Value {
    json!({ "error": why })
}
