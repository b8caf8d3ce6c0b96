//! `tenter fmt`.

use crate::bench::{Bench, SOUND};

fn untidy() -> String {
    SOUND.replace("  60 g/L   soda ash", "    60g/l soda ash   ").replace("room     22 °C", "room 22C")
}

#[test]
fn a_file_is_tidied_in_place_and_then_stays() {
    let bench = Bench::with("a.dye", untidy());
    bench.put("tidy.dye", SOUND);
    let run = bench.run(&["fmt"]);
    assert_eq!((run.status, run.out.as_str(), run.err.as_str()), (0, "a.dye\n", "1 of 2 files changed\n"));
    assert_eq!(bench.get("a.dye"), SOUND);
    let run = bench.run(&["fmt"]);
    assert_eq!((run.status, run.out.as_str(), run.err.as_str()), (0, "", "0 of 2 files changed\n"));
}

#[test]
fn looking_changes_nothing_and_ends_with_one() {
    let bench = Bench::with("a.dye", untidy());
    let run = bench.run(&["fmt", "--check"]);
    assert_eq!((run.status, run.out.as_str(), run.err.as_str()), (1, "a.dye\n", "1 of 1 file would change\n"));
    let run = bench.run(&["fmt", "--diff"]);
    assert_eq!(run.status, 1);
    assert!(run.out.contains("-    60g/l soda ash   \n+  60 g/L   soda ash\n"), "{run:?}");
    assert_eq!(bench.get("a.dye"), untidy());
}

#[test]
fn standard_input_goes_to_standard_output() {
    let bench = Bench::new();
    for arguments in [&["fmt", "-"][..], &["fmt", "--stdin-filename", "a.dye"]] {
        let run = bench.fed(arguments, untidy().as_bytes());
        assert_eq!((run.status, run.out.as_str()), (0, SOUND));
    }
    let run = bench.fed(&["fmt", "-", "--check"], untidy().as_bytes());
    assert_eq!((run.status, run.out.as_str()), (1, ""));
}

#[cfg(unix)]
#[test]
fn permissions_and_links_are_kept() {
    use std::os::unix::fs::PermissionsExt;
    let bench = Bench::new();
    let path = bench.put("real.dye", untidy());
    std::fs::set_permissions(&path, std::fs::Permissions::from_mode(0o640)).unwrap();
    std::os::unix::fs::symlink("real.dye", bench.path().join("link.dye")).unwrap();
    let run = bench.run(&["fmt", "link.dye"]);
    assert_eq!(run.status, 0, "{run:?}");
    assert_eq!(bench.get("real.dye"), SOUND);
    assert_eq!(std::fs::metadata(&path).unwrap().permissions().mode() & 0o777, 0o640);
    assert!(std::fs::symlink_metadata(bench.path().join("link.dye")).unwrap().is_symlink());
    // A file that may not be written is left alone, and nothing lies about afterwards.
    bench.put("real.dye", untidy());
    std::fs::set_permissions(&path, std::fs::Permissions::from_mode(0o440)).unwrap();
    let run = bench.run(&["fmt", "real.dye"]);
    assert_eq!(run.status, 2, "{run:?}");
    assert_eq!(bench.get("real.dye"), untidy());
    #[allow(clippy::disallowed_methods, reason = "tests look at their own folder")]
    let left = std::fs::read_dir(bench.path()).unwrap().count();
    assert_eq!(left, 2);
}
