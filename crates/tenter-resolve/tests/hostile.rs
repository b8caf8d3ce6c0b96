//! Nothing a line can say makes the resolver panic, and what it reckons stays a number.

mod support;

use proptest::prelude::*;
use support::{SHELF, Shelf, read_with};
use tenter_resolve::{Recipe, Scale};

const WORDS: &[&str] = &[
    "soak",
    "dip",
    "repeat",
    "make",
    "add",
    "squirt",
    "sprinkle",
    "rinse",
    "wear",
    "soap",
    "off",
    "raise",
    "print",
    "turn",
    "tees",
    "night",
    "night at sea",
    "black",
    "lagoon",
    "rings",
    "rim",
    "heart",
    "dye bath",
    "bath #2",
    "test",
    "steps",
    "lot",
    "water",
    "soda ash",
    "vinegar",
    "ice",
    "Reactive Blue 4",
    "glauber's salt",
    "all over",
    "front",
    "on ice",
    "the",
    "of",
    "each",
    "in",
    "into",
    "with",
    "without",
    "at",
    "for",
    "from",
    "to",
    "on",
    "over",
    "under",
    "until",
    "as",
    "every",
    "and",
    "because",
    "per",
    "fixed",
    "covered",
    "apart",
    "times",
    "parts",
    "lots",
    "pieces",
    "pickup",
    "owg",
    "% owg",
    "% w/v",
    "%",
    "°",
    "°C",
    "F",
    "g",
    "kg",
    "g/L",
    "L",
    "mL",
    "mL/piece",
    "g/tee",
    "g/",
    "g per",
    "oz",
    "fl oz",
    "cup",
    "tsp per cup",
    "lb",
    "mol/L",
    "ppm",
    "drop",
    "min",
    "h",
    "EUR",
    "EUR per",
    "cm",
    "T",
    "c",
    "make up to",
    "keep",
    "rest",
    "leave out",
    "instead",
    "accept",
    "weight",
    "fibre",
    "state",
    "zone",
    "beside",
    "cotton",
    "polyester",
    "damp",
    "scoured",
    "is",
    "class",
    "price",
    "strength",
    "0",
    "1",
    "2",
    "12",
    "1/2",
    "1/0",
    "1½",
    "-18",
    "−5",
    "1e9",
    "2,5",
    "1-1/2",
    "1:20",
    "0:0",
    "20:1",
    "14:30",
    "2026-05-03",
    "10 to 20",
    "20 ± 2",
    "about 20",
    "at least",
    "99999999999999999999999999",
    "0.0000000001",
    "#",
    "# x",
    "#1d5fa6",
    "(half)",
    "(",
    "\"",
    "\"night at",
    ",",
    ";",
    "/",
    "\u{200b}",
    "\u{202e}",
    "é",
    "水",
    "\t",
    "\u{0}",
    "ſ",
    "İ",
    "🎨",
];

const HEADERS: &[&str] = &[
    "recipe R",
    "goods tees",
    "goods",
    "dye night",
    "dye",
    "chemical soda ash",
    "mix test",
    "mix dye bath",
    "layout rings",
    "vessel pot",
    "steps",
    "steps test",
    "variant v",
    "log 2026-05-03",
    "log x",
    "shelf",
    "edition 1",
    "edition 9",
    "use test from \"a.dye\"",
    "use everything from \"b.dye\"",
    "use x from \"../y\"",
    "gods x",
];

fn line() -> impl Strategy<Value = String> {
    (prop::collection::vec(prop::sample::select(WORDS), 1..14), 0usize..9)
        .prop_map(|(words, indent)| format!("{}{}", " ".repeat(indent), words.join(" ")))
}

fn block() -> impl Strategy<Value = String> {
    (prop::sample::select(HEADERS), prop::collection::vec(line(), 0..8))
        .prop_map(|(header, lines)| format!("{header}\n{}\n", lines.join("\n")))
}

/// Bounds are in order and nothing is NaN.
fn sound(recipe: &Recipe) {
    let figures = recipe
        .totals
        .materials
        .iter()
        .flat_map(|total| [&total.mass, &total.volume, &total.owg, &total.per_piece])
        .chain(
            recipe.totals.mixes.iter().flat_map(|total| [&total.volume, &total.mass, &total.left, &total.used_share]),
        )
        .chain([&recipe.totals.water, &recipe.totals.dry_mass, &recipe.totals.pieces])
        .flatten();
    for figure in figures {
        let value = figure.value;
        assert!(value.low <= value.best && value.best <= value.high, "{value:?}");
        assert!(!figure.show().is_empty());
        assert!(!figure.derivation(&|_| String::new()).is_empty());
    }
}

fn resolves(text: &str, scale: Scale) {
    let library = Shelf::of(&[
        ("a.dye", "use everything from \"b.dye\"\n\nmix test\n  1 L water\n  2 g/L soda ash\n"),
        ("b.dye", "use everything from \"a.dye\"\n\ndye night\n  class acid\n"),
    ]);
    let read = read_with(text, "test.dye", &library, scale);
    for recipe in &read.recipes {
        sound(recipe);
        for problem in &recipe.problems {
            // A place points into the text, on whole characters.
            let _ = read.sheet.text(problem.place);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, ..ProptestConfig::default() })]

    #[test]
    fn any_step(line in line()) {
        resolves(&format!("{SHELF}steps\n  {line}\n"), Scale::AsWritten);
    }

    #[test]
    fn any_mix(lines in prop::collection::vec(line(), 1..6)) {
        let body: String = lines.iter().map(|line| format!("  {}\n", line.trim_start())).collect();
        resolves(&format!("{SHELF}mix test\n{body}\nsteps\n  soak tees in test\n"), Scale::AsWritten);
    }

    #[test]
    fn any_variant(lines in prop::collection::vec(line(), 1..5)) {
        let body: String = lines.iter().map(|line| format!("  {}\n", line.trim_start())).collect();
        resolves(&format!("{SHELF}steps test\n  soak tees in dye bath for 5 min\n\nvariant v\n{body}"), Scale::AsWritten);
    }

    #[test]
    fn any_file(blocks in prop::collection::vec(block(), 1..8), pieces in prop::num::f64::ANY) {
        resolves(&blocks.concat(), Scale::Pieces(pieces));
    }

    #[test]
    fn any_text(text in "\\PC{0,200}(\n\\PC{0,80}){0,6}") {
        resolves(&text, Scale::AsWritten);
    }
}

#[test]
fn mixes_in_a_ring_and_in_a_long_chain() {
    let ring: String = (0..50).map(|n| format!("mix m{n}\n  1 L m{}\n  5 g/L urea\n\n", (n + 1) % 50)).collect();
    resolves(&format!("recipe R\n\n{ring}"), Scale::AsWritten);
    let chain: String = (0..400).map(|n| format!("mix m{n}\n  1 L m{}\n\n", n + 1)).collect();
    resolves(&format!("recipe R\n\n{chain}"), Scale::AsWritten);
}

#[test]
fn groups_that_repeat_each_other() {
    let text = format!(
        "{SHELF}steps a\n  repeat steps b, 1000 times\n  sprinkle 1 g/piece lagoon on front\n\nsteps b\n  repeat steps a, 1000 times\n  \
         repeat steps b, 1000 times\n"
    );
    resolves(&text, Scale::AsWritten);
}
