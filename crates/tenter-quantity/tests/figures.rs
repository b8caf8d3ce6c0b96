//! Figures: what they show, where they say they came from, and that long chains of them do no harm.

use tenter_quantity::{
    Dimension as D, Figure, Interval, Place, lookup_currency, price_per_kilogram, show, show_in, show_number,
    standard as units, unit_by_symbol,
};

fn place(start: u32) -> Place {
    Place { block: 0, start, end: start + 1 }
}

fn line(place: Place) -> String {
    format!("line {}", place.start)
}

fn strength() -> Figure {
    Figure::written(Interval::exact(60.0), D::MassConcentration, units::GRAM_PER_LITRE, place(31))
}

fn water() -> Figure {
    Figure::written(Interval::exact(0.008), D::Volume, units::LITRE, place(30))
}

fn spoon_mass() -> Figure {
    let spoons = Figure::written(Interval::exact(14.8e-6), D::Volume, units::MILLILITRE, place(12));
    let density = Figure::looked(
        Interval::new(420.0, 480.0, 580.0),
        D::MassConcentration,
        units::GRAM_PER_MILLILITRE,
        "bulk density of lagoon",
        "a table",
    );
    spoons.times(&density, units::GRAM)
}

#[test]
fn one_line_a_dyer_can_follow() {
    let soda = strength().times(&water(), units::GRAM);
    assert_eq!(soda.show(), "480 g");
    assert_eq!(soda.derivation(&line), "480 g = 60 g/L (line 31) × 8 L (line 30)");
    assert_eq!(soda.places(), [place(31), place(30)]);
    assert_eq!(soda.widest_input().map(|figure| figure.show()), None);
    assert_eq!(strength().derivation(&line), "60 g/L (line 31)");

    let spoon = spoon_mass();
    assert_eq!(
        spoon.derivation(&line),
        "6.2 to 8.6 g = 14.8 mL (line 12) × (0.42 to 0.58 g/mL; bulk density of lagoon, a table)"
    );
    let widest = spoon.widest_input().unwrap();
    assert_eq!(widest.show(), "0.42 to 0.58 g/mL");

    let total = Figure::sum(vec![soda.clone(), spoon.clone()], units::GRAM);
    assert_eq!(
        total.derivation(&line),
        "487 g = 480 g + (6.2 to 8.6 g); where 480 g = 60 g/L (line 31) × 8 L (line 30); where 6.2 to 8.6 g = 14.8 mL \
         (line 12) × (0.42 to 0.58 g/mL; bulk density of lagoon, a table)"
    );
    assert_eq!(total.places(), [place(31), place(30), place(12)]);
    assert_eq!(total.widest_input().unwrap().show(), "0.42 to 0.58 g/mL");
}

#[test]
fn labels_and_formulas() {
    let room = Figure::assumed(
        Interval::range(291.15, 297.15),
        D::Temperature,
        units::CELSIUS,
        "room temperature",
        "no `room` line",
    );
    assert_eq!(room.show(), "18 to 24 °C");
    assert_eq!(room.derivation(&line), "(18 to 24 °C; room temperature assumed: no `room` line)");
    assert_eq!(room.assumptions().len(), 1);
    let share = Figure::worked(
        "{0} ÷ ({1} + {0}) {9} {",
        Interval::exact(0.25),
        D::MassFraction,
        units::PER_CENT_MASS,
        vec![("taken", water()), ("left", water())],
    );
    // Slots without an input stay as they are: a faulty formula is seen, not fatal.
    assert_eq!(
        share.derivation(&line),
        "25% w/w = 8 L taken (line 30) ÷ (8 L left (line 30) + 8 L taken (line 30)) {9} {"
    );
    assert_eq!(share.inputs().len(), 2);
    assert_eq!(Figure::sum(vec![], units::GRAM).derivation(&line), "0 g = nothing");
    assert_eq!(Figure::sum(vec![water()], units::LITRE).place(), Some(place(30)));
    let left = water().minus(&water());
    assert_eq!(left.derivation(&line), "0 L = 8 L (line 30) − 8 L (line 30)");
}

#[test]
fn the_widest_term_of_a_sum_is_the_one_with_most_grams() {
    let small = Figure::written(Interval::range(0.001, 0.003), D::Mass, units::GRAM, place(1));
    let large = Figure::written(Interval::range(0.400, 0.500), D::Mass, units::GRAM, place(2));
    let sum = Figure::sum(vec![small.clone(), large.clone()], units::GRAM);
    assert_eq!(sum.widest_input().and_then(|figure| figure.place()), Some(place(2)));
    let product =
        small.times(&Figure::written(Interval::range(4.0, 5.0), D::None, units::NUMBER, place(3)), units::GRAM);
    assert_eq!(product.widest_input().and_then(|figure| figure.place()), Some(place(1)));
}

