//! What grows with the number of pieces and what does not. All expected values are worked out by hand beside them.

mod support;

use support::{exactly, grams, read, scaled, value};
use tenter_resolve::Recipe;

/// Six tees of 150 g: 900 g.
const RECIPE: &str = "\
recipe For Six
  room     22 °C
  hardness 120 mg/L

goods tees
  pieces   6
  weight   150 g each
  fibre    100% cotton
  state    scoured, dry
  price    4 EUR each

dye ember
  class    reactive dichlorotriazine
  price    24 EUR per 500 g

mix soda soak
  8 L      water at 40 °C
  60 g/L   soda ash
  keep for 5 days

mix kettle
  2 L      water at 90 °C fixed
  6 L      water at 20 °C
  1% owg   urea

mix ratio bath
  1:20     water
  1 g/L    wetting agent

mix stock
  5 g      ember
  make up to 500 mL

mix half
  200 mL   stock
  200 mL   water

mix paste
  900 parts water
  100 parts urea
  make up to 1 kg

vessel tub
  holds    20 L

steps
  wear     dust mask, gloves, goggles
  soak     tees in soda soak for 20 min
  squeeze  tees to 100% pickup
  sprinkle 3 g/piece ember on all over
  sprinkle 12 g ember on front
  irrigate 300 mL/piece water at 82 °C
  squirt   50 mL/piece from half on back
  wet out  tees in ratio bath
  soak     tees in kettle
  brush    100 g/piece from paste on front
  add      40 g/L sodium chloride to soda soak in 3 parts, 10 min apart
  batch    tees for 6 h in sealed bag
  soap off tees in 15 L water at 60 °C with 1 g/L textile detergent, 2 times
  dry      tees
";

fn litres(recipe: &Recipe, name: &str) -> tenter_quantity::Interval {
    let mix = recipe.mixes.iter().find(|mix| &*mix.name.text == name).expect("a mix");
    value(&mix.liquid_in) * 1000.0
}

/// Expected at a factor: six pieces at 1, twelve at 2.
fn holds(recipe: &Recipe, factor: f64) {
    exactly(value(&recipe.totals.pieces), 6.0 * factor);
    exactly(value(&recipe.totals.dry_mass), 0.9 * factor);
    // Absolute water and what follows it: 8 L, 8 × 60 = 480 g.
    exactly(litres(recipe, "soda soak"), 8.0 * factor);
    exactly(grams(recipe, "soda ash"), 480.0 * factor);
    // Per piece 6 × 3 g, and 12 g for the six.
    exactly(grams(recipe, "ember"), (18.0 + 12.0 + 5.0) * factor);
    // A kettle is a kettle: 2 L stay.
    exactly(litres(recipe, "kettle"), 2.0 + 6.0 * factor);
    // 1% of 900 g, and a tenth of a kilogram of paste.
    exactly(grams(recipe, "urea"), (9.0 + 100.0) * factor);
    // 900 g at 1:20 are 18 L; a gram a litre.
    exactly(litres(recipe, "ratio bath"), 18.0 * factor);
    exactly(grams(recipe, "wetting agent"), 18.0 * factor);
    // 15 L twice at 1 g/L.
    exactly(grams(recipe, "textile detergent"), 30.0 * factor);
    let half = recipe.mixes.iter().find(|mix| &*mix.name.text == "half").expect("half");
    exactly(value(&half.volume), 400e-6 * factor);
    // 6 × 50 mL.
    exactly(value(&half.draws[0].amount), 300e-6 * factor);
    let paste = recipe.mixes.iter().find(|mix| &*mix.name.text == "paste").expect("paste");
    exactly(value(&paste.made_up_to), factor);
    // What never scales: temperatures, times, counts, shares, prices per amount, vessels.
    let steps: Vec<_> = recipe.steps().map(|(_, step)| step).collect();
    exactly(value(&steps[1].duration), 1200.0);
    exactly(value(&steps[2].pickup), 1.0);
    assert_eq!(steps[10].portions.map(|(parts, _)| parts), Some(3));
    exactly(value(&steps[10].interval), 600.0);
    exactly(value(&steps[11].duration), 6.0 * 3600.0);
    assert_eq!(steps[12].repeats.map(|(times, _)| times), Some(2));
    exactly(value(&recipe.header.room), 295.15);
    exactly(value(&recipe.header.hardness), 0.12);
    exactly(value(&recipe.vessels[0].holds), 0.02);
    exactly(value(&recipe.mixes[0].keep), 5.0 * 86400.0);
    let ember = recipe.materials.iter().find(|material| &*material.name == "ember").expect("ember");
    // 24 EUR for half a kilogram.
    exactly(ember.price.as_ref().expect("a price").rate.value, 48.0);
    exactly(value(&recipe.goods[0].piece_mass), 0.15);
}

