//! Features on drawn texts: the caret is `‸`, ranges are `⟦…⟧`, hints are `«…»`.

#![allow(clippy::unwrap_used, reason = "a test that finds nothing has failed")]

mod draw;

use draw::Scene;
use insta::assert_snapshot;
use tenter_features::actions::{ActionKind, actions};
use tenter_features::apply;
use tenter_features::hints::{HintKind, explain, hints};
use tenter_features::{
    calls, colours, completion, folding, formatting, hover, lenses, links, navigation, rename, renamed_files,
    selection, sheets, signature, symbols, tokens,
};

const TEES: &str = "\
recipe Small Tide
  room     22 °C

goods tees
  pieces   4
  weight   150 g each
  fibre    100% cotton
  state    scoured, dry

dye lagoon
  class    reactive dichlorotriazine
  index    C.I. Reactive Blue 4
  colour   #1d5fa6

mix soda soak
  6 L      water at 40 °C
  60 g/L   soda ash

layout rings
  zone 60% rim
  zone 40% heart

steps prepare
  wear     dust mask, gloves, goggles
  soak     tees in soda soak for 20 min
  spin     tees to 65% pickup
  fold     tees as rings

steps colour
  sprinkle 3 g/piece lagoon on rim
  sprinkle 12 g/tee soda ash on front
  irrigate 400 mL/piece water at 82 °C
  batch    tees for 6 h covered

steps wash off
  rinse    tees in cold water until nearly clear
  soap off tees in 10 L water at 60 °C with 1 g/L textile detergent, 2 times
  dry      tees
";

const HOUSE: &str = "\
mix soda soak
  6 L      water at 40 °C
  60 g/L   soda ash

layout rings
  zone 60% rim
  zone 40% heart
";

const USER: &str = "\
use soda soak, rings from \"house.dye\"

recipe Borrowed
  about    https://example.org/tide.

goods tees
  pieces   2
  weight   150 g each
  fibre    100% cotton

steps
  soak     tees in soda soak for 20 min
  fold     tees as rings
";

/// The text with the caret put behind the first place a stretch stands.
fn at(text: &str, before: &str) -> String {
    assert!(text.contains(before), "{before}");
    text.replacen(before, &format!("{before}‸"), 1)
}

fn hinted(text: &str) -> String {
    let scene = Scene::new(text);
    let analysis = scene.snapshot.analyse(&scene.path).unwrap();
    let found = hints(&analysis, &(0..text.len()), &|_| true);
    let mut drawn = scene.texts[&scene.path].clone();
    for hint in found.iter().rev() {
        assert!(hint.label.chars().count() <= tenter_features::hints::LONGEST, "{}", hint.label);
        drawn.insert_str(hint.offset, &format!("  «{}»", hint.label));
    }
    drawn
}

#[test]
fn hints_stand_at_the_end_of_lines() {
    assert_snapshot!(hinted(TEES));
}

#[test]
fn a_broken_line_has_no_hint() {
    let drawn = hinted(&TEES.replace("60 g/L   soda ash", "60 g/L   soda ahs"));
    assert!(!drawn.contains("480 g") && drawn.contains("soda ahs\n"), "{drawn}");
}

#[test]
fn every_kind_of_hint_has_its_switch() {
    let scene = Scene::new(TEES);
    let analysis = scene.snapshot.analyse(&scene.path).unwrap();
    let all = hints(&analysis, &(0..TEES.len()), &|_| true);
    for kind in [HintKind::Amount, HintKind::Mix, HintKind::State, HintKind::Step, HintKind::Recipe] {
        assert!(all.iter().any(|hint| hint.kind == kind), "{kind:?}");
        let without = hints(&analysis, &(0..TEES.len()), &|other| other != kind);
        assert!(without.iter().all(|hint| hint.kind != kind));
    }
}

#[test]
fn hints_explain_themselves() {
    let scene = Scene::new(TEES);
    let analysis = scene.snapshot.analyse(&scene.path).unwrap();
    let found = hints(&analysis, &(0..TEES.len()), &|_| true);
    let told: Vec<String> =
        found.iter().map(|hint| format!("«{}»\n{}", hint.label, explain(&analysis, hint))).collect();
    assert_snapshot!(told.join("\n\n"));
}

fn hovered(before: &str) -> String {
    let scene = Scene::new(&at(TEES, before));
    match hover::hover(&scene.snapshot, &scene.path, scene.offset - 1) {
        Some(found) => format!("⟦{}⟧\n{}", &TEES[found.range], found.markdown),
        None => "nothing".to_owned(),
    }
}

#[test]
fn hover_tells_where_a_quantity_comes_from() {
    assert_snapshot!(hovered("60 g/L"));
}

#[test]
fn hover_on_a_temperature_gives_the_other_scale() {
    assert_snapshot!(hovered("water at 82 °C"));
}

#[test]
fn hover_on_a_verb_tells_what_it_takes() {
    assert_snapshot!(hovered("  spin"));
}

