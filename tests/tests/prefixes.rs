//! Every prefix of every bundled recipe, cut at every character: it parses, keeps its text and resolves what it can.

mod support;

use tenter_resolve::{Scale, resolve, sheets};
use tenter_syntax::Document;

#[test]
fn every_prefix_is_read() {
    let library = support::Folder(support::folder("recipes"));
    for (name, text) in support::collection("recipes") {
        let mut goods = 0;
        for (end, _) in text.char_indices().chain(std::iter::once((text.len(), ' '))) {
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
