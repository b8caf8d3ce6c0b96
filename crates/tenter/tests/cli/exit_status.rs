//! 0 clean, 1 findings at error level, 2 could not run.

use crate::bench::{Bench, SOUND, overdrawn, unused_mix};

#[test]
fn clean_is_nought() {
    let run = Bench::with("a.dye", SOUND).run(&["check"]);
    assert_eq!((run.status, run.out.as_str()), (0, ""), "{run:?}");
    assert_eq!(run.err, "nothing to say about 1 file\n");
}

#[test]
fn an_error_is_one_and_the_summary_goes_to_the_other_stream() {
    let run = Bench::with("a.dye", overdrawn()).run(&["check", "a.dye"]);
    assert_eq!(run.status, 1, "{run:?}");
    assert!(run.out.contains("mix-overdrawn"), "{run:?}");
    assert_eq!(run.err, "1 error in 1 of 1 file\n");
}

#[test]
fn warnings_alone_are_nought_unless_there_are_too_many() {
    let bench = Bench::with("a.dye", unused_mix());
    assert_eq!(bench.run(&["check"]).status, 0);
    assert_eq!(bench.run(&["check", "--max-warnings", "1"]).status, 0);
    assert_eq!(bench.run(&["check", "--max-warnings", "0"]).status, 1);
}

#[test]
fn exit_zero_hides_findings_but_no_failures() {
    let bench = Bench::with("a.dye", overdrawn());
    assert_eq!(bench.run(&["check", "--exit-zero"]).status, 0);
    assert_eq!(bench.run(&["check", "--exit-zero", "a.dye", "missing.dye"]).status, 2);
}

#[test]
fn what_cannot_be_read_is_two_and_the_rest_is_checked() {
    let run = Bench::with("a.dye", overdrawn()).run(&["check", "a.dye", "missing.dye"]);
    assert_eq!(run.status, 2, "{run:?}");
    assert!(run.out.contains("mix-overdrawn"), "{run:?}");
    assert!(run.err.contains("missing.dye: "), "{run:?}");
}

#[test]
fn a_scaled_recipe_is_checked_as_scaled() {
    let bench = Bench::with("a.dye", SOUND.replace("  60 g/L", "  30 g/L"));
    let (written, scaled) = (bench.run(&["check"]), bench.run(&["check", "--pieces", "2"]));
    assert_eq!((written.status, &written.out), (scaled.status, &scaled.out), "two pieces are what is written");
    let scaled = bench.run(&["check", "--pieces", "24", "--format", "json"]);
    assert!(scaled.status < 2, "{scaled:?}");
    assert!(!scaled.out.contains("\"edits\""), "a scaled recipe has no text to change: {scaled:?}");
}

#[test]
fn bad_arguments_are_two() {
    let bench = Bench::with("a.dye", SOUND);
    for arguments in [
        &["chekc"][..],
        &["check", "--format", "xml"],
        &["check", "--level", "loud"],
        &["check", "--max-warnings", "-1"],
        &["check", "-", "a.dye"],
        &["check", "a.dye", "--stdin-filename", "b.dye"],
        &["check", "--pieces", "0"],
        &["check", "--pieces", "6", "--fix"],
        &["totals"],
        &["totals", "missing.dye"],
        &["totals", "a.dye", "--pieces", "0"],
        &["totals", "a.dye", "--pieces", "NaN"],
        &["totals", "a.dye", "--pieces", "1e300"],
        &["totals", "a.dye", "--recipe", "Unheard Of"],
        &["fmt", "missing.dye"],
        &["fmt", "-", "a.dye"],
        &["materials", "unobtainium"],
        &["explain", "no-such-rule"],
        &["new", "recipe.txt"],
        &["new", "no/such/folder/a.dye"],
        &["new", "a.dye"],
        &["completions"],
        &["completions", "tcsh"],
        &["man", "no-such-verb"],
        &["man", "--into", "a.dye"],
        &[],
    ] {
        let run = bench.run(arguments);
        assert_eq!(run.status, 2, "{arguments:?}: {run:?}");
        assert!(!run.err.is_empty(), "{arguments:?} says nothing");
    }
    assert_eq!(bench.get("a.dye"), SOUND, "something was overwritten");
}

