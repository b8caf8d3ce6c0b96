//! Nothing a file may hold makes reading panic, overflow the stack or take more than linear time.

use std::fmt::Write as _;
use tenter_syntax::{BlockKind, Document, parse_block};

const SAMPLE: &str = include_str!("data/harbour-dusk.dye");
const MIB: usize = 1024 * 1024;

/// Reads on a small stack, so that recursion on the input would end the test.
fn read(text: &str) -> Document {
    let text = text.to_owned();
    std::thread::Builder::new()
        .stack_size(256 * 1024)
        .spawn(move || {
            let document = Document::parse(&text);
            assert!(document.text() == text, "every byte is kept");
            check_spans(&document);
            document
        })
        .expect("a thread")
        .join()
        .expect("no panic, no overflow")
}

/// Every span lies on character boundaries inside its block, and lines stand in order.
fn check_spans(document: &Document) {
    for placed in &document.blocks {
        let block = &placed.block;
        let inside = |span: tenter_syntax::Span| block.text.get(span.start as usize..span.end as usize).is_some();
        assert!(inside(block.keyword) && inside(block.name));
        let mut end = 0;
        for line in &block.lines {
            assert!(inside(line.span) && inside(line.rest));
            assert!(line.span.start >= end, "lines overlap");
            end = line.span.end;
            let clauses = line.clauses.iter().flat_map(|clause| &clause.items);
            for item in line.items.iter().chain(clauses) {
                assert!(inside(item.span()) && !item.span().is_empty());
                assert!(line.span.start <= item.span().start && item.span().end <= line.span.end);
            }
            for span in line.unread.iter().chain(&line.comment).chain(&line.inner_comments) {
                assert!(inside(*span));
            }
        }
        for oddity in &block.oddities {
            assert!(inside(oddity.span));
        }
    }
}

#[test]
fn every_prefix_of_the_sample() {
    for (at, _) in SAMPLE.char_indices() {
        let document = Document::parse(&SAMPLE[..at]);
        check_spans(&document);
        assert_eq!(document.text(), SAMPLE[..at]);
    }
}

#[test]
fn every_line_of_the_sample_left_out() {
    let lines: Vec<&str> = SAMPLE.split_inclusive('\n').collect();
    for left_out in 0..lines.len() {
        let text: String = lines.iter().enumerate().filter(|(at, _)| *at != left_out).map(|(_, line)| *line).collect();
        let document = Document::parse(&text);
        check_spans(&document);
        // Only the body under a missing header can become unknown, and then as part of the block above.
        assert!(document.blocks.iter().all(|placed| placed.block.kind != BlockKind::Unknown));
    }
}

#[test]
fn every_byte_value() {
    let all: Vec<u8> = (0..=255).collect();
    for byte in all.iter().copied() {
        for around in [
            ("", ""),
            ("steps\n  soak", " tees\n"),
            ("steps\n  soak ", "tees\n"),
            ("mix a\n  5", "g salt\n"),
            ("mix a\n  ", "\n"),
        ] {
            let bytes: Vec<u8> = [around.0.as_bytes(), &[byte], around.1.as_bytes()].concat();
            let document = Document::parse(&String::from_utf8_lossy(&bytes));
            check_spans(&document);
        }
    }
    read(&String::from_utf8_lossy(&all));
}

#[test]
fn one_line_of_five_megabytes() {
    for piece in [
        "soak tees in soda soak for 20 min ",
        "x",
        "5 ",
        "5",
        "\"",
        "(",
        "#",
        " # x",
        ",",
        "in ",
        "until ",
        "1/",
        "1-",
        "±",
        "1 ± ",
        "é",
        "\u{200b}",
        "\u{a0}",
        "; ",
        "5 to ",
        "1 1",
        "at least ",
        "%",
    ] {
        for (size, before, after) in
            [(5 * MIB, "steps\n  ", "\n  dry tees\n"), (MIB / 4, "", ""), (MIB / 4, "mix ", "\n  8 L water\n")]
        {
            let line = piece.repeat(size / piece.len());
            let document = read(&format!("{before}{line}{after}"));
            assert!(document.blocks.len() <= 2);
        }
    }
}

#[test]
fn a_long_line_keeps_its_good_start_and_its_comment() {
    let text = format!("steps\n  soak tees in bath {} # end\n  dry tees\n", ", x".repeat(MIB));
    let document = read(&text);
    let lines = &document.blocks[0].block.lines;
    assert_eq!(lines.len(), 2);
    assert_eq!(lines[0].head.as_ref().map(|head| &*head.word), Some("soak"));
    assert!(lines[0].unread.is_some());
    assert_eq!(lines[0].comment.map(|comment| document.blocks[0].block.slice(comment)), Some("# end"));
}

#[test]
fn a_hundred_thousand_blocks() {
    let mut text = String::new();
    for number in 0..100_000 {
        let _ = writeln!(text, "mix bath {number}\n  {number} g/L soda ash");
    }
    assert_eq!(read(&text).blocks.len(), 100_000);
}

#[test]
fn a_hundred_thousand_lines_in_one_block() {
    let text = format!("mix bath\n{}", "  5 g/L soda ash at 40 °C\n".repeat(100_000));
    assert_eq!(read(&text).blocks[0].block.lines.len(), 100_000);
}

#[test]
fn a_hundred_thousand_continuations() {
    let text = format!("steps\n  wear mask\n{}", "      , gloves # new\n".repeat(100_000));
    let document = read(&text);
    assert_eq!(document.blocks[0].block.lines.len(), 1);
    assert_eq!(document.blocks[0].block.lines[0].inner_comments.len(), 99_999);
}

#[test]
fn a_hundred_thousand_unknown_words_at_the_left_edge() {
    read(&"word\n# note\n\n".repeat(100_000));
    read(&"word\n  body\n".repeat(100_000));
    read(&"8 L water\n".repeat(100_000));
}

#[test]
fn deep_indentation() {
    let mut text = String::from("steps\n");
    for depth in 0..2000 {
        text.push_str(&" ".repeat(depth));
        text.push_str("soak tees\n");
    }
    read(&text);
    read(&format!("steps\n{}soak tees\n", " ".repeat(5 * MIB)));
    read(&format!("steps\n  soak\n{}tees\n", "\t".repeat(5 * MIB)));
}

#[test]
fn open_brackets_and_quotes_in_every_line() {
    read(&format!("steps\n{}", "  soak ((((\"\"\" “ ( \" in ( # x\n".repeat(50_000)));
}

/// Twice the text takes about twice the time; the measure is generous because other work runs beside it.
#[test]
#[allow(clippy::disallowed_types)]
fn time_is_linear() {
    use std::time::Instant;
    let unit = format!("{SAMPLE}\n{}", "steps\n  a a a (((( 5 5 5 \" in in , # x\n".repeat(40));
    let small = unit.repeat(20);
    let large = unit.repeat(160);
    let measure = |text: &str| {
        (0..3)
            .map(|_| {
                let start = Instant::now();
                std::hint::black_box(parse(text));
                start.elapsed()
            })
            .min()
            .unwrap_or_default()
    };
    let (short, long) = (measure(&small), measure(&large));
    assert!(long < short * 8 * 4, "8 times the text took {long:?} after {short:?}");
}

fn parse(text: &str) -> usize {
    Document::parse(text).blocks.len() + parse_block(text).lines.len()
}
