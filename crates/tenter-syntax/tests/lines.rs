//! Blocks, indentation and continuation.

mod support;

use support::draw;
use tenter_syntax::{BlockKind, Document, OddityKind};

fn kinds(text: &str) -> Vec<BlockKind> {
    Document::parse(text).blocks.iter().map(|placed| placed.block.kind).collect()
}

fn drawn(text: &str) -> String {
    draw(&Document::parse(text))
}

#[test]
fn four_columns_deeper_continues() {
    let text = "steps\n  soap off tees in 15 L water # warm\n      at 60 °C\n      with 1 g/L detergent\n  dry tees\n";
    assert_eq!(
        drawn(text),
        "Steps ‹›\n  soap off | ‹tees› | In: 15 ‹L water› | At: 60 ‹°C› | With: 1 ‹g/L detergent› | inner=# warm\n  dry | ‹tees›\n"
    );
}

#[test]
fn three_columns_deeper_do_not() {
    assert_eq!(drawn("steps\n  soak tees\n     spin tees\n"), "Steps ‹›\n  soak | ‹tees›\n  spin | ‹tees›\n");
}

#[test]
fn a_tab_counts_to_the_next_multiple_of_four() {
    assert_eq!(drawn("steps\n  soak tees\n\tspin tees\n"), "Steps ‹›\n  soak | ‹tees›\n  spin | ‹tees›\n");
    assert_eq!(drawn("steps\n\tsoak tees\n\t\tin bath\n"), "Steps ‹›\n  soak | ‹tees› | In: ‹bath›\n");
}

#[test]
fn every_continuation_is_measured_from_the_line_continued() {
    // Six columns, then eight: both four deeper than two, and the second need not be deeper than the first.
    let text = "steps\n  soak tees\n        in bath\n      for 5 min\n";
    assert_eq!(drawn(text), "Steps ‹›\n  soak | ‹tees› | In: ‹bath› | For: 5 ‹min›\n");
}

#[test]
fn a_blank_line_ends_a_continuation() {
    let text = "steps\n  soak tees\n\n      in bath\n";
    assert_eq!(drawn(text), "Steps ‹›\n  soak | ‹tees›\n  In: ‹bath›\n");
}

#[test]
fn a_comment_line_does_not_continue_and_does_not_stop_one() {
    let text = "steps\n  soak tees\n      # in the tub\n      for 5 min\n      # end\n";
    assert_eq!(drawn(text), "Steps ‹›\n  soak | ‹tees› | For: 5 ‹min› | inner=# in the tub\n  comment=# end\n");
}

#[test]
fn a_comma_at_the_end_does_not_continue() {
    let text = "steps\n  wear mask,\n  soak tees\n";
    assert_eq!(drawn(text), "Steps ‹›\n  wear | ‹mask› ,\n  soak | ‹tees›\n");
}

#[test]
fn a_continuation_that_would_stand_alone_is_noticed() {
    let text = "mix bath\n  8 L water\n      60 g/L soda ash\n";
    let document = Document::parse(text);
    let kinds: Vec<_> = document.blocks[0].block.oddities.iter().map(|oddity| oddity.kind).collect();
    assert_eq!(kinds, [OddityKind::LooksLikeOwnLine]);
    assert_eq!(document.blocks[0].block.slice(document.blocks[0].block.oddities[0].span), "60 g/L soda ash");
    let about = "recipe Dusk\n  about what to do on\n      weight off your feet\n";
    assert_eq!(Document::parse(about).blocks[0].block.oddities, []);
}

#[test]
fn stray_lines_belong_above() {
    let text = "mix bath\n  8 L water\n60 g/L soda ash\n    at 40 °C\n  5 g urea\n\nsteps\n  soak tees\nspin tees\n  dry tees\n";
    assert_eq!(kinds(text), [BlockKind::Mix, BlockKind::Steps]);
    let document = Document::parse(text);
    for placed in &document.blocks {
        assert_eq!(placed.block.oddities.iter().map(|o| o.kind).collect::<Vec<_>>(), [OddityKind::StrayLine]);
    }
    assert_eq!(document.blocks[0].block.lines.len(), 4);
    assert_eq!(document.blocks[1].block.lines.len(), 3);
}

