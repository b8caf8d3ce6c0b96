//! What holds for every text, and for every sequence of edits.

use proptest::prelude::*;
use std::sync::Arc;
use tenter_syntax::{Document, Encoding, LineIndex, Position, fold_name, parse_block};

const SAMPLE: &str = include_str!("data/harbour-dusk.dye");

/// Text made of the notation's own pieces, well and badly put together.
fn notation() -> impl Strategy<Value = String> {
    let piece = prop_oneof![
        4 => prop::sample::select(vec![
            "recipe ", "goods ", "dye ", "mix ", "steps ", "layout ", "log 2026-05-03", "use ", "variant ", "shelf", "vessel ",
            "soak ", "tees ", "in ", "at ", "for ", "until ", "because ", "from ", "to ", "and stir", "at least ", "about ",
            "5 ", "1/2 ", "1½ ", "10-20 ", "2,5 ", "1:20 ", "g/L ", "°C ", "% owg ", "soda ash ", "± ", "#1d5fa6 ", "#add ",
            "# comment", "\"", "(", ")", ", ", "“", "”", "/", "-", "2g ", "40C ", "note ", "weight ", "make up to 8 L",
        ]).prop_map(str::to_owned),
        3 => prop::sample::select(vec!["\n", "\n  ", "\n      ", "\n\n", "\r\n  ", "\r", "\n\t", "\n# x\n", " ", "\u{a0}", "\u{200b}", "\u{feff}"])
            .prop_map(str::to_owned),
        1 => any::<char>().prop_map(String::from),
    ];
    prop::collection::vec(piece, 0..60).prop_map(|pieces| pieces.concat())
}

fn same(a: &Document, b: &Document) -> bool {
    format!("{a:?}") == format!("{b:?}")
}

/// One replacement: where, how much, with what.
type Change = (usize, usize, String);

fn changed(text: &str, (at, length, with): &Change) -> String {
    let floor = |mut at: usize| {
        at = at.min(text.len());
        while !text.is_char_boundary(at) {
            at -= 1;
        }
        at
    };
    let start = floor(at % (text.len() + 1));
    let end = floor(start + length);
    format!("{}{with}{}", &text[..start], &text[end.max(start)..])
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn every_text_is_kept(text in any::<String>()) {
        prop_assert_eq!(Document::parse(&text).text(), text);
    }

    #[test]
    fn every_notation_is_kept(text in notation()) {
        prop_assert_eq!(Document::parse(&text).text(), text);
    }

    #[test]
    fn a_block_depends_on_its_own_text_only(text in notation()) {
        for placed in Document::parse(&text).blocks {
            let again = parse_block(&placed.block.text);
            prop_assert_eq!(format!("{:?}", placed.block), format!("{:?}", again));
        }
    }

    #[test]
    fn edits_give_what_a_fresh_start_gives(
        start in prop_oneof![Just(SAMPLE.to_owned()), notation()],
        changes in prop::collection::vec((any::<usize>(), 0_usize..40, notation()), 1..8),
    ) {
        let mut text = start;
        let mut document = Document::parse(&text);
        for change in &changes {
            text = changed(&text, change);
            document = document.reparse(&text);
            prop_assert!(same(&document, &Document::parse(&text)));
        }
    }

    #[test]
    fn an_edit_leaves_other_blocks_alone(at in 0..SAMPLE.len()) {
        let before = Document::parse(SAMPLE);
        let text = changed(SAMPLE, &(at, 0, "x".to_owned()));
        let after = before.reparse(&text);
        let kept = after.blocks.iter().filter(|new| before.blocks.iter().any(|old| Arc::ptr_eq(&old.block, &new.block)));
        prop_assert!(kept.count() + 3 >= before.blocks.len());
    }

    #[test]
    fn positions_go_there_and_back(text in notation(), at in any::<usize>()) {
        let index = LineIndex::new(&text);
        let mut at = at % (text.len() + 1);
        while !text.is_char_boundary(at) {
            at -= 1;
        }
        for encoding in [Encoding::Utf8, Encoding::Utf16, Encoding::Utf32] {
            let position = index.position(&text, at, encoding);
            let back = index.offset(&text, position, encoding);
            // Between CR and LF there is no position of its own.
            if text.as_bytes().get(at.wrapping_sub(1)..=at) == Some(b"\r\n") {
                prop_assert_eq!(back, at - 1);
            } else {
                prop_assert_eq!(back, at);
            }
        }
    }

    #[test]
    fn any_position_has_an_offset(text in any::<String>(), line in any::<u32>(), column in any::<u32>()) {
        let index = LineIndex::new(&text);
        for line in [line, line % 5] {
            for column in [column, column % 9] {
                for encoding in [Encoding::Utf8, Encoding::Utf16, Encoding::Utf32] {
                    let offset = index.offset(&text, Position { line, column }, encoding);
                    prop_assert!(text.is_char_boundary(offset));
                }
            }
        }
    }

    #[test]
    fn folding_twice_changes_nothing(name in any::<String>()) {
        let once = fold_name(&name);
        prop_assert_eq!(fold_name(&once), once);
    }
}

#[test]
fn names_match_without_regard_to_how_they_were_typed() {
    let plain = fold_name("Blé d'été");
    assert_eq!(fold_name("  ble\u{301}   D\u{2019}E\u{301}TE\u{301} "), plain);
    assert_eq!(fold_name("bl\u{ad}é\u{200b} d'été"), plain);
    assert_eq!(fold_name("Glauber\u{2019}s\u{a0}Salt"), "glauber's salt");
    assert_eq!(fold_name("STRASSE"), fold_name("Straße"));
}

#[test]
fn columns_count_as_the_encoding_says() {
    let text = "é🌊x\r\n  日本\n";
    let index = LineIndex::new(text);
    let x = text.find('x').expect("an x");
    let column = |encoding| index.position(text, x, encoding).column;
    assert_eq!((column(Encoding::Utf8), column(Encoding::Utf16), column(Encoding::Utf32)), (6, 3, 2));
    assert_eq!(index.line_count(), 3);
    assert_eq!(index.position(text, text.len(), Encoding::Utf16), Position { line: 2, column: 0 });
    // Inside the surrogate pair: the start of the character.
    assert_eq!(index.offset(text, Position { line: 0, column: 2 }, Encoding::Utf16), 2);
    // Behind the line: before its break.
    assert_eq!(index.offset(text, Position { line: 0, column: 99 }, Encoding::Utf16), 7);
    assert_eq!(index.offset(text, Position { line: 99, column: 0 }, Encoding::Utf16), text.len());
}
