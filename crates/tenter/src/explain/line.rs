//! A line of a recipe: the derivation of every number on it and of what it comes to.

use std::path::Path;

use tenter_quantity::Place;
use tenter_rehearse::rehearse;
use tenter_resolve::Scale;

use crate::account::words;
use crate::arguments::Explain;
use crate::exit::Outcome;
use crate::explain::figures::{Story, stories};
use crate::files::source::SourceFile;
use crate::output::{Output, WIDTH};
use crate::recipes::open::open;
use crate::recipes::pick::Picked;
use crate::text::safe::safe;
use crate::text::wrap::{paragraph, width};

/// Shows what the line comes to, in the first recipe or variant it means something in.
pub fn run(file: &Path, line: u32, wanted: &Explain, output: &mut Output) -> Outcome {
    let Some(opened) = open(file, wanted.stdin_filename.as_deref(), output) else { return Outcome::Failed };
    let Some(text) = opened.file.text.lines().nth(line as usize - 1) else {
        output.trouble(&opened.name, &format!("there is no line {line}; it has {}", opened.file.text.lines().count()));
        return Outcome::Failed;
    };
    let Some(picked) = opened.picked(wanted.recipe.as_deref(), Scale::AsWritten, output) else {
        return Outcome::Failed;
    };
    let heading = format!("{}:{line}  {}", opened.name, text.split_whitespace().collect::<Vec<_>>().join(" "));
    output.raw(&paragraph(&safe(&heading), 0, 2, WIDTH));
    for picked in &picked {
        let on = |place: Place| stands_on(picked, place, &opened.file, line);
        let rehearsal = rehearse(&picked.recipe);
        let stories = stories(picked, &rehearsal, &on);
        if stories.is_empty() {
            continue;
        }
        output.raw(&paragraph(&safe(&format!("in {}", picked.title())), 0, 2, WIDTH));
        output.raw(&format!("{}\n", "─".repeat(width(&picked.title()).saturating_add(3).min(WIDTH))));
        show(&stories, picked, &opened.file, output);
        return Outcome::Clean;
    }
    output.raw("No number on this line, and none that comes of it alone.\n");
    Outcome::Clean
}

fn show(stories: &[Story], picked: &Picked<'_>, file: &SourceFile, output: &mut Output) {
    let written = |place: Place| picked.written(place, file);
    let mut told: Vec<String> = Vec::new();
    for story in stories {
        let text = match story {
            Story::Figure(label, figure) => format!("{label}: {}", figure.derivation(&written)),
            Story::Words(text) => text.clone(),
            Story::Lines(lines) => {
                for line in lines {
                    output.raw(&paragraph(&safe(line), 2, 6, WIDTH));
                }
                continue;
            }
        };
        if told.contains(&text) {
            continue;
        }
        output.raw(&paragraph(&safe(&text), 2, 4, WIDTH));
        if let Story::Figure(_, figure) = story
            && let Some(input) = words::measure(figure, &written)
            && !told.contains(&input)
        {
            output.raw(&paragraph(&safe(&format!("wide; to narrow it, measure {input}")), 4, 6, WIDTH));
            told.push(input);
        }
        told.push(text);
    }
}

/// Whether what is written at a place covers a line of the file.
fn stands_on(picked: &Picked<'_>, place: Place, file: &SourceFile, line: u32) -> bool {
    let last = Place { start: place.end.saturating_sub(1).max(place.start), ..place };
    match (picked.line(place, file), picked.line(last, file)) {
        (Some(from), Some(to)) => (from..=to).contains(&line),
        _ => false,
    }
}
