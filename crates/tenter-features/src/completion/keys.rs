//! Values of keys, and what follows the word that opens a block.

use tenter_reference::Reference;
use tenter_resolve::inside_collection;
use tenter_resolve::usage::read_use;
use tenter_rules::Group;
use tenter_syntax::{BlockKind, Expect, key_row};

use crate::analysis::{FileAnalysis, SheetView};
use crate::completion::line::phrase;
use crate::completion::names::{declared, fit, reference};
use crate::completion::place::Body;
use crate::completion::{Completion, ItemKind, units};
use crate::names::SymbolKind;
use crate::renamed_files::relative;
use crate::text::Range;
use crate::workspace::Snapshot;

/// Words a key takes.
const fn choices(kind: BlockKind, key: &str) -> &'static [&'static str] {
    match (kind, key.as_bytes()) {
        (_, b"depth") => &["pale", "medium", "dark", "full black"],
        (_, b"shade") => &["level", "mottled"],
        (_, b"measures") => &["metric", "US", "imperial", "Australian"],
        (BlockKind::Goods, b"state") => &["scoured, dry", "scoured, damp", "damp at 60% pickup", "unwashed", "dry"],
        (_, b"form") => &["powder", "liquid", "crystals"],
        (BlockKind::Vessel, b"material") => {
            &["steel", "stainless steel", "enamel", "plastic", "glass", "aluminium", "copper"]
        }
        (_, b"food") => &["never", "yes"],
        (_, b"closed") => &["yes", "no"],
        (_, b"currency") => &["EUR", "USD", "GBP"],
        _ => &[],
    }
}

/// What a number on the line of a key measures.
const fn measured(key: &str) -> &'static [&'static str] {
    match key.as_bytes() {
        b"room" | b"rated" => &["°C", "°F"],
        b"hardness" => &["mg/L", "°dH", "ppm"],
        b"altitude" => &["m"],
        b"weight" => &["g each", "g in all", "kg each", "kg in all", "oz each"],
        b"holds" => &["L", "mL", "US gal"],
        b"density" => &["g/mL", "kg/L"],
        b"rest" | b"keep" | b"took" => &["min", "h", "days"],
        b"make up" => &["L", "mL", "kg", "g"],
        b"strength" | b"purity" => &["%", "% w/v"],
        b"price" => &["EUR per kg", "EUR per 500 g", "EUR each", "EUR per L"],
        b"solubility" => &["g/L"],
        _ => &[],
    }
}

/// Proposals behind a key.
pub(super) fn value(view: SheetView<'_>, body: &Body, key: &str, offset: usize) -> Vec<Completion> {
    let head_end = body.line().and_then(|line| line.head.as_ref()).map_or(body.start(), |head| head.span.end as usize);
    let rest = body.since(head_end);
    let typed = head_end + (rest.len() - rest.trim_start().len());
    let whole: Range = body.offset(typed)..offset;
    if key == "accept" {
        return accept(view, body, typed, offset);
    }
    let phrase = phrase(body, head_end);
    let range = body.offset(phrase.start)..offset;
    let mut found = Vec::new();
    let mut words = |list: &[&str], range: &Range, kind: ItemKind| {
        for (rank, word) in list.iter().enumerate() {
            found.push(Completion::plain(range, *word, kind, "", rank as u16));
        }
    };
    let names_follow = matches!(key, "made" | "weighed" | "zone" | "index");
    if phrase.counted && !phrase.measured && !names_follow {
        words(measured(key), &range, ItemKind::Unit);
        if !matches!(key, "fibre" | "trim") {
            return found;
        }
    }
    words(choices(body.kind, key), &range, ItemKind::Value);
    let book = Reference::bundled();
    match key {
        "class" => found
            .extend(book.classes().map(|class| {
                Completion::plain(&whole, class.name.as_str(), ItemKind::Value, class.family.words(), 50)
            })),
        "index" => found
            .extend(book.dyes().map(|dye| {
                Completion::plain(&whole, dye.name.as_str(), ItemKind::Value, dye.class.value.as_str(), 50)
            })),
        "is" => reference(&whole, 50, &mut found),
        "fibre" | "thread" | "trim" => {
            let percent = body.since(phrase.start).find('%').map_or(0, |at| at + 1);
            let text = body.since(phrase.start + percent);
            let start = phrase.start + percent + (text.len() - text.trim_start().len());
            let range = body.offset(start)..offset;
            found.extend(
                book.fibres().map(|fibre| Completion::plain(&range, fibre.name.as_str(), ItemKind::Value, "fibre", 50)),
            );
        }
        "beside" | "front" | "back" => declared(view, SymbolKind::Zone, &range, &mut found),
        "in" => {
            for kind in [SymbolKind::Steps, SymbolKind::Mix, SymbolKind::Goods, SymbolKind::Layout] {
                for symbol in view.names().declared(kind) {
                    let label = format!("{} {}", kind.word(), symbol.name);
                    found.push(Completion::plain(
                        &whole,
                        label,
                        ItemKind::Steps,
                        "the block the lines below belong to",
                        50,
                    ));
                }
            }
        }
        "weight" if phrase.measured => words(&["each", "in all"], &range, ItemKind::Value),
        "made" if phrase.counted => declared(view, SymbolKind::Goods, &range, &mut found),
        "weighed" if phrase.measured => found.extend(fit(view, &[Expect::Material], &range)),
        "weighed" if phrase.counted => found.extend(units::fit(&[Expect::Material], &range)),
        _ => {}
    }
    if found.is_empty() && body.since(typed).is_empty() {
        found.extend(example(body, key, &whole));
    }
    found
}

