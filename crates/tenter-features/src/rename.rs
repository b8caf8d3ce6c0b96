//! Giving a name another spelling, wherever it stands in the collection.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt;
use std::sync::Arc;

use tenter_reference::{Entry, Reference};
use tenter_syntax::{Connector, fold_name, lookup_kind, verbs};

use crate::completion::{WATERS, ZONES};
use crate::names::SymbolKind;
use crate::navigation::{Found, Target, everywhere, name_at, references};
use crate::text::{Edit, Location, Range, apply};
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
    /// Lines would be read differently; what the recipe would then be told.
    Changes(String),
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
            Self::Changes(told) => write!(f, "lines would be read differently with that name: {told}"),
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
    let alone = matches!(found.symbol.kind, SymbolKind::Recipe | SymbolKind::Variant);
    fit(new_name, alone)?;
    let key = fold_name(new_name);
    let names = found.view.names();
    let taken = names.symbols.iter().any(|symbol| {
        let other = symbol.declared.is_some() && symbol.declared != found.symbol.declared;
        // A zone may share a name with a zone of another layout, never with other things.
        let apart = matches!(symbol.kind, SymbolKind::Recipe | SymbolKind::Variant)
            || (symbol.kind == SymbolKind::Zone && found.symbol.kind == SymbolKind::Zone);
        other && !apart && symbol.key == key
    });
    if !alone && key != found.symbol.key && (taken || everybodys(found.symbol.kind, &key)) {
        return Err(Refusal::Taken(new_name.to_owned()));
    }
    let old_key = found.symbol.key.clone();
    let mut edits = Vec::new();
    // Two words do not go below a stroke, and with goods of one kind only a piece is one of them.
    let any_piece = new_name.contains(char::is_whitespace) && names.declared(SymbolKind::Goods).count() == 1;
    everywhere(snapshot, &analysis, &Target::of(&found), &mut |location, _| {
        let new_text = if any_piece && below_a_stroke(snapshot, &location) {
            PIECE.to_owned()
        } else {
            spelled(&old_key, &fold_name(&written(snapshot, &location)), new_name)
        };
        edits.push(Edit { new_text, at: location });
    });
    edits.sort();
    edits.dedup();
    let places = edits.iter().filter(|edit| !any_piece || edit.new_text != PIECE).count();
    edits.extend(what_it_is(snapshot, &found));
    edits.sort();
    if let Some(declared) = &found.declared {
        same(snapshot, declared, &edits, places)?;
    }
    Ok(edits)
}

/// Whether the reference data, or every piece of goods, has that name.
fn everybodys(kind: SymbolKind, key: &str) -> bool {
    let known = matches!(Reference::bundled().find(key), Some(Entry::Material(_) | Entry::Dye(_)));
    match kind {
        SymbolKind::Mix | SymbolKind::Dye | SymbolKind::Chemical => known || WATERS.contains(&key),
        SymbolKind::Zone => ZONES.contains(&key),
        _ => false,
    }
}

/// What is known by its own name alone gets a line that says what it is, before it loses the name.
fn what_it_is(snapshot: &Snapshot, found: &Found<'_>) -> Option<Edit> {
    let (entry, declared) = (found.symbol.entry?, found.declared.as_ref()?);
    let key = match (found.symbol.kind, entry) {
        (SymbolKind::Dye, Entry::Dye(_)) => "index",
        (SymbolKind::Chemical, _) => "is",
        _ => return None,
    };
    let file = snapshot.file_once(&declared.path)?;
    let block = &file.block(file.document.block_at(declared.start)?)?.block;
    if block.lines.iter().any(|line| line.head.as_ref().is_some_and(|head| matches!(&*head.word, "is" | "index"))) {
        return None;
    }
    let end = file.line_range(declared.start).end;
    let line_break = if file.text.contains("\r\n") { "\r\n" } else { "\n" };
    Some(Edit::new(&file.path, end..end, format!("{line_break}  {key:<8} {}", entry.name())))
}