#[test]
fn hover_on_goods_tells_their_state_at_that_line() {
    assert_snapshot!(hovered("spin     tees"));
}

#[test]
fn hover_on_a_zone_tells_what_lies_there() {
    assert_snapshot!(hovered("lagoon on rim"));
}

#[test]
fn hover_on_a_material_gives_its_entry() {
    assert_snapshot!(hovered("60 g/L   soda ash"));
}

/// Water lies in no spoon.
#[test]
fn a_liquid_has_a_density_and_no_spoon() {
    let told = hovered("6 L      wat");
    assert!(told.contains("- density: ") && !told.contains("spoon"), "{told}");
}

#[test]
fn hover_on_a_mix_tells_what_is_in_it() {
    assert_snapshot!(hovered("tees in soda soak"));
}

/// Labels offered at the caret, in order, at most `most`.
fn offered(drawn: &str, most: usize) -> String {
    let scene = Scene::new(drawn);
    let found = completion::complete(&scene.snapshot, &scene.path, scene.offset);
    let text = &scene.texts[&scene.path];
    let lines: Vec<String> = found
        .iter()
        .take(most)
        .map(|item| format!("{:?} {} ← {:?}", item.kind, item.label, &text[item.range.clone()]))
        .collect();
    lines.join("\n")
}

#[test]
fn completion_in_places_half_typed() {
    let step = |line: &str| format!("{TEES}  {line}‸\n");
    let cases = [
        ("the left edge", format!("{TEES}\nre‸")),
        ("a verb begun", step("so")),
        ("goods behind a verb", step("soak ")),
        ("clauses behind the goods", step("soak     tees ")),
        ("liquors behind in", step("soak     tees in ")),
        ("a name of two words begun", step("soak     tees in soda s")),
        ("a time", step("batch    tees for ")),
        ("units of time", step("batch    tees for 4 ")),
        ("units of an amount", step("sprinkle 4 g")),
        ("materials behind an amount", step("sprinkle 4 g/piece ")),
        ("zones", step("sprinkle 4 g/piece lagoon on ")),
        ("layouts", step("fold     tees as ")),
    ];
    let told: Vec<String> = cases.iter().map(|(what, drawn)| format!("# {what}\n{}", offered(drawn, 8))).collect();
    assert_snapshot!(told.join("\n\n"));
}

#[test]
fn completion_of_rules_asks_for_the_reason() {
    let scene = Scene::new(&format!("{TEES}  accept   too-little‸\n"));
    let found = completion::complete(&scene.snapshot, &scene.path, scene.offset);
    let rule = found.iter().find(|item| item.label == "too-little-alkali").unwrap();
    assert_eq!(rule.insert, "too-little-alkali because ${1:reason}");
    assert_eq!(found.len(), tenter_rules::RULES.len());
}

/// What is offered first, and what is not offered at all.
#[test]
fn completion_offers_what_fits() {
    let step = |line: &str| format!("{TEES}  {line}‸\n");
    let first = |drawn: &str| offered(drawn, 1).split(" ←").next().unwrap_or_default().to_owned();
    for (drawn, wanted) in [
        (step("repeat   steps "), "Steps steps prepare"),
        (step("repeat   "), "Steps steps prepare"),
        (step("wear     gloves, "), "Value apron"),
        ("goods tees\n  ‸\n".to_owned(), "Key pieces"),
        ("goods tees\n  weight   ‸\n".to_owned(), "Value 165 g each"),
        ("goods tees\n  weight   165 g ‸\n".to_owned(), "Value each"),
        ("mix bath\n  1:20 ‸\n".to_owned(), "Material water"),
        ("mix bath\n  8 L ‸\n".to_owned(), "Material water"),
        ("mix bath\n  make up  ‸\n".to_owned(), "Value to 8 L"),
        ("mix bath\n  rest     ‸\n".to_owned(), "Value for 12 h"),
        ("shelf\n  250 ‸\n".to_owned(), "Unit g"),
        ("shelf\n  250 g urea ‸\n".to_owned(), "Clause bought 2026-02-01 at 12 EUR"),
        (format!("{TEES}\nlog 2026-05-03\n  made     4 ‸\n"), "Goods tees"),
    ] {
        assert_eq!(first(&drawn), wanted, "{drawn}");
    }
    assert!(!offered("vessel pot\n  holds 3 L\n\nmix bath\n  60 g ‸\n", 500).contains("Vessel"));
    assert!(!offered(&step("wear     gloves, "), 500).contains("Clause"));
    let troubled =
        TEES.replace("60 g/L   soda ash", "1 g/L    soda ash").replace("12 g/tee soda ash", "1 g/tee soda ash");
    assert_eq!(first(&format!("{troubled}  accept   t‸\n")), "Rule too-little-alkali");
    let scene = Scene::of(&[("a.dye", "use rings from ‸\n"), ("house.dye", HOUSE)]);
    let found = completion::complete(&scene.snapshot, &scene.path, scene.offset);
    let labels: Vec<&str> = found.iter().map(|item| item.label.as_str()).collect();
    assert_eq!(labels, ["\"house.dye\""]);
}

