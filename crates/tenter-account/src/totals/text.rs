//! The sheet as text, for a terminal or a printed page.

use crate::pick::Picked;
use crate::source::Source;
use crate::text::WIDTH;
use crate::text::wrap::{paragraph, width};
use crate::totals::sheet::{Content, Part, Sheet, sheet};

/// One sheet a recipe or variant.
pub fn text(picked: &[Picked<'_>], file: &dyn Source) -> String {
    let between = format!("\n{}\n\n", "═".repeat(WIDTH));
    picked.iter().map(|picked| drawn(&sheet(picked, file))).collect::<Vec<_>>().join(&between)
}

fn drawn(sheet: &Sheet) -> String {
    let mut out = paragraph(&sheet.title, 0, 0, WIDTH);
    out.push_str(&"─".repeat(width(&sheet.title).min(WIDTH)));
    out.push('\n');
    if let Some(about) = &sheet.about {
        out.push_str(&paragraph(about, 0, 0, WIDTH));
    }
    for part in &sheet.parts {
        draw(part, &mut out);
    }
    out
}

fn draw(part: &Part, out: &mut String) {
    out.push_str(&format!("\n{}\n", part.heading));
    for (number, content) in part.content.iter().enumerate() {
        match content {
            Content::Line(line) => out.push_str(&paragraph(line, 2, 4, WIDTH)),
            Content::Table(table) => out.push_str(&table.render(2, WIDTH)),
            Content::Mix { line, table, made_up } => {
                if number > 0 {
                    out.push('\n');
                }
                out.push_str(&paragraph(line, 2, 4, WIDTH));
                out.push_str(&table.render(4, WIDTH));
                out.extend(made_up.iter().map(|line| format!("    {line}\n")));
            }
        }
    }
}
