//! Prefixes of every bundled recipe, cut at any character: they parse, keep their text and resolve what they can.

mod support;

use tenter_resolve::{Scale, resolve, sheets};
use tenter_syntax::Document;

const STRIDE: usize = 3;

#[test]
fn every_prefix_is_read() {
    let library = support::Folder(support::folder("recipes"));
    for (turn, (name, text)) in support::collection("recipes").into_iter().enumerate() {
        let mut goods = 0;
        // Each is cut at every third character, from another one on: what stands in several is cut everywhere.
        let ends = text.char_indices().map(|(end, _)| end).skip(turn % STRIDE).step_by(STRIDE);
        for end in ends.chain(std::iter::once(text.len())) {
            let prefix = &text[..end];
            let document = Document::parse(prefix);
            assert_eq!(document.text(), prefix, "{name} up to {end}");
            for sheet in sheets(&document, &name, &library) {
                for recipe in resolve(&sheet, Scale::AsWritten) {
                    // What was read once stays read: goods never go away again as the text grows.
                    if recipe.variant.is_none() {
                        assert!(recipe.goods.len() >= goods, "{name} up to {end}: goods lost");
                        goods = recipe.goods.len();
                    }
                }
            }
        }
    }
}