#[test]
fn completion_of_keys_and_values() {
    let cases = [
        ("keys of a recipe, the missing first", "recipe A\n  room 20 °C\n  ‸\n".to_owned()),
        ("depths", "recipe A\n  depth ‸\n".to_owned()),
        ("units of a room", "recipe A\n  room 20 ‸\n".to_owned()),
        ("classes", "dye night\n  class    react‸\n".to_owned()),
        ("fibres behind a share", "goods tees\n  fibre 95% co‸\n".to_owned()),
        ("units in a mix", "mix soak\n  60 ‸\n".to_owned()),
        ("materials in a mix", "dye night\n\nmix soak\n  60 g ni‸\n".to_owned()),
    ];
    let told: Vec<String> = cases.iter().map(|(what, drawn)| format!("# {what}\n{}", offered(drawn, 6))).collect();
    assert_snapshot!(told.join("\n\n"));
}

#[test]
fn completion_of_files_and_their_names() {
    let files = |user: &'static str| Scene::of(&[("tees/a.dye", user), ("house.dye", HOUSE)]);
    for (drawn, wanted) in
        [("use soda soak from \"‸\"\n", "../house.dye"), ("use ‸ from \"../house.dye\"\n", "soda soak")]
    {
        let scene = files(drawn);
        let found = completion::complete(&scene.snapshot, &scene.path, scene.offset);
        assert!(found.iter().any(|item| item.label == wanted), "{drawn}: {found:?}");
    }
}

#[test]
fn nothing_is_offered_in_a_comment() {
    assert_eq!(offered("recipe A\n  # so‸\n", 9), "");
}

#[test]
fn signature_marks_the_clause_being_written() {
    let scene = Scene::new(&format!("{TEES}  soak     tees in soda soak for ‸\n"));
    let found = signature::signature(&scene.snapshot, &scene.path, scene.offset).unwrap();
    let active = &found.label[found.parts[found.active.unwrap()].clone()];
    assert!(active.starts_with("for "), "{active}");
    assert!(found.label.starts_with("soak "));
    let outside = Scene::new("recipe A\n  room ‸\n");
    assert_eq!(signature::signature(&outside.snapshot, &outside.path, outside.offset), None);
}

#[test]
fn definition_and_references_cross_files() {
    let scene = Scene::of(&[("a.dye", &at(USER, "tees in soda")), ("house.dye", HOUSE)]);
    let defined = navigation::definition(&scene.snapshot, &scene.path, scene.offset);
    assert_eq!(defined.iter().map(|place| &*place.path).collect::<Vec<_>>(), ["house.dye"]);
    let found = navigation::references(&scene.snapshot, &scene.path, scene.offset, true);
    assert_snapshot!(scene.mark_all(&found));
}

#[test]
fn the_path_of_a_use_line_leads_to_its_file() {
    let scene = Scene::of(&[("a.dye", &at(USER, "from \"hou")), ("house.dye", HOUSE)]);
    let defined = navigation::definition(&scene.snapshot, &scene.path, scene.offset);
    assert_eq!(defined.len(), 1);
    assert_eq!((&*defined[0].path, defined[0].start), ("house.dye", 0));
}

#[test]
fn highlights_hold_the_declaration_and_the_singular() {
    let scene = Scene::new(&at(TEES, "soak     te"));
    let found = navigation::highlights(&scene.snapshot, &scene.path, scene.offset);
    assert_eq!(found.iter().filter(|(_, declares)| *declares).count(), 1);
    let ranges: Vec<_> = found.into_iter().map(|(range, _)| range).collect();
    assert_snapshot!(scene.mark("a.dye", &ranges));
}

#[test]
fn rename_goes_everywhere_and_keeps_the_singular() {
    let scene = Scene::new(&at(TEES, "goods te"));
    let edits = rename::rename(&scene.snapshot, &scene.path, scene.offset, "shirts").unwrap();
    let text = apply("a.dye", &scene.texts["a.dye"], &edits);
    assert!(!text.contains("tee"), "{text}");
    assert!(text.contains("12 g/shirt soda ash"), "{text}");
    assert_snapshot!(scene.edited(&edits));
}

#[test]
fn rename_crosses_files() {
    let scene = Scene::of(&[("a.dye", USER), ("house.dye", &at(HOUSE, "layout rin"))]);
    let edits = rename::rename(&scene.snapshot, &scene.path, scene.offset, "circles").unwrap();
    assert_snapshot!(scene.edited(&edits));
}

