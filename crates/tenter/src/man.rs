//! `tenter man`: the pages of the manual, made from what the command says of itself.

use clap::{Command, CommandFactory};
use clap_mangen::Man as Page;
use clap_mangen::roff::{Inline, Roff, roman};

use crate::arguments::{Arguments, CAUTION, Man, STATUS};
use crate::exit::Outcome;
use crate::files::atomic::put;
use crate::files::path::shown;
use crate::output::Output;

/// Runs the command.
pub fn run(wanted: &Man, output: &mut Output) -> Outcome {
    let mut command = Arguments::command().disable_help_subcommand(true);
    command.build();
    if let Some(folder) = &wanted.into {
        for (name, text) in pages(&command) {
            if let Err(error) = put(folder, &name, &text) {
                output.trouble(&shown(&folder.join(name)), &error.to_string());
                return Outcome::Failed;
            }
        }
        return Outcome::Clean;
    }
    let verb = match wanted.verb.as_deref() {
        None => Some(&command),
        Some(verb) => command.find_subcommand(verb),
    };
    let Some(verb) = verb else {
        let known: Vec<&str> = command.get_subcommands().map(Command::get_name).collect();
        output.tell(&format!("there is no page of that name; known: {}", known.join(", ")));
        return Outcome::Failed;
    };
    output.raw(&page(verb));
    Outcome::Clean
}

/// File name and text of every page.
fn pages(command: &Command) -> Vec<(String, String)> {
    std::iter::once(command)
        .chain(command.get_subcommands())
        .map(|verb| (format!("{}.1", verb.get_display_name().unwrap_or(verb.get_name())), page(verb)))
        .collect()
}

fn page(verb: &Command) -> String {
    // What stands below the help has a section of its own here.
    let name = verb.get_display_name().unwrap_or(verb.get_name()).to_owned();
    let version = format!("tenter {}", env!("CARGO_PKG_VERSION"));
    let page = Page::new(verb.clone().after_help(None::<&str>));
    // A page that is made anew by each command has no date of its own.
    let man = page.title(name).date(" ").source(version).manual("Tenter");
    let mut text = Vec::new();
    let sections = [
        Page::render_title,
        Page::render_name_section,
        Page::render_synopsis_section,
        Page::render_description_section,
        Page::render_options_section,
        Page::render_subcommands_section,
    ];
    // Writing to memory cannot fail.
    for (number, section) in sections.iter().enumerate() {
        if number < sections.len() - 1 || verb.has_subcommands() {
            let _ = section(&man, &mut text);
        }
    }
    let _ = rest(verb).to_writer(&mut text);
    String::from_utf8_lossy(&text).into_owned()
}

/// What holds for every verb.
fn rest(verb: &Command) -> Roff {
    let mut roff = Roff::new();
    roff.control("SH", ["EXIT STATUS"]);
    for (status, what) in STATUS {
        roff.control("TP", []);
        roff.text([roman(status.to_string())]);
        roff.text([roman(what)]);
    }
    roff.control("SH", ["CAUTIONS"]);
    roff.text([roman(CAUTION)]);
    if verb.get_name() != "tenter" {
        roff.control("SH", ["SEE ALSO"]);
        roff.text([Inline::Roman("tenter(1)".to_owned())]);
    }
    roff
}
