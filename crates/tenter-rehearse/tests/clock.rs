//! The clock: when bottles die, what waits for what.
#![allow(clippy::unwrap_used)]

mod common;

use tenter_rehearse::{EventKind, Frame, Held, LiquorName, Rehearsal, rehearse};

const HEAD: &str = "recipe Two Lots of Goods
  room     21 °C

goods tees
  pieces   4
  weight   150 g each
  fibre    100% cotton
  state    scoured, dry

goods scarves
  pieces   3
  weight   60 g each
  fibre    100% cotton
  state    scoured, dry

dye lagoon
  class    reactive dichlorotriazine

mix soda soak
  6 L      water at 21 °C
  60 g/L   soda ash

mix lagoon stock
  500 mL   water at 21 °C
  20 g     lagoon

mix lagoon bottle
  250 mL   lagoon stock
  250 mL   water at 21 °C
  20 g     soda ash

vessel jar
  holds    2 L

steps
  wear     dust mask, gloves, goggles
";

fn run(steps: &str) -> Rehearsal {
    rehearse(&common::recipe(&format!("{HEAD}{steps}")))
}

fn frame<'a>(rehearsal: &'a Rehearsal, verb: &str, number: usize) -> (usize, &'a Frame) {
    let found = rehearsal.frames.iter().enumerate().filter(|(_, frame)| frame.verb == Some(verb));
    found.collect::<Vec<_>>()[number]
}

/// The stock is a day old when the bottle is made from it: the life of dye with alkali counts from the end of `make`.
#[test]
fn bottle_life_counts_from_when_the_mix_is_finished() {
    let rehearsal = run(
        "  make     lagoon stock\n  wait     for 24 h\n  make     lagoon bottle\n  wait     for 2 h\n  squirt   20 mL/piece from lagoon bottle on all over\n",
    );
    let (_, made) = frame(&rehearsal, "make", 1);
    let bottle = rehearsal.mixes.last().unwrap();
    assert_eq!(bottle.alkali_with_dye, Some(made.end.elapsed));
    assert_eq!(bottle.made_at, made.end.elapsed);
    let ages: Vec<_> = rehearsal
        .events
        .iter()
        .filter_map(|event| match &event.kind {
            EventKind::Drawn { alkali_with_dye: Some(age), .. } => Some(*age),
            _ => None,
        })
        .collect();
    assert!((ages.last().unwrap().best - 7200.0).abs() < 1.0, "{ages:?}");
    // An hour is usually of use at 21 °C, a day spends it.
    let until = rehearsal.useful_until(bottle).unwrap() - made.end.elapsed;
    assert!((until.best - 3600.0).abs() < 300.0 && until.low < until.best && until.best < until.high, "{until:?}");
    // The stock has no alkali: it keeps for days.
    let stock = &rehearsal.mixes[0];
    assert!(rehearsal.useful_until(stock).is_none());
    assert!(rehearsal.keeps_until(stock).unwrap().low > 3.0 * 86_400.0);
}

/// What is told of a bottle's end does not change while it stands.
#[test]
fn a_bottle_dies_when_it_was_said_to() {
    let rehearsal = run(
        "  make     lagoon bottle\n  wait     for 30 min\n  squirt   20 mL/piece from lagoon bottle on all over\n  wait     for 1 h\n",
    );
    let ends: Vec<_> = rehearsal
        .frames
        .iter()
        .flat_map(|frame| &frame.liquors)
        .filter(|liquor| liquor.alkali_with_dye.is_some() && !liquor.gone)
        .map(|liquor| rehearsal.useful_until(liquor).unwrap().best)
        .collect();
    assert!(ends.len() >= 3 && ends.iter().all(|end| (end - ends[0]).abs() < 1.0), "{ends:?}");
}

/// Alkali added to a bath with dye starts its life; dye drawn from a bottle that holds both is as old as it was there.
#[test]
fn life_starts_when_alkali_comes_and_goes_over_with_what_is_drawn() {
    let rehearsal = run(
        "  make     lagoon stock\n  wait     for 3 h\n  add      10 g soda ash to lagoon stock\n  wait     for 1 h\n  pour     100 mL lagoon stock to soda soak\n",
    );
    let (_, added) = frame(&rehearsal, "add", 0);
    let since = added.start.elapsed.best;
    let last = rehearsal.frames.last().unwrap();
    let both: Vec<f64> =
        last.liquors.iter().filter_map(|liquor| liquor.alkali_with_dye).map(|since| since.best).collect();
    assert_eq!(both.len(), 2, "{both:?}");
    assert!(both.iter().all(|time| (time - since).abs() < 1.0), "{both:?} {since}");
}

