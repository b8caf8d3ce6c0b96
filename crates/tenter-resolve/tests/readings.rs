//! The reading each tricky line must get. Expected values are worked out in the comments.

mod support;

use support::{between, exactly, grams, ingredient, mix, read, step, value, what};
use tenter_resolve::ProblemKind;
use tenter_resolve::recipe::{Cover, LiquorKind, ZoneRef};

/// 0 °C in kelvin.
const ZERO: f64 = 273.15;

#[test]
fn two_times_belongs_to_the_step() {
    for line in [
        "wash tees at 60 °C in 12 L water with 1 g/L textile detergent, 2 times",
        "wash tees at 60 °C in 12 L water with 1 g/L textile detergent 2 times",
    ] {
        let read = step(line).quiet();
        assert_eq!(read.step().repeats.map(|(times, _)| times), Some(2), "{line}");
        // 12 L × 1 g/L, in fresh liquor twice.
        exactly(grams(read.recipe(), "textile detergent"), 24.0);
    }
}

#[test]
fn covered_is_a_manner() {
    let read = step("batch for 24 h at 24 °C covered").quiet();
    let step = read.step();
    exactly(value(&step.duration), 24.0 * 3600.0);
    exactly(value(&step.temperature), ZERO + 24.0);
    assert_eq!(step.cover.map(|(cover, _)| cover), Some(Cover::Covered));
    assert_eq!(step.goods.len(), 1, "all goods in work");
}

#[test]
fn parts_and_the_time_between_them() {
    for line in [
        "add 40 g/L sodium chloride to dye bath in 3 parts 5 min apart",
        "add 40 g/L sodium chloride to dye bath in 3 parts, 5 min apart",
    ] {
        let read = step(line).quiet();
        assert_eq!(read.step().portions.map(|(parts, _)| parts), Some(3), "{line}");
        exactly(value(&read.step().interval), 300.0);
        assert!(read.step().duration.is_none(), "{line}");
        // 10 L × 40 g/L, in all and not in each.
        exactly(grams(read.recipe(), "sodium chloride"), 400.0);
    }
}

#[test]
fn a_unit_ends_where_its_word_ends() {
    // No gram: a word that begins with one.
    for line in ["2 gl", "2 glauber's salt"] {
        let read = mix(&format!("1 L water\n{line}"));
        assert_eq!(read.troubles().len(), 1, "{line}: {:?}", read.troubles());
        assert!(
            read.recipe()
                .totals
                .materials
                .iter()
                .all(|total| total.mass.is_none() || &*read.recipe().material(total.material).name == "night")
        );
    }
    let read = mix("1 L water\n2 glauber's salt");
    assert!(matches!(read.troubles()[0].1, ProblemKind::MissingUnit { .. }), "{:?}", read.troubles());
}

#[test]
fn no_blank_before_a_unit() {
    let read = mix("2L water at 40C\n2g lagoon").quiet();
    exactly(ingredient(read.recipe(), 0).1, 0.002);
    exactly(ingredient(read.recipe(), 1).1, 0.002);
    let water = &read.recipe().mixes.last().expect("a mix").ingredients[0];
    exactly(value(&water.temperature), ZERO + 40.0);
    let rinsed = step("rinse tees in cold water 3x").quiet();
    assert_eq!(rinsed.step().repeats.map(|(times, _)| times), Some(3));
}

#[test]
fn after_a_number_a_unit_wins_over_a_name() {
    // Two drops of black, not `2` of something called `drop black`.
    let read = mix("1 L water\n2 drop black");
    let mix = read.recipe().mixes.last().expect("a mix");
    let amount = mix.ingredients[1].amount.as_ref().expect("an amount");
    assert_eq!(what(read.recipe(), mix.ingredients[1].what), "black");
    assert_eq!(amount.unit.symbol, "drop");
    assert!(amount.volume.is_some());
}

#[test]
fn a_number_inside_a_name() {
    let read = mix("1 L water\n4 g Reactive Blue 4 at 20 °C");
    let (name, mass) = ingredient(read.recipe(), 1);
    assert_eq!(name, "C.I. Reactive Blue 4");
    exactly(mass, 0.004);
}

#[test]
fn a_number_with_a_unit_never_joins_a_name() {
    let text = format!(
        "{}mix Reactive Blue 4\n  3 L water\n\nsteps\n  soak tees in Reactive Blue 4 2 times\n",
        support::SHELF
    );
    let read = read(&text);
    let step = read.step();
    assert_eq!(step.repeats.map(|(times, _)| times), Some(2), "{:?}", read.troubles());
    let Some(LiquorKind::Mix(id)) = step.liquor.as_ref().map(|liquor| &liquor.kind) else {
        panic!("no mix: {:?}", read.troubles());
    };
    assert_eq!(&*read.recipe().mix(*id).name.text, "Reactive Blue 4");
}