/// Where nothing can be chosen from, the key's own example shows what is meant.
fn example(body: &Body, key: &str, range: &Range) -> Option<Completion> {
    let row = key_row(body.kind, key)?;
    let text = row.example.strip_prefix(row.name).unwrap_or(row.example).trim();
    let item = Completion::plain(range, text, ItemKind::Value, "for example", 0);
    (!text.is_empty()).then(|| item.snippet(format!("${{1:{text}}}")))
}

fn accept(view: SheetView<'_>, body: &Body, typed: usize, offset: usize) -> Vec<Completion> {
    let text = body.since(typed);
    if text.contains(' ') {
        let here = offset..offset;
        let because = Completion::plain(&here, "because", ItemKind::Clause, "the reason is required", 0);
        return if text.contains(" because ") {
            Vec::new()
        } else {
            vec![because.snippet("because ${1:reason}".to_owned())]
        };
    }
    let range = body.offset(typed)..offset;
    tenter_rules::RULES
        .iter()
        .map(|rule| {
            // What is found in this recipe is what one may want to accept.
            let met = rule.group != Group::Writing
                && view.findings().findings.iter().any(|(_, finding)| finding.rule == rule.name);
            let item = Completion::plain(&range, rule.name, ItemKind::Rule, rule.summary, u16::from(!met));
            item.snippet(format!("{} because ${{1:reason}}", rule.name))
        })
        .collect()
}

/// Proposals behind the word that opens a block.
pub(super) fn header(snapshot: &Snapshot, analysis: &FileAnalysis, kind: BlockKind, typed: &Range) -> Vec<Completion> {
    let mut found = Vec::new();
    match kind {
        BlockKind::Use => return used(snapshot, analysis, typed),
        BlockKind::Chemical => reference(typed, 50, &mut found),
        BlockKind::Edition => found.push(Completion::plain(typed, "1", ItemKind::Value, "the edition known", 0)),
        _ => {}
    }
    found
}

/// On a `use` line: names of the file it asks, then `from`, then files of the collection.
fn used(snapshot: &Snapshot, analysis: &FileAnalysis, typed: &Range) -> Vec<Completion> {
    let file = &analysis.file;
    let text = file.slice(typed.clone());
    if let Some(open) = text.find('"') {
        let range = typed.start + open + 1..typed.end;
        let paths = snapshot.paths();
        let others = paths.iter().filter(|path| **path != file.path);
        return others
            .map(|path| Completion::plain(&range, relative(&file.path, path), ItemKind::File, "", 0))
            .collect();
    }
    if text.ends_with(char::is_whitespace) && text.split_whitespace().next_back() == Some("from") {
        let here = typed.end..typed.end;
        let paths = snapshot.paths();
        let others = paths.iter().filter(|path| **path != file.path);
        return others
            .map(|path| {
                let label = format!("\"{}\"", relative(&file.path, path));
                Completion::plain(&here, label, ItemKind::File, "", 0)
            })
            .collect();
    }
    let start = text.rfind(',').map_or(0, |at| at + 1);
    let blanks = text.get(start..).map_or(0, |rest| rest.len() - rest.trim_start().len());
    let range = typed.start + start + blanks..typed.end;
    let row = file.line_range(typed.end);
    let phrase = file.slice(typed.start..row.end);
    let target = read_use(phrase, 0).ok().and_then(|request| inside_collection(&file.path, request.path.0).ok());
    let mut found = Vec::new();
    for (path, outline) in snapshot.outlines() {
        if path == file.path || target.as_deref().is_some_and(|target| target != &*path) {
            continue;
        }
        // Without a file yet, shared files are what one uses.
        let shared = !outline.blocks.iter().any(|entry| entry.kind == BlockKind::Recipe);
        if target.is_none() && !shared {
            continue;
        }
        for entry in
            outline.blocks.iter().filter(|entry| entry.kind != BlockKind::Recipe && entry.kind != BlockKind::Steps)
        {
            found.push(Completion::plain(&range, entry.name.to_string(), ItemKind::Material, path.to_string(), 10));
        }
    }
    found.truncate(500);
    found.push(Completion::plain(&range, "everything", ItemKind::Value, "all names of the file", 5));
    if target.is_none() && text.ends_with(' ') && !text.trim().is_empty() {
        let here = typed.end..typed.end;
        let item = Completion::plain(&here, "from", ItemKind::Clause, "the file", 0);
        found.push(item.snippet("from \"${1:house.dye}\"".to_owned()));
    }
    found
}
