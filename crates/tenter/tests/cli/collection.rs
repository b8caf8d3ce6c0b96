//! Which files are looked at, and what `use` may reach.

use crate::bench::{Bench, SOUND, overdrawn};

const HOUSE: &str = "edition 1\n\nmix soda soak\n  3 L      water at 40 °C\n  60 g/L   soda ash\n";

/// The sound recipe with its soak taken from another file.
fn user(from: &str) -> String {
    SOUND
        .replace("mix soda soak\n  3 L      water at 40 °C\n  60 g/L   soda ash\n\n", "")
        .replace("edition 1\n", &format!("edition 1\n\nuse soda soak from \"{from}\"\n"))
}

#[test]
fn folders_are_walked_in_order_and_ignore_files_honoured() {
    let bench = Bench::with("b/2.dye", overdrawn());
    bench.put("b/10.dye", overdrawn());
    bench.put("a.dye", overdrawn());
    bench.put("left-out.dye", overdrawn());
    bench.put("notes.txt", overdrawn());
    bench.put(".hidden/x.dye", overdrawn());
    bench.put(".gitignore", "left-out.dye\n");
    let run = bench.run(&["check", "--format", "github"]);
    let files: Vec<&str> =
        run.out.lines().filter(|line| !line.starts_with("::")).filter_map(|line| line.split(':').next()).collect();
    assert_eq!(files, ["a.dye", "b/10.dye", "b/2.dye"], "{run:?}");
    // Named directly, a file is taken all the same; twice is once.
    let run = bench.run(&["check", "left-out.dye", "./left-out.dye"]);
    assert_eq!(run.err, "1 error in 1 of 1 file\n", "{run:?}");
}

#[test]
fn two_runs_say_the_same() {
    let bench = Bench::new();
    for number in 0..40 {
        bench.put(&format!("{number}.dye"), overdrawn());
    }
    let first = bench.run(&["check"]).out;
    assert!(first.matches("mix-overdrawn").count() >= 40);
    for _ in 0..3 {
        assert_eq!(bench.run(&["check"]).out, first);
    }
}

#[test]
fn a_recipe_uses_other_files_of_its_collection() {
    let bench = Bench::with("tenter.toml", "");
    bench.put("house/soaks.dye", HOUSE);
    bench.put("tees/mine.dye", user("../house/soaks.dye"));
    let run = bench.run(&["check", "tees/mine.dye"]);
    assert_eq!((run.status, run.out.as_str()), (0, ""), "{run:?}");
    let run = bench.run(&["totals", "tees/mine.dye"]);
    assert!(run.out.contains("soda ash") && run.out.contains("180 g"), "{run:?}");
    let text = user("../house/soaks.dye");
    let run = bench.fed(&["check", "--stdin-filename", "tees/fresh.dye"], text.as_bytes());
    assert_eq!((run.status, run.out.as_str()), (0, ""), "{run:?}");
}

#[test]
fn nothing_outside_the_collection_is_read() {
    let bench = Bench::with("soaks.dye", HOUSE);
    bench.put("mine/tenter.toml", "");
    let outside = bench.path().join("soaks.dye");
    for from in ["../soaks.dye", "sub/../../soaks.dye", outside.to_str().unwrap(), "..\\\\soaks.dye", "~/soaks.dye"] {
        bench.put("mine/a.dye", user(from));
        let run = bench.run(&["check", "mine/a.dye"]);
        assert_eq!(run.status, 1, "{from}: {run:?}");
        assert!(run.out.contains("broken-use"), "{from}: {run:?}");
    }
}

#[cfg(unix)]
#[test]
fn links_do_not_lead_out() {
    let bench = Bench::with("soaks.dye", HOUSE);
    bench.put("bad.dye", overdrawn());
    bench.put("elsewhere/bad.dye", overdrawn());
    bench.put("mine/tenter.toml", "");
    bench.put("mine/a.dye", user("link.dye"));
    bench.put("mine/b.dye", user("folder/soaks.dye"));
    std::os::unix::fs::symlink("../soaks.dye", bench.path().join("mine/link.dye")).unwrap();
    std::os::unix::fs::symlink("..", bench.path().join("mine/folder")).unwrap();
    let run = bench.run(&["check", "mine"]);
    assert_eq!(run.out.matches("error: broken-use").count(), 2, "{run:?}");
    // The folder behind the link is not walked either.
    assert!(!run.out.contains("mix-overdrawn"), "{run:?}");
    assert!(run.err.ends_with("in 2 of 2 files\n"), "{run:?}");
}
