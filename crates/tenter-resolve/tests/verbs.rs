//! Every example of the table of verbs is read without trouble.

mod support;

use support::read;
use tenter_syntax::{Expect, verbs};

/// Everything the examples of the table name.
const BENCH: &str = "\
recipe Bench

goods tees
  pieces   6 in 3 lots of 2
  weight   150 g each
  fibre    100% cotton
  state    scoured, dry

dye lagoon
  class    reactive dichlorotriazine

dye marigold
  class    reactive dichlorotriazine

layout crush
  zone 50% hills
  zone 50% valleys

layout rings
  zone 45% rim
  zone 35% middle
  zone 20% heart

mix soda soak
  8 L      water at 40 °C
  60 g/L   soda ash

mix night bottle
  500 mL   water at 40 °C
  10 g     lagoon

mix dye bath
  10 L     water at 40 °C

mix stock
  1 L      water at 40 °C
  10 g     lagoon

mix print paste
  900 parts water
  100 parts lagoon
  make up to 1 kg

mix dye blend
  100 g    lagoon

vessel watering can
  holds    5 L

vessel tub
  holds    20 L

vessel pot
  holds    20 L

vessel bottle
  holds    1 L

vessel cup
  holds    200 mL

vessel steamer
  holds    20 L

vessel tray
  holds    20 L

vessel rack
  material steel

steps colour
  dry      tees

steps test
  fold     tees as rings
";

#[test]
fn examples_of_the_table() {
    let mut wrong = Vec::new();
    for verb in verbs() {
        if matches!(verb.name, "accept" | "note") {
            continue;
        }
        let direct: Vec<&str> =
            verb.takes.iter().filter(|clause| clause.connector.is_none()).map(|clause| clause.example).collect();
        let first = direct.first().copied().unwrap_or("");
        let mut lines: Vec<String> =
            direct.iter().map(|example| format!("{} {example}{}", verb.name, needed(verb.name, example))).collect();
        // A number of times is no group.
        lines.retain(|line| line != "repeat 3 times");
        for clause in verb.takes.iter().filter(|clause| clause.connector.is_some()) {
            // One duration is enough.
            let first = if clause.what == Expect::Duration && first.ends_with("min") { "" } else { first };
            let shown = format!("{first} {}", clause.example);
            lines.push(format!("{} {first}{} {}", verb.name, needed(verb.name, &shown), clause.example));
        }
        for line in lines {
            let read = read(&format!("{BENCH}  {line}\n"));
            let told = read.troubles();
            if !told.is_empty() {
                wrong.push(format!("{line}: {told:?}"));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// What an example leaves to the rest of its line: the bottle a volume is drawn from, the litres of a g/L, the group, what
/// goods are soaked in.
fn needed(verb: &str, shown: &str) -> &'static str {
    let has = |connector: &str| shown.contains(connector);
    match verb {
        "squirt" | "spray" if has("watering can") => " water",
        "squirt" | "spray" if !has(" from ") => " from night bottle",
        "dissolve" if has("g/L") => " in 200 mL water",
        "add" if has("g/L") && !has("dye bath") && !has(" in 200 mL") => " to dye bath",
        "soak" | "dip" if !has(" in ") || has("in 3 parts") => " in soda soak",
        _ if has("with 1 g/L") && !has(" in ") => " in 8 L water",
        _ => "",
    }
}