#[test]
fn bad_arguments_with_good_standard_input_are_two() {
    let run = Bench::new().fed(&["check", "-", "--format", "xml"], SOUND.as_bytes());
    assert_eq!(run.status, 2, "{run:?}");
}

#[test]
fn standard_input_is_checked_under_its_name() {
    let bench = Bench::new();
    for arguments in [&["check", "-"][..], &["check", "--stdin-filename", "sub/b.dye"]] {
        let run = bench.fed(arguments, overdrawn().as_bytes());
        assert_eq!(run.status, 1, "{run:?}");
        assert!(run.out.contains("mix-overdrawn"), "{run:?}");
    }
    let run = bench.fed(&["check", "--stdin-filename", "sub/b.dye"], overdrawn().as_bytes());
    assert!(run.out.contains("[sub/b.dye:"), "{run:?}");
    assert_eq!(bench.fed(&["check", "-"], SOUND.as_bytes()).status, 0);
}

#[test]
fn a_folder_without_recipes_says_so() {
    let bench = Bench::with("notes.txt", "no recipe");
    for verb in ["check", "fmt"] {
        let run = bench.run(&[verb]);
        assert_eq!((run.status, run.err.as_str()), (0, "no .dye files found\n"), "{run:?}");
    }
}

#[test]
fn the_level_hides_but_the_summary_counts() {
    let bench = Bench::with("a.dye", unused_mix());
    let run = bench.run(&["check", "--level", "error"]);
    assert_eq!((run.status, run.out.as_str()), (0, ""), "{run:?}");
    assert_eq!(run.err, "1 warning in 1 of 1 file\n");
}

#[test]
fn what_is_accepted_is_left_in_peace() {
    let text = unused_mix()
        .replace("mix spare bottle\n", "mix spare bottle\n  accept   mix-never-used because it stands by\n");
    let bench = Bench::with("a.dye", text);
    let run = bench.run(&["check"]);
    assert_eq!((run.status, run.out.as_str()), (0, ""), "{run:?}");
    assert_eq!(run.err, "nothing to say about 1 file (1 accepted)\n");
    let run = bench.run(&["check", "--accepted"]);
    assert!(run.out.contains("mix-never-used") && run.out.contains("accepted on line"), "{run:?}");
}

#[test]
fn a_new_recipe_is_clean_tidy_and_never_overwrites() {
    let bench = Bench::new();
    assert_eq!(bench.run(&["new", "mine.dye"]).status, 0);
    let text = bench.get("mine.dye");
    let run = bench.run(&["check", "mine.dye"]);
    assert_eq!((run.status, run.out.as_str()), (0, ""), "{run:?}");
    assert_eq!(bench.run(&["fmt", "--check", "mine.dye"]).status, 0);
    assert_eq!(bench.run(&["totals", "mine.dye"]).status, 0);
    let again = bench.run(&["new", "mine.dye"]);
    assert_eq!(again.status, 2);
    assert!(again.err.contains("left alone"), "{again:?}");
    assert_eq!(bench.get("mine.dye"), text);
}

#[test]
fn every_rule_has_a_page_and_a_slip_finds_the_nearest() {
    let bench = Bench::new();
    let list = bench.run(&["explain"]);
    let names: Vec<&str> = list
        .out
        .lines()
        .filter(|line| !line.starts_with(' '))
        .filter_map(|line| line.split_whitespace().next())
        .collect();
    assert!(names.len() >= 15, "{list:?}");
    for name in names {
        let run = bench.run(&["explain", name]);
        assert_eq!(run.status, 0, "{run:?}");
        assert!(run.out.contains("## Bad") && run.out.contains("## Good"), "{name}: {run:?}");
    }
    let run = bench.run(&["explain", "mix-overdrwan"]);
    assert_eq!(run.status, 2);
    assert!(run.err.contains("mix-overdrawn"), "{run:?}");
}
