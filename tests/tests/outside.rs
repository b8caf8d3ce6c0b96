//! Whole recipe texts against arithmetic done here with published constants. Each constant names its source:
//!
//! - NIST Special Publication 811 (2008), appendix B.8 and B.9: pound, ounce, grain, foot, degree Fahrenheit;
//! - NIST Handbook 44, appendix C: US gallon of 231 cubic inches and its parts;
//! - UK Weights and Measures Act 1985, schedule 1: imperial gallon of 4.54609 L;
//! - IUPAC standard atomic weights 2021: sodium, carbon, oxygen.

mod sums;

use sums::{exactly, grams, litres, material, mix, mix_total, owg, scaled, total, written};
use tenter_quantity::Interval;
use tenter_resolve::{NoLibrary, ProblemKind, Recipe, Scale, resolve, sheets};
use tenter_syntax::Document;

/// NIST SP 811, B.8: exact.
const POUND_G: f64 = 453.59237;
/// A sixteenth of a pound.
const OUNCE_G: f64 = POUND_G / 16.0;
/// NIST SP 811, B.8: a 7000th of a pound, exact.
const GRAIN_MG: f64 = 64.79891;
/// NIST SP 811, B.8: exact.
const FOOT_M: f64 = 0.3048;
/// NIST HB 44, appendix C: 231 cubic inches of 2.54 cm, exact.
const US_GALLON_ML: f64 = 231.0 * 2.54 * 2.54 * 2.54;
/// Sixteen to the gallon.
const US_CUP_ML: f64 = US_GALLON_ML / 16.0;
/// 768 to the gallon.
const US_TSP_ML: f64 = US_GALLON_ML / 768.0;
/// 256 to the gallon.
const US_TBSP_ML: f64 = US_GALLON_ML / 256.0;
/// UK Weights and Measures Act 1985, schedule 1, exact.
const IMPERIAL_GALLON_ML: f64 = 4546.09;
/// Kelvin at 0 °C: SI brochure, exact.
const ZERO_K: f64 = 273.15;

/// NIST SP 811, B.9: T/K = (t/°F + 459.67) / 1.8.
fn fahrenheit_k(degrees: f64) -> f64 {
    (degrees + 459.67) / 1.8
}

/// Two binary roundings apart at most.
#[track_caller]
fn nearly(found: Interval, expected: f64) {
    let slack = expected.abs() * 1e-9;
    for part in [found.low, found.best, found.high] {
        assert!((part - expected).abs() <= slack, "{found:?} is not {expected}");
    }
}

const AMERICAN: &str = "\
edition 1

recipe By the Gallon
  measures US
  room     72 °F
  hardness 7 gr/gal
  altitude 5000 ft

goods tees
  pieces   12
  weight   5 1/2 oz each
  fibre    100% cotton
  state    scoured, dry

dye ember
  class    reactive dichlorotriazine

mix soda soak
  2 gal    water at 104 °F
  8 oz/gal soda ash

mix softening bath
  5 gal    water at 100 °F
  1 tbsp/gal fabric softener

mix ember bottle
  2 cups   water at 95 °F
  1 tsp per cup fabric softener
  3% owg   ember

mix wetting bath
  2 quarts water
  1 pint   water
  4 fl oz  water

steps
  wear     dust mask, gloves, goggles
  wet out  tees in wetting bath
  soak     tees in soda soak for 20 min
  squeeze  tees to 100% pickup
  squirt   1 fl oz per tee from ember bottle on all over
  batch    tees for 24 h at 70 °F in sealed bag
  soften   tees in softening bath
  dry      tees
";

#[test]
fn american_measures() {
    let recipe = written(AMERICAN);
    // 12 × 5.5 oz.
    nearly(recipe.totals.dry_mass.as_ref().expect("dry goods").value * 1000.0, 66.0 * OUNCE_G);
    nearly(litres(mix(&recipe, "soda soak").liquid_in.as_ref()), 2.0 * US_GALLON_ML / 1000.0);
    // 8 oz for each of two gallons: a pound.
    nearly(grams(&recipe, "soda ash"), POUND_G);
    nearly(grams(&recipe, "ember"), 0.03 * 66.0 * OUNCE_G);
    nearly(owg(&recipe, "ember"), 3.0);
    // Five tablespoons, and a teaspoon for each of two cups.
    let softener = total(&recipe, "fabric softener").volume.as_ref().expect("a volume").value * 1e6;
    nearly(softener, 5.0 * US_TBSP_ML + 2.0 * US_TSP_ML);
    // 8 quarters, 8 pints, 128 fluid ounces to the gallon: 2/4 + 1/8 + 4/128 = 21/32.
    nearly(litres(mix(&recipe, "wetting bath").liquid_in.as_ref()), US_GALLON_ML * 21.0 / 32.0 / 1000.0);
    // Twelve fluid ounces are drawn.
    nearly(litres(mix_total(&recipe, "ember bottle").drawn.as_ref()), 12.0 * US_GALLON_ML / 128.0 / 1000.0);
    nearly(Interval::exact(US_CUP_ML), 236.5882365);
}