#[test]
fn rename_refuses_what_would_not_read() {
    let scene = Scene::new(&at(TEES, "goods te"));
    let try_name = |name: &str| rename::rename(&scene.snapshot, &scene.path, scene.offset, name);
    for name in ["", "soda soak", "a, b", "tees in bath", "3 tees", "mix", "soak", "a\nb"] {
        assert!(try_name(name).is_err(), "{name:?}");
    }
    // Units, words that say how, and names everybody has would be read as what they are.
    for name in ["g", "parts", "each", "#2 tees"] {
        assert!(try_name(name).is_err(), "{name:?}");
    }
    let two_words = try_name("blue shirts").unwrap();
    assert!(apply("a.dye", &scene.texts["a.dye"], &two_words).contains("12 g/piece soda ash"));
    for (place, names) in [("mix soda", ["urea", "water", "Soda Ash"]), ("60% ri", ["front", "lagoon", "all over"])] {
        let scene = Scene::new(&at(TEES, place));
        for name in names {
            let found = rename::rename(&scene.snapshot, "a.dye", scene.offset, name);
            assert!(found.is_err(), "{name:?}: {found:?}");
        }
        assert!(rename::rename(&scene.snapshot, "a.dye", scene.offset, "number #2").is_ok());
    }
    let title = Scene::new(&at(TEES, "recipe Sma"));
    assert!(rename::rename(&title.snapshot, "a.dye", title.offset, "Silk in Vinegar").is_ok());
    let scene = Scene::new(&at(TEES, "60 g/L   soda"));
    assert!(matches!(rename::prepare(&scene.snapshot, "a.dye", scene.offset), Err(rename::Refusal::Reference(_))));
}

/// A chemical known by its name alone is told what it is before it gets another one.
#[test]
fn what_amends_an_entry_stays_what_it_is() {
    let text = TEES.replace("mix soda soak", "chemical soda ash\n  price    4 EUR per kg\n\nmix soda soak");
    let scene = Scene::new(&at(&text, "chemical soda"));
    assert!(rename::linked(&scene.snapshot, "a.dye", scene.offset).is_empty());
    let edits = rename::rename(&scene.snapshot, "a.dye", scene.offset, "our soda").unwrap();
    let renamed = apply("a.dye", &text, &edits);
    assert!(renamed.contains("chemical our soda\n  is       soda ash\n"), "{renamed}");
    assert!(renamed.contains("60 g/L   our soda") && renamed.contains("g/tee our soda"), "{renamed}");
    let found = |text: &str| Scene::new(text).snapshot.analyse("a.dye").unwrap().findings.len();
    assert_eq!(found(&renamed), found(&text));
}

#[test]
fn a_renamed_recipe_means_the_same() {
    let before = Scene::new(TEES);
    for (place, name) in [("goods te", "shirts"), ("dye lag", "deep water"), ("mix soda", "bath"), ("60% ri", "edge")] {
        let scene = Scene::new(&at(TEES, place));
        let edits = rename::rename(&scene.snapshot, &scene.path, scene.offset, name).unwrap();
        let text = apply("a.dye", TEES, &edits);
        let after = Scene::new(&text);
        let count = |scene: &Scene| scene.snapshot.analyse("a.dye").unwrap().findings.len();
        assert_eq!(count(&before), count(&after), "{text}");
    }
}

#[test]
fn linked_places_change_together() {
    let scene = Scene::new(&at(TEES, "layout rin"));
    let found = rename::linked(&scene.snapshot, &scene.path, scene.offset);
    assert_eq!(found.iter().map(|range| &TEES[range.clone()]).collect::<Vec<_>>(), ["rings", "rings"]);
}

#[test]
fn symbols_nest_under_their_recipe() {
    let scene = Scene::of(&[("a.dye", USER), ("house.dye", HOUSE)]);
    let mut lines = Vec::new();
    for path in ["a.dye", "house.dye"] {
        let file = scene.snapshot.file(path).unwrap();
        let mut waiting: Vec<(usize, symbols::Symbol)> =
            symbols::document(&file).into_iter().rev().map(|symbol| (0, symbol)).collect();
        while let Some((depth, symbol)) = waiting.pop() {
            assert!(symbol.range.start <= symbol.name_range.start && symbol.name_range.end <= symbol.range.end);
            lines.push(format!("{}{} {}", "  ".repeat(depth), symbol.detail, symbol.name));
            waiting.extend(symbol.children.into_iter().rev().map(|child| (depth + 1, child)));
        }
    }
    assert_snapshot!(lines.join("\n"));
    let found = symbols::workspace(&scene.snapshot, "SODA", 10);
    assert_eq!(found.iter().map(|name| name.name.as_str()).collect::<Vec<_>>(), ["soda soak"]);
}

