//! What a collection says about rules in its `tenter.toml`.

use crate::bench::{Bench, SOUND, overdrawn, unused_mix};

fn without_mask() -> String {
    SOUND.replace("dust mask, gloves, goggles", "gloves, goggles")
}

#[test]
fn levels_are_set_for_the_whole_collection() {
    let bench = Bench::with("deep/er/a.dye", unused_mix());
    for (level, status, told) in [
        ("error", 1, "1 error in 1 of 1 file\n"),
        ("warning", 0, "1 warning in 1 of 1 file\n"),
        ("advice", 0, "1 piece of advice in 1 of 1 file\n"),
        ("off", 0, "nothing to say about 1 file\n"),
    ] {
        bench.put("tenter.toml", format!("[levels]\nmix-never-used = \"{level}\"\n"));
        let run = bench.run(&["check"]);
        assert_eq!((run.status, run.err.as_str()), (status, told), "{run:?}");
        let run = bench.fed(&["check", "--stdin-filename", "deep/b.dye"], unused_mix().as_bytes());
        assert_eq!((run.status, run.err.as_str()), (status, told), "{run:?}");
        let run = bench.run(&["check", "--isolated"]);
        assert_eq!(run.err, "1 warning in 1 of 1 file\n", "{run:?}");
    }
}

#[test]
fn the_nearest_collection_decides_alone() {
    let bench = Bench::with("a.dye", unused_mix());
    bench.put("tenter.toml", "[levels]\nmix-never-used = \"error\"\n");
    bench.put("own/b.dye", unused_mix());
    bench.put("own/tenter.toml", "");
    let run = bench.run(&["check"]);
    assert_eq!(run.err, "1 error, 1 warning in 2 of 2 files\n", "{run:?}");
    bench.put("other.toml", "[levels]\nmix-never-used = \"off\"\n");
    let run = bench.run(&["check", "--config", "other.toml"]);
    assert_eq!((run.status, run.err.as_str()), (0, "nothing to say about 2 files\n"), "{run:?}");
}

#[test]
fn what_is_accepted_has_a_reason_and_is_counted() {
    let bench = Bench::with("a.dye", unused_mix());
    bench.put("tenter.toml", "[accept]\nmix-never-used = \"one always stands by\"\n");
    let run = bench.run(&["check"]);
    assert_eq!((run.status, run.err.as_str()), (0, "nothing to say about 1 file (1 accepted)\n"), "{run:?}");
    let run = bench.run(&["check", "--accepted"]);
    assert!(run.out.contains("mix-never-used") && run.out.contains("  accepted in tenter.toml:2\n"), "{run:?}");
    bench.put("tenter.toml", "[accept]\nmix-never-used = \" \"\n");
    let run = bench.run(&["check"]);
    assert_eq!(run.status, 1, "{run:?}");
    assert!(run.out.contains("accept-without-reason") && run.out.contains("[tenter.toml:2:1]"), "{run:?}");
}

#[test]
fn what_accepts_nothing_is_told_to_who_has_seen_everything() {
    let bench = Bench::with("a.dye", SOUND);
    bench.put("b.dye", SOUND);
    bench.put("tenter.toml", "[accept]\nmix-never-used = \"one always stands by\"\n");
    let run = bench.run(&["check"]);
    assert!(run.out.contains("unused-accept") && run.out.contains("[tenter.toml:2:1]"), "{run:?}");
    let run = bench.run(&["check", "a.dye"]);
    assert_eq!((run.status, run.out.as_str()), (0, ""), "{run:?}");
}

#[test]
fn what_can_hurt_is_lowered_once_for_a_reason_and_never_silenced() {
    let bench = Bench::with("a.dye", without_mask());
    let own = bench.run(&["check"]);
    assert_eq!((own.status, own.err.as_str()), (1, "1 error in 1 of 1 file\n"), "{own:?}");
    bench.put("tenter.toml", "[levels]\ndust-before-protection = { level = \"warning\", reason = \"a hood is on\" }\n");
    let run = bench.run(&["check"]);
    assert_eq!((run.status, run.err.as_str()), (0, "1 warning in 1 of 1 file\n"), "{run:?}");
    assert!(run.out.contains("because a hood"), "{run:?}");
    bench.put("tenter.toml", "[accept]\ndust-before-protection = \"a hood is on\"\n");
    assert_eq!(bench.run(&["check"]).err, "1 warning in 1 of 1 file\n");
    for (setting, status) in
        [("\"warning\"", 1), ("\"off\"", 2), ("{ level = \"advice\", reason = \"a hood is on\" }", 2)]
    {
        bench.put("tenter.toml", format!("[levels]\ndust-before-protection = {setting}\n"));
        let run = bench.run(&["check"]);
        assert_eq!(run.status, status, "{setting}: {run:?}");
        assert!(run.out.contains("error: dust-before-protection"), "{setting}: {run:?}");
    }
}

#[test]
fn slips_are_told_with_the_nearest() {
    let bench = Bench::with("a.dye", SOUND);
    bench.put("tenter.toml", "[levls]\n[levels]\nmix-nevr-used = \"off\"\n");
    let run = bench.run(&["check", "--format", "json"]);
    assert_eq!(run.status, 1, "{run:?}");
    let found: serde_json::Value = serde_json::from_str(&run.out).unwrap();
    let told: Vec<(&str, &str, u64)> = found
        .as_array()
        .unwrap()
        .iter()
        .map(|f| (f["rule"].as_str().unwrap(), f["help"].as_str().unwrap(), f["line"].as_u64().unwrap()))
        .collect();
    assert_eq!(
        told,
        [("unknown-key", "Did you mean `levels`?", 1), ("unknown-rule", "Did you mean `mix-never-used`?", 3)]
    );
}

#[test]
fn a_configuration_that_cannot_be_followed_is_two_and_the_recipes_are_checked() {
    let bench = Bench::with("a.dye", overdrawn());
    for (text, place) in
        [("[levels\n", "tenter.toml:1:"), ("[levels]\nmix-never-used = \"loud\"\n", "tenter.toml:2:18: ")]
    {
        bench.put("tenter.toml", text);
        for verb in [&["check"][..], &["check", "--exit-zero"], &["check", "--diff"]] {
            let run = bench.run(verb);
            assert_eq!(run.status, 2, "{run:?}");
            assert!(run.err.contains(place), "{run:?}");
        }
        assert!(bench.run(&["check"]).out.contains("mix-overdrawn"));
        assert_eq!(bench.run(&["check", "--isolated"]).status, 1);
    }
    let bench = Bench::with("a.dye", SOUND);
    assert_eq!(bench.run(&["check", "--config", "missing.toml"]).status, 2);
    assert_eq!(bench.run(&["check", "--config", "a.dye", "--isolated"]).status, 2);
}