#[test]
fn a_batch_runs_while_the_hands_work_on_other_goods() {
    let rehearsal = run(
        "  soak     tees in soda soak for 20 min\n  batch    tees for 24 h in sealed bag\n  soak     scarves in soda soak for 20 min\n  spin     scarves to 70% pickup\n  rinse    tees in cold water until nearly clear\n",
    );
    let slots = rehearsal.schedule();
    assert_eq!(slots.len(), rehearsal.frames.len());
    let (batch, _) = frame(&rehearsal, "batch", 0);
    let (soak, _) = frame(&rehearsal, "soak", 1);
    let (rinse, _) = frame(&rehearsal, "rinse", 0);
    // The second soak starts while the batch runs; the rinse waits for the tees.
    assert!(slots[soak].start.best < slots[batch].end.best);
    assert!((slots[rinse].start.best - slots[batch].end.best).abs() < 1.0);
    let wait = slots[rinse].waits[0];
    assert_eq!((wait.held, wait.by), (Held::Goods(0), batch));
    assert!(wait.seconds > 23.0 * 3600.0);
    let whole = rehearsal.clock().elapsed.best;
    assert!(slots.iter().map(|slot| slot.end.best).fold(0.0, f64::max) < whole);
    // Nothing is held twice at a time, and nobody has four hands.
    for (at, (slot, frame)) in slots.iter().zip(&rehearsal.frames).enumerate() {
        assert!(slot.start.low <= slot.start.best && slot.start.best <= slot.start.high);
        for (earlier, before) in slots.iter().zip(&rehearsal.frames).take(at) {
            let shares = frame.holds_goods.iter().any(|goods| before.holds_goods.contains(goods))
                || frame.holds_liquors.iter().any(|liquor| before.holds_liquors.contains(liquor));
            assert!(!shares || slot.start.best >= earlier.end.best - 1e-6);
        }
    }
}

/// The second soak waits for the bath that the first goods are still in.
#[test]
fn a_step_waits_for_a_bath_that_is_in_use() {
    let rehearsal = run(
        "  soak     tees in soda soak for 20 min\n  soak     scarves in soda soak for 20 min\n  spin     scarves to 70% pickup\n",
    );
    let slots = rehearsal.schedule();
    let (first, _) = frame(&rehearsal, "soak", 0);
    let (second, _) = frame(&rehearsal, "soak", 1);
    let wait = slots[second].waits[0];
    assert!(matches!(wait.held, Held::Liquor(_)) && wait.by == first, "{wait:?}");
}

#[test]
fn storing_moves_the_liquor_into_the_vessel() {
    let rehearsal = run(
        "  make     lagoon bottle\n  store    lagoon bottle in jar for 1 h\n  squirt   20 mL/piece lagoon bottle on all over\n",
    );
    let (_, stored) = frame(&rehearsal, "store", 0);
    let bottle = |frame: &Frame| {
        frame.liquors.iter().find(|liquor| matches!(liquor.name, LiquorName::Mix(id) if id.0 == 2)).unwrap().clone()
    };
    let (before, after) = (bottle(frame(&rehearsal, "make", 0).1), bottle(stored));
    assert!(before.vessel.is_none() && after.vessel.is_some());
    assert_eq!(before.alkali_with_dye, after.alkali_with_dye);
    assert_eq!(before.contents.total_mass(), after.contents.total_mass());
}

#[test]
fn steps_that_change_nothing_are_told() {
    let idle = |steps: &str| {
        let rehearsal = run(steps);
        rehearsal.events.iter().filter(|event| matches!(event.kind, EventKind::NoEffect { .. })).count()
    };
    for steps in [
        "  spin     tees to 65% pickup\n",
        "  soak     tees in soda soak for 20 min\n  squeeze  tees to 60% pickup\n  squeeze  tees to 100% pickup\n",
        "  dry      tees\n",
        "  untie    tees\n",
        "  uncover  tees\n",
        "  lift     tees\n",
        "  soak     tees in soda soak for 20 min\n  cool     soda soak to 60 °C\n",
    ] {
        assert_eq!(idle(steps), 1, "{steps}");
    }
    let good = "  soak     tees in soda soak for 20 min\n  spin     tees to 65% pickup\n  fold     tees\n  untie    tees\n  dry      tees\n";
    assert_eq!(idle(good), 0);
}

/// `on both sides of tees` names the goods as well.
#[test]
fn a_side_of_goods_names_the_goods() {
    let recipe = common::recipe(&format!("{HEAD}  sprinkle 2 g/piece lagoon on both sides of scarves\n"));
    let step = recipe.steps().last().unwrap().1;
    assert_eq!(recipe.problems.len(), 0, "{:?}", recipe.problems);
    assert!(step.goods_named && step.goods.len() == 1 && step.goods[0].0 == 1, "{step:?}");
}
