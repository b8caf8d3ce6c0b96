//! What the README claims is what happens.

use crate::bench::{Bench, project};

fn readme() -> String {
    #[allow(clippy::disallowed_methods, reason = "tests read the README")]
    std::fs::read_to_string(project().join("README.md")).unwrap()
}

/// The fenced block after a comment that begins so, and the rest of that comment.
fn blocks<'a>(text: &'a str, comment: &str) -> Vec<(&'a str, &'a str)> {
    text.split(&format!("<!-- {comment}: "))
        .skip(1)
        .map(|part| {
            let (label, rest) = part.split_once(" -->\n```").unwrap();
            let (_, rest) = rest.split_once('\n').unwrap();
            (label, rest.split_once("```").unwrap().0)
        })
        .collect()
}

#[test]
fn the_recipe_gets_the_answers_that_are_printed() {
    let readme = readme();
    let [(name, recipe)] = blocks(&readme, "recipe")[..] else { panic!("one recipe is shown") };
    let bench = Bench::with(name, recipe);
    let says = blocks(&readme, "says");
    assert_eq!(says.len(), 2);
    for (command, said) in says {
        let words: Vec<&str> = command.split(' ').skip(1).collect();
        let run = bench.run(&words);
        assert!(!run.out.is_empty());
        assert_eq!(run.out.trim_end(), said.trim_end(), "`{command}` says otherwise than README.md");
    }
    let [(amounts, said)] = blocks(&readme, "bath")[..] else { panic!("one bath is shown") };
    assert!(readme.contains(&format!("`tenter bath \"{amounts}\"` says:")));
    assert_eq!(bench.run(&["bath", amounts]).out.trim_end(), said.trim_end(), "`tenter bath` says otherwise");
    bench.put(name, recipe.replace("200 mL   water", "300 mL   water"));
    let run = bench.run(&["check", name]);
    assert_eq!((run.status, run.out.as_str()), (0, ""), "{run:?}");
}

#[test]
fn every_command_in_the_table_exists() {
    let readme = readme();
    let named: Vec<&str> = readme
        .lines()
        .filter_map(|line| line.strip_prefix("| `tenter "))
        .filter_map(|line| line.split([' ', '`']).next())
        .collect();
    let help = Bench::new().run(&["--help"]).out;
    for verb in &named {
        assert!(help.contains(&format!("\n  {verb} ")), "{verb} is not in {help}");
    }
    let listed = help.lines().skip_while(|line| *line != "Commands:").skip(1).take_while(|line| !line.is_empty());
    let listed = listed
        .filter(|line| !line.trim_start().starts_with("help"))
        .filter(|line| line.starts_with("  ") && !line.starts_with("   "));
    assert_eq!(listed.count(), named.len(), "{help}");
}

#[test]
fn the_two_commands_stand_on_lines_of_their_own() {
    let readme = readme();
    assert!(readme.contains("\ncargo run -p tenter -- check tests/recipes\n"));
    assert!(readme.contains("\ncargo test --workspace\n"));
}

#[test]
fn both_licences_are_there_in_full() {
    #[allow(clippy::disallowed_methods, reason = "tests read the licence")]
    let text = std::fs::read_to_string(project().join("LICENSE")).unwrap();
    for part in [
        "Permission is hereby granted, free of charge",
        "THE SOFTWARE IS PROVIDED \"AS IS\"",
        "TERMS AND CONDITIONS FOR USE, REPRODUCTION, AND DISTRIBUTION",
        "9. Accepting Warranty or Additional Liability.",
        "END OF TERMS AND CONDITIONS",
    ] {
        assert!(text.contains(part), "{part}");
    }
}
