//! Widening any written number never narrows anything the rehearsal says, in every zone after every step.
#![allow(clippy::unwrap_used)]

mod common;

use proptest::prelude::*;
use tenter_quantity::Interval;
use tenter_rehearse::{Rehearsal, rehearse};

/// Recipes with the numbers that are widened between angle brackets.
const RECIPES: [&str; 3] = [
    "recipe Bottles\n  room     <22> °C\n\ngoods tees\n  pieces   4\n  weight   <160> g each\n  fibre    100% cotton\n  state    damp at <20>% pickup\n\ndye lagoon\n  class    reactive dichlorotriazine\n\nmix soda soak\n  <6> L      water at <40> °C\n  <60> g/L   soda ash\n\nmix bottle\n  <300> mL   water at <30> °C\n  <12> g     lagoon\n\nlayout rings\n  zone 60% rim\n  zone 40% heart\n\nsteps\n  wear     dust mask, gloves, goggles\n  soak     tees in soda soak for <20> min\n  squeeze  tees to <100>% pickup\n  fold     tees as rings\n  make     bottle\n  squirt   <50> mL/piece from bottle on rim\n  batch    tees for <20> h at <23> °C in sealed bag\n  rinse    tees in <20> L water at 15 °C\n  spin     tees to <60>% pickup\n",
    "recipe Bath\n  room     <20> °C\n\ngoods tees\n  pieces   4\n  weight   <160> g each\n  fibre    100% cotton\n\ndye lagoon\n  class    reactive dichlorotriazine\n\nmix stock\n  <400> mL   water at 40 °C\n  <10> g     lagoon\n\nmix dye bath\n  <12> L     water at <35> °C\n\nsteps\n  wear     dust mask, gloves, goggles\n  make     stock\n  make     dye bath\n  add      stock to dye bath\n  immerse  tees in dye bath for <10> min\n  add      <40> g/L sodium chloride to dye bath in 3 parts, 5 min apart\n  stir     dye bath for <20> min\n  add      <12> g/L soda ash to dye bath\n  stir     dye bath for <60> min\n  lift     tees to <150>% pickup\n  rinse    tees in cold water until clear\n",
    "recipe Ice\n  room     <22> °C\n\ngoods tees\n  pieces   4\n  weight   <160> g each\n  fibre    100% cotton\n\ndye lagoon\n  class    reactive dichlorotriazine\n\nmix soda soak\n  <6> L      water at 40 °C\n  <60> g/L   soda ash\n\nsteps\n  wear     dust mask, gloves, goggles\n  soak     tees in soda soak for 20 min\n  spin     tees to <70>% pickup\n  sprinkle <4> g/piece lagoon on all over\n  irrigate <500> mL/piece water at <70> °C\n  steam    tees for <10> min covered\n  dry      tees\n",
];

fn numbers(text: &str) -> usize {
    text.matches('<').count()
}

/// The text with its `which`-th number widened by a share to either side, all others plain.
fn filled(text: &str, which: Option<usize>, half: f64) -> String {
    let mut out = String::new();
    let mut rest = text;
    let mut at = 0;
    while let Some((before, after)) = rest.split_once('<') {
        let (number, after) = after.split_once('>').unwrap();
        out.push_str(before);
        let best: f64 = number.parse().unwrap();
        if which == Some(at) {
            out.push_str(&format!("{best} ± {}", best * half));
        } else {
            out.push_str(number);
        }
        at += 1;
        rest = after;
    }
    out.push_str(rest);
    out
}

fn values(rehearsal: &Rehearsal) -> Vec<(String, Interval)> {
    let mut out = Vec::new();
    for (at, frame) in rehearsal.frames.iter().enumerate() {
        let verb = frame.verb.unwrap_or("");
        out.push((format!("{at} {verb} clock"), frame.end.elapsed));
        for zone in frame.goods.iter().flat_map(|goods| &goods.zones) {
            out.push((format!("{at} {verb} water"), zone.contents.water_mass()));
            out.push((format!("{at} {verb} temperature"), zone.temperature.value));
            out.push((format!("{at} {verb} alkali"), zone.usable(&rehearsal.substances)));
            out.push((format!("{at} {verb} dye"), rehearsal.substances.dye(&zone.contents)));
        }
        for liquor in &frame.liquors {
            out.push((format!("{at} {verb} liquor water"), liquor.contents.water_mass()));
            out.push((format!("{at} {verb} liquor alkali"), rehearsal.substances.usable_alkali(&liquor.contents)));
            out.push((format!("{at} {verb} liquor temperature"), liquor.temperature.value));
        }
    }
    for dyeing in &rehearsal.dyeings {
        out.push(("laid".to_owned(), dyeing.mass.value));
    }
    out
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn widening_any_number_never_narrows_anything(recipe in 0..RECIPES.len(), which in 0_usize..64, half in 1_u32..12) {
        let text = RECIPES[recipe];
        let which = which % numbers(text);
        let plain = rehearse(&common::recipe(&filled(text, None, 0.0)));
        let wide = rehearse(&common::recipe(&filled(text, Some(which), f64::from(half) / 100.0)));
        let (plain, wide) = (values(&plain), values(&wide));
        prop_assert_eq!(plain.len(), wide.len());
        let wider = plain.iter().zip(&wide).any(|((_, a), (_, b))| b.width() > a.width() + 1e-9 * a.high.abs());
        prop_assert!(wider, "number {which} of recipe {recipe} changes nothing");
        for ((name, a), (_, b)) in plain.iter().zip(&wide) {
            let slack = 1e-9 * a.high.abs().max(1e-6);
            prop_assert!(
                b.low <= a.low + slack && b.high >= a.high - slack,
                "{name}, number {which} of recipe {recipe} widened by {half} %: {a:?} does not lie in {b:?}"
            );
        }
    }
}
