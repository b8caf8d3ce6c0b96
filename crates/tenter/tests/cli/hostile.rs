//! Input that means harm, or is merely broken.

use std::time::Duration;

use crate::bench::{Bench, Run, SOUND, overdrawn};

/// Whether anything that steers a terminal came through.
fn steered(run: &Run) -> bool {
    let bad = |c: char| {
        (c.is_control() && c != '\n' && c != '\t')
            || matches!(c, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' | '\u{200e}' | '\u{200f}' | '\u{61c}')
    };
    run.out.chars().chain(run.err.chars()).any(bad)
}

const CODES: &str = "\u{1b}]0;gotcha\u{7}\u{1b}[31m\u{9b}2J\u{202e}\u{2066}\u{7f}\0\u{8}";

#[test]
fn escape_codes_in_a_recipe_never_reach_the_terminal() {
    let text = format!(
        "edition 1\n\nrecipe A{CODES}B\n  about x{CODES}y\n\ngoods tees{CODES}\n  pieces 2{CODES}\n  weight 160 g each\n  fibre 100% cot{CODES}ton\n\n\
         dye a{CODES}b\n  class re{CODES}active\n  accept no{CODES}rule because {CODES}\n\nmix so{CODES}ak\n  3 L water{CODES}\n  60 g/L soda {CODES} ash\n  7,5 g{CODES} a{CODES}b\n\n\
         steps\n  soak tees{CODES} in so{CODES}ak for 20 min{CODES}\n  fr{CODES}b tees\n\nuse a{CODES} from \"x{CODES}.dye\"\nvariant v{CODES}\n  soak t{CODES}\n"
    );
    let bench = Bench::with("a.dye", &text);
    for arguments in [
        &["check", "a.dye"][..],
        &["check", "a.dye", "--format", "github"],
        &["check", "a.dye", "--format", "json"],
        &["totals", "a.dye"],
        &["totals", "a.dye", "--format", "json"],
        &["rehearse", "a.dye"],
        &["rehearse", "a.dye", "--format", "json"],
        &["explain", "a.dye:3"],
        &["explain", "a.dye:20"],
        &["totals", "a.dye", "--recipe", CODES.trim_matches('\0')],
        &["fmt", "a.dye", "--diff"],
    ] {
        // The program's own arguments cannot hold NUL.
        let arguments: Vec<String> = arguments.iter().map(|word| word.replace('\0', "")).collect();
        let arguments: Vec<&str> = arguments.iter().map(String::as_str).collect();
        let run = bench.run(&arguments);
        assert!(!steered(&run), "{arguments:?}: {run:?}");
        assert!(run.out.len() + run.err.len() > 20, "{arguments:?} shows nothing");
    }
    let run = bench.run(&["check", "a.dye"]);
    assert!(run.out.contains("\\u{1b}"), "they are made visible: {run:?}");
}

#[test]
fn escape_codes_in_arguments_never_reach_the_terminal() {
    let bench = Bench::with("a.dye", SOUND);
    let codes = CODES.replace('\0', "");
    for arguments in [
        ["materials", &codes],
        ["explain", &codes],
        ["check", &codes],
        ["fmt", &codes],
        ["totals", &codes],
        ["rehearse", &codes],
        ["new", &codes],
    ] {
        let run = bench.run(&arguments);
        assert_eq!(run.status, 2, "{arguments:?}: {run:?}");
        assert!(!steered(&run), "{arguments:?}: {run:?}");
    }
}

#[cfg(unix)]
#[test]
fn escape_codes_in_a_file_name_never_reach_the_terminal() {
    let bench = Bench::with("e\u{1b}[31m\u{202e}.dye", overdrawn());
    for format in ["text", "json", "github"] {
        let run = bench.run(&["check", "--format", format]);
        assert_eq!(run.status, 1, "{run:?}");
        assert!(!steered(&run), "{run:?}");
    }
    let run = bench.run(&["fmt", "--check"]);
    assert!(!steered(&run), "{run:?}");
}

#[test]
fn a_file_that_is_no_text_is_named_with_its_first_bad_byte_and_checked_all_the_same() {
    let mut bytes = overdrawn().into_bytes();
    let at = overdrawn().find("Sound").unwrap();
    bytes.splice(at..at + 1, [0xe9, b'S']);
    let run = Bench::with("a.dye", bytes).run(&["check"]);
    assert_eq!(run.status, 1, "{run:?}");
    assert!(run.out.contains("mix-overdrawn"), "{run:?}");
    assert!(run.out.contains("[a.dye:3:8]") && run.out.contains("UTF-8"), "{run:?}");
    assert!(run.err.contains("a.dye: line 3, column 8: the byte 0xe9 (the 19. of the file)"), "{run:?}");
}

#[test]
fn formatting_leaves_a_file_alone_that_is_no_text() {
    let bench = Bench::new();
    let path = bench.put("a.dye", b"recipe A\n   by caf\xe9\n");
    let run = bench.run(&["fmt"]);
    assert_eq!(run.status, 2, "{run:?}");
    #[allow(clippy::disallowed_methods, reason = "tests read their own files")]
    let after = std::fs::read(path).unwrap();
    assert_eq!(after, b"recipe A\n   by caf\xe9\n");
}

#[test]
fn nothing_brings_the_program_down() {
    let long = "x".repeat(1 << 20);
    let cases: Vec<(&str, Vec<u8>)> = vec![
        ("empty", Vec::new()),
        ("byte order mark", b"\xef\xbb\xbf".to_vec()),
        ("only blanks", b" \t\r\n\r \n".to_vec()),
        ("NUL bytes", vec![0; 4096]),
        ("every byte", (0..=255).cycle().take(8192).collect()),
        ("one long word", long.clone().into_bytes()),
        (
            "one long line in a recipe",
            format!("recipe A\n  about {long}\ngoods {long}\n  pieces {long}\n").into_bytes(),
        ),
        (
            "one long line of amounts",
            format!("recipe A\nmix b\n  {}\n", "60 g/L soda ash ".repeat(10_000)).into_bytes(),
        ),
        ("many blocks", "mix b\n  1 L water\n".repeat(500).into_bytes()),
        (
            "deep indentation",
            (0..300).map(|depth| format!("{}step\n", " ".repeat(depth))).collect::<String>().into_bytes(),
        ),
        (
            "great numbers",
            format!(
                "recipe A\ngoods t\n  pieces {0}\n  weight {0} g each\nmix m\n  {0} L water\n  1e999 g soda ash\n",
                "9".repeat(400)
            )
            .into_bytes(),
        ),
    ];
    for (what, bytes) in cases {
        let bench = Bench::with("a.dye", &bytes);
        for arguments in [
            &["check", "a.dye"][..],
            &["check", "a.dye", "--format", "json"],
            &["totals", "a.dye"],
            &["totals", "a.dye", "--format", "json"],
            &["totals", "a.dye", "--pieces", "7"],
            &["fmt", "--diff", "a.dye"],
        ] {
            let started = started();
            let run = bench.run(arguments);
            assert!((0..=2).contains(&run.status), "{what}, {arguments:?}: {}", run.status);
            assert!(
                !run.err.contains("panicked") && !run.err.contains("brought the checker down"),
                "{what}, {arguments:?}: {}",
                run.err
            );
            assert!(started.elapsed() < Duration::from_secs(60), "{what}, {arguments:?}: {:?}", started.elapsed());
        }
    }
}

#[allow(clippy::disallowed_methods, clippy::disallowed_types, reason = "tests look at the clock")]
fn started() -> std::time::Instant {
    std::time::Instant::now()
}

#[test]
fn a_finding_in_a_long_line_is_shown_by_the_part_that_matters() {
    let text = SOUND.replace("  6 g      sea\n", &format!("  6 g      sea  # {}\n", "x".repeat(100_000)));
    let text = text.replace("room     22 °C", &format!("room     22 °C\n  note     {}\n  rom 3", "y".repeat(100_000)));
    let run = Bench::with("a.dye", text).run(&["check"]);
    assert!(run.out.contains("unknown-key"), "{}", run.out.len());
    assert!(run.out.lines().all(|line| line.chars().count() <= 100), "a long line is shown whole");
}
