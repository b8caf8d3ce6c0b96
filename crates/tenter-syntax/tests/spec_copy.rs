//! The specification carries the grammar, byte for byte.

#[test]
fn spec_carries_the_grammar() {
    let copy = include_str!("../../../spec/notation.pest");
    assert!(
        copy == tenter_syntax::GRAMMAR,
        "spec/notation.pest is stale: copy crates/tenter-syntax/src/notation.pest over it"
    );
}