#[test]
fn folds_and_selections() {
    let text = "# one\n# two\n\nuse a from \"b.dye\"\nuse c from \"d.dye\"\n\nrecipe A\n  room 20 °C\n\nmix B\n  1 L water\n\n";
    let scene = Scene::new(text);
    let file = scene.snapshot.file("a.dye").unwrap();
    let folds: Vec<(u32, u32)> = folding::folds(&file).iter().map(|fold| (fold.first, fold.last)).collect();
    assert_eq!(folds, [(0, 1), (3, 4), (6, 10), (9, 10)]);
    let scene = Scene::new(&at(TEES, "tees in soda so"));
    let file = scene.snapshot.file("a.dye").unwrap();
    let shown: Vec<String> =
        selection::selections(&file, scene.offset).into_iter().take(4).map(|range| TEES[range].to_owned()).collect();
    assert_eq!(shown[0], "soak");
    assert_eq!(shown[1], "soda soak");
    assert_eq!(shown[2], "in soda soak");
    assert!(shown[3].ends_with("for 20 min"));
}

#[test]
fn formatting_whole_range_and_line() {
    let text = "recipe A\n    room   20 °C\n\nmix B\n 1 L water\n 60g/L soda ash\n";
    let scene = Scene::new(text);
    let file = scene.snapshot.file("a.dye").unwrap();
    let whole = formatting::document(&file);
    assert_eq!(apply("a.dye", text, &whole), tenter_syntax::format(text));
    let part = formatting::range(&file, &(0..20));
    let after = apply("a.dye", text, &part);
    assert!(after.starts_with(&tenter_syntax::format(text)[..20]) && after.ends_with(" 60g/L soda ash\n"), "{after}");
    let typed = text.find(" 60g").unwrap();
    let line = formatting::on_type(&file, typed);
    let after = apply("a.dye", text, &line);
    assert!(after.contains("\n  1 L") && after.contains("\n 60g/L"), "{after}");
}

#[test]
fn tokens_colour_every_kind() {
    let scene = Scene::new(TEES);
    let analysis = scene.snapshot.analyse("a.dye").unwrap();
    let found = tokens::tokens(&analysis, &(0..TEES.len()));
    for pair in found.windows(2) {
        assert!(pair[0].range.end <= pair[1].range.start);
    }
    let lines: Vec<String> = found
        .iter()
        .map(|token| {
            format!("{:?}{} {}", token.kind, if token.declares { "!" } else { "" }, &TEES[token.range.clone()])
        })
        .collect();
    assert_snapshot!(lines.join("\n"));
}

/// A line of a variant stands for a step: its verb is one, and a remark is text.
#[test]
fn verbs_of_a_variant_are_verbs() {
    let text = "recipe A\n\nsteps\n  wait for 2 h\n  note the tub is slippery\n\nvariant quick\n  room 18 °C\n  wait for 1 h\n";
    let scene = Scene::new(text);
    let analysis = scene.snapshot.analyse("a.dye").unwrap();
    let found = tokens::tokens(&analysis, &(0..text.len()));
    let kind_of = |words: &str| {
        let at = text.rfind(words).unwrap();
        found.iter().find(|token| token.range == (at..at + words.len())).map(|token| token.kind)
    };
    assert_eq!(kind_of("wait"), Some(tokens::TokenKind::Verb));
    assert_eq!(kind_of("room"), Some(tokens::TokenKind::Key));
    assert_eq!(kind_of("note"), Some(tokens::TokenKind::Verb));
    assert_eq!(kind_of("the tub is slippery"), Some(tokens::TokenKind::Text));
}

#[test]
fn colours_links_and_lenses() {
    let scene = Scene::of(&[("a.dye", USER), ("house.dye", HOUSE), ("b.dye", TEES)]);
    let file = scene.snapshot.file("b.dye").unwrap();
    let found = colours::colours(&file);
    assert_eq!((found.len(), found[0].rgb), (1, [0x1d, 0x5f, 0xa6]));
    assert_eq!(colours::written(&file, &found[0].range, [0, 255, 16]).as_deref(), Some("#00ff10"));
    let user = scene.snapshot.file("a.dye").unwrap();
    let links = links::links(&scene.snapshot, &user);
    let shown: Vec<&str> = links.iter().map(|link| &USER[link.range.clone()]).collect();
    assert_eq!(shown, ["house.dye", "https://example.org/tide"]);
    let analysis = scene.snapshot.analyse("b.dye").unwrap();
    let lines: Vec<String> = lenses::lenses(&analysis, &|_| true)
        .into_iter()
        .map(|lens| {
            let resolved = match lens.kind {
                lenses::LensKind::Uses => lenses::resolve(&scene.snapshot, "b.dye", lens.range.clone()),
                _ => lens.clone(),
            };
            format!("{} ← {}", resolved.title, &TEES[lens.range])
        })
        .collect();
    assert_snapshot!(lines.join("\n"));
}

#[test]
fn who_draws_on_whom() {
    let scene = Scene::of(&[("a.dye", USER), ("house.dye", &at(HOUSE, "mix soda"))]);
    let party = calls::prepare(&scene.snapshot, &scene.path, scene.offset).unwrap();
    assert_eq!(party.name, "soda soak");
    let users = calls::incoming(&scene.snapshot, &party);
    assert_eq!(
        users.iter().map(|(user, _)| (&*user.path, user.name.as_str())).collect::<Vec<_>>(),
        [("a.dye", "steps")]
    );
    let drawn = calls::outgoing(&scene.snapshot, &users[0].0);
    assert_eq!(drawn.iter().map(|(party, _)| party.name.as_str()).collect::<Vec<_>>(), ["soda soak"]);
}

