//! The chapter of the specification that the pages make.

use std::fmt::Write as _;

use crate::registry::RULES;
use crate::rule::Group;

/// The whole of `spec/rules.md`, made from the pages.
pub fn reference_chapter() -> String {
    let mut text = String::from(
        "# The rules\n\n<!-- Made from the pages of the rules: cargo run -p tenter-rules --example write_spec -->\n\n\
         Every rule with what it looks for, why, and what decides. The recipes under *Bad* and *Good* are executed: the\n\
         bad one gives exactly that finding, the good one none.\n",
    );
    for group in Group::ALL {
        let _ = write!(text, "\n- **{}**: ", group.title());
        let names: Vec<String> =
            RULES.iter().filter(|rule| rule.group == group).map(|rule| format!("[`{0}`](#{0})", rule.name)).collect();
        text.push_str(&names.join(", "));
    }
    text.push('\n');
    for group in Group::ALL {
        let _ = write!(text, "\n# {}\n", group.title());
        for rule in RULES.iter().filter(|rule| rule.group == group) {
            let _ = write!(
                text,
                "\n<a id=\"{0}\"></a>\n\n## {0}\n\n{1} Level: {2}. Since edition {3}.\n",
                rule.name,
                rule.summary,
                rule.level.word(),
                rule.since
            );
            let body = rule.page.split_once('\n').map_or("", |(_, body)| body);
            for line in body.trim_end().lines() {
                let deeper = if line.starts_with("## ") { "#" } else { "" };
                let _ = write!(text, "\n{deeper}{line}");
            }
            text.push('\n');
        }
    }
    text
}
