//! How findings look to people.

use crate::bench::{Bench, SOUND, overdrawn, project, run_in};

#[test]
fn a_report_shows_the_two_numbers_where_they_are_written() {
    let run = Bench::with("a.dye", overdrawn()).run(&["check", "a.dye"]);
    insta::assert_snapshot!(run.out);
}

#[test]
fn a_report_offers_the_fix() {
    let text = SOUND.replace("60 g/L   soda ash", "60 g/L   sodda ash").replace("room     22 °C", "room     22,5 °C");
    let run = Bench::with("a.dye", text).run(&["check", "a.dye"]);
    insta::assert_snapshot!(run.out);
}

#[test]
fn tabs_wide_letters_and_windows_line_ends_keep_the_carets_in_place() {
    let text = SOUND.replace("  60 g/L   soda ash", "\t60 g/L\t小麦 粉é ash").replace('\n', "\r\n");
    let run = Bench::with("a.dye", text).run(&["check", "a.dye"]);
    insta::assert_snapshot!(run.out);
}

#[test]
fn nothing_is_wider_than_the_page() {
    for folder in ["tests/recipes", "tests/broken"] {
        let run = run_in(&project(), &["check", folder, "--accepted"], b"");
        for line in run.out.lines() {
            // Words that cannot be broken may stick out a little.
            assert!(line.chars().count() <= 90, "{line}");
        }
        let wide = run.out.lines().filter(|line| line.chars().count() > 80).count();
        assert!(wide * 50 <= run.out.lines().count(), "{folder}: {wide} lines wider than 80");
    }
}

#[test]
fn without_a_terminal_nothing_is_coloured() {
    let run = Bench::with("a.dye", overdrawn()).run(&["check"]);
    assert!(!run.out.contains('\u{1b}') && run.out.contains(",-["), "{run:?}");
}