#[test]
fn use_lines_follow_a_moved_file() {
    let scene = Scene::of(&[("a.dye", USER), ("house.dye", HOUSE)]);
    let edits = renamed_files::edits(&scene.snapshot, &[("house.dye".to_owned(), "shared/store.dye".to_owned())]);
    assert_snapshot!(scene.edited(&edits));
    let edits = renamed_files::edits(&scene.snapshot, &[("a.dye".to_owned(), "tees/a.dye".to_owned())]);
    assert!(edits.iter().any(|edit| edit.new_text == "\"../house.dye\""), "{edits:?}");
}

/// Every action at the caret with what it changes.
fn acted(drawn: &str) -> String {
    let scene = Scene::new(drawn);
    let range = scene.offset..scene.offset;
    let found = actions(&scene.snapshot, &scene.path, &range, Some("2026-05-03"));
    let parts: Vec<String> = found
        .iter()
        .map(|action| format!("# {:?}: {}\n{}", action.kind, action.title, scene.edited(&action.edits)))
        .collect();
    parts.join("\n\n")
}

#[test]
fn actions_on_a_share_of_the_goods() {
    assert_snapshot!(acted(&at(TEES, "sprinkle 3 g")));
}

#[test]
fn actions_on_a_concentration() {
    assert_snapshot!(acted(&at(TEES, "  60 g")));
}

#[test]
fn actions_on_a_temperature() {
    assert_snapshot!(acted(&at(TEES, "water at 82")));
}

#[test]
fn actions_on_a_recipe() {
    assert_snapshot!(acted(&at(TEES, "recipe Small")));
}

#[test]
fn actions_on_a_spoon() {
    assert_snapshot!(acted(
        "goods tees\n  pieces 2\n  weight 100 g each\n\nmix soak\n  1 L water\n  3 t‸sp soda ash\n"
    ));
}

#[test]
fn actions_settle_findings() {
    assert_snapshot!(acted(&at(&TEES.replace("lagoon on rim", "lagon on rim"), "g/piece lag")));
}

// ---- sheets ----

#[test]
fn totals_tell_the_state_at_the_line() {
    let scene = Scene::new(&at(TEES, "irrigate 400 mL"));
    let analysis = scene.snapshot.analyse(&scene.path).unwrap();
    let found = sheets::totals(&analysis, scene.offset).unwrap();
    assert_eq!((found.title.as_str(), found.line), ("Small Tide", Some(32)));
    // The figures are the rehearsal's; here counts that they are there, and where.
    let mut lines = found.state.lines();
    assert_eq!(lines.next(), Some("After line 32: irrigate 400 mL/piece water at 82 °C"));
    assert!(lines.next().unwrap().contains("of it work"), "{}", found.state);
    for part in ["tees, rim", "tees, heart", "lagoon ", "of a full batch", "soda soak: ", "water, %"] {
        assert!(found.state.contains(part), "{part}: {}", found.state);
    }
    assert!(found.text().starts_with(&found.state) && found.text().ends_with(&found.totals));
    assert!(found.totals.contains("\nWeigh out\n") && found.html().contains("<h2>Weigh out</h2>"));
}

#[test]
fn totals_of_a_mix_tell_how_it_comes_out() {
    let scene = Scene::new(&at(TEES, "6 L      "));
    let analysis = scene.snapshot.analyse(&scene.path).unwrap();
    assert_snapshot!(sheets::totals(&analysis, scene.offset).unwrap().state);
}

#[test]
fn a_variant_has_totals_of_its_own() {
    let text = format!("{TEES}\nvariant For Eight\n  in goods tees\n  pieces   8\n");
    let scene = Scene::new(&at(&text, "pieces   8"));
    let analysis = scene.snapshot.analyse(&scene.path).unwrap();
    let found = sheets::totals(&analysis, scene.offset).unwrap();
    assert_eq!(found.title, "Small Tide, For Eight");
}

#[test]
fn the_bench_sheet_has_a_box_for_everything() {
    let scene = Scene::new(TEES);
    let analysis = scene.snapshot.analyse(&scene.path).unwrap();
    assert_snapshot!(sheets::bench_sheet(&analysis, 0).unwrap().markdown);
}

#[test]
fn a_shared_file_has_no_sheet() {
    let scene = Scene::new(HOUSE);
    let analysis = scene.snapshot.analyse(&scene.path).unwrap();
    assert!(sheets::totals(&analysis, 0).is_none() && sheets::bench_sheet(&analysis, 0).is_none());
}

// ---- moving, sharing, adding ----

