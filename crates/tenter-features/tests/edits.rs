//! Any sequence of edits gives what a fresh start on the final text gives.

#![allow(clippy::unwrap_used, reason = "a test that finds nothing has failed")]

use std::fmt::Write as _;

use proptest::prelude::*;
use tenter_features::diagnostics::diagnostics;
use tenter_features::hints::hints;
use tenter_features::{Workspace, symbols, tokens};

const START: &str = "\
use everything from \"house.dye\"

recipe One
  room     22 °C

goods tees
  pieces   4
  weight   150 g each
  fibre    100% cotton

mix soda soak
  6 L      water at 40 °C
  60 g/L   soda ash

steps
  soak     tees in soda soak for 20 min
  spin     tees to 65% pickup
  accept   too-little-alkali because it is a trial

recipe Two

goods hats
  pieces   2
  weight   90 g each
  fibre    100% wool

steps
  soak     hats in house bath for 20 min
";

const HOUSE: &str = "mix house bath\n  2 L water at 30 °C\n  20 g soda ash\n";

/// Pieces of text an editor may put in.
const PIECES: [&str; 16] = [
    "",
    " ",
    "\n",
    "\r\n",
    "\n  ",
    "recipe Three\n",
    "goods tees\n",
    "mix soda soak\n  1 L water\n",
    "60 g/L soda ash",
    "tees",
    "é小👩‍🔬",
    "# ",
    "\"",
    "steps\n  soak tees in house bath",
    "use rim from \"none.dye\"\n",
    "accept no-alkali because so\n",
];

/// Everything told of the files.
fn told(workspace: &Workspace) -> String {
    let snapshot = workspace.snapshot();
    let mut out = String::new();
    for file in snapshot.open_files() {
        let analysis = snapshot.analyse(&file.path).unwrap();
        let whole = 0..file.text.len();
        let _ = writeln!(out, "{} {:?}", file.path, diagnostics(&analysis, 1_000));
        for hint in hints(&analysis, &whole, &|_| true) {
            let _ = writeln!(out, "{} {}", hint.offset, hint.label);
        }
        let _ = writeln!(out, "{:?}", tokens::tokens(&analysis, &whole));
        let _ = writeln!(out, "{:?}", symbols::document(file));
    }
    out
}

fn cut(text: &str, share: f64) -> usize {
    let mut at = (text.len() as f64 * share) as usize;
    while !text.is_char_boundary(at) {
        at -= 1;
    }
    at
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, ..ProptestConfig::default() })]

    #[test]
    fn edits_lead_where_a_fresh_start_leads(
        edits in prop::collection::vec((0.0..1.0_f64, 0_usize..40, 0..PIECES.len(), prop::bool::weighted(0.15)), 1..10)
    ) {
        let mut texts = [("a.dye", START.to_owned()), ("house.dye", HOUSE.to_owned())];
        let mut edited = Workspace::new();
        for (path, text) in &texts {
            edited.open(path, text);
        }
        told(&edited);
        for (share, length, piece, in_house) in edits {
            let (path, text) = &mut texts[usize::from(in_house)];
            let start = cut(text, share);
            let end = cut(text, ((start + length) as f64 / text.len().max(1) as f64).min(1.0)).max(start);
            text.replace_range(start..end, PIECES[piece]);
            edited.open(path, text);
            told(&edited);
        }
        let mut fresh = Workspace::new();
        for (path, text) in &texts {
            fresh.open(path, text);
        }
        prop_assert_eq!(told(&edited), told(&fresh));
    }
}
