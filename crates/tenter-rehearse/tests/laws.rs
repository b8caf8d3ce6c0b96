//! Laws that hold whatever is written.
#![allow(clippy::unwrap_used)]

mod common;

use proptest::prelude::*;
use tenter_quantity::Interval;
use tenter_rehearse::{EventKind, Rehearsal, SODA_ASH_MOLAR_MASS, rehearse};
use tenter_resolve::Scale;

/// A soaked, strewn, irrigated and batched recipe with its numbers left open.
struct Text<'a> {
    pieces: u32,
    weight: &'a str,
    litres: &'a str,
    soda: &'a str,
    pickup: &'a str,
    dye: &'a str,
    water: &'a str,
    hot: &'a str,
    hours: &'a str,
}

const PLAIN: Text<'static> = Text {
    pieces: 4,
    weight: "160 g",
    litres: "6 L",
    soda: "60 g/L",
    pickup: "65%",
    dye: "5 g/piece",
    water: "350 mL/piece",
    hot: "80 °C",
    hours: "6 h",
};

impl Text<'_> {
    fn written(&self) -> String {
        let Self { pieces, weight, litres, soda, pickup, dye, water, hot, hours } = self;
        format!(
            "recipe Law\n  room     22 °C\n\ngoods tees\n  pieces   {pieces}\n  weight   {weight} each\n  fibre    100% cotton\n  state    scoured, dry\n\ndye lagoon\n  class    reactive dichlorotriazine\n  index    C.I. Reactive Blue 4\n\nmix soda soak\n  {litres}      water at 40 °C\n  {soda}   soda ash\n\nsteps\n  wear     dust mask, gloves, goggles\n  soak     tees in soda soak for 20 min\n  spin     tees to {pickup} pickup\n  cover    tees\n  sprinkle {dye} lagoon on all over\n  irrigate {water} water at {hot}\n  batch    tees for {hours} in sealed bag\n"
        )
    }

    fn rehearsed(&self) -> Rehearsal {
        rehearse(&common::recipe(&self.written()))
    }
}