/// Each action of a kind: its title, the file it makes, what changes.
fn drawn_actions(scene: &Scene, kind: ActionKind) -> String {
    let range = scene.offset..scene.offset;
    let found = actions(&scene.snapshot, &scene.path, &range, Some("2026-05-03"));
    let parts: Vec<String> = found
        .iter()
        .filter(|action| action.kind == kind)
        .map(|action| {
            let new = action.creates.as_ref().map(|new| format!("── new {}\n{}", new.path, new.text));
            format!("{}\n{}{}", action.title, new.unwrap_or_default(), scene.edited(&action.edits))
        })
        .collect();
    parts.join("\n\n")
}

#[test]
fn a_mix_moves_to_a_file_of_its_own() {
    assert_snapshot!(drawn_actions(&Scene::new(&at(TEES, "mix soda")), ActionKind::Extract));
}

#[test]
fn what_a_mix_names_moves_along() {
    let text = TEES.replace(
        "layout rings",
        "mix bottle\n  200 mL   water at 30 °C\n  4 g      lagoon\n  # kept cool\n  100 mL   soda soak\n\n# how it is folded\nlayout rings",
    );
    assert_snapshot!(drawn_actions(&Scene::new(&at(&text, "mix bot")), ActionKind::Extract));
}

#[test]
fn a_moved_mix_takes_what_it_takes_from_others() {
    let user = USER.replace("steps\n", "mix half soak\n  1 L      water at 30 °C\n  1 L      soda soak\n\nsteps\n");
    let drawn = at(&user, "mix half");
    assert_snapshot!(drawn_actions(
        &Scene::of(&[("tees/a.dye", &drawn), ("tees/house.dye", HOUSE)]),
        ActionKind::Extract
    ));
}

#[test]
fn steps_stay_where_they_are_done() {
    assert_eq!(drawn_actions(&Scene::new(&at(TEES, "steps prep")), ActionKind::Extract), "");
}

#[test]
fn a_mix_written_twice_is_written_once() {
    let twice = format!(
        "{TEES}\n{}",
        TEES.replace("Small Tide", "Second Tide").replace("60 g/L   soda ash", "60 g/L  soda ash # as ever")
    );
    assert_snapshot!(drawn_actions(&Scene::new(&at(&twice, "mix soda")), ActionKind::Extract));
}

#[test]
fn clauses_that_are_missing_are_offered() {
    let scene = Scene::new(&at(TEES, "spin "));
    assert_snapshot!(drawn_actions(&scene, ActionKind::Rewrite));
}

/// The text after the action with that title.
fn after(text: &str, place: &str, title: &str) -> String {
    let scene = Scene::new(&at(text, place));
    let found = actions(&scene.snapshot, "a.dye", &(scene.offset..scene.offset), None);
    let titles: Vec<&str> = found.iter().map(|action| action.title.as_str()).collect();
    let action = found.iter().find(|action| action.title == title);
    apply("a.dye", text, &action.unwrap_or_else(|| panic!("no {title} in {titles:?}")).edits)
}

fn titles(text: &str, place: &str) -> Vec<String> {
    let scene = Scene::new(&at(text, place));
    let found = actions(&scene.snapshot, "a.dye", &(scene.offset..scene.offset), None);
    found.into_iter().map(|action| action.title).collect()
}

/// What is tidy stays tidy, whatever the width of what is written anew.
#[test]
fn columns_stay_where_they_stood() {
    let wider = after(TEES, "  60 g", "write `90 g/piece`");
    assert_eq!(tenter_syntax::format(&wider), wider);
    assert!(wider.contains("  6 L        water"), "{wider}");
    let untidy = TEES.replace("6 L      water", "6 L water");
    assert!(after(&untidy, "  60 g", "write `360 g`").contains("6 L water at 40 °C\n  360 g   soda ash"));
}

/// 2 L over 6 pieces is 333.3 mL each; 333 mL would make 1.998 L of them.
#[test]
fn an_amount_said_another_way_is_the_same_amount() {
    let text = TEES.replace("pieces   4", "pieces   6").replace("6 L      water", "2 L      water");
    assert!(titles(&text, "  2 L").contains(&"write `333.3 mL/piece`".to_owned()));
}

const LOTS: &str = "\
recipe Lots
goods tees
  pieces   12 in 3 lots of 4
  weight   150 g each
  fibre    100% cotton

mix bottle
  900 mL   water at 30 °C

steps four at a time
  squirt   70 mL/piece from bottle on all over
  sprinkle 20 g urea on front

steps the others
  repeat   steps four at a time for each lot
";

/// A step done with one lot at a time takes the amount of one lot: 4 × 70 = 280 mL, and 20 g over 4 pieces.
#[test]
fn amounts_of_a_lot_are_for_the_lot() {
    assert!(titles(LOTS, "squirt   70").contains(&"write `280 mL`".to_owned()));
    assert!(titles(LOTS, "sprinkle 20").contains(&"write `5 g/piece`".to_owned()));
}