/// Whether the files that have the name are told the same after the edits, and as many places have it as before.
fn same(snapshot: &Snapshot, declared: &Location, edits: &[Edit], places: usize) -> Result<(), Refusal> {
    let touched: BTreeSet<&Arc<str>> = edits.iter().map(|edit| &edit.at.path).collect();
    let text = |path: &Arc<str>| Some(apply(path, &snapshot.file_once(path)?.text, edits));
    let after = snapshot.with(touched.into_iter().filter_map(|path| Some((Arc::clone(path), text(path)?))));
    let mut paths = snapshot.users(&declared.path);
    paths.push(Arc::clone(&declared.path));
    for path in &paths {
        let (Some(before), Some(now)) = (snapshot.analyse(path), after.analyse(path)) else { continue };
        let mut had: BTreeMap<&str, usize> = BTreeMap::new();
        for told in &before.findings {
            *had.entry(told.finding.rule).or_default() += 1;
        }
        for told in &now.findings {
            match had.get_mut(told.finding.rule) {
                Some(left @ 1..) => *left -= 1,
                _ => return Err(Refusal::Changes(told.finding.message.clone())),
            }
        }
    }
    let moved: isize = edits
        .iter()
        .filter(|edit| edit.at.path == declared.path && edit.at.start < declared.start)
        .map(|edit| edit.new_text.len() as isize - (edit.at.end - edit.at.start) as isize)
        .sum();
    let at = declared.start.saturating_add_signed(moved);
    if references(&after, &declared.path, at, true).len() == places {
        Ok(())
    } else {
        Err(Refusal::Changes("it would stand for something else in some of them".to_owned()))
    }
}

fn written(snapshot: &Snapshot, location: &Location) -> String {
    snapshot.file_once(&location.path).map(|file| file.slice(location.range()).to_owned()).unwrap_or_default()
}

/// What amounts are counted on where the goods have no short name: `9 g/piece`.
const PIECE: &str = "piece";

/// `9 g/tee`.
fn below_a_stroke(snapshot: &Snapshot, location: &Location) -> bool {
    snapshot.file_once(&location.path).is_some_and(|file| file.slice(0..location.start).ends_with('/'))
}

/// `tee` for one of the `tees` stays one: `shirt` of the `shirts`.
fn spelled(declared: &str, written: &str, new_name: &str) -> String {
    let one_of = declared.strip_suffix('s') == Some(written);
    match new_name.strip_suffix('s') {
        Some(singular) if one_of => singular.to_owned(),
        _ => new_name.to_owned(),
    }
}

fn fit(name: &str, alone: bool) -> Result<(), Refusal> {
    if name.is_empty() {
        return Err(Refusal::Unfit("a name needs a word"));
    }
    let words: Vec<&str> = name.split_whitespace().collect();
    let numbered = |word: &str| {
        word.strip_prefix('#')
            .is_some_and(|rest| (1..=3).contains(&rest.len()) && rest.chars().all(|c| c.is_ascii_digit()))
    };
    let hash = words.iter().enumerate().any(|(at, word)| word.contains('#') && (at == 0 || !numbered(word)));
    if hash || name.contains(['\n', '\r', '"', ',', '(', ')']) {
        return Err(Refusal::Unfit(
            "a name stands on one line, without quotes, commas or brackets, and with `#` only as in `bottle #2`",
        ));
    }
    // The title of a recipe stands by itself.
    if alone {
        return Ok(());
    }
    if words.iter().any(|word| Connector::from_word(word).is_some()) {
        return Err(Refusal::Unfit("a connecting word (`in`, `with`, `on` …) inside a name would be read as one"));
    }
    if words.first().is_some_and(|word| word.starts_with(|c: char| c.is_ascii_digit())) {
        return Err(Refusal::Unfit("a name does not begin with a number"));
    }
    if words.len() == 1 && (lookup_kind(name).is_some() || verbs().any(|verb| verb.name == fold_name(name))) {
        return Err(Refusal::Unfit("that word already has a meaning of its own"));
    }
    if words.len() == 1 && tenter_quantity::lookup_unit(&words, None).is_some() {
        return Err(Refusal::Unfit("that word is a unit already"));
    }
    Ok(())
}

/// The places of this file that change together while a name is typed: the declaration and its uses, when all are
/// spelled alike.
pub fn linked(snapshot: &Snapshot, path: &str, offset: usize) -> Vec<Range> {
    let Ok((_, name)) = prepare(snapshot, path, offset) else { return Vec::new() };
    // A name that says what the thing is cannot be typed over without a line that says it.
    let analysis = snapshot.analyse(path);
    let known = analysis.as_deref().and_then(|analysis| name_at(analysis, offset));
    if known.is_some_and(|found| what_it_is(snapshot, &found).is_some()) {
        return Vec::new();
    }
    let ranges = crate::navigation::highlights(snapshot, path, offset);
    let Some(file) = snapshot.file(path) else { return Vec::new() };
    let alike: Vec<Range> =
        ranges.into_iter().map(|(range, _)| range).filter(|range| file.slice(range.clone()) == name).collect();
    let here = alike.iter().any(|range| range.start <= offset && offset <= range.end);
    if here && alike.len() > 1 { alike } else { Vec::new() }
}
