//! Prints what the grammar makes of files, one JSON object a line and file, for comparing another grammar with it.
//!
//! All places are bytes of the file, half open. A line says its head, its items by form, its clauses and what stayed unread.
#![allow(clippy::print_stdout, clippy::print_stderr, clippy::disallowed_methods)]

use serde_json::{Value, json};
use tenter_syntax::{Block, Clause, Document, Item, Line, NumberForm, Span, key_row};

fn span(base: usize, span: Span) -> Value {
    json!([base + span.start as usize, base + span.end as usize])
}

fn item(base: usize, item: &Item) -> Value {
    let form = match item {
        Item::Number(number) => match number.form {
            NumberForm::Date(_) => "date",
            NumberForm::Malformed(_) => "malformed",
            NumberForm::Plain(_) | NumberForm::Range(..) | NumberForm::Tolerance { .. } | NumberForm::Pair(..) => {
                "number"
            }
        },
        Item::Words(_) => "words",
        Item::Quoted(_) => "quoted",
        Item::Colour(_) => "colour",
        Item::Aside(_) => "aside",
        Item::Comma(_) => "comma",
        Item::Odd(_) => "odd",
    };
    let place = item.span();
    json!([form, base + place.start as usize, base + place.end as usize])
}

fn clause(base: usize, clause: &Clause) -> Value {
    let items: Vec<_> = clause.items.iter().map(|part| item(base, part)).collect();
    json!({ "word": span(base, clause.word), "items": items })
}

fn line(base: usize, block: &Block, line: &Line) -> Value {
    let prose = line
        .head
        .as_ref()
        .is_some_and(|head| head.known && key_row(block.kind, &head.word).is_some_and(|key| key.prose));
    json!({
        "span": span(base, line.span),
        "indented": line.indent > 0,
        "head": line.head.as_ref().map(|head| json!({ "span": span(base, head.span), "known": head.known })),
        "prose": if prose { span(base, line.rest) } else { Value::Null },
        "items": line.items.iter().map(|part| item(base, part)).collect::<Vec<_>>(),
        "clauses": line.clauses.iter().map(|part| clause(base, part)).collect::<Vec<_>>(),
        "unread": line.unread.map(|unread| span(base, unread)),
    })
}

/// Comments of a block in order, those on lines of their own among them.
fn comments(base: usize, block: &Block) -> Vec<Value> {
    let mut found: Vec<Span> = block.comment.into_iter().collect();
    for line in &block.lines {
        found.extend(line.inner_comments.iter().chain(&line.comment));
    }
    found.sort();
    found.into_iter().map(|comment| span(base, comment)).collect()
}

fn outline(text: &str) -> Value {
    let document = Document::parse(text);
    let mut all_comments = Vec::new();
    let mut blocks = Vec::new();
    for placed in &document.blocks {
        let (base, block) = (placed.start, &placed.block);
        all_comments.extend(comments(base, block));
        let written = |line: &&Line| !line.span.is_empty();
        let lines: Vec<_> = block.lines.iter().filter(written).map(|one| line(base, block, one)).collect();
        blocks.push(json!({
            "kind": format!("{:?}", block.kind).to_lowercase(),
            "keyword": span(base, block.keyword),
            "name": span(base, block.name),
            "lines": lines,
        }));
    }
    json!({ "blocks": blocks, "comments": all_comments })
}

fn main() -> std::process::ExitCode {
    let mut failed = false;
    for path in std::env::args().skip(1) {
        match std::fs::read_to_string(&path) {
            Ok(text) => println!("{}", json!({ "path": path, "outline": outline(&text) })),
            Err(error) => {
                eprintln!("{path}: {error}");
                failed = true;
            }
        }
    }
    if failed { std::process::ExitCode::from(2) } else { std::process::ExitCode::SUCCESS }
}
