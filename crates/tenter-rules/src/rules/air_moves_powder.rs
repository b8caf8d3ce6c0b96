//! Powder in the air.

use tenter_quantity::Place;
use tenter_rehearse::EventKind;
use tenter_syntax::BlockKind;

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "air-moves-powder",
    summary: "A fan, a heater or a draught where dye powder is open.",
    group: Group::People,
    level: Level::Warning,
    since: "1",
    page: include_str!("air_moves_powder.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let powder = context.events().find_map(|event| match &event.kind {
        EventKind::PowderHandled { material, at, .. } if context.material(*material).is_dye => {
            Some((*material, *at, event.place))
        }
        _ => None,
    });
    let Some((material, at, step)) = powder else { return };
    // Strewn powder lies open until it is wetted: only the groups of steps where any is handled count.
    let blocks: Vec<u32> = context
        .events()
        .filter(|event| matches!(event.kind, EventKind::PowderHandled { .. }))
        .map(|event| event.place.block)
        .collect();
    for (index, entry) in context.sheet.blocks.iter().enumerate() {
        let Ok(block) = u32::try_from(index) else { return };
        let open = entry.block.kind == BlockKind::Steps && (blocks.contains(&block) || step.block == block);
        if !open && entry.block.kind != BlockKind::Recipe {
            continue;
        }
        for line in &entry.block.lines {
            let place = Place { block, start: line.span.start, end: line.span.end };
            // The goods are wet or washed by then.
            let washed = open
                && context.steps().any(|other| {
                    other.place.block == block && other.place.start < place.start && context.washes(other.place)
                });
            let Some(word) = moves_air(context.text(place)).filter(|_| !washed && !line.span.is_empty()) else {
                continue;
            };
            found.push(
                Finding::new(
                    &RULE,
                    place,
                    format!("`{word}` here, and {} powder is open in this work", context.material(material).name),
                )
                .note(at, "this powder")
                .help("Still air while powder is open: no fan, no heater with a blower, no open window, and damp paper on the table. Air it out afterwards. The rules of your workplace come first."),
            );
            return;
        }
    }
}

/// The word of a line that speaks of moving air, unless the line says that there is to be none.
fn moves_air(text: &str) -> Option<&'static str> {
    let lower = text.to_lowercase();
    let words: Vec<&str> = lower.split(|letter: char| !(letter.is_alphanumeric() || letter == '-')).collect();
    let never = words.iter().any(|word| {
        matches!(
            *word,
            "no" | "not" | "off" | "never" | "without" | "away" | "shut" | "closed" | "avoid" | "afterwards" | "after"
        )
    });
    if never {
        return None;
    }
    // A fan is also a way to fold.
    let fan = words.windows(2).any(|pair| {
        matches!(pair, ["a" | "the" | "desk" | "table" | "electric" | "ceiling" | "with" | "box", "fan" | "fans"])
    });
    let folded =
        words.iter().any(|word| matches!(*word, "as" | "fold" | "folded" | "pleat" | "pleated" | "bind" | "untie"));
    if fan && !folded {
        return Some("fan");
    }
    ["blower", "hairdryer", "hair-dryer", "heater", "draught", "draft", "ventilator"]
        .into_iter()
        .find(|moving| words.contains(moving))
        .or_else(|| lower.contains("hair dryer").then_some("hair dryer"))
        .or_else(|| lower.contains("heat gun").then_some("heat gun"))
}
