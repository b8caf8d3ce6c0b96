//! How long each stage takes on a whole recipe, side by side in one run: what counts is the ratio to the grammar
//! alone (`check` is to stay within five times of it).

#![allow(missing_docs)]

use divan::Bencher;
use tenter_resolve::{NoLibrary, Scale, Sheet, resolve, sheets};
use tenter_syntax::{Document, pest_only};

const RECIPES: [(&str, &str); 3] = [
    ("harbour-dusk", include_str!("../recipes/harbour-dusk.dye")),
    ("slate-shirts", include_str!("../recipes/slate-shirts.dye")),
    ("printed-fern", include_str!("../recipes/printed-fern.dye")),
];

fn main() {
    divan::main();
}

fn text(name: &str) -> &'static str {
    RECIPES.iter().find(|(known, _)| *known == name).map_or("", |(_, text)| *text)
}

fn names() -> impl Iterator<Item = &'static str> {
    RECIPES.iter().map(|(name, _)| *name)
}

fn sheet(name: &str) -> Sheet {
    sheets(&Document::parse(text(name)), name, &NoLibrary).into_iter().next().unwrap_or_default()
}

#[divan::bench(args = names())]
fn a_grammar_alone(bencher: Bencher<'_, '_>, name: &str) {
    let document = Document::parse(text(name));
    let bodies: Vec<String> = document
        .blocks
        .iter()
        .map(|placed| placed.block.text.split_once('\n').map_or("", |(_, body)| body).to_owned())
        .collect();
    bencher.bench(|| bodies.iter().map(|body| pest_only(body)).sum::<usize>());
}

#[divan::bench(args = names())]
fn b_parse(bencher: Bencher<'_, '_>, name: &str) {
    bencher.bench(|| Document::parse(divan::black_box(text(name))));
}

#[divan::bench(args = names())]
fn c_resolve(bencher: Bencher<'_, '_>, name: &str) {
    let sheet = sheet(name);
    bencher.bench(|| resolve(divan::black_box(&sheet), Scale::AsWritten));
}

#[divan::bench(args = names())]
fn d_rehearse(bencher: Bencher<'_, '_>, name: &str) {
    let recipes = resolve(&sheet(name), Scale::AsWritten);
    bencher.bench(|| tenter_rehearse::rehearse(divan::black_box(&recipes[0])));
}

#[divan::bench(args = names())]
fn e_check_all_stages(bencher: Bencher<'_, '_>, name: &str) {
    bencher.bench(|| {
        tenter_rules::check_document(&Document::parse(divan::black_box(text(name))), name, &NoLibrary, Scale::AsWritten)
    });
}