#[test]
fn units_of_two_words() {
    let text = "\
recipe Two Words
  measures US

goods tees
  pieces   6
  weight   150 g each
  fibre    100% cotton

mix test
  2 fl oz  water at 40 deg C
  2 % owg  urea
";
    let read = read(text).quiet();
    // NIST HB 44: a US fluid ounce is 29.5735295625 mL.
    exactly(ingredient(read.recipe(), 0).1, 2.0 * 29.5735295625e-6);
    exactly(value(&read.recipe().mixes[0].ingredients[0].temperature), ZERO + 40.0);
    // 2% of 6 × 150 = 900 g.
    exactly(ingredient(read.recipe(), 1).1, 0.018);
}

#[test]
fn fractions() {
    for (written, grams) in [("1 1/2", 1.5), ("1½", 1.5), ("½", 0.5), ("1/4", 0.25), (".5", 0.5)] {
        let read = mix(&format!("1 L water\n{written} g lagoon")).quiet();
        exactly(ingredient(read.recipe(), 1).1, grams / 1000.0);
    }
}

#[test]
fn numbers_that_read_in_two_ways() {
    for line in ["1-1/2 tsp lagoon", "2,5 g lagoon", "1,000 g lagoon"] {
        let read = mix(&format!("1 L water\n{line}"));
        let told = read.troubles();
        assert_eq!(told.len(), 1, "{line}: {told:?}");
        let ProblemKind::NumberForm { suggestions, .. } = &told[0].1 else { panic!("{line}: {told:?}") };
        assert!(!suggestions.is_empty(), "{line}");
    }
}

#[test]
fn ranges_and_two_clauses() {
    let ranged = step("soak tees in dye bath for 10 to 20 min").quiet();
    between(value(&ranged.step().duration), 600.0, 1200.0);
    exactly(tenter_quantity::Interval::exact(value(&ranged.step().duration).best), 900.0);

    let twice = step("soak tees in dye bath for 10 min to 20 min");
    let told = twice.troubles();
    let range = told.iter().find_map(|(_, kind)| match kind {
        ProblemKind::SaidTwice { range, .. } => range.clone(),
        _ => None,
    });
    assert_eq!(range.as_deref(), Some("10 to 20 min"), "{told:?}");
}

#[test]
fn from_never_opens_a_range() {
    let read = step("heat dye bath from 20 to 60 °C").quiet();
    exactly(value(&read.step().from_temperature), ZERO + 20.0);
    exactly(value(&read.step().to_temperature), ZERO + 60.0);
}

#[test]
fn negative_ranges_and_tolerances() {
    for (written, low, high) in [
        ("-18--5 °C", -18.0, -5.0),
        ("−18 to −5 °C", -18.0, -5.0),
        ("20 °C ± 2 °C", 18.0, 22.0),
        ("20 ± 2 °C", 18.0, 22.0),
    ] {
        let read =
            read(&format!("recipe Room\n  room {written}\n\ngoods tee\n  weight 150 g\n  fibre cotton\n")).quiet();
        between(value(&read.recipe().header.room), ZERO + low, ZERO + high);
    }
}

#[test]
fn at_least_is_a_bound_and_no_clause() {
    let read = step("soak tees in dye bath for at least 20 min").quiet();
    // Best 20, up to half as much again.
    between(value(&read.step().duration), 1200.0, 1800.0);
    exactly(tenter_quantity::Interval::exact(value(&read.step().duration).best), 1200.0);
}

#[test]
fn a_liquor_ratio_is_litres_for_kilograms() {
    // 900 g at 1:20 are 18 L.
    let read = mix("1:20 water at 40 °C").quiet();
    exactly(ingredient(read.recipe(), 0).1, 0.018);
}

#[test]
fn five_per_cent_of_what() {
    let read = mix("1 L water\n5% night");
    let told = read.troubles();
    assert!(matches!(&told[..], [(_, ProblemKind::PercentOfWhat { of, .. })] if &**of == "night"), "{told:?}");
}

#[test]
fn strength_behind_a_name() {
    let read = mix("1 L water\n20 mL vinegar, 8%").quiet();
    let vinegar = read.recipe().materials.iter().find(|material| &*material.name == "vinegar").expect("vinegar");
    exactly(value(&vinegar.purity), 0.08);
    // Two strengths of one material in one recipe are one too many.
    let twice = mix("1 L water\n20 mL vinegar, 8%\n20 mL vinegar, 5%");
    let told = twice.troubles();
    assert!(matches!(&told[..], [(_, ProblemKind::SaidTwice { what: "strength", .. })]), "{told:?}");
    // Water has none.
    let water = mix("1 L water, 5%");
    assert_eq!(water.troubles().len(), 1, "{:?}", water.troubles());
}

