//! The sheet for comparing two versions of a recipe: one fact a line, nothing lined up and no line numbers, so that a
//! line differs only where the fact it tells does.

use crate::pick::Picked;
use crate::source::Source;
use crate::text::table::Table;
use crate::totals::sheet::{Content, Part, Sheet, sheet};

/// A file whose places are not told: a line put in above would move them all.
struct Unplaced<'a>(&'a dyn Source);

impl Source for Unplaced<'_> {
    fn name(&self) -> &str {
        self.0.name()
    }

    fn line(&self, _block: usize, _byte: u32) -> Option<u32> {
        None
    }
}

/// One sheet a recipe or variant.
pub fn text(picked: &[Picked<'_>], file: &dyn Source) -> String {
    picked.iter().map(|picked| told(&sheet(picked, &Unplaced(file)), picked.errors())).collect::<Vec<_>>().join("\n")
}

fn told(sheet: &Sheet, errors: usize) -> String {
    let mut out = format!("{}\n", sheet.title);
    match errors {
        0 => {}
        1 => out.push_str("  1 thing in this recipe could not be read and leaves the totals open\n"),
        _ => out.push_str(&format!("  {errors} things in this recipe could not be read and leave the totals open\n")),
    }
    sheet.parts.iter().for_each(|part| tell(part, &mut out));
    out
}

fn tell(part: &Part, out: &mut String) {
    out.push_str(&format!("\n{}\n", part.heading));
    for content in &part.content {
        match content {
            Content::Line(line) => out.push_str(&format!("  {line}\n")),
            Content::Table(table) => facts(table, "  ", out),
            Content::Mix { line, table, made_up } => {
                let (name, rest) = line.split_once(": ").unwrap_or((line, ""));
                out.push_str(&format!("  {name}\n"));
                rest.split("; ").for_each(|fact| out.push_str(&format!("    {fact}\n")));
                facts(table, "    ", out);
                out.extend(made_up.iter().map(|line| format!("    {line}\n")));
            }
        }
    }
}

fn facts(table: &Table, indent: &str, out: &mut String) {
    for row in table.told() {
        out.push_str(&format!("{indent}{row}\n"));
    }
}
