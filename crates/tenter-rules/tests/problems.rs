//! Each trouble of reading is told by exactly one rule, once.

use tenter_quantity::{Dimension, Place};
use tenter_resolve::{NameKind, Problem, ProblemKind, Scale, Sheet, resolve};
use tenter_rules::{Context, check, rule, rule_of};
use tenter_syntax::{BlockKind, Connector, OddityKind};

fn kinds() -> Vec<ProblemKind> {
    let oddities = [
        OddityKind::CommentWithoutBlank,
        OddityKind::OpenQuote,
        OddityKind::OpenBracket,
        OddityKind::InvisibleCharacter,
        OddityKind::ControlCharacter,
        OddityKind::TwoSteps,
        OddityKind::StrayLine,
        OddityKind::LooksLikeOwnLine,
        OddityKind::HeaderReadsAsStep,
        OddityKind::MissingName,
        OddityKind::NotUtf8,
    ];
    let mut kinds = vec![
        ProblemKind::UnknownName { written: "x".into(), expected: NameKind::Mix, nearest: vec!["y".into()] },
        ProblemKind::SameName { name: "x".into(), first: Place { block: 0, start: 0, end: 1 } },
        ProblemKind::WrongDimension {
            written: "20 L".into(),
            given: Dimension::Volume,
            needed: vec![Dimension::Time],
            purpose: "a time",
            probably: Some("20 min".into()),
        },
        ProblemKind::AmbiguousMeasure {
            spelling: "cup".into(),
            readings: vec![("US cup".into(), 0.000_236)],
            settle: "a `measures` line".into(),
        },
        ProblemKind::DoubtfulUnit { spelling: "T".into(), meant: vec!["tbsp".into()], why: "two readings".into() },
        ProblemKind::UnknownUnit { written: "litrs".into(), nearest: Some("L".into()) },
        ProblemKind::HalfUnit { written: "g/".into() },
        ProblemKind::MissingUnit { written: "8".into() },
        ProblemKind::PercentOfWhat { written: "5%".into(), of: "rust".into() },
        ProblemKind::NumberForm { written: "2,5".into(), suggestions: vec!["2.5".into()], why: "a comma".into() },
        ProblemKind::DateForm { written: "03/05".into(), suggestion: None },
        ProblemKind::UnknownVerb { written: "sock".into(), nearest: Some("soak".into()) },
        ProblemKind::UnknownKey { written: "rom".into(), block: BlockKind::Recipe, nearest: Some("room".into()) },
        ProblemKind::UnknownBlock { written: "mixx".into(), nearest: Some("mix".into()) },
        ProblemKind::ClauseNotTaken {
            verb: "fold",
            connector: Connector::At,
            written: "at 40 °C".into(),
            takes: vec!["as rings"],
        },
        ProblemKind::SaidTwice { what: "duration", first: Place { block: 0, start: 0, end: 1 }, range: None },
        ProblemKind::Unreadable { written: "(?)".into() },
        ProblemKind::MissingValue { what: "the weight".into(), example: "weight 165 g each".into() },
        ProblemKind::MissingGoods,
        ProblemKind::AmountBehindName { suggestion: "250 g soda ash".into() },
        ProblemKind::WeightOfWhat { written: "990 g".into(), pieces: 6.0 },
        ProblemKind::Shares { of: "the zones of rings".into(), sum: 0.9 },
        ProblemKind::LotsDoNotAdd { pieces: 12.0, lots: 3, each: 5 },
        ProblemKind::WhichGoods { choices: vec!["tees".into(), "rags".into()] },
        ProblemKind::BrokenUse { why: "no file".into() },
        ProblemKind::UnknownEdition { written: "9".into() },
        ProblemKind::VariantMatch { candidates: 0 },
        ProblemKind::CircularMix { name: "x".into() },
    ];
    kinds.extend(oddities.map(ProblemKind::Oddity));
    kinds
}

#[test]
fn every_trouble_is_told_once_by_its_rule_in_plain_words() {
    let sheet = Sheet::default();
    let mut recipe = resolve(&sheet, Scale::AsWritten).remove(0);
    for kind in kinds() {
        let name = rule_of(&kind);
        assert!(rule(name).is_some(), "{name}");
        recipe.problems = vec![Problem { place: Place { block: 0, start: 0, end: 4 }, kind: kind.clone() }];
        let rehearsal = tenter_rehearse::rehearse(&recipe);
        let told = check(&Context { sheet: &sheet, recipe: &recipe, rehearsal: &rehearsal });
        assert_eq!(told.len(), 1, "{kind:?}: {told:?}");
        assert_eq!(told[0].rule, name, "{kind:?}");
        assert!(!told[0].message.is_empty() && told[0].help.ends_with(['.', '?']), "{kind:?}: {}", told[0].help);
    }
}