#[test]
fn per_goods_in_every_form() {
    for line in [
        "sprinkle 9 g per tee lagoon on front",
        "sprinkle 9 g lagoon per tee on front",
        "sprinkle 9 g/tee lagoon on front",
        "sprinkle 9 g/piece lagoon on front",
        "sprinkle 9 g/tees lagoon on front",
    ] {
        let read = step(line).quiet();
        // 6 × 9 g.
        exactly(grams(read.recipe(), "lagoon"), 54.0);
        assert_eq!(read.step().zones[0].zone, ZoneRef::Front, "{line}");
    }
}

#[test]
fn per_an_amount() {
    let read = mix("1 L water\n2 g per 100 g lagoon");
    // Either of the goods or not at all, but never two grams.
    for total in &read.recipe().totals.materials {
        if &*read.recipe().material(total.material).name == "lagoon" {
            assert!(total.mass.as_ref().is_none_or(|mass| mass.value.best != 0.002), "{:?}", read.troubles());
        }
    }
}

#[test]
fn scales_of_temperature() {
    for (written, kelvin) in
        [("60 C", ZERO + 60.0), ("60 °C", ZERO + 60.0), ("140 F", ZERO + 60.0), ("333.15 K", ZERO + 60.0)]
    {
        let read = step(&format!("wash tees in 10 L water at {written}")).quiet();
        let bath = match read.step().liquor.as_ref().map(|liquor| &liquor.kind) {
            Some(LiquorKind::Bath(bath)) => &bath[0],
            other => panic!("{other:?}"),
        };
        // NIST SP 811, appendix B.9: t/°C = (t/°F − 32) / 1.8; 140 °F are 60 °C.
        let found = value(&bath.temperature);
        assert!((found.best - kelvin).abs() < 1e-9, "{written}: {found:?}");
    }
    for doubtful in ["60°", "60 degrees"] {
        let read = step(&format!("wash tees in 10 L water at {doubtful}"));
        let told = read.troubles();
        assert!(matches!(&told[..], [(_, ProblemKind::DoubtfulUnit { .. })]), "{doubtful}: {told:?}");
    }
}

#[test]
fn doubtful_spellings_ask() {
    for unit in ["T", "c", "t"] {
        let read = mix(&format!("10 L water\n2 {unit} fabric softener"));
        let told = read.troubles();
        assert!(matches!(&told[..], [(_, ProblemKind::DoubtfulUnit { .. })]), "{unit}: {told:?}");
    }
}

#[test]
fn in_is_never_an_inch() {
    let read = step("bind tees every 2 in wide");
    assert!(!read.troubles().is_empty());
    let inch = step("bind tees every 2 inch").quiet();
    assert_eq!(inch.step().verb.map(|verb| verb.name), Some("bind"));
}

#[test]
fn a_temperature_belongs_to_the_nearest_liquid() {
    let read = step("soak tees in 8 L water with 60 g/L soda ash at 40 °C").quiet();
    let step = read.step();
    let Some(LiquorKind::Bath(bath)) = step.liquor.as_ref().map(|liquor| &liquor.kind) else { panic!("no bath") };
    exactly(value(&bath[0].temperature), ZERO + 40.0);
    assert!(step.temperature.is_none());
    exactly(grams(read.recipe(), "soda ash"), 480.0);

    let twice = support::step("soak tees in 8 L water at 30 °C with 60 g/L soda ash at 40 °C");
    let told = twice.troubles();
    assert!(matches!(&told[..], [(_, ProblemKind::SaidTwice { what: "temperature", .. })]), "{told:?}");
}

#[test]
fn over_a_place_and_over_a_time() {
    let place = step("heap 1.2 kg/piece ice over tees").quiet();
    assert!(place.step().duration.is_none());
    assert!(place.step().goods_named);
    let time = step("raise dye bath to 60 °C over 30 min").quiet();
    exactly(value(&time.step().duration), 1800.0);
    exactly(value(&time.step().to_temperature), ZERO + 60.0);
}

#[test]
fn until_ends_at_a_comma_or_a_number() {
    let read = step("rinse tees in cold water until clear at 15 °C, 3 times").quiet();
    let step = read.step();
    assert_eq!(step.until.as_ref().map(|until| &*until.text), Some("clear"));
    assert_eq!(step.repeats.map(|(times, _)| times), Some(3));
}

#[test]
fn comments_colours_and_numbered_names() {
    let read = step("soak tees in bath #2 for 5 min # the old one").quiet();
    let Some(LiquorKind::Mix(id)) = read.step().liquor.as_ref().map(|liquor| &liquor.kind) else { panic!("no mix") };
    assert_eq!(&*read.recipe().mix(*id).name.text, "bath #2");
    let coloured = support::read("dye sky\n  class acid\n  colour #1d5fa6\n").quiet();
    assert_eq!(coloured.recipe().materials[0].colour.map(|(colour, _)| colour), Some([0x1d, 0x5f, 0xa6]));
}

