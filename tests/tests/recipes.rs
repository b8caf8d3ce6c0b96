//! The bundled recipes: nothing to complain about, and a line taken away is missed there and nowhere else.

mod support;

use support::{Folder, brief, collection, folder, read};
use tenter_rules::{Group, Level, rule};

#[test]
fn they_check_clean() {
    let mut wrong = Vec::new();
    for (name, text) in collection("recipes") {
        let read = read(&text, &name, &Folder(folder("recipes")));
        for (line, _, finding) in read.told() {
            if finding.level != Level::Advice {
                wrong.push(format!("{name}: {}", brief(line, finding)));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// One line out of place is one mistake: few findings, and none that takes the rest of the text for unreadable.
#[test]
fn a_line_taken_away_is_no_cascade() {
    let parsing = ["unreadable", "unknown-unit", "number-form", "unknown-block", "stray-line", "clause-not-taken"];
    let mut wrong = Vec::new();
    for (name, text) in collection("recipes") {
        let lines: Vec<&str> = text.lines().collect();
        for gone in 0..lines.len() {
            if lines[gone].trim().is_empty() || lines[gone].starts_with('#') {
                continue;
            }
            let kept: Vec<&str> =
                lines.iter().enumerate().filter(|(index, _)| *index != gone).map(|(_, line)| *line).collect();
            let text = kept.join("\n");
            let read = read(&text, &name, &Folder(folder("recipes")));
            let told: Vec<_> =
                read.told().into_iter().filter(|(_, _, finding)| finding.level != Level::Advice).collect();
            let header = !lines[gone].starts_with(' ');
            // A header taken away leaves its lines to the block above: where they mean something there, they count.
            let most = if header { 8 } else { 4 };
            let spread = told.iter().any(|(_, rule, _)| parsing.contains(rule)) && !header;
            if told.len() > most || spread {
                wrong.push(format!("{name} without line {} `{}`:", gone + 1, lines[gone].trim()));
                wrong.extend(told.iter().map(|(line, _, finding)| format!("    {}", brief(*line, finding))));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn every_prefix_is_read_and_checked() {
    for (name, text) in collection("recipes") {
        let library = Folder(folder("recipes"));
        // The end of every line, and in between every fourth word: places where somebody typing may pause.
        let gaps = text.char_indices().filter(|(_, letter)| letter.is_whitespace());
        let ends = gaps
            .enumerate()
            .filter(|(count, (_, letter))| *letter == '\n' || count % 4 == 0)
            .map(|(_, (at, _))| at)
            .chain([text.len()]);
        for end in ends {
            let read = read(&text[..end], &name, &library);
            for told in &read.checked.findings {
                assert!(rule(told.finding.rule).is_some(), "{name} to byte {end}: {}", told.finding.rule);
                assert!(!told.finding.message.is_empty() && !told.finding.help.is_empty(), "{}", told.finding.rule);
            }
        }
    }
}

#[test]
fn what_can_hurt_somebody_is_lowered_and_never_left_out() {
    let text = "recipe Powder\n\ngoods rags\n  pieces   2\n  weight   100 g each\n  fibre    100% cotton\n  state    scoured, dry\n\n\
                mix bath one\n  5 L      water\n  50 mL    household bleach\n  50 mL    vinegar\n  \
                accept   never-mix because it is a demonstration under a fume hood\n\n\
                steps\n  soak     rags in bath one for 5 min\n";
    let read = read(text, "powder.dye", &Folder(folder("recipes")));
    let told = read.told();
    let meeting = told.iter().find(|(_, rule, _)| *rule == "never-mix").expect("told all the same");
    assert_eq!(rule("never-mix").map(|rule| (rule.group, rule.level)), Some((Group::People, Level::Error)));
    assert_eq!(meeting.2.level, Level::Warning);
    assert_eq!(meeting.2.accepted, None);
}
