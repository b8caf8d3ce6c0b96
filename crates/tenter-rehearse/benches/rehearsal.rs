//! Speed of a whole rehearsal beside that of reading its text.
#![allow(clippy::unwrap_used)]

use divan::{Bencher, black_box};
use tenter_rehearse::rehearse;
use tenter_resolve::{NoLibrary, Recipe, Scale, resolve, sheets};
use tenter_syntax::Document;

fn main() {
    divan::main();
}

const SIXTY_LINES: &str = include_str!("six-zones.dye");

fn recipe() -> Recipe {
    let document = Document::parse(SIXTY_LINES);
    let sheet = sheets(&document, "six-zones.dye", &NoLibrary).remove(0);
    resolve(&sheet, Scale::AsWritten).remove(0)
}

/// Sixty lines, six zones, dye on each, irrigated, batched and washed off.
#[divan::bench]
fn rehearse_sixty_lines_six_zones(bencher: Bencher) {
    let recipe = recipe();
    bencher.bench_local(|| black_box(rehearse(black_box(&recipe))));
}

/// The same with the pH of every zone after every step asked for.
#[divan::bench]
fn rehearse_and_ask_every_ph(bencher: Bencher) {
    let recipe = recipe();
    bencher.bench_local(|| {
        let rehearsal = rehearse(black_box(&recipe));
        for frame in &rehearsal.frames {
            for zone in frame.goods.iter().flat_map(|goods| &goods.zones) {
                black_box(zone.acidity(&rehearsal.substances));
            }
        }
    });
}

/// Reading the text, for scale.
#[divan::bench]
fn parse_sixty_lines() -> Document {
    Document::parse(black_box(SIXTY_LINES))
}

/// Resolving it, for scale.
#[divan::bench]
fn resolve_sixty_lines(bencher: Bencher) {
    let document = Document::parse(SIXTY_LINES);
    bencher.bench_local(|| {
        let sheet = sheets(black_box(&document), "six-zones.dye", &NoLibrary).remove(0);
        black_box(resolve(&sheet, Scale::AsWritten))
    });
}
