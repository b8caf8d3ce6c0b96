//! The account as text, for a terminal or a printed page.

use tenter_rehearse::Rehearsal;

use crate::pick::Picked;
use crate::rehearsal::telling::{Account, COLUMNS, Cells, Step, account};
use crate::source::Source;
use crate::text::WIDTH;
use crate::text::wrap::{paragraph, width, wrap};

/// The account of each recipe or variant.
pub fn text(accounts: &[(&Picked<'_>, Rehearsal)], file: &dyn Source) -> String {
    let between = format!("\n{}\n\n", "═".repeat(WIDTH));
    let drawn: Vec<String> =
        accounts.iter().map(|(picked, rehearsal)| draw(&account(picked, rehearsal, file))).collect();
    drawn.join(&between)
}

/// Widths: a part of the goods, then what the columns hold.
const WIDTHS: [usize; 5] = [26, 10, 11, 12, 8];
const INDENT: usize = 4;

fn draw(account: &Account) -> String {
    let mut out = paragraph(&account.title, 0, 0, WIDTH);
    out.push_str(&format!("{}\n", "─".repeat(width(&account.title).min(WIDTH))));
    out.push_str(&paragraph(&account.about, 0, 0, WIDTH));
    for group in &account.groups {
        out.push('\n');
        line(&mut out, 0, &group.heading);
        row(&mut out, "", &COLUMNS.map(str::to_owned));
        for step in &group.steps {
            self::step(&mut out, step);
        }
    }
    let ending = &account.ending;
    out.push('\n');
    line(&mut out, 0, &ending.time);
    if let Some(cut) = ending.cut_short {
        line(&mut out, 0, cut);
    }
    for (heading, lines) in &ending.lists {
        out.push_str(&format!("\n{heading}\n"));
        lines.iter().for_each(|text| line(&mut out, 2, text));
    }
    out
}

fn line(out: &mut String, indent: usize, text: &str) {
    out.push_str(&paragraph(text, indent, indent + 2, WIDTH));
}

/// A line of the state; a long name takes lines of its own.
fn row(out: &mut String, name: &str, cells: &Cells) {
    let [first, rest @ ..] = WIDTHS;
    let names = wrap(name, first);
    for (number, name) in names.iter().enumerate() {
        let mut line = format!("{}{name}{}", " ".repeat(INDENT), " ".repeat(first.saturating_sub(width(name))));
        if number + 1 == names.len() {
            for (cell, wide) in cells.iter().zip(rest) {
                line.push_str(&format!("  {}{cell}", " ".repeat(wide.saturating_sub(width(cell)))));
            }
        }
        out.push_str(line.trim_end());
        out.push('\n');
    }
}

fn step(out: &mut String, step: &Step) {
    let number = step.line.map(|line| line.to_string()).unwrap_or_default();
    for (at, line) in wrap(&step.text, WIDTH - 6).iter().enumerate() {
        let number = if at == 0 { number.as_str() } else { "" };
        out.push_str(&format!("{number:>4}  {line}\n"));
    }
    line(out, 6, &step.clock);
    step.waits.iter().for_each(|text| line(out, 6, text));
    step.liquors.iter().for_each(|text| line(out, 6, text));
    for goods in &step.goods {
        goods.rows.iter().for_each(|(name, cells)| row(out, name, cells));
        goods.dyes.iter().for_each(|text| line(out, INDENT + 2, text));
    }
}
