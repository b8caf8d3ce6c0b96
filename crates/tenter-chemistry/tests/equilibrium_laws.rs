//! Laws that hold for every solution.

#![allow(clippy::unwrap_used)]

use proptest::prelude::*;
use tenter_chemistry::equilibrium::{Model, NotSolved, Totals, solve};

fn amounts(greatest: f64) -> impl Strategy<Value = [f64; 13]> {
    let one = prop_oneof![
        3 => Just(0.0),
        2 => 0.0..greatest,
        1 => (-12.0..0.0_f64).prop_map(move |e| greatest * libm::exp10(e)),
        1 => Just(greatest),
    ];
    prop::array::uniform13(one)
}

/// The sulfite, silicate and ammonium rows are the least known; the monotone law is asked of
/// mixtures that a bench could make.
fn bench_mixture() -> impl Strategy<Value = Totals> {
    (0.0..2.0, 0.0..1.0, 0.0..0.5, 0.0..0.2, 0.0..0.3, 0.0..1.5, 0.0..0.7, 0.0..0.1).prop_map(
        |(sodium, carbonate, acetate, citrate, phosphate, chloride, sulfate, ammonia): (
            f64,
            f64,
            f64,
            f64,
            f64,
            f64,
            f64,
            f64,
        )| Totals {
            sodium: sodium + chloride + 2.0 * sulfate,
            carbonate,
            acetate,
            citrate,
            phosphate,
            chloride,
            sulfate,
            ammonia,
            ..Totals::default()
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn every_total_to_20_mol_a_kilogram_is_solved(
        amounts in amounts(20.0),
        temperature in 273.15..373.15_f64,
    ) {
        let s = solve(&Totals::from_array(amounts), temperature);
        prop_assert!(s.is_ok(), "{s:?}");
        if let Ok(s) = s {
            prop_assert!(s.ph.is_finite() && s.oh_molality > 0.0 && s.water_activity > 0.0);
            prop_assert!(s.carbon_dioxide_pressure >= 0.0);
        }
    }

    #[test]
    fn mixtures_of_the_bench_are_always_solved(
        totals in bench_mixture(),
        temperature in 273.15..373.15_f64,
    ) {
        prop_assert!(solve(&totals, temperature).is_ok());
    }

    #[test]
    fn more_alkali_never_lowers_ph(
        totals in bench_mixture(),
        temperature in 273.15..373.15_f64,
        added in 1e-6..0.5_f64,
    ) {
        let model = Model::at(temperature).unwrap();
        let before = model.solve(&totals).unwrap();
        let after = model.solve(&Totals { sodium: totals.sodium + added, ..totals }).unwrap();
        prop_assert!(
            after.ph_unscaled >= before.ph_unscaled - 1e-6,
            "{} then {}", before.ph_unscaled, after.ph_unscaled
        );
        prop_assert!(after.ph >= before.ph - 1e-6, "{} then {}", before.ph, after.ph);
    }

    #[test]
    fn the_balance_of_charge_and_mass_closes(
        totals in bench_mixture(),
        temperature in 273.15..373.15_f64,
    ) {
        use tenter_chemistry::equilibrium::species::{CHARGE, CO2, CO3, HCO3, SPECIES};
        let s = solve(&totals, temperature).unwrap();
        let charge: f64 = (0..SPECIES).map(|i| CHARGE[i] * s.molality(i)).sum();
        prop_assert!(charge.abs() < 1e-9, "charge left over: {charge}");
        let carbonate = s.molality(CO2) + s.molality(HCO3) + s.molality(CO3);
        prop_assert!((carbonate - totals.carbonate).abs() < 1e-9);
    }
}

#[test]
fn nonsense_is_refused() {
    for bad in [-1.0, f64::NAN, f64::INFINITY] {
        let totals = Totals { sodium: bad, ..Totals::default() };
        assert_eq!(solve(&totals, 298.15), Err(NotSolved::BadTotal));
    }
    let soda = Totals { sodium: 0.2, carbonate: 0.1, ..Totals::default() };
    assert!(matches!(solve(&soda, f64::NAN), Err(NotSolved::Temperature(_))));
    assert!(matches!(solve(&soda, 400.0), Err(NotSolved::Temperature(_))));
    let heap = Totals { sodium: 300.0, ..Totals::default() };
    assert!(matches!(solve(&heap, 298.15), Err(NotSolved::TooConcentrated(_))));
}

/// What a solution tells of itself is enough to work out its pH by hand, both from carbonate and
/// from hydroxide: 60 g/L of soda ash at 20, 40 and 80 °C.
#[test]
fn the_ph_can_be_followed_by_hand() {
    use tenter_chemistry::equilibrium::species::{CO3, HCO3, OH};
    let soda = tenter_chemistry::equilibrium::substance("Na2CO3").unwrap();
    for celsius in [20.0, 40.0, 80.0] {
        let s = solve(&soda.totals(0.060, 0.998_207), celsius + 273.15).unwrap();
        let activity = |species| s.molality(species) * s.activity_coefficient(species);
        let from_carbonate = s.pk_carbonic[1] + libm::log10(activity(CO3)) - libm::log10(activity(HCO3));
        let from_hydroxide = s.pk_water + libm::log10(activity(OH)) - libm::log10(s.water_activity);
        assert!((from_carbonate - s.ph).abs() < 1e-6, "{from_carbonate} {}", s.ph);
        assert!((from_hydroxide - s.ph).abs() < 1e-6, "{from_hydroxide} {}", s.ph);
    }
}

/// Pure water is neutral: half of pKw, 13.995 at 25 °C.
#[test]
fn water_is_neutral() {
    let s = solve(&Totals::default(), 298.15).unwrap();
    assert!((s.ph - 6.9975).abs() < 0.002, "{}", s.ph);
    assert!((s.water_activity - 1.0).abs() < 1e-6);
}
