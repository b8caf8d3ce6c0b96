//! Prints the state after each step of a file: for looking at, not a face.
#![allow(clippy::print_stdout, clippy::disallowed_methods, clippy::unwrap_used)]

use std::path::Path;
use std::sync::Arc;

use tenter_rehearse::{EventKind, clock_line, rehearse, zone_line};
use tenter_resolve::{Library, Scale, resolve, sheets};
use tenter_syntax::Document;

struct Folder(String);

impl Library for Folder {
    fn document(&self, path: &str) -> Option<Arc<Document>> {
        std::fs::read_to_string(format!("{}/{path}", self.0)).ok().map(|text| Arc::new(Document::parse(&text)))
    }
}

fn main() {
    let events = std::env::var("EVENTS").is_ok();
    for file in std::env::args().skip(1) {
        let text = std::fs::read_to_string(&file).unwrap();
        let document = Document::parse(&text);
        let path = Path::new(&file);
        let folder = path.parent().unwrap().to_str().unwrap().to_owned();
        for sheet in sheets(&document, path.file_name().unwrap().to_str().unwrap(), &Folder(folder)) {
            for recipe in resolve(&sheet, Scale::AsWritten) {
                println!("== {file} {:?}", recipe.name.as_ref().map(|name| &name.text));
                let rehearsal = rehearse(&recipe);
                for frame in &rehearsal.frames {
                    println!("{:<70} {}", sheet.text(frame.place).trim(), clock_line(&frame.end));
                    for state in &frame.goods {
                        for zone in &state.zones {
                            println!(
                                "    {:?}{} {:?}{}: {}",
                                state.goods.0,
                                state.lot.map_or(String::new(), |lot| format!(" lot {lot}")),
                                zone.key.layout.map(|(_, at)| at),
                                zone.key.face.map_or(String::new(), |face| format!(" {face:?}")),
                                zone_line(&rehearsal, &rehearsal.as_held(frame, state, zone))
                            );
                        }
                    }
                    if events {
                        for event in rehearsal.events_of(frame) {
                            if !matches!(event.kind, EventKind::Mixed { .. } | EventKind::PowderHandled { .. }) {
                                let text = format!("{:?}", event.kind);
                                println!("      * {}", text.chars().take(160).collect::<String>());
                            }
                        }
                    }
                }
                for mix in &rehearsal.mixes {
                    println!(
                        "mix {:?} pH {:?}",
                        mix.name,
                        mix.acidity(&rehearsal.substances).map(|acidity| acidity.ph)
                    );
                }
                for dyeing in rehearsal.dyeings.iter().filter(|dyeing| !dyeing.superseded) {
                    let reacted = rehearsal.reacted(dyeing).map(|reaction| reaction.batch_share);
                    println!(
                        "dye {} zone {:?} lot {:?} {} usable {:.4} mol, acid {:.4}, warmest {:?}, batch {:?}, share {reacted:?}",
                        recipe.material(dyeing.dye).name,
                        dyeing.zone.layout.map(|(_, at)| at),
                        dyeing.lot,
                        dyeing.mass.show(),
                        dyeing.usable.best,
                        dyeing.acid.best,
                        dyeing.warmest.as_ref().map(|(figure, _)| figure.show()),
                        dyeing.batch.as_ref().map(|(figure, cover, _)| (figure.show(), *cover)),
                    );
                }
                for note in &rehearsal.notes {
                    println!("note {}: {}", sheet.text(note.place), note.text);
                }
            }
        }
    }
}