#[test]
fn fahrenheit_feet_and_grains() {
    let recipe = written(AMERICAN);
    nearly(recipe.header.room.as_ref().expect("room").value, fahrenheit_k(72.0));
    nearly(mix(&recipe, "soda soak").temperature.as_ref().expect("warm").value, ZERO_K + 40.0);
    nearly(mix(&recipe, "ember bottle").temperature.as_ref().expect("warm").value, ZERO_K + 35.0);
    let batched = recipe.steps().find_map(|(_, step)| step.temperature.clone()).expect("batched");
    nearly(batched.value, fahrenheit_k(70.0));
    nearly(recipe.header.altitude.as_ref().expect("height").value, 5000.0 * FOOT_M);
    // Seven grains in a US gallon, as mg/L: about 120 of calcium carbonate.
    let hardness = recipe.header.hardness.as_ref().expect("hardness").value * 1000.0;
    nearly(hardness, 7.0 * GRAIN_MG / (US_GALLON_ML / 1000.0));
}

#[test]
fn scaled_american_measures() {
    let recipe = scaled(AMERICAN, Scale::Pieces(18.0));
    nearly(grams(&recipe, "soda ash"), 1.5 * POUND_G);
    nearly(litres(mix_total(&recipe, "ember bottle").drawn.as_ref()), 18.0 * US_GALLON_ML / 128.0 / 1000.0);
    nearly(owg(&recipe, "ember"), 3.0);
}

const IMPERIAL: &str = "\
edition 1

recipe By the Pint
  measures imperial
  room     20 °C

goods scarves
  pieces   4
  weight   1/4 lb each
  fibre    100% wool
  state    scoured, dry

mix sour
  8 pints  water at 100 °F
  1/4 pint water
  2 fl oz  vinegar

mix big bath
  1/2 gal  water
  3 quarts water
  1 oz/gal sodium sulfate

steps
  wear     gloves, goggles
  neutralise scarves in sour for 10 min
  rinse    scarves in big bath for 5 min
  dry      scarves
";

#[test]
fn imperial_measures() {
    let recipe = written(IMPERIAL);
    nearly(recipe.totals.dry_mass.as_ref().expect("dry goods").value * 1000.0, POUND_G);
    // Eight pints to the gallon, and a quarter pint: 33/32 gallons.
    nearly(litres(mix(&recipe, "sour").liquid_in.as_ref()), IMPERIAL_GALLON_ML * 33.0 / 32.0 / 1000.0);
    // 160 fluid ounces to the gallon.
    nearly(total(&recipe, "vinegar").volume.as_ref().expect("it").value * 1e6, 2.0 * IMPERIAL_GALLON_ML / 160.0);
    // Half a gallon and three quarters of one; an ounce a gallon.
    nearly(litres(mix(&recipe, "big bath").liquid_in.as_ref()), 1.25 * IMPERIAL_GALLON_ML / 1000.0);
    nearly(grams(&recipe, "sodium sulfate"), 1.25 * OUNCE_G);
    // The same text with American measures is a sixth less water, and the ounces a gallon follow it.
    let american = written(&IMPERIAL.replace("measures imperial", "measures US"));
    nearly(litres(mix(&american, "big bath").liquid_in.as_ref()), 1.25 * US_GALLON_ML / 1000.0);
    nearly(grams(&american, "sodium sulfate"), 1.25 * OUNCE_G);
}

fn spooned(material: &str) -> Recipe {
    let text = format!(
        "recipe Spoons\n  measures US\n\ngoods tees\n  pieces 4\n  weight 150 g each\n  fibre cotton\n  state scoured, dry\n\n\
         mix soak\n  1 gal water\n  12 tsp {material}\n\nsteps\n  wear dust mask\n  soak tees in soak for 20 min\n"
    );
    written(&text)
}

