//! `totals --format diff`: what git compares in place of a recipe's bytes.

use crate::bench::{Bench, SOUND, bundled, project, run_in};

const DIFF: [&str; 3] = ["totals", "--format", "diff"];

fn shown(bench: &Bench, file: &str) -> String {
    let run = bench.run(&[&DIFF[..], &[file]].concat());
    assert_eq!((run.status, run.err.as_str()), (0, ""), "{run:?}");
    run.out
}

/// Lines that stand in one and not in the other.
fn differing<'a>(before: &'a str, after: &'a str) -> Vec<&'a str> {
    let missing = |from: &'a str, within: &'a str| -> Vec<&'a str> {
        from.lines().filter(|line| !within.lines().any(|other| other == *line)).collect()
    };
    [missing(before, after), missing(after, before)].concat()
}

#[test]
fn the_text_stands_above_what_it_comes_to() {
    let shown = shown(&Bench::with("a.dye", SOUND), "a.dye");
    let totals = shown.strip_prefix(SOUND).unwrap();
    // By hand: 60 g/L × 3 L = 180 g, 180 g on 2 × 160 g = 56.25 %, 90 g a piece.
    for line in [
        "Sound",
        "  tees: pieces 2; each, dry 160 g; in all, dry 320 g",
        "  soda ash: in all 180 g; % owg 56.25%; each piece 90 g",
        "  soda soak",
        "    soda ash: 180 g; (60 g/L)",
    ] {
        assert!(totals.lines().any(|have| have == line), "no '{line}' in {totals}");
    }
}

#[test]
fn a_line_differs_only_where_its_fact_does() {
    let bench = Bench::with("a.dye", SOUND);
    let before = shown(&bench, "a.dye");
    // Blank lines and remarks move every line that follows.
    bench.put("a.dye", SOUND.replace("goods tees", "# A remark.\n\n\ngoods tees"));
    assert_eq!(differing(&before, &shown(&bench, "a.dye")), ["# A remark."]);
    // A longer name and a wider number line nothing else up anew.
    bench.put("a.dye", SOUND.replace("20 g     urea", "20 g     urea\n  1234.5 g sodium hexametaphosphate"));
    let changed = shown(&bench, "a.dye");
    for line in differing(&before, &changed) {
        assert!(!line.contains("soda ash: in all") && !line.contains("urea: in all"), "{line}");
    }
    assert!(changed.contains("sodium hexametaphosphate: in all"), "{changed}");
    // The line ends of another system are no change.
    bench.put("a.dye", SOUND.replace('\n', "\r\n"));
    assert_eq!(shown(&bench, "a.dye"), before);
}

#[test]
fn nothing_in_a_file_makes_it_fail() {
    let broken = bundled("broken");
    for path in broken.iter().chain(&bundled("recipes")) {
        let run = run_in(&project(), &[&DIFF[..], &["--", path.to_str().unwrap()]].concat(), b"");
        assert_eq!((run.status, run.err.as_str()), (0, ""), "{path:?}: {run:?}");
        assert!(!run.out.is_empty());
    }
    let cuts = (0..SOUND.len()).step_by(37).filter_map(|end| SOUND.get(..end)).map(|text| text.as_bytes().to_vec());
    let hostile = [b"\xff\xfe\x00\x00".to_vec(), b"recipe \x1b[2J\n\xff".to_vec(), b"\xef\xbb\xbfrecipe A".to_vec()];
    let bench = Bench::new();
    for bytes in cuts.chain(hostile) {
        bench.put("-a.dye", &bytes);
        let run = bench.run(&[&DIFF[..], &["--", "-a.dye"]].concat());
        assert_eq!((run.status, run.err.as_str()), (0, ""), "{bytes:?}: {run:?}");
        assert!(run.out.ends_with('\n') && !run.out.contains('\u{1b}'), "{run:?}");
    }
    assert!(shown(&bench, "gone.dye").starts_with("This file could not be read: "));
    bench.put("a.dye", SOUND.replace("60 g/L   soda ash", "60 g/L   sodda ash"));
    assert!(shown(&bench, "a.dye").contains("could not be read and leave"), "gaps are told");
}

#[test]
fn a_file_written_out_elsewhere_still_finds_what_it_uses() {
    let bench = Bench::new();
    let (before, mix) = SOUND.split_once("mix soda soak").unwrap();
    let (mix, after) = mix.split_once("\n\n").unwrap();
    bench.put("tenter.toml", "");
    bench.put("shelf/house.dye", format!("edition 1\n\nmix soda soak{mix}\n"));
    let text =
        format!("{before}{after}").replace("edition 1\n", "edition 1\n\nuse soda soak from \"../shelf/house.dye\"\n");
    bench.put("recipes/tees.dye", &text);
    let at_home = shown(&bench, "recipes/tees.dye");
    assert!(at_home.contains("soda ash: in all 180 g"), "{at_home}");
    let elsewhere = Bench::new();
    for name in ["git-blob-1a2b3c/tees.dye", "1a2b3c_tees.dye"] {
        let path = elsewhere.put(name, &text);
        assert_eq!(shown(&bench, path.to_str().unwrap()), at_home, "{name}");
    }
    // Two of a name: which is meant cannot be told.
    bench.put("old/tees.dye", &text);
    let path = elsewhere.put("git-blob-1a2b3c/tees.dye", &text);
    let open = shown(&bench, path.to_str().unwrap());
    assert!(!open.contains("soda ash: in all"), "{open}");
}