#[test]
fn an_unknown_word_opens_a_block_only_over_indented_lines() {
    assert_eq!(kinds("stpes wash\n  soak tees\n"), [BlockKind::Unknown]);
    assert_eq!(kinds("hello\n"), [BlockKind::Loose]);
    assert_eq!(kinds("mix bath\n  8 L water\nhello\nsteps\n  dry tees\n"), [BlockKind::Mix, BlockKind::Steps]);
    assert_eq!(kinds("mix bath\n  8 L water\nhello\n\n# why\n  dry tees\n"), [BlockKind::Mix, BlockKind::Unknown]);
}

#[test]
fn what_stands_before_the_first_block_is_loose() {
    assert_eq!(kinds("# a recipe\n\nrecipe Dusk\n"), [BlockKind::Loose, BlockKind::Recipe]);
    assert_eq!(kinds("  8 L water\nrecipe Dusk\n"), [BlockKind::Loose, BlockKind::Recipe]);
    assert_eq!(kinds("8 L water\n"), [BlockKind::Loose]);
    assert_eq!(kinds(""), []);
}

#[test]
fn kinds_are_words_in_any_case() {
    assert_eq!(kinds("Recipe Dusk\nGOODS tees\nstep\n"), [BlockKind::Recipe, BlockKind::Goods, BlockKind::Steps]);
    assert_eq!(kinds("recipes Dusk\n"), [BlockKind::Loose]);
}

#[test]
fn the_header_is_free_text_up_to_the_comment() {
    assert_eq!(drawn("mix  night at sea, half as deep   # old\n"), "Mix ‹night at sea, half as deep›\n");
    assert_eq!(drawn("use soda soak, rings from \"house.dye\"\n"), "Use ‹soda soak, rings from \"house.dye\"›\n");
}

#[test]
fn line_ends_marks_and_blanks_of_all_sorts_read_alike() {
    let plain = "steps\n  soak tees in 8 L water\n      at 40 °C # warm\n  dry tees\n";
    let expected = drawn(plain);
    assert_eq!(drawn(&plain.replace('\n', "\r\n")), expected);
    assert_eq!(drawn(&plain.replace('\n', "\r")), expected);
    assert_eq!(drawn(&format!("\u{feff}{plain}")), expected);
    assert_eq!(drawn(plain.trim_end()), expected);
    assert_eq!(drawn(&plain.replace("soak tees", "soak\u{a0}tees").replace("8 L", "8\u{202f}L")), expected);
    assert_eq!(drawn(&plain.replace("soak tees", "soak\ttees")), expected);
}

#[test]
fn an_invisible_character_at_the_edge_of_a_word_is_no_part_of_it() {
    let block = tenter_syntax::parse_block("steps\n  soak\u{200b} tees in 8\u{200b}L water\n");
    assert_eq!(support::draw_line(&block, &block.lines[0]), "soak | ‹tees› | In: 8 ‹L water›");
}

#[test]
fn prose_runs_over_continuations() {
    let text = "recipe Dusk\n  about rings, folded # twice\n      and dyed\n  by A. N.\n";
    let document = Document::parse(text);
    let block = &document.blocks[0].block;
    assert_eq!(block.prose(&block.lines[0]), "rings, folded and dyed");
    assert_eq!(block.prose(&block.lines[1]), "A. N.");
}

#[test]
fn a_comment_in_the_middle_of_words_is_none_of_them() {
    let text = "steps\n  add 5 g soda # the light one\n      ash to bath\n";
    assert_eq!(drawn(text), "Steps ‹›\n  add | 5 ‹g soda› ‹ash› | To: ‹bath› | inner=# the light one\n");
}
