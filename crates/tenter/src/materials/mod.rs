//! `tenter materials`: what the reference data says, and from where.

mod entry;
mod list;

use tenter_reference::Reference;

use crate::arguments::Materials;
use crate::exit::Outcome;
use crate::output::Output;

/// Runs the command.
pub fn run(wanted: &Materials, output: &mut Output) -> Outcome {
    let reference = Reference::bundled();
    let name = wanted.name.join(" ");
    if name.trim().is_empty() {
        list::show(reference, output);
        return Outcome::Clean;
    }
    if let Some(entry) = reference.find(&name) {
        entry::show(reference, entry, output);
        return Outcome::Clean;
    }
    let near = reference.nearest(&name, None);
    let hint =
        if near.is_empty() { "tenter materials lists all".to_owned() } else { format!("nearest: {}", near.join(", ")) };
    output.tell(&format!("nothing known goes by the name {name}; {hint}"));
    Outcome::Failed
}
