//! What a shell and `man` get from the command, and what it says of itself.

use crate::bench::Bench;

/// What bash offers for the last of these words, asked as bash asks.
#[cfg(unix)]
fn offered(bench: &Bench, words: &[&str]) -> Vec<String> {
    const ASK: &str = r#"
        source ./tenter.bash
        COMP_WORDS=("$@") COMP_CWORD=$(($# - 1)) COMP_LINE="$*" COMP_POINT=${#COMP_LINE} COMPREPLY=()
        _tenter tenter "${COMP_WORDS[COMP_CWORD]}" "${COMP_WORDS[COMP_CWORD - 1]}"
        printf '%s\n' "${COMPREPLY[@]}"
    "#;
    let asked = std::process::Command::new("bash")
        .args(["--noprofile", "--norc", "-c", ASK, "bash"])
        .args(words)
        .current_dir(bench.path())
        .output()
        .unwrap();
    assert!(asked.status.success() && asked.stderr.is_empty(), "{asked:?}");
    String::from_utf8(asked.stdout).unwrap().lines().map(str::to_owned).collect()
}

#[cfg(unix)]
#[test]
fn bash_completes_verbs_options_values_and_rules() {
    let bench = Bench::with("mine.dye", "recipe Mine\n");
    bench.put("tenter.bash", bench.run(&["completions", "bash"]).out);
    for (words, wanted) in [
        (&["tenter", "reh"][..], "rehearse"),
        (&["tenter", "totals", "--form"], "--format"),
        (&["tenter", "totals", "--format", ""], "diff"),
        (&["tenter", "check", "--level", "w"], "warning"),
        (&["tenter", "explain", "mix-over"], "mix-overdrawn"),
        (&["tenter", "completions", "f"], "fish"),
    ] {
        let offered = offered(&bench, words);
        assert!(offered.iter().any(|word| word == wanted), "{words:?} offers {offered:?}");
    }
    assert_eq!(offered(&bench, &["tenter", "nothing-like-it"]), [""]);
    // Where it offers nothing, bash itself offers files.
    assert!(bench.get("tenter.bash").contains("-o bashdefault -o default tenter"));
}

#[test]
fn each_shell_has_a_script_with_the_verbs_and_rules() {
    for shell in ["bash", "elvish", "fish", "powershell", "zsh"] {
        let run = Bench::new().run(&["completions", shell]);
        assert_eq!(run.status, 0, "{run:?}");
        assert!(run.out.contains("rehearse"), "{shell}");
        // The scripts for the others list no values of an argument without a name.
        let lists = matches!(shell, "bash" | "zsh");
        assert_eq!(run.out.contains("mix-overdrawn"), lists, "{shell}");
    }
}

#[test]
fn every_verb_has_a_page() {
    let bench = Bench::new();
    let help = bench.run(&["--help"]).out;
    let verbs = help.lines().skip_while(|line| *line != "Commands:").skip(1).take_while(|line| !line.is_empty());
    let verbs: Vec<&str> = verbs
        .filter(|line| !line.starts_with("   "))
        .filter_map(|line| line.split_whitespace().next())
        .filter(|verb| *verb != "help")
        .collect();
    assert!(verbs.len() >= 11, "{verbs:?}");
    assert_eq!(bench.run(&["man", "--into", "pages/man1"]).status, 0);
    for verb in &verbs {
        let run = bench.run(&["man", verb]);
        assert_eq!(run.status, 0, "{run:?}");
        assert!(run.out.contains(&format!(".TH tenter-{verb} 1")), "{}", run.out);
        assert_eq!(bench.get(&format!("pages/man1/tenter-{verb}.1")), run.out);
    }
    let own = bench.run(&["man"]).out;
    assert_eq!(bench.get("pages/man1/tenter.1"), own);
    for part in [".SH NAME", ".SH SYNOPSIS", ".SH \"EXIT STATUS\"", ".SH CAUTIONS", "tenter\\-check(1)"] {
        assert!(own.contains(part), "no {part} in {own}");
    }
    // Over what is there.
    assert_eq!(bench.run(&["man", "--into", "pages/man1"]).status, 0);
}

#[test]
fn the_version_says_which_edition_of_the_notation() {
    let run = Bench::new().run(&["--version"]);
    let version = env!("CARGO_PKG_VERSION");
    assert_eq!((run.status, run.out), (0, format!("tenter {version}\nedition 1 of the notation\n")));
    assert_eq!(Bench::new().run(&["-V"]).out, format!("tenter {version}\n"));
}

#[test]
fn the_help_fits_a_narrow_terminal() {
    let bench = Bench::new();
    let help = bench.run(&["--help"]).out;
    let verbs = help.lines().filter(|line| line.starts_with("  ") && !line.starts_with("   "));
    let verbs: Vec<&str> = verbs.filter_map(|line| line.split_whitespace().next()).collect();
    assert!(verbs.contains(&"man"), "{help}");
    for verb in verbs.into_iter().filter(|verb| verb.chars().all(char::is_alphabetic)) {
        for line in bench.run(&[verb, "--help"]).out.lines().chain(help.lines()) {
            assert!(line.chars().count() <= 80, "{verb}: {line}");
        }
    }
}