/// Twelve level US teaspoons are 59.1 mL. Light soda ash weighs 500 to 750 g a litre (IS 251:1998, as quoted on a
/// water-treatment trade page), dense 1000 to 1100 (trade article on grades of soda ash); the material without either
/// word may be both.
#[test]
fn a_spoon_of_soda_is_an_interval() {
    let volume_ml = 12.0 * US_TSP_ML;
    let light = grams(&spooned("light soda ash"), "light soda ash");
    nearly(Interval::exact(light.low), volume_ml * 0.500);
    nearly(Interval::exact(light.high), volume_ml * 0.750);
    let dense = grams(&spooned("dense soda ash"), "dense soda ash");
    // A second trade page puts dense at 900: the interval holds both pages.
    nearly(Interval::exact(dense.low), volume_ml * 0.900);
    nearly(Interval::exact(dense.high), volume_ml * 1.100);
    let either = grams(&spooned("soda ash"), "soda ash");
    assert!(either.encloses(light) && either.encloses(dense), "{either:?}");
    // What was written is kept beside what it converts to.
    let recipe = spooned("soda ash");
    nearly(total(&recipe, "soda ash").spooned.as_ref().expect("spoons").value * 1e6, volume_ml);
    // Between light and dense there is more than a factor of two: nobody can call that grams.
    assert!(either.high / either.low > 2.0);
}

/// A dyer's own density narrows it: 12 tsp at 0.52 to 0.56 g/mL.
#[test]
fn a_weighed_spoon_is_narrower() {
    let text = "\
recipe Own Spoon
  measures US

goods tees
  pieces   4
  weight   150 g each
  fibre    100% cotton
  state    scoured, dry

chemical soda ash
  density  0.52 to 0.56 g/mL

mix soak
  1 gal    water
  12 tsp   soda ash
";
    let found = grams(&written(text), "soda ash");
    nearly(Interval::exact(found.low), 12.0 * US_TSP_ML * 0.52);
    nearly(Interval::exact(found.high), 12.0 * US_TSP_ML * 0.56);
}

/// Half a mole in each of two litres is a mole: 2 × 22.98976928 + 12.011 + 3 × 15.999 g (IUPAC 2021, abridged values of
/// carbon and oxygen), which the reference data give to a milligram.
#[test]
fn moles() {
    let text = "\
recipe Moles

goods tees
  pieces   4
  weight   150 g each
  fibre    100% cotton

mix soak
  2 L      water
  0.5 mol/L sodium carbonate
";
    let recipe = written(text);
    let mole = 2.0 * 22.98976928 + 12.011 + 3.0 * 15.999;
    let found = grams(&recipe, "soda ash");
    assert!((found.best - mole).abs() <= 0.0005, "{found:?} is not {mole}");
}

/// Without `measures`, a cup is as wide as the candidates lie apart, and that is told: US 236.6 mL to imperial 284.1 mL
/// (10 fl oz).
#[test]
fn whose_cup() {
    let text = "recipe Whose\n\ngoods tee\n  weight 150 g\n  fibre cotton\n\nmix bath\n  20 cups water\n";
    let document = Document::parse(text);
    let sheet = sheets(&document, "whose.dye", &NoLibrary).remove(0);
    let recipe = resolve(&sheet, Scale::AsWritten).remove(0);
    let told: Vec<_> = recipe.problems.iter().map(|problem| &problem.kind).collect();
    assert!(matches!(told[..], [ProblemKind::AmbiguousMeasure { .. }]), "{told:?}");
    let bath = litres(mix(&recipe, "bath").liquid_in.as_ref()) * 1000.0;
    nearly(Interval::exact(bath.low), 20.0 * US_CUP_ML);
    nearly(Interval::exact(bath.high), 20.0 * IMPERIAL_GALLON_ML / 16.0);
    let metric = written(&text.replace("recipe Whose\n", "recipe Whose\n  measures metric\n"));
    exactly(litres(mix(&metric, "bath").liquid_in.as_ref()), 5.0);
}

/// 1% w/v is a gram in 100 mL: 5% w/v of two litres made up is 100 g. 2 mL/L of ten litres are 20 mL.
#[test]
fn per_cents() {
    let text = "\
recipe Shares

goods tees
  pieces   4
  weight   150 g each
  fibre    100% cotton

mix stock
  5% w/v   urea
  make up to 2 L

mix bath
  10 L     water
  2 mL/L   vinegar
";
    let recipe = written(text);
    exactly(grams(&recipe, "urea"), 100.0);
    nearly(total(&recipe, "vinegar").volume.as_ref().expect("it").value * 1e6, 20.0);
    assert!(material(&recipe, "vinegar").liquid);
}
