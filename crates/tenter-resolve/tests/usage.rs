//! `use`: names from other files, and nothing from outside the collection.

mod support;

use std::cell::RefCell;
use std::sync::Arc;

use support::{Read, Shelf, exactly, grams, read_with};
use tenter_resolve::{Library, ProblemKind, Scale, inside_collection, sheets};
use tenter_syntax::Document;

const HOUSE: &str = "\
dye lagoon
  class    reactive dichlorotriazine

mix soda soak
  8 L      water at 40 °C
  60 g/L   soda ash

mix lagoon bottle
  500 mL   water at 40 °C
  12 g     lagoon

layout rings
  zone 60% rim
  zone 40% heart
";

fn evening(first: &str) -> String {
    format!(
        "{first}\n\nrecipe Evening\n\ngoods tees\n  pieces 4\n  weight 150 g each\n  fibre cotton\n\nsteps\n  \
         wear dust mask\n  soak tees in soda soak for 20 min\n"
    )
}

fn with(text: &str, path: &str, files: &[(&str, &str)]) -> Read {
    read_with(text, path, &Shelf::of(files), Scale::AsWritten)
}

fn broken(read: &Read) -> Vec<String> {
    let told = read.recipe().problems.iter();
    told.filter_map(|problem| match &problem.kind {
        ProblemKind::BrokenUse { why } => Some(why.to_string()),
        _ => None,
    })
    .collect()
}

#[test]
fn what_is_named_is_taken() {
    let read =
        with(&evening("use soda soak, rings from \"house.dye\""), "evening.dye", &[("house.dye", HOUSE)]).quiet();
    exactly(grams(read.recipe(), "soda ash"), 480.0);
    assert!(read.recipe().layouts.iter().any(|layout| &*layout.name.text == "rings"));
    let soak = read.recipe().mixes.iter().find(|mix| &*mix.name.text == "soda soak").expect("it");
    assert!(soak.shared);
}

#[test]
fn a_group_of_steps_stays_where_it_is() {
    let house = format!("{HOUSE}\nsteps wash off\n  rinse tees in cold water\n");
    let read = with(&evening("use soda soak, wash off from \"house.dye\""), "evening.dye", &[("house.dye", &house)]);
    let told = broken(&read);
    assert!(matches!(&told[..], [why] if why.contains("wash off is a group of steps")), "{told:?}");
}

#[test]
fn everything_and_what_a_mix_needs() {
    let all = with(&evening("use everything from \"house.dye\""), "evening.dye", &[("house.dye", HOUSE)]).quiet();
    assert_eq!(all.recipe().mixes.len(), 2);
    let text = evening("use lagoon bottle, soda soak from \"house.dye\"")
        + "  squirt 60 mL/piece from lagoon bottle on front\n";
    let read = with(&text, "evening.dye", &[("house.dye", HOUSE)]).quiet();
    exactly(grams(read.recipe(), "lagoon"), 12.0);
}

#[test]
fn paths_are_relative_to_the_file() {
    for (from, written, found) in [
        ("a/b/evening.dye", "../house.dye", "a/house.dye"),
        ("a/b/evening.dye", "../../house.dye", "house.dye"),
        ("a/evening.dye", "./c/../house.dye", "a/house.dye"),
        ("evening.dye", "soaks/house.dye", "soaks/house.dye"),
        ("a/evening.dye", "b//house.dye", "a/b/house.dye"),
    ] {
        assert_eq!(inside_collection(from, written).as_deref(), Ok(found), "{from} {written}");
        let text = evening(&format!("use soda soak from \"{written}\""));
        with(&text, from, &[(found, HOUSE)]).quiet();
    }
}

/// Asked for anything, it notes what it was asked for.
struct Watch(RefCell<Vec<String>>);

impl Library for Watch {
    fn document(&self, path: &str) -> Option<Arc<Document>> {
        self.0.borrow_mut().push(path.to_owned());
        Some(Arc::new(Document::parse(HOUSE)))
    }
}

#[test]
fn nothing_outside_is_ever_asked_for() {
    for written in [
        "../house.dye",
        "a/../../house.dye",
        "../../../../../../etc/passwd",
        "./../house.dye",
        "/etc/passwd",
        "//server/share/house.dye",
        "C:/house.dye",
        "c:house.dye",
        "C:\\house.dye",
        "..\\house.dye",
        "a\\..\\..\\house.dye",
        "\\\\server\\share",
        "~/house.dye",
        "~root/house.dye",
        "",
    ] {
        assert!(inside_collection("evening.dye", written).is_err(), "{written:?}");
        let library = Watch(RefCell::new(Vec::new()));
        let read = read_with(
            &evening(&format!("use soda soak from \"{written}\"")),
            "evening.dye",
            &library,
            Scale::AsWritten,
        );
        assert_eq!(library.0.into_inner(), Vec::<String>::new(), "{written:?}");
        assert_eq!(broken(&read).len(), 1, "{written:?}: {:?}", read.troubles());
    }
}

