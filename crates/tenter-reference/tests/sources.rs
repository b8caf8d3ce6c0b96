//! Every figure has a source, every source is used, and what nobody has checked can be listed.

use std::collections::{BTreeMap, BTreeSet};
use tenter_reference::{Files, Reference, SourceKind};
use toml::{Table, Value};

/// Figures that need no source of their own: the other half of a sourced figure, or follow from the formula (tested).
const WITHOUT: [&str; 4] = ["at_celsius", "ions", "at_least_percent", "below_percent"];

fn parsed() -> Vec<(&'static str, Table)> {
    let files = Files::bundled();
    [
        ("hazards.toml", files.hazards),
        ("incompatible.toml", files.incompatible),
        ("dye_classes.toml", files.dye_classes),
        ("dyes.toml", files.dyes),
        ("fibres.toml", files.fibres),
        ("materials.toml", files.materials),
    ]
    .into_iter()
    .map(|(name, text)| (name, text.parse().expect(name)))
    .collect()
}

/// Calls `visit` with the path and source of every table that has one; returns paths of numbers that have none.
fn walk(path: &str, value: &Value, visit: &mut dyn FnMut(&str, &str), orphans: &mut Vec<String>) {
    match value {
        Value::Table(table) => {
            if let Some(source) = table.get("source").and_then(Value::as_str) {
                visit(path, source);
            }
            for (key, inner) in table {
                let here = format!("{path}.{key}");
                let number = matches!(inner, Value::Float(_) | Value::Integer(_));
                if WITHOUT.contains(&key.as_str()) {
                    continue;
                }
                if number && !table.contains_key("source") {
                    orphans.push(here.clone());
                }
                walk(&here, inner, visit, orphans);
            }
        }
        Value::Array(items) => {
            for (index, item) in items.iter().enumerate() {
                let name = ["id", "code", "a"].iter().find_map(|key| item.get(key)).and_then(Value::as_str);
                let name = name.map_or_else(|| index.to_string(), str::to_owned);
                walk(&format!("{path}[{name}]"), item, visit, orphans);
            }
        }
        Value::String(_) | Value::Integer(_) | Value::Float(_) | Value::Boolean(_) | Value::Datetime(_) => {}
    }
}

fn uses() -> (Vec<(String, String)>, Vec<String>) {
    let mut uses = Vec::new();
    let mut orphans = Vec::new();
    for (file, table) in parsed() {
        let mut visit = |path: &str, source: &str| uses.push((path.to_owned(), source.to_owned()));
        walk(file, &Value::Table(table), &mut visit, &mut orphans);
    }
    (uses, orphans)
}

#[test]
fn every_figure_has_a_source_that_exists() {
    let (uses, orphans) = uses();
    assert!(orphans.is_empty(), "figures without a source: {orphans:#?}");
    for (path, source) in &uses {
        assert!(Reference::bundled().source(source).is_some(), "{path}: no source {source:?}");
    }
    assert!(uses.len() > 500, "the walk found only {} figures", uses.len());
}

#[test]
fn every_source_is_used_and_unique() {
    let used: BTreeSet<String> = uses().0.into_iter().map(|(_, source)| source).collect();
    let mut ids = BTreeSet::new();
    for source in Reference::bundled().sources() {
        assert!(ids.insert(&source.id), "{} stands twice in sources.toml", source.id);
        assert!(used.contains(&source.id), "{} is not used", source.id);
        assert!(source.citation.len() > 10, "{} has no citation", source.id);
    }
}

/// Run with `--nocapture` for the list of what somebody should look up.
#[test]
fn what_is_only_remembered_or_usual() {
    let mut by_kind: BTreeMap<SourceKind, Vec<String>> = BTreeMap::new();
    for (path, id) in uses().0 {
        let source = Reference::bundled().source(&id).expect("tested above");
        by_kind.entry(source.kind).or_default().push(format!("{path} ({id})"));
    }
    for (kind, paths) in &by_kind {
        println!("{}: {}", kind.words(), paths.len());
    }
    for kind in [SourceKind::FromMemory, SourceKind::CommonPractice] {
        for path in by_kind.get(&kind).into_iter().flatten() {
            println!("{}: {path}", kind.words());
        }
    }
    for kind in [SourceKind::Published, SourceKind::Computed, SourceKind::CommonPractice, SourceKind::FromMemory] {
        assert!(by_kind.contains_key(&kind), "nothing is {}", kind.words());
    }
}
