//! Slips a newcomer makes, each put into a good recipe by hand: one message each, that says what is wrong, where, and
//! what to do.

mod support;

use tenter_resolve::NoLibrary;
use tenter_rules::{Level, Told};

struct Slip {
    /// What is in the good recipe.
    from: &'static str,
    /// What the newcomer wrote.
    to: &'static str,
    /// The rule that tells of it.
    rule: &'static str,
    /// Words the message, its help or its fix must hold.
    says: &'static [&'static str],
}

const fn slip(from: &'static str, to: &'static str, rule: &'static str, says: &'static [&'static str]) -> Slip {
    Slip { from, to, rule, says }
}

const SLIPS: [Slip; 16] = [
    slip("60 g/L   soda ash", "60 g/L   sodda ash", "unknown-name", &["sodda ash", "soda ash"]),
    slip("1.5 g/piece marigold", "1,5 g/piece marigold", "number-form", &["1,5", "1.5"]),
    slip("60 g/L   soda ash", "soda ash 60 g/L", "amount-behind-name", &["60 g/L soda ash"]),
    slip("water at 82 °C", "water at 82", "missing-unit", &["82", "°C"]),
    slip("water at 82 °C", "water at 82 min", "wrong-dimension", &["82 min", "temperature"]),
    slip("weight   165 g each", "weight   165 each", "missing-unit", &["165", "g"]),
    slip("weight   165 g each", "weight   990 g", "weight-of-what", &["990 g", "each", "in all"]),
    slip("70 mL/piece from", "70 ml/peice from", "unknown-unit", &["ml/peice", "mL/piece"]),
    slip("rinse    tees in cold", "rince    tees in cold", "unknown-verb", &["rince", "rinse"]),
    slip("marigold on heart", "marigold on hart", "unknown-name", &["hart", "heart"]),
    slip(
        "soak     tees in soda soak for 20 min",
        "soak     tees for 20 min soda soak",
        "missing-value",
        &["in soda soak"],
    ),
    slip(
        "spin     tees to 65% pickup",
        "spin     tees at 65% pickup",
        "clause-not-taken",
        &["at 65% pickup", "to 65% pickup"],
    ),
    slip("fibre    100% cotton", "fibre    100% coton", "unknown-name", &["coton", "cotton"]),
    slip("licence  CC-BY-4.0", "lisence  CC-BY-4.0", "unknown-key", &["lisence", "licence"]),
    slip("8 L      water at 40 °C", "8 L      water at 40°", "doubtful-unit", &["°C", "°F"]),
    slip(
        "for 4 h in sealed bag",
        "for 4 h at 22 °C at 25 °C in sealed bag",
        "said-twice",
        &["temperature", "22 °C", "25 °C"],
    ),
];

fn base() -> String {
    let recipes = support::collection("recipes");
    recipes.into_iter().find(|(name, _)| name == "harbour-dusk.dye").map(|(_, text)| text).expect("the recipe")
}

fn words(told: &Told) -> String {
    let finding = &told.finding;
    let notes = finding.notes.iter().map(|note| note.text.as_str());
    let fixes = finding.fixes.iter().map(|fix| fix.title.as_str());
    [finding.message.as_str(), finding.help.as_str()]
        .into_iter()
        .chain(notes)
        .chain(fixes)
        .collect::<Vec<_>>()
        .join("\n")
}

#[test]
fn each_slip_gets_one_message_worth_having() {
    let good = base();
    let mut wrong = Vec::new();
    for slip in &SLIPS {
        assert!(good.contains(slip.from), "the recipe no longer holds `{}`", slip.from);
        let text = good.replacen(slip.from, slip.to, 1);
        let read = support::read(&text, "slip.dye", &NoLibrary);
        let told: Vec<&Told> = read
            .checked
            .findings
            .iter()
            .filter(|told| told.finding.level != Level::Advice || told.finding.rule == slip.rule)
            .collect();
        let [only] = told.as_slice() else {
            wrong.push(format!("{}: {:?}", slip.to, told.iter().map(|told| told.finding.rule).collect::<Vec<_>>()));
            continue;
        };
        let said = words(only);
        let missing: Vec<_> = slip.says.iter().filter(|word| !said.contains(**word)).collect();
        if only.finding.rule != slip.rule || !missing.is_empty() {
            wrong.push(format!("{}: {} says\n{}\nwithout {missing:?}", slip.to, only.finding.rule, words(only)));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n\n"));
}

#[test]
fn what_is_right_though_unusual_is_left_alone() {
    let good = base();
    for (from, to) in [
        ("  weight   165 g each", "\tweight\t165 g each"),
        ("for 4 h in sealed", "4 hours in sealed"),
        ("12 g/piece soda ash on front", "12 g soda ash per tee on the front"),
        ("irrigate 350 mL/piece water", "irrigate 350ml/piece water"),
        ("in 20 L water at 60 °C", "in 20 litres of water at 140 °F"),
        ("dry      tees", "dry them"),
        ("wear     dust mask, gloves, goggles", "Wear a dust mask, gloves and goggles"),
        ("8 L      water at 40 °C", "8 L      water at 104 F  # by the tap"),
    ] {
        assert!(good.contains(from), "the recipe no longer holds `{from}`");
        let read = support::read(&good.replacen(from, to, 1), "unusual.dye", &NoLibrary);
        let told: Vec<_> =
            read.checked.findings.iter().filter(|told| told.finding.level != Level::Advice).map(words).collect();
        assert!(told.is_empty(), "{to}: {told:?}");
    }
}
