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
                left >= mass - 1e-7 * mass.max(1e-2),
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
            (made - mass.value.best).abs() <= 1e-6 * mass.value.best.max(1e-3),
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

/// Wrung drier than the soak foresaw, run off, dipped, melted on: every way out is accounted for.
#[test]
fn every_way_out_keeps_the_account() {
    let recipe = common::recipe(
        "recipe Ways Out\n  room     20 °C\n\ngoods tees\n  pieces   4\n  weight   150 g each\n  fibre    100% cotton\n\ndye lagoon\n  class    reactive dichlorotriazine\n\nmix soda soak\n  6 L      water at 40 °C\n  60 g/L   soda ash\n\nmix dip bath\n  5 L      water at 30 °C\n  10 g     lagoon\n  50 g/L   sodium chloride\n\nlayout rings\n  zone 60% rim\n  zone 40% heart\n\nsteps\n  wear     dust mask, gloves, goggles\n  soak     tees in soda soak for 20 min\n  fold     tees as rings\n  spin     tees to 60% pickup\n  dip      tees in dip bath to rim for 5 min\n  sprinkle 4 g/piece lagoon on rim\n  irrigate 900 mL/piece water at 80 °C\n  heap     1 kg/piece ice over tees\n  sprinkle 2 g/piece lagoon on ice\n  batch    tees for 20 h covered\n  immerse  tees in 10 L water at 30 °C with 5 g sodium chloride for 10 min\n  lift     tees\n  rinse    tees in cold water until clear\n  squirt   20 mL/piece water at 20 °C on back\n  spin     tees to 40% pickup\n  dry      tees\n",
    );
    check("ways out", &recipe);
}
