//! Draws a block so that a person can read what was understood.

#![allow(dead_code)]

use tenter_syntax::{Block, Document, Item, Line, NumberForm, Qualifier};

/// `head | items | Connector items | …`, one line of text.
pub fn draw_line(block: &Block, line: &Line) -> String {
    let mut parts = Vec::new();
    if let Some(head) = &line.head {
        let mark = if head.known { "" } else { "?" };
        parts.push(format!("{}{mark}", head.word));
    }
    if !line.items.is_empty() {
        parts.push(draw_items(block, &line.items));
    }
    for clause in &line.clauses {
        let items = draw_items(block, &clause.items);
        parts.push(format!("{:?}: {items}", clause.connector).trim_end().to_owned());
    }
    if line.head.is_some()
        && line.items.is_empty()
        && line.clauses.is_empty()
        && !line.rest.is_empty()
        && line.unread.is_none()
    {
        parts.push(format!("rest={}", block.slice(line.rest)));
    }
    if let Some(unread) = line.unread {
        parts.push(format!("unread={}", block.slice(unread)));
    }
    if let Some(comment) = line.comment {
        parts.push(format!("comment={}", block.slice(comment)));
    }
    for comment in &line.inner_comments {
        parts.push(format!("inner={}", block.slice(*comment)));
    }
    parts.join(" | ")
}

fn draw_items(block: &Block, items: &[Item]) -> String {
    items.iter().map(|item| draw_item(block, item)).collect::<Vec<_>>().join(" ")
}

fn draw_item(block: &Block, item: &Item) -> String {
    let text = block.slice(item.span());
    match item {
        Item::Words(_) => format!("‹{text}›"),
        Item::Quoted(_) => format!("quoted‹{text}›"),
        Item::Colour(_) => format!("colour‹{text}›"),
        Item::Aside(_) => format!("aside‹{text}›"),
        Item::Comma(_) => ",".to_owned(),
        Item::Odd(_) => format!("odd‹{text}›"),
        Item::Number(number) => {
            let qualifier = match number.qualifier {
                None => "",
                Some(Qualifier::About) => "about ",
                Some(Qualifier::AtLeast) => "at-least ",
                Some(Qualifier::AtMost) => "at-most ",
            };
            let slice = |span| block.slice(span);
            let form = match &number.form {
                NumberForm::Plain(value) => slice(*value).to_owned(),
                NumberForm::Range(low, high) => format!("range({} {})", slice(*low), slice(*high)),
                NumberForm::Tolerance { value, unit_before, half_width } => {
                    let unit = unit_before.map_or("", slice);
                    format!("tolerance({} {unit} ± {})", slice(*value), slice(*half_width))
                }
                NumberForm::Pair(a, b) => format!("pair({} {})", slice(*a), slice(*b)),
                NumberForm::Date(date) => format!("date({})", slice(*date)),
                NumberForm::Malformed(all) => format!("malformed({})", slice(*all)),
            };
            format!("{qualifier}{form}")
        }
    }
}

/// A whole document, block by block.
pub fn draw(document: &Document) -> String {
    let mut drawn = String::new();
    for placed in &document.blocks {
        let block = &placed.block;
        drawn.push_str(&format!("{:?} ‹{}›\n", block.kind, block.slice(block.name)));
        for line in &block.lines {
            drawn.push_str(&format!("  {}\n", draw_line(block, line)));
        }
        for oddity in &block.oddities {
            drawn.push_str(&format!("  ! {:?} ‹{}›\n", oddity.kind, block.slice(oddity.span)));
        }
    }
    drawn
}