#[test]
fn long_chains_and_shared_inputs_do_no_harm() {
    // As deep as a hostile recipe has lines: dropped, walked and told without recursion.
    let mut deep = water();
    for _ in 0..200_000 {
        deep = deep.plus(&strength());
    }
    assert_eq!(deep.places().len(), 2);
    assert!(deep.derivation(&line).len() < 1000);
    assert!(deep.widest_input().is_none());
    drop(deep);
    // Doubled sixty times: 2⁶⁰ paths through sixty-one figures.
    let mut shared = Figure::written(Interval::range(0.001, 0.002), D::Mass, units::GRAM, place(5));
    for _ in 0..60 {
        shared = shared.plus(&shared);
    }
    assert_eq!(shared.places(), [place(5)]);
    assert!(shared.derivation(&line).len() < 1000);
    assert_eq!(shared.widest_input().and_then(|figure| figure.place()), Some(place(5)));
}

#[test]
fn numbers_for_people() {
    for (low, best, high, expected) in [
        (480.0, 480.0, 480.0, "480"),
        (0.125, 0.125, 0.125, "0.125"),
        (1234.0, 1234.0, 1234.0, "1234"),
        (1.0 / 3.0, 1.0 / 3.0, 1.0 / 3.0, "0.333"),
        (16.5347, 16.5347, 16.5347, "16.5"),
        (1.625, 1.625, 1.625, "1.625"),
        (0.0, 0.0, 0.0, "0"),
        (-0.0, -0.0, -0.0, "0"),
        (-18.0, -18.0, -18.0, "−18"),
        (123_456.0, 123_456.0, 123_456.0, "123456"),
        (412.0, 480.0, 561.0, "410 to 560"),
        (0.42, 0.5, 0.58, "0.42 to 0.58"),
        (470.0, 480.0, 490.0, "about 480"),
        (479.0, 480.0, 481.0, "480"),
        (476.0, 483.0, 492.0, "about 480"),
        (0.3, 50.0, 100.0, "0.3 to 100"),
        (0.0, 5.0, 10.0, "0 to 10"),
        (9.96, 10.0, 10.04, "10"),
        (999.6, 999.8, 1000.0, "1000"),
        (-5.0, 0.0, 5.0, "−5 to 5"),
        (1.0e-7, 1.5e-7, 2.0e-7, "0.0000001 to 0.0000002"),
        (2.0, 3.0, f64::INFINITY, "at least 2"),
        (f64::NEG_INFINITY, 3.0, 4.0, "at most 4"),
    ] {
        assert_eq!(show_number(Interval::new(low, best, high)), expected, "{low} {best} {high}");
    }
}

#[test]
fn units_for_people() {
    let exact = Interval::exact;
    for (value, unit, expected) in [
        (exact(0.480), "g", "480 g"),
        (exact(2.4), "g", "2.4 kg"),
        (exact(0.165), "kg", "165 g"),
        (exact(0.000_002), "g", "2 mg"),
        (exact(0.000_05), "g", "0.05 g"),
        (exact(0.0004), "L", "400 mL"),
        (exact(0.008), "mL", "8 L"),
        (exact(86_400.0), "min", "24 h"),
        (exact(2700.0), "min", "45 min"),
        (exact(5400.0), "h", "90 min"),
        (exact(600_000.0), "h", "6.94 days"),
        (exact(90.0), "s", "90 s"),
        (exact(313.15), "°C", "40 °C"),
        (exact(355.372_222_222), "°F", "180 °F"),
        (Interval::plus_minus(313.15, 2.0), "°C", "about 40 °C"),
        (Interval::plus_minus(313.15, 5.0), "°C", "35 to 45 °C"),
        (exact(0.04), "% owg", "4% owg"),
        (exact(0.65), "%", "65%"),
        (exact(20.0), "liquor ratio", "1:20"),
        (Interval::range(20.0, 25.0), "liquor ratio", "1:20 to 1:25"),
        (exact(1.0), "piece", "1 piece"),
        (exact(6.0), "piece", "6 pieces"),
        (exact(2.0 * 236.588_236_5e-6), "US cup", "2 US cups"),
        (exact(0.12), "mg/L CaCO3", "120 mg/L CaCO3"),
        (exact(3.0), "", "3"),
    ] {
        assert_eq!(show(value, unit_by_symbol(unit).unwrap()), expected);
    }
    let euro = lookup_currency("EUR").unwrap();
    assert_eq!(show_in(exact(3.4), euro), "3.40 EUR");
    assert_eq!(show_in(Interval::range(3.2, 3.6), euro), "3.20 to 3.60 EUR");
    assert_eq!(show_in(exact(340.0), lookup_currency("JPY").unwrap()), "340 JPY");
    assert_eq!(show_in(exact(48.0), price_per_kilogram("EUR").unwrap()), "48.00 EUR/kg");
    // A difference of temperatures has no zero point to add.
    let rise = Figure::assumed(exact(5.0), D::TemperatureDifference, units::CELSIUS, "rise", "given");
    assert_eq!(rise.show(), "5 °C");
    // Written stays as written.
    assert_eq!(Figure::written(exact(2.4), D::Mass, units::GRAM, place(1)).show(), "2400 g");
}
