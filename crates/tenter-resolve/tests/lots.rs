//! Lots: goods that go through in batches, and groups that are done again.

mod support;

use support::{exactly, grams, read, scaled, value};
use tenter_resolve::ProblemKind;
use tenter_resolve::recipe::LotsUse;

const BUCKETS: &str = "\
recipe Three Buckets

goods tees
  pieces   12 in 3 lots of 4
  weight   150 g each
  fibre    100% cotton
  state    scoured, dry

dye rust
  class    reactive dichlorotriazine

mix soda soak
  25 L     water at 40 °C
  60 g/L   soda ash

mix rust bottle
  900 mL   water at 30 °C
  30 g     rust

steps prepare
  wear     dust mask, gloves, goggles
  make     soda soak
  make     rust bottle

steps four at a time
  soak     tees in soda soak for 20 min
  squeeze  tees to 100% pickup
  squirt   70 mL/piece from rust bottle on front
  sprinkle 2 g/piece urea on back
  sprinkle 5 g sodium chloride on back

steps the others
  repeat   steps four at a time for lot 2
  repeat   steps four at a time for lot 3
  batch    tees for 24 h at 22 °C in sealed bag
  sprinkle 1 g/piece alum on back
";

#[test]
fn lots_are_read_in_both_forms() {
    for pieces in ["12 in 3 lots of 4", "12 pieces in 3 lots of 4"] {
        let read = read(&BUCKETS.replace("12 in 3 lots of 4", pieces)).quiet();
        let lots = read.recipe().goods[0].lots.clone().expect("lots");
        assert_eq!((lots.count, lots.pieces_each), (3, 4), "{pieces}");
        exactly(value(&read.recipe().totals.pieces), 12.0);
    }
}

#[test]
fn a_repeated_group_is_for_a_lot() {
    let read = read(BUCKETS).quiet();
    let recipe = read.recipe();
    // Three passes of four at 70 mL are 840 mL; made once.
    let bottle =
        recipe.totals.mixes.iter().find(|total| &*recipe.mix(total.mix).name.text == "rust bottle").expect("it");
    exactly(value(&bottle.drawn), 840e-6);
    exactly(grams(recipe, "rust"), 30.0);
    exactly(grams(recipe, "soda ash"), 1500.0);
    // Per piece, three lots of four: 12 × 2 g. An absolute amount is for the lot: 3 × 5 g.
    exactly(grams(recipe, "urea"), 24.0);
    exactly(grams(recipe, "sodium chloride"), 15.0);
    // A group that is not repeated is done with all twelve.
    exactly(grams(recipe, "alum"), 12.0);
    let repeats: Vec<_> = recipe.groups[2].steps.iter().filter_map(|step| step.lots).collect();
    assert_eq!(repeats, [LotsUse::One(2), LotsUse::One(3)]);
}

#[test]
fn for_each_lot_is_the_same() {
    let text = BUCKETS
        .replace("  repeat   steps four at a time for lot 2\n", "  repeat   steps four at a time for each lot\n")
        .replace("  repeat   steps four at a time for lot 3\n", "");
    let read = read(&text).quiet();
    let recipe = read.recipe();
    let bottle =
        recipe.totals.mixes.iter().find(|total| &*recipe.mix(total.mix).name.text == "rust bottle").expect("it");
    exactly(value(&bottle.drawn), 840e-6);
    exactly(grams(recipe, "urea"), 24.0);
}

/// Lots stay as large as they are: twice the pieces are twice the lots, each with what one lot had.
#[test]
fn scaled_there_are_more_lots_or_fewer() {
    let each = BUCKETS
        .replace("  repeat   steps four at a time for lot 2\n", "  repeat   steps four at a time for each lot\n")
        .replace("  repeat   steps four at a time for lot 3\n", "");
    for text in [BUCKETS, &each] {
        for lots in [1.0, 3.0, 6.0] {
            let read = scaled(text, 4.0 * lots).quiet();
            let recipe = read.recipe();
            let bottle = recipe
                .totals
                .mixes
                .iter()
                .find(|total| &*recipe.mix(total.mix).name.text == "rust bottle")
                .expect("it");
            exactly(value(&bottle.drawn), 280e-6 * lots);
            exactly(grams(recipe, "rust"), 10.0 * lots);
            exactly(grams(recipe, "urea"), 8.0 * lots);
            exactly(grams(recipe, "sodium chloride"), 5.0 * lots);
            exactly(grams(recipe, "alum"), 4.0 * lots);
        }
    }
}

/// A bottle made anew for each lot is made more often, not larger.
#[test]
fn what_is_made_for_each_lot_is_made_more_often() {
    let text = BUCKETS
        .replace("  make     rust bottle\n", "")
        .replace("  soak     tees in soda", "  make     rust bottle\n  soak     tees in soda")
        .replace("900 mL   water at 30", "300 mL   water at 30")
        .replace("30 g     rust", "10 g     rust");
    for lots in [1.0, 3.0, 6.0] {
        let read = scaled(&text, 4.0 * lots).quiet();
        let recipe = read.recipe();
        exactly(grams(recipe, "rust"), 10.0 * lots);
        let bottle =
            recipe.totals.mixes.iter().find(|total| &*recipe.mix(total.mix).name.text == "rust bottle").expect("it");
        assert_eq!(f64::from(bottle.times), lots);
        exactly(value(&bottle.drawn), 280e-6 * lots);
    }
}

#[test]
fn without_repetition_all_pieces_go_at_once() {
    let text = BUCKETS
        .replace("  repeat   steps four at a time for lot 2\n", "")
        .replace("  repeat   steps four at a time for lot 3\n", "");
    let read = read(&text).quiet();
    exactly(grams(read.recipe(), "urea"), 24.0);
    exactly(grams(read.recipe(), "sodium chloride"), 5.0);
}

#[test]
fn lots_that_do_not_add() {
    let read = read(&BUCKETS.replace("12 in 3 lots of 4", "12 in 3 lots of 5"));
    let told = read.troubles();
    assert!(
        matches!(&told[..], [(_, ProblemKind::LotsDoNotAdd { pieces, lots: 3, each: 5 })] if *pieces == 12.0),
        "{told:?}"
    );
}

#[test]
fn scaled_by_whole_lots() {
    let read = scaled(BUCKETS, 24.0).quiet();
    exactly(value(&read.recipe().totals.pieces), 24.0);
    exactly(grams(read.recipe(), "soda ash"), 3000.0);
    exactly(grams(read.recipe(), "alum"), 24.0);
}

/// 6 × 150 g out of a kilogram of paste are nine tenths, whatever room a paste takes; thickener of 420 mL of water and
/// 20 g gives 400 g of its 440.
#[test]
fn what_is_weighed_out_is_a_share_of_the_weight() {
    let text = "\
recipe Leaf

goods tees
  pieces   6
  weight   165 g each
  fibre    100% cotton
  state    scoured, dry

mix thickener
  420 g    water
  20 g     sodium alginate

mix paste
  600 parts water
  400 parts thickener
  make up to 1 kg

steps
  wear     dust mask
  print    150 g/piece from paste on front
";
    let read = read(text).quiet();
    let recipe = read.recipe();
    let total = |name| recipe.totals.mixes.iter().find(|total| &*recipe.mix(total.mix).name.text == name).expect("it");
    exactly(value(&total("paste").used_share), 0.9);
    let left = value(&total("paste").left) / value(&total("paste").volume);
    assert!((left.best - 0.1).abs() < 1e-9, "{left:?}");
    exactly(value(&total("thickener").used_share), 400.0 / 440.0);
}