/// `spec/10-scaling.md`: to 24 pieces, `12 in 3 lots of 4` is 6 lots of 4; what one lot takes stays.
#[test]
fn scaling_goes_by_whole_lots() {
    let twice = after(LOTS, "recipe L", "scale to 24 pieces (double)");
    assert!(twice.contains("24 in 6 lots of 4") && twice.contains("20 g urea") && twice.contains("1800 mL"), "{twice}");
    assert!(!titles(LOTS, "recipe L").iter().any(|title| title.contains("half")));
    let numbered = LOTS.replace("for each lot", "for lot 2");
    assert!(!titles(&numbered, "recipe L").iter().any(|title| title.contains("scale")));
}

/// The shelf holds what it holds, however many pieces are dyed.
#[test]
fn the_shelf_does_not_scale() {
    let text = format!("{TEES}\nshelf\n  250 g    lagoon bought 2026-02-01 at 12 EUR\n");
    let twice = after(&text, "recipe S", "scale to 8 pieces (double)");
    assert!(twice.contains("250 g    lagoon bought") && twice.contains("12 L     water"), "{twice}");
}

/// A part of a paste stands beside other parts; by weight it would not be a share of the whole any more.
#[test]
fn parts_stay_parts() {
    let text = "mix paste\n  make up  1 kg\n  450 parts water\n  75 parts urea\n  475 parts sodium alginate\n";
    assert!(!titles(text, "  75").iter().any(|title| title.starts_with("write")), "{:?}", titles(text, "  75"));
}

/// Nobody unties into a dye bottle, and `turn tees over` says nothing new.
#[test]
fn clauses_offered_fit_the_step() {
    let text = TEES.replace("  rinse    tees", "  untie    tees\n  turn     tees\n  rinse    tees");
    assert!(
        titles(&text, "untie    te").contains(&"add `in cold water`".to_owned()),
        "{:?}",
        titles(&text, "untie    te")
    );
    assert!(titles(&text, "turn     te").iter().all(|title| !title.starts_with("add `over")));
}

/// Moving changes no figure and finds nothing new.
#[test]
#[allow(clippy::disallowed_methods, reason = "a test reads its fixtures")]
fn moving_changes_no_total() {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/recipes");
    let mut texts: Vec<(String, String)> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "dye"))
        .map(|path| (path.file_name().unwrap().to_string_lossy().into_owned(), std::fs::read_to_string(path).unwrap()))
        .collect();
    texts.sort();
    let mut workspace = tenter_features::Workspace::new();
    for (path, text) in &texts {
        workspace.open(path, text);
    }
    let snapshot = workspace.snapshot();
    let account = |snapshot: &tenter_features::Snapshot, path: &str| {
        let analysis = snapshot.analyse(path).unwrap();
        let title = analysis.file.text.find("\nrecipe ").map(|at| sheets::totals(&analysis, at + 1).unwrap());
        // Lines move, and what is named first is told first; what is weighed and mixed does not change.
        let told = title.map(|totals| {
            let weighed = totals.totals.split("\nMixes").next().unwrap_or_default();
            weighed.lines().map(str::to_owned).collect::<std::collections::BTreeSet<String>>()
        });
        (told, analysis.findings.len())
    };
    let mut moved = 0;
    for (path, text) in &texts {
        let before = account(&snapshot, path);
        let rows = text.match_indices('\n').map(|(at, _)| at + 1);
        let heads = rows.filter(|at| text[*at..].starts_with(|c: char| c.is_ascii_alphabetic()));
        for head in heads {
            let found = actions(&snapshot, path, &(head..head), None);
            for action in found.iter().filter(|action| action.kind == ActionKind::Extract) {
                let mut after = tenter_features::Workspace::new();
                for (other, text) in &texts {
                    after.open(other, text);
                }
                if let Some(new) = &action.creates {
                    after.open(&new.path, &new.text);
                }
                after.open(path, &apply(path, text, &action.edits));
                let after = account(&after.snapshot(), path);
                assert_eq!(after, before, "{path}: {}", action.title);
                moved += 1;
            }
        }
    }
    assert!(moved > 20, "{moved}");
}

// ---- variants ----

#[test]
fn hints_of_a_variant_are_its_own() {
    let text = format!(
        "{TEES}\nvariant weak and long\n  soak     tees in soda soak for 40 min\n  in mix soda soak\n  50 g/L   soda ash\n"
    );
    let drawn = hinted(&text);
    let tail = drawn.split("variant").nth(1).unwrap();
    assert_snapshot!(format!("variant{tail}"));
    // The recipe's own lines are told of as written.
    assert_eq!(drawn.split("\nvariant").next().unwrap(), hinted(TEES));
}

#[test]
fn hover_in_a_variant_tells_of_the_variant() {
    let text = format!("{TEES}\nvariant weak\n  in mix soda soak\n  50 g/L   soda ash\n");
    let scene = Scene::new(&at(&text, "  50 g"));
    let found = hover::hover(&scene.snapshot, &scene.path, scene.offset).unwrap();
    assert!(found.markdown.contains("300 g"), "{}", found.markdown);
}
