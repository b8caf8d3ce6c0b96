//! Nothing appears and nothing is lost: step by step, every material is on the goods, in a liquor, or down the drain.
#![allow(clippy::unwrap_used)]

mod common;

use std::collections::BTreeMap;

use tenter_rehearse::{Frame, Rehearsal, rehearse};
use tenter_resolve::Recipe;
use tenter_resolve::recipe::MaterialId;

type Masses = BTreeMap<MaterialId, f64>;

fn add(masses: &mut Masses, contents: &tenter_rehearse::Contents) {
    for (id, mass) in contents.masses() {
        *masses.entry(id).or_default() += mass.best;
    }
}

fn all(rehearsal: &Rehearsal, frame: &Frame) -> Masses {
    let mut masses = Masses::new();
    for goods in &frame.goods {
        for zone in &goods.zones {
            add(&mut masses, &zone.contents);
        }
        if let Some(ice) = &goods.ice {
            add(&mut masses, &ice.powder);
        }
    }
    for liquor in &frame.liquors {
        add(&mut masses, &liquor.contents);
    }
    for drained in &rehearsal.drained[..frame.drained] {
        add(&mut masses, drained);
    }
    masses
}

fn check(name: &str, recipe: &Recipe) {
    let rehearsal = rehearse(recipe);
    let mut before = Masses::new();
    for frame in &rehearsal.frames {
        let now = all(&rehearsal, frame);
        for (id, mass) in &before {
            let left = now.get(id).copied().unwrap_or(0.0);
            assert!(
                left >= mass - 1e-9 * mass.max(1e-3),
                "{name}: {} falls from {mass} to {left} kg in `{:?}`",
                recipe.material(*id).name,
                frame.verb
            );
        }
        before = now;
    }
    // In the end there is as much as the totals say was weighed out, which another crate sums.
    for total in &recipe.totals.materials {
        let material = recipe.material(total.material);
        let Some(mass) = &total.mass else { continue };
        if material.role() == tenter_reference::Role::Ice {
            continue;
        }
        let made = before.get(&total.material).copied().unwrap_or(0.0);
        assert!(
            (made - mass.value.best).abs() <= 1e-9 * mass.value.best.max(1e-3),
            "{name}: {} weighed out {} kg, accounted for {made} kg",
            material.name,
            mass.value.best
        );
    }
}

#[test]
fn every_material_of_the_examples_is_accounted_for() {
    for (name, recipe) in common::bundled().iter().filter(|(_, recipe)| recipe.is_recipe()) {
        check(name, recipe);
    }
}

#[test]
fn liquors_used_again_keep_their_account() {
    let recipe = common::recipe(
        "recipe Twice\n\ngoods tees\n  pieces   4\n  weight   150 g each\n  fibre    100% cotton\n\nmix soda soak\n  6 L      water at 40 °C\n  60 g/L   soda ash\n\nsteps\n  soak     tees in soda soak for 20 min\n  squeeze  tees to 100% pickup\n  soak     tees in soda soak for 20 min\n  spin     tees to 60% pickup\n  rinse    tees in 10 L water at 15 °C, 2 times\n  dry      tees\n",
    );
    check("twice", &recipe);
}

/// Water, kg, wherever it is, ice with it.
fn water(rehearsal: &Rehearsal, frame: &Frame) -> f64 {
    let mut sum = 0.0;
    for goods in &frame.goods {
        sum += goods.zones.iter().map(|zone| zone.contents.water_mass().best).sum::<f64>();
        sum += goods.ice.iter().filter_map(|ice| ice.mass.as_ref()).map(|mass| mass.value.best).sum::<f64>();
    }
    sum += frame.liquors.iter().map(|liquor| liquor.contents.water_mass().best).sum::<f64>();
    sum + rehearsal.drained[..frame.drained].iter().map(|away| away.water_mass().best).sum::<f64>()
}

/// Where nothing dries and nothing is rinsed in water that nobody measured, every gram of water is accounted for too.
#[test]
fn water_is_accounted_for_until_it_dries() {
    let recipe = common::recipe(
        "recipe Water\n  room     20 °C\n\ngoods tees\n  pieces   4\n  weight   150 g each\n  fibre    100% cotton\n\ndye lagoon\n  class    reactive dichlorotriazine\n\nmix soda soak\n  6 L      water at 40 °C\n  60 g/L   soda ash\n\nmix dip bath\n  5 L      water at 30 °C\n  10 g     lagoon\n  50 g/L   sodium chloride\n\nlayout rings\n  zone 60% rim\n  zone 40% heart\n\nsteps\n  wear     dust mask, gloves, goggles\n  soak     tees in soda soak for 20 min\n  spin     tees to 60% pickup\n  cover    tees under plastic\n  fold     tees as rings\n  dip      tees in dip bath to rim for 5 min\n  sprinkle 4 g/piece lagoon on rim\n  irrigate 900 mL/piece water at 80 °C\n  heap     1 kg/piece ice over tees\n  batch    tees for 20 h covered\n  immerse  tees in 10 L water at 30 °C for 10 min\n  lift     tees\n  squeeze  tees to 100% pickup\n",
    );
    let rehearsal = rehearse(&recipe);
    let frames = &rehearsal.frames;
    // What is poured or heaped, at 0.997 kg a litre of water (25 °C, IAPWS-95), kg.
    let comes = |line: &str| match line {
        "soak" => 6.0 * 0.997,
        "dip" => 5.0 * 0.997,
        "irrigate" => 4.0 * 0.9 * 0.997,
        "heap" => 4.0,
        "immerse" => 10.0 * 0.997,
        _ => 0.0,
    };
    let mut sum = 0.0;
    for frame in frames {
        let verb = frame.verb.unwrap_or("");
        sum += comes(verb);
        let there = water(&rehearsal, frame);
        assert!((there - sum).abs() < 1e-9, "{verb}: {there} kg of water where {sum} kg was put in");
    }
    assert!(sum > 25.0);
}

/// Wrung drier than the soak foresaw, run off, dipped, melted on: every way out is accounted for.
#[test]
fn every_way_out_keeps_the_account() {
    let recipe = common::recipe(
        "recipe Ways Out\n  room     20 °C\n\ngoods tees\n  pieces   4\n  weight   150 g each\n  fibre    100% cotton\n\ndye lagoon\n  class    reactive dichlorotriazine\n\nmix soda soak\n  6 L      water at 40 °C\n  60 g/L   soda ash\n\nmix dip bath\n  5 L      water at 30 °C\n  10 g     lagoon\n  50 g/L   sodium chloride\n\nlayout rings\n  zone 60% rim\n  zone 40% heart\n\nsteps\n  wear     dust mask, gloves, goggles\n  soak     tees in soda soak for 20 min\n  fold     tees as rings\n  spin     tees to 60% pickup\n  dip      tees in dip bath to rim for 5 min\n  sprinkle 4 g/piece lagoon on rim\n  irrigate 900 mL/piece water at 80 °C\n  heap     1 kg/piece ice over tees\n  sprinkle 2 g/piece lagoon on ice\n  batch    tees for 20 h covered\n  immerse  tees in 10 L water at 30 °C with 5 g sodium chloride for 10 min\n  lift     tees\n  rinse    tees in cold water until clear\n  squirt   20 mL/piece water at 20 °C on back\n  spin     tees to 40% pickup\n  dry      tees\n",
    );
    check("ways out", &recipe);
}