#[test]
fn as_written() {
    holds(read(RECIPE).quiet().recipe(), 1.0);
}

#[test]
fn to_the_number_written_changes_nothing() {
    holds(scaled(RECIPE, 6.0).quiet().recipe(), 1.0);
}

#[test]
fn twice_as_many() {
    holds(scaled(RECIPE, 12.0).quiet().recipe(), 2.0);
}

#[test]
fn one_piece_and_many() {
    holds(scaled(RECIPE, 1.0).quiet().recipe(), 1.0 / 6.0);
    holds(scaled(RECIPE, 600.0).quiet().recipe(), 100.0);
}

/// 40 g/L added to a bath is per litre there: what was 8 L for six is 16 L for twelve. The tees have carried a little
/// of the soak off by then, so the amount is bounded by the whole soak.
#[test]
fn added_by_the_litre_follows_the_bath() {
    let (six, twelve) = (read(RECIPE).quiet(), scaled(RECIPE, 12.0).quiet());
    let (six, twelve) = (grams(six.recipe(), "sodium chloride"), grams(twelve.recipe(), "sodium chloride"));
    assert!(six.high <= 320.0 * 1.01 && six.low > 320.0 * 0.8, "{six:?}");
    assert!((twelve.best / six.best - 2.0).abs() < 1e-9, "{six:?} {twelve:?}");
}

#[test]
fn cost_follows() {
    let (six, twelve) = (read(RECIPE).quiet(), scaled(RECIPE, 12.0).quiet());
    let cost = |recipe: &Recipe| recipe.totals.cost[0].total.value.best;
    assert!((cost(twelve.recipe()) / cost(six.recipe()) - 2.0).abs() < 1e-9);
    // 35 g of ember at 48 EUR a kilogram are 1.68 EUR, six tees at 4 EUR are 24 EUR.
    assert!((cost(six.recipe()) - 25.68).abs() < 1e-9, "{}", cost(six.recipe()));
}

#[test]
fn nonsense_scales_to_nothing_new() {
    for pieces in [0.0, -3.0, f64::NAN, f64::INFINITY] {
        holds(scaled(RECIPE, pieces).recipe(), 1.0);
    }
}

/// A mix that says `fixed` alone keeps all its amounts.
#[test]
fn a_fixed_mix() {
    let text = "\
recipe Fixed

goods tees
  pieces   6
  weight   150 g each
  fibre    100% cotton

mix kettle
  8 L      water at 90 °C
  20 g     urea
  fixed
";
    let twelve = scaled(text, 12.0).quiet();
    exactly(litres(twelve.recipe(), "kettle"), 8.0);
}

/// With several goods, absolute amounts scale with the whole: pieces in all, 3 to 6.
#[test]
fn several_goods_grow_together() {
    let text = "\
recipe Two Goods

goods shirts
  pieces   2
  weight   200 g each
  fibre    100% cotton

goods scarf
  pieces   1
  weight   90 g
  fibre    100% linen

mix soda soak
  5 L      water at 40 °C
  60 g/L   soda ash

steps
  soak     shirts, scarf in soda soak
";
    let six = scaled(text, 6.0).quiet();
    exactly(value(&six.recipe().totals.dry_mass), 0.98);
    exactly(grams(six.recipe(), "soda ash"), 600.0);
}