/// Water, usable alkali as soda ash, dye, temperature of the only zone at the end.
fn last(rehearsal: &Rehearsal) -> [Interval; 4] {
    let goods = &rehearsal.frames.last().unwrap().goods[0];
    let zone = &goods.zones[0];
    [
        zone.water_ratio(),
        zone.usable(&rehearsal.substances) * SODA_ASH_MOLAR_MASS,
        rehearsal.substances.dye(&zone.contents),
        zone.temperature.value,
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// What hot water gives off when it comes on the cloth, the cloth and the water in it take up.
    #[test]
    fn heat_is_conserved_when_water_is_poured(hot in 5_u32..95, water in 20_u32..900, pickup in 20_u32..200) {
        let (water, hot, pickup) = (format!("{water} mL/piece"), format!("{hot} °C"), format!("{pickup}%"));
        let rehearsal = Text { water: &water, hot: &hot, pickup: &pickup, ..PLAIN }.rehearsed();
        let at = rehearsal.frames.iter().position(|frame| frame.verb == Some("irrigate")).unwrap();
        let before = &rehearsal.frames[at - 1].goods[0].zones[0];
        let mut poured = 0;
        for event in rehearsal.events_of(&rehearsal.frames[at]) {
            let EventKind::LiquorLaid { water, temperature, becomes, .. } = &event.kind else { continue };
            let held = before.contents.water_mass().best * 4182.0 + before.dry.value.best * 1290.0;
            let lost = water.value.best * 4182.0 * (temperature.value.best - becomes.value.best);
            let gained = held * (becomes.value.best - before.temperature.value.best);
            prop_assert!((lost - gained).abs() < 1e-6 * lost.abs().max(1.0), "{lost} J given off, {gained} J taken up");
            poured += 1;
        }
        prop_assert_eq!(poured, 1);
    }

    #[test]
    fn more_time_never_lowers_reaction(hours in 1_u32..40, more in 1_u32..40, hot in 20_u32..95) {
        let hot = format!("{hot} °C");
        let (short, long) = (format!("{hours} h"), format!("{} h", hours + more));
        let short = Text { hours: &short, hot: &hot, ..PLAIN }.rehearsed();
        let long = Text { hours: &long, hot: &hot, ..PLAIN }.rehearsed();
        let (a, b) = (short.reacted(&short.dyeings[0]).unwrap(), long.reacted(&long.dyeings[0]).unwrap());
        prop_assert!(b.equivalent.best >= a.equivalent.best - 1.0, "{a:?} {b:?}");
        prop_assert!(b.equivalent.low >= a.equivalent.low - 1.0 && b.batch_share.high >= a.batch_share.high - 1e-9);
    }

    #[test]
    fn more_alkali_never_lowers_ph(soda in 2_u32..120, more in 1_u32..60) {
        let (less, much) = (format!("{soda} g/L"), format!("{} g/L", soda + more));
        let less = Text { soda: &less, ..PLAIN }.rehearsed();
        let much = Text { soda: &much, ..PLAIN }.rehearsed();
        for (a, b) in less.frames.iter().zip(&much.frames) {
            let ph = |frame: &tenter_rehearse::Frame, rehearsal: &Rehearsal| {
                frame.goods[0].zones[0].acidity(&rehearsal.substances).map(|acidity| acidity.solved)
            };
            if let (Some(a), Some(b)) = (ph(a, &less), ph(b, &much)) {
                prop_assert!(b >= a - 1e-6, "{a} {b}");
            }
        }
    }

    #[test]
    fn widening_an_input_never_narrows_a_result(which in 0_usize..7, half in 1_u32..10) {
        let half = f64::from(half) / 100.0;
        let range = |best: f64, unit: &str| format!("{} ± {}{unit}", best, best * half);
        let wide: String = match which {
            0 => range(160.0, " g"),
            1 => range(6.0, " L"),
            2 => range(60.0, " g/L"),
            3 => range(65.0, "%"),
            4 => range(5.0, " g/piece"),
            5 => range(350.0, " mL/piece"),
            _ => range(6.0, " h"),
        };
        let text = match which {
            0 => Text { weight: &wide, ..PLAIN },
            1 => Text { litres: &wide, ..PLAIN },
            2 => Text { soda: &wide, ..PLAIN },
            3 => Text { pickup: &wide, ..PLAIN },
            4 => Text { dye: &wide, ..PLAIN },
            5 => Text { water: &wide, ..PLAIN },
            _ => Text { hours: &wide, ..PLAIN },
        };
        let (narrow, wide) = (PLAIN.rehearsed(), text.rehearsed());
        let names = ["water", "alkali", "dye", "temperature"];
        for ((a, b), name) in last(&narrow).into_iter().zip(last(&wide)).zip(names) {
            let slack = 1e-9 * a.high.abs().max(1e-9);
            prop_assert!(b.low <= a.low + slack && b.high >= a.high - slack, "{name} of {which}: {a:?} not in {b:?}");
        }
        let (a, b) = (narrow.reacted(&narrow.dyeings[0]).unwrap(), wide.reacted(&wide.dyeings[0]).unwrap());
        prop_assert!(b.equivalent.low <= a.equivalent.low * 1.000_001, "{a:?} {b:?}");
        prop_assert!(b.equivalent.high >= a.equivalent.high * 0.999_999, "{a:?} {b:?}");
    }

    #[test]
    fn pieces_and_amounts_together_leave_the_cloth_the_same(times in 2_u32..8, soda in 10_u32..90) {
        let soda = format!("{soda} g/L");
        let text = Text { soda: &soda, ..PLAIN }.written();
        let one = rehearse(&common::recipe(&text));
        let many = rehearse(&common::scaled(&text, Scale::Pieces(f64::from(4 * times))).remove(0));
        let (a, b) = (last(&one), last(&many));
        let n = f64::from(times);
        prop_assert!((a[0].best - b[0].best).abs() < 1e-6 * a[0].best, "{:?} {:?}", a[0], b[0]);
        prop_assert!((a[1].best * n - b[1].best).abs() < 1e-6 * b[1].best);
        prop_assert!((a[2].best * n - b[2].best).abs() < 1e-6 * b[2].best);
        // A bigger bath cools more slowly on the way; the cloth differs by less than a degree.
        prop_assert!((a[3].best - b[3].best).abs() < 1.0);
    }
}