#[test]
fn a_name_must_match_whole() {
    for line in ["4 g night rose", "4 g lagoon night", "4 g nights"] {
        let read = mix(&format!("1 L water\n{line}"));
        let told = read.troubles();
        let rest = line.trim_start_matches("4 g ");
        assert!(
            matches!(&told[..], [(_, ProblemKind::UnknownName { written, .. })] if &**written == rest),
            "{line}: {told:?}"
        );
    }
    let read = mix("1 L water\n4 g night rose");
    let Some((_, ProblemKind::UnknownName { nearest, .. })) = read.troubles().pop() else { panic!() };
    assert!(nearest.iter().any(|name| &**name == "night"), "{nearest:?}");
}

#[test]
fn a_name_across_a_clause_boundary() {
    for line in [
        "soak tees in night at sea for 20 min",
        "soak tees in \"night at sea\" for 20 min",
        "soak the tees in the Night  at Sea for 20 min",
    ] {
        let read = step(line).quiet();
        let Some(LiquorKind::Mix(id)) = read.step().liquor.as_ref().map(|liquor| &liquor.kind) else {
            panic!("{line}: no mix");
        };
        assert_eq!(&*read.recipe().mix(*id).name.text, "night at sea");
        exactly(value(&read.step().duration), 1200.0);
        assert!(read.step().temperature.is_none(), "{line}");
    }
}

#[test]
fn of_is_no_connecting_word() {
    let read = mix("10 L water\n50 g cream of tartar\n10 g of alum").quiet();
    assert_eq!(ingredient(read.recipe(), 1).0, "cream of tartar");
    assert_eq!(ingredient(read.recipe(), 2).0, "alum");
}

#[test]
fn and_with_a_verb_makes_two_steps() {
    let read = step("add 20 g salt to dye bath and stir");
    let verbs: Vec<_> = read.recipe().steps().filter_map(|(_, step)| step.verb).map(|verb| verb.name).collect();
    assert_eq!(verbs, ["add", "stir"]);
    exactly(grams(read.recipe(), "sodium chloride"), 20.0);
}

#[test]
fn verbs_of_two_words_and_an_empty_over() {
    let wrung = step("wring out tees to 90% pickup").quiet();
    assert_eq!(wrung.step().verb.map(|verb| verb.name), Some("squeeze"));
    exactly(value(&wrung.step().pickup), 0.9);
    let turned = step("turn tees over").quiet();
    assert_eq!(turned.step().verb.map(|verb| verb.name), Some("turn"));
}

#[test]
fn an_amount_behind_its_name() {
    let read = mix("4 L water\nsoda ash 250 g");
    let told = read.troubles();
    assert!(
        matches!(&told[..], [(_, ProblemKind::AmountBehindName { suggestion })] if &**suggestion == "250 g soda ash"),
        "{told:?}"
    );
    exactly(grams(read.recipe(), "soda ash"), 250.0);
}

#[test]
fn brackets_are_kept_and_not_reckoned_with() {
    let read = mix("4 L water (half) at 40 °C\n60 g/L soda ash");
    assert_eq!(read.troubles().len(), 1, "{:?}", read.troubles());
    exactly(grams(read.recipe(), "soda ash"), 240.0);
}

#[test]
fn all_of_a_mix_where_no_amount_is_given() {
    let read = step("add night at sea to dye bath").quiet();
    let drawn = &read.recipe().mixes[0].draws;
    assert!(drawn.len() == 1 && drawn[0].whole && drawn[0].amount.is_none(), "{drawn:?}");
}

#[test]
fn ways_to_draw_on_a_bottle() {
    for line in ["squirt 60 mL/piece from night at sea on back", "squirt 60 mL per tee from night at sea on back"] {
        let read = step(line).quiet();
        let drawn = read.recipe().mixes[0].draws[0].amount.clone();
        // 6 × 60 mL.
        exactly(value(&drawn), 360e-6);
        assert_eq!(read.step().zones[0].zone, ZoneRef::Back);
    }
}

#[test]
fn dimension_decides_not_place() {
    let read = step("soak tees in dye bath for 20 L");
    let told = read.troubles();
    assert!(matches!(&told[..], [(_, ProblemKind::WrongDimension { .. })]), "{told:?}");
}

#[test]
fn a_name_that_is_a_verb() {
    let text = support::SHELF.replace("mix dye bath", "mix wash") + "steps\n  wash tees in wash for 5 min\n";
    let read = read(&text);
    let Some(LiquorKind::Mix(id)) = read.step().liquor.as_ref().map(|liquor| &liquor.kind) else { panic!("no mix") };
    assert_eq!(&*read.recipe().mix(*id).name.text, "wash");
}
