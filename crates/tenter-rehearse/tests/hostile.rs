//! Whatever stands in the steps, the rehearsal comes to an end and says something.
#![allow(clippy::unwrap_used)]

mod common;

use proptest::prelude::*;
use tenter_rehearse::{clock_line, rehearse, zone_line};

const HEAD: &str = "recipe Anything\n  room     22 °C\n\ngoods tees\n  pieces   6 in 3 lots of 2\n  weight   165 g each\n  fibre    100% cotton\n\ngoods scarves\n  pieces   2\n\ndye lagoon\n  class    reactive dichlorotriazine\n\ndye garnet\n  class    acid\n\nmix soda soak\n  8 L      water at 40 °C\n  60 g/L   soda ash\n\nmix dye bath\n  1:20     water at 30 °C\n\nmix stock\n  200 mL   water\n  10 g     lagoon\n\nmix night bottle\n  100 mL   stock\n  5 g      soda ash\n\nmix dye blend\n  10 g     lagoon\n  10 g     soda ash\n\nmix print paste\n  100 g    water\n  10 g     sodium bicarbonate\n  5 g      lagoon\n\nvessel pot\n  holds    10 L\n\nvessel watering can\n  holds    5 L\n\nlayout rings\n  zone 45% rim\n  zone 35% middle\n  zone heart\n\nsteps colour\n  turn     tees\n\nsteps rest\n";

/// Any verb with any of its own clauses, as the table shows them.
fn step() -> impl Strategy<Value = String> {
    let verbs: Vec<_> = tenter_syntax::verbs().collect();
    (0..verbs.len(), proptest::collection::vec(0_usize..40, 0..5)).prop_map(move |(at, clauses)| {
        let verb = verbs[at];
        let mut line = format!("  {}", verb.name);
        for clause in clauses {
            if let Some(clause) = verb.takes.get(clause % verb.takes.len().max(1)) {
                line.push(' ');
                line.push_str(clause.example);
            }
        }
        line
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    #[test]
    fn any_steps_can_be_rehearsed(steps in proptest::collection::vec(step(), 0..14)) {
        let text = format!("{HEAD}{}\n", steps.join("\n"));
        for recipe in common::recipes(&text) {
            let rehearsal = rehearse(&recipe);
            let mut clock = 0.0;
            for frame in &rehearsal.frames {
                prop_assert!(frame.end.elapsed.best >= clock);
                clock = frame.end.elapsed.best;
                prop_assert!(!clock_line(&frame.end).is_empty());
                for zone in frame.goods.iter().flat_map(|goods| &goods.zones) {
                    prop_assert!(!zone_line(&rehearsal, zone).is_empty());
                    prop_assert!(zone.contents.water_mass().low >= 0.0);
                    let kelvin = zone.temperature.value;
                    prop_assert!(kelvin.low > 260.0 && kelvin.high < 400.0, "{kelvin:?}\n{text}");
                    for (_, mass) in zone.contents.masses() {
                        prop_assert!(mass.low >= 0.0 && mass.high.is_finite(), "{mass:?}\n{text}");
                    }
                }
            }
            for dyeing in &rehearsal.dyeings {
                let _ = rehearsal.reacted(dyeing);
            }
        }
    }
}

#[test]
fn a_group_that_repeats_itself_or_many_times_comes_to_an_end() {
    let recipe = common::recipe(&format!(
        "{HEAD}  repeat   steps rest\n  repeat   steps colour, 999 times\n  repeat steps colour for each lot\n"
    ));
    let rehearsal = rehearse(&recipe);
    assert!(rehearsal.frames.len() <= 4001);
}

#[test]
fn nothing_at_all_can_be_rehearsed() {
    for text in [
        "",
        "recipe Nothing\n",
        "goods tees\n  pieces 0\n\nsteps\n  dry tees\n",
        "steps\n  soak\n  add\n  lift\n  batch\n",
    ] {
        for recipe in common::recipes(text) {
            let _ = rehearse(&recipe);
        }
    }
}

#[test]
fn every_broken_file_can_be_rehearsed() {
    for (_, recipe) in common::files("../../tests/broken") {
        let rehearsal = rehearse(&recipe);
        for frame in &rehearsal.frames {
            assert!(frame.end.elapsed.best >= frame.start.elapsed.best);
        }
    }
}
