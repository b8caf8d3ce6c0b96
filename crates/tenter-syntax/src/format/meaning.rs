//! What a document says, without where it stands and how it is spaced: what formatting must not change.

use crate::fold::fold_name;
use crate::format::units::unit_at;
use crate::tree::{Block, Document, Item, Line, Number, NumberForm};

/// One entry a block.
pub(super) fn document(document: &Document) -> Vec<String> {
    let blocks = document.blocks.iter().filter(|placed| !placed.block.text.trim_matches(blank_or_mark).is_empty());
    blocks.map(|placed| block(&placed.block)).collect()
}

fn blank_or_mark(c: char) -> bool {
    c.is_whitespace() || c == '\u{feff}'
}

fn block(block: &Block) -> String {
    let mut out = format!("{:?}\u{1}{}\u{1}", block.kind, spaced(block.slice(block.name)));
    if let Some(comment) = block.comment {
        out.push_str(block.slice(comment));
    }
    for line in &block.lines {
        out.push('\n');
        self::line(block, line, &mut out);
    }
    for oddity in &block.oddities {
        out.push_str(&format!("\u{2}{:?}", oddity.kind));
    }
    out
}

fn line(block: &Block, line: &Line, out: &mut String) {
    let prose = line.items.is_empty() && line.clauses.is_empty();
    if let Some(head) = &line.head {
        out.push_str(&format!("{}\u{1}{}\u{1}", head.word, head.known));
        if prose && line.unread.is_none() {
            out.push_str(&block.prose(line));
        }
    }
    items(block, &line.items, out);
    for clause in &line.clauses {
        out.push_str(&format!("\u{1}{:?}", clause.connector));
        items(block, &clause.items, out);
    }
    for span in line.unread.iter().chain(&line.comment).chain(&line.inner_comments) {
        out.push('\u{1}');
        out.push_str(&spaced(block.slice(*span)));
    }
}

fn items(block: &Block, items: &[Item], out: &mut String) {
    let mut number: Option<String> = None;
    for item in items {
        let text = block.slice(item.span());
        match item {
            Item::Words(_) => {
                out.push_str("\u{1}W");
                let words: Vec<&str> = text.split_whitespace().collect();
                let unit = number.as_deref().and_then(|number| unit_at(&words, number));
                if let Some(unit) = &unit {
                    out.push_str(&unit.meant.join(" "));
                    out.push('\u{3}');
                }
                let rest = words.get(unit.map_or(0, |unit| unit.words)..).unwrap_or(&[]);
                out.push_str(&rest.join(" "));
            }
            Item::Number(value) => out.push_str(&format!("\u{1}N{}", self::number(block, value))),
            other => {
                let kind = std::mem::discriminant(other);
                out.push_str(&format!("\u{1}{kind:?}{}", spaced(text)));
            }
        }
        number = match item {
            Item::Number(Number { form: NumberForm::Plain(span) | NumberForm::Range(_, span), .. }) => {
                Some(block.slice(*span).to_owned())
            }
            Item::Number(Number { form: NumberForm::Tolerance { half_width, .. }, .. }) => {
                Some(block.slice(*half_width).to_owned())
            }
            _ => None,
        };
    }
}

fn number(block: &Block, number: &Number) -> String {
    let form = match &number.form {
        NumberForm::Plain(a) => format!("={}", spaced(block.slice(*a))),
        NumberForm::Range(a, b) => format!("-{}\u{3}{}", spaced(block.slice(*a)), spaced(block.slice(*b))),
        NumberForm::Tolerance { value, unit_before, half_width } => {
            let unit = unit_before.map(|unit| fold_name(block.slice(unit)));
            format!("±{}\u{3}{unit:?}\u{3}{}", spaced(block.slice(*value)), spaced(block.slice(*half_width)))
        }
        NumberForm::Pair(a, b) => format!(":{}\u{3}{}", spaced(block.slice(*a)), spaced(block.slice(*b))),
        NumberForm::Date(a) => format!("d{}", block.slice(*a)),
        NumberForm::Malformed(a) => format!("!{}", spaced(block.slice(*a))),
    };
    format!("{:?}{form}", number.qualifier)
}

fn spaced(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}
