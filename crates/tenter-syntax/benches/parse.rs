//! How long reading takes, and how much of it is the grammar: compare `grammar_alone` with `document`.

use divan::{Bencher, black_box, counter::BytesCount};
use tenter_syntax::{Document, pest_only};

const SAMPLE: &str = include_str!("../tests/data/harbour-dusk.dye");

fn main() {
    divan::main();
}

/// The bodies the grammar gets to see.
fn bodies(document: &Document) -> Vec<String> {
    let body = |text: &str| text.split_once('\n').map_or_else(String::new, |(_, body)| body.to_owned());
    document.blocks.iter().map(|placed| body(&placed.block.text)).collect()
}

#[divan::bench]
fn grammar_alone(bencher: Bencher<'_, '_>) {
    let bodies = bodies(&Document::parse(SAMPLE));
    bencher
        .counter(BytesCount::of_str(SAMPLE))
        .bench(|| bodies.iter().map(|body| pest_only(black_box(body))).sum::<usize>());
}

#[divan::bench]
fn document(bencher: Bencher<'_, '_>) {
    bencher.counter(BytesCount::of_str(SAMPLE)).bench(|| Document::parse(black_box(SAMPLE)));
}

#[divan::bench]
fn document_with_cr_lf(bencher: Bencher<'_, '_>) {
    let text = SAMPLE.replace('\n', "\r\n");
    bencher.counter(BytesCount::of_str(&text)).bench(|| Document::parse(black_box(&text)));
}

#[divan::bench]
fn again_after_one_letter(bencher: Bencher<'_, '_>) {
    let document = Document::parse(SAMPLE);
    let edited = SAMPLE.replacen("soda soak for 20", "soda soaks for 20", 1);
    bencher.bench(|| document.reparse(black_box(&edited)));
}

#[divan::bench]
fn a_megabyte(bencher: Bencher<'_, '_>) {
    let text = SAMPLE.repeat(1_000_000 / SAMPLE.len());
    bencher.counter(BytesCount::of_str(&text)).bench(|| Document::parse(black_box(&text)));
}

#[divan::bench]
fn a_megabyte_again_after_one_letter(bencher: Bencher<'_, '_>) {
    let text = SAMPLE.repeat(1_000_000 / SAMPLE.len());
    let document = Document::parse(&text);
    let mut edited = text.clone();
    edited.insert(text.len() / 2, ' ');
    bencher.bench(|| document.reparse(black_box(&edited)));
}
