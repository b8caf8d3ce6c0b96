//! Variants: a few lines that stand for others of the recipe above them.

mod support;

use support::{exactly, grams, read, value};
use tenter_resolve::{ProblemKind, Recipe};

const TRIAL: &str = "\
recipe Trial

goods swatches
  pieces   6
  weight   25 g each
  fibre    100% cotton
  state    scoured, dry

dye plum
  class    reactive dichlorotriazine

mix soda soak
  2 L      water at 40 °C
  60 g/L   soda ash

mix plum bottle
  200 mL   water at 30 °C
  4 g      plum

steps prepare
  wear     dust mask, gloves, goggles
  soak     swatches in soda soak for 20 min
  squeeze  swatches to 100% pickup

steps colour
  squirt   20 mL/piece from plum bottle on front
  batch    swatches for 24 h at 22 °C

steps finish
  soften   swatches in 5 L water with 12 g fabric softener
  dry      swatches

";

fn varied(lines: &str) -> support::Read {
    read(&format!("{TRIAL}variant test\n{lines}"))
}

/// The variant's recipe; it must come without trouble.
fn quiet(read: &support::Read) -> &Recipe {
    let recipe = read.recipes.get(1).expect("a variant");
    assert!(recipe.problems.is_empty(), "{:?}", recipe.problems);
    assert_eq!(recipe.variant.as_ref().map(|name| &*name.text), Some("test"));
    recipe
}

#[test]
fn the_recipe_itself_stays_as_it_is() {
    let read = varied("  soak     swatches in soda soak for 40 min\n");
    assert_eq!(read.recipes.len(), 2);
    assert!(read.recipe().variant.is_none());
    exactly(value(&read.recipe().groups[0].steps[1].duration), 1200.0);
    exactly(value(&quiet(&read).groups[0].steps[1].duration), 2400.0);
}

#[test]
fn a_mix_line_replaces_the_one_of_the_same_material() {
    let read = varied("  in mix soda soak\n  50 g/L   soda ash\n");
    // 2 L × 60 and 2 L × 50.
    exactly(grams(read.recipe(), "soda ash"), 120.0);
    exactly(grams(quiet(&read), "soda ash"), 100.0);
}

#[test]
fn without_a_scope_the_only_match_is_found() {
    let read = varied("  50 g/L   soda ash\n");
    exactly(grams(quiet(&read), "soda ash"), 100.0);
    // Water stands in two mixes: which?
    let two = varied("  3 L      water at 40 °C\n");
    let told = &two.recipes[1].problems;
    assert!(
        told.iter().any(|problem| matches!(problem.kind, ProblemKind::VariantMatch { candidates } if candidates > 1)),
        "{told:?}"
    );
    let scoped = varied("  in mix plum bottle\n  300 mL   water at 30 °C\n");
    exactly(value(&quiet(&scoped).mixes[1].liquid_in), 300e-6);
    exactly(value(&quiet(&scoped).mixes[0].liquid_in), 2e-3);
}

#[test]
fn goods_and_recipe_keys_may_vary() {
    let read = varied("  in goods swatches\n  weight   50 g each\n");
    exactly(value(&quiet(&read).totals.dry_mass), 0.3);
}

#[test]
fn a_line_left_out() {
    let read = varied("  leave out soften swatches\n");
    exactly(grams(read.recipe(), "fabric softener"), 12.0);
    assert!(
        quiet(&read)
            .totals
            .materials
            .iter()
            .all(|total| { &*quiet(&read).material(total.material).name != "fabric softener" })
    );
    assert_eq!(quiet(&read).groups[2].steps.len(), 1);
}

#[test]
fn a_group_instead() {
    let read = varied("  in steps colour instead\n  sprinkle 1 g/piece plum on front\n  batch    swatches for 4 h\n");
    let variant = quiet(&read);
    let verbs: Vec<_> = variant.groups[1].steps.iter().filter_map(|step| step.verb).map(|verb| verb.name).collect();
    assert_eq!(verbs, ["sprinkle", "batch"]);
    // 4 g in the bottle, made or not, and 6 × 1 g strewn.
    let plum = grams(variant, "plum");
    assert!(plum.best == 10.0 || (plum.best - 6.0).abs() < 1e-9, "{plum:?}");
}

#[test]
fn two_lines_in_one_variant() {
    let read = varied("  soak     swatches in soda soak for 40 min\n  batch    swatches for 12 h at 22 °C\n");
    let variant = quiet(&read);
    exactly(value(&variant.groups[0].steps[1].duration), 2400.0);
    exactly(value(&variant.groups[1].steps[1].duration), 12.0 * 3600.0);
}

#[test]
fn nothing_to_replace() {
    for line in ["  steam    swatches for 40 min\n", "  in mix no such mix\n  1 L water\n", "  leave out steam\n"] {
        let read = varied(line);
        let told = &read.recipes[1].problems;
        assert!(
            told.iter().any(|problem| matches!(problem.kind, ProblemKind::VariantMatch { candidates: 0 })),
            "{line}: {told:?}"
        );
        // The recipe itself has nothing to be told of.
        assert!(read.recipe().problems.is_empty(), "{line}: {:?}", read.recipe().problems);
    }
}

#[test]
fn each_variant_starts_from_the_recipe() {
    let text = format!(
        "{TRIAL}variant a\n  soak     swatches in soda soak for 40 min\n\nvariant b\n  batch    swatches for 12 h at 22 °C\n"
    );
    let read = read(&text);
    assert_eq!(read.recipes.len(), 3);
    exactly(value(&read.recipes[2].groups[0].steps[1].duration), 1200.0);
    exactly(value(&read.recipes[2].groups[1].steps[1].duration), 12.0 * 3600.0);
}
