//! The sample recipe, read whole.

mod support;

use tenter_syntax::Document;

const SAMPLE: &str = include_str!("data/harbour-dusk.dye");

#[test]
fn the_sample_reads_as_it_is_meant() {
    insta::assert_snapshot!(support::draw(&Document::parse(SAMPLE)));
}

#[test]
fn the_document_holds_every_byte() {
    assert_eq!(Document::parse(SAMPLE).text(), SAMPLE);
}