#[test]
fn what_is_asked_for_never_leads_upwards() {
    for written in ["a/./b/../house.dye", "house.dye", "x/y/z.dye", "a/..//house.dye"] {
        let path = inside_collection("c/evening.dye", written).expect("inside");
        assert!(
            !path.starts_with('/') && path.split('/').all(|part| !part.is_empty() && part != "." && part != ".."),
            "{path}"
        );
    }
}

#[test]
fn missing_files_and_names_are_told_on_their_line() {
    let none = with(&evening("use soda soak from \"no-such.dye\""), "evening.dye", &[]);
    assert_eq!(broken(&none).len(), 1, "{:?}", none.troubles());
    let name = with(&evening("use soda soak, glacier from \"house.dye\""), "evening.dye", &[("house.dye", HOUSE)]);
    let told = name.troubles();
    assert!(matches!(&told[..], [(text, ProblemKind::BrokenUse { .. })] if text == "glacier"), "{told:?}");
    for half in [
        "use soda soak from house.dye",
        "use from \"house.dye\"",
        "use soda soak \"house.dye\"",
        "use soda soak from \"house.dye",
    ] {
        let read = with(&evening(half), "evening.dye", &[("house.dye", HOUSE)]);
        assert!(!broken(&read).is_empty(), "{half}: {:?}", read.troubles());
    }
}

#[test]
fn rings_come_to_an_end() {
    let a = format!("use everything from \"b.dye\"\n\n{HOUSE}");
    let b = "use everything from \"a.dye\"\n\nmix moss stock\n  1 L water\n  5 g urea\n";
    let files = [("a.dye", a.as_str()), ("b.dye", b)];
    let read = with(&evening("use everything from \"a.dye\""), "evening.dye", &files);
    exactly(grams(read.recipe(), "soda ash"), 480.0);
    // A file that uses itself.
    let own = evening("use soda soak from \"evening.dye\"");
    let read = with(&own, "evening.dye", &[("evening.dye", own.as_str())]);
    assert_eq!(read.recipes.len(), 1);
}

#[test]
fn long_chains_come_to_an_end() {
    let files: Vec<(String, String)> = (0..200)
        .map(|n| (format!("f{n}.dye"), format!("use everything from \"f{}.dye\"\n\nmix m{n}\n  1 L water\n", n + 1)))
        .collect();
    let files: Vec<(&str, &str)> = files.iter().map(|(path, text)| (path.as_str(), text.as_str())).collect();
    let document = Document::parse("use everything from \"f0.dye\"\n\nrecipe R\n");
    let sheet = sheets(&document, "r.dye", &Shelf::of(&files)).pop().expect("a sheet");
    assert!(sheet.blocks.len() < 50, "{}", sheet.blocks.len());
}

#[test]
fn a_fan_of_files_is_read_once_each() {
    // Each file uses the next one three times: 3^12 ways, 12 files.
    let files: Vec<(String, String)> = (0..12)
        .map(|n| {
            let line = format!("use everything from \"f{}.dye\"\n", n + 1);
            (format!("f{n}.dye"), format!("{line}{line}{line}\nmix m{n}\n  1 L water\n"))
        })
        .collect();
    let files: Vec<(&str, &str)> = files.iter().map(|(path, text)| (path.as_str(), text.as_str())).collect();
    let document = Document::parse("use everything from \"f0.dye\"\n\nrecipe R\n");
    let sheet = sheets(&document, "r.dye", &Shelf::of(&files)).pop().expect("a sheet");
    assert!(sheet.blocks.len() < 100, "{}", sheet.blocks.len());
}

#[test]
fn own_names_win() {
    let text = evening("use everything from \"house.dye\"") + "\nmix soda soak\n  4 L water\n  50 g/L soda ash\n";
    let read = with(&text, "evening.dye", &[("house.dye", HOUSE)]);
    // 4 × 50, not 8 × 60: the steps use the recipe's own soak.
    let own = read.recipe().mixes.iter().position(|mix| !mix.shared && &*mix.name.text == "soda soak").expect("own");
    assert!(!read.recipe().mixes[own].draws.is_empty(), "{:?}", read.troubles());
    exactly(grams(read.recipe(), "soda ash"), 200.0);
    assert!(read.troubles().is_empty(), "{:?}", read.troubles());
}

#[test]
fn a_use_line_of_a_recipe_holds_for_it_alone() {
    let text = "recipe One\nuse soda soak from \"house.dye\"\n\nsteps\n  stir soda soak\n\nrecipe Two\n\nsteps\n  stir soda soak\n";
    let document = Document::parse(text);
    let sheets = sheets(&document, "r.dye", &Shelf::of(&[("house.dye", HOUSE)]));
    let unknown = |sheet| {
        let recipe = tenter_resolve::resolve(sheet, Scale::AsWritten).remove(0);
        recipe.problems.iter().any(|problem| matches!(problem.kind, ProblemKind::UnknownName { .. }))
    };
    assert!(!unknown(&sheets[0]));
    assert!(unknown(&sheets[1]));
}
