//! Laws of heat: nothing lost in mixing, and melting pays for itself.

use proptest::prelude::*;
use tenter_chemistry::heat::{Air, Body, Exposure, Pace, Wares, cool, mix};
use tenter_chemistry::water::{HEAT_OF_FUSION, ICE_HEAT_CAPACITY, ZERO_CELSIUS, heat_capacity};

fn bodies() -> impl Strategy<Value = Vec<Body>> {
    prop::collection::vec((0.001..20.0_f64, 400.0..4300.0_f64, 273.15..373.15_f64), 1..6).prop_map(|list| {
        list.into_iter().map(|(mass, heat_capacity, temperature)| Body { mass, heat_capacity, temperature }).collect()
    })
}

proptest! {
    #[test]
    fn heat_is_conserved_in_mixing(
        bodies in bodies(),
        ice in prop_oneof![Just(0.0), 0.0..5.0_f64],
        ice_temperature in 250.0..273.15_f64,
    ) {
        let Some(mixed) = mix(&bodies, ice, ice_temperature) else {
            return Err(TestCaseError::fail("bodies with mass always mix"));
        };
        let above = |b: &Body, t: f64| b.mass * b.heat_capacity * (t - ZERO_CELSIUS);
        let before: f64 = bodies.iter().map(|b| above(b, b.temperature)).sum::<f64>()
            + ice * (ICE_HEAT_CAPACITY * (ice_temperature - ZERO_CELSIUS) - HEAT_OF_FUSION);
        let after: f64 = bodies.iter().map(|b| above(b, mixed.temperature)).sum::<f64>()
            - mixed.ice_left * HEAT_OF_FUSION
            + mixed.melted * heat_capacity(ZERO_CELSIUS) * (mixed.temperature - ZERO_CELSIUS);
        prop_assert!((before - after).abs() < 1e-6 * (1.0 + before.abs()), "{before} {after}");
        let hottest = bodies.iter().map(|b| b.temperature).fold(0.0, f64::max);
        prop_assert!(mixed.temperature <= hottest + 1e-9);
        prop_assert!(mixed.temperature >= ZERO_CELSIUS - 1e-9);
    }

    #[test]
    fn cooling_never_heats_above_start_or_room(
        start in 273.15..368.15_f64,
        room in 278.15..308.15_f64,
        humidity in 0.0..1.0_f64,
        seconds in 0.0..200_000.0_f64,
        bulk in 0.01..50.0_f64,
        exposure in prop_oneof![
            Just(Exposure::Sealed), Just(Exposure::Bunched), Just(Exposure::Hung),
            Just(Exposure::OpenBath), Just(Exposure::LiddedBath), Just(Exposure::Insulated),
        ],
    ) {
        let wares = Wares { heat_capacity: bulk * 5000.0, bulk, water: bulk };
        let air = Air { temperature: room, humidity };
        let after = cool(&wares, exposure, start, &air, seconds, Pace::Usual);
        prop_assert!(after.temperature <= start.max(room) + 0.2, "{}", after.temperature);
        prop_assert!(after.temperature >= 250.0);
        prop_assert!((0.0..=bulk + 1e-12).contains(&after.evaporated));
    }
}
