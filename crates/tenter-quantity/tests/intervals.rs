//! Laws of interval arithmetic, sampled.

use proptest::prelude::*;
use tenter_quantity::Interval;

fn number() -> impl Strategy<Value = f64> {
    prop_oneof![
        4 => -1e3..1e3f64,
        2 => -1.0..1.0f64,
        1 => Just(0.0),
        1 => -1e-12..1e-12f64,
        1 => -1e12..1e12f64,
    ]
}

/// Any interval, among them exact ones and such as touch or hold zero.
fn interval() -> impl Strategy<Value = Interval> {
    prop_oneof![
        4 => (number(), number(), number()).prop_map(|(a, b, c)| Interval::new(a, b, c)),
        1 => number().prop_map(Interval::exact),
        1 => (0.0..1e3f64).prop_map(|x| Interval::range(0.0, x)),
        1 => (0.0..1e3f64).prop_map(|x| Interval::range(-x, 0.0)),
    ]
}

fn unit_share() -> impl Strategy<Value = f64> {
    prop_oneof![0.0..=1.0f64, Just(0.0), Just(1.0)]
}

/// An interval, one inside it, and a point inside that.
fn nested() -> impl Strategy<Value = (Interval, Interval, f64)> {
    (interval(), unit_share(), unit_share(), unit_share()).prop_map(|(outer, a, b, c)| {
        let at = |interval: Interval, share: f64| {
            (interval.low + (interval.high - interval.low) * share).clamp(interval.low, interval.high)
        };
        let inner = Interval::range(at(outer, a), at(outer, b));
        (outer, inner, at(inner, c))
    })
}

fn sound(x: Interval) -> bool {
    x.low <= x.best && x.best <= x.high
}

type Operation = (&'static str, fn(Interval, Interval) -> Interval, fn(f64, f64) -> f64);

const OPERATIONS: &[Operation] = &[
    ("+", |a, b| a + b, |a, b| a + b),
    ("-", |a, b| a - b, |a, b| a - b),
    ("×", |a, b| a * b, |a, b| a * b),
    ("÷", |a, b| a / b, |a, b| a / b),
    ("min", Interval::min, f64::min),
    ("max", Interval::max, f64::max),
];

proptest! {
    #[test]
    fn results_hold_every_point_and_grow_with_their_inputs((wide_a, a, x) in nested(), (wide_b, b, y) in nested()) {
        for (name, op, point) in OPERATIONS {
            let (result, wide) = (op(a, b), op(wide_a, wide_b));
            prop_assert!(sound(result) && sound(wide), "{name}: {result:?}, {wide:?}");
            let exact_zero = b.low == 0.0 && b.high == 0.0;
            if *name == "÷" && exact_zero {
                prop_assert!(!result.is_bounded());
                continue;
            }
            prop_assert!(wide.encloses(result), "{name}: {a:?} {b:?} gives {result:?}, wider {wide_a:?} {wide_b:?} only {wide:?}");
            if *name == "÷" && y == 0.0 {
                continue;
            }
            let hit = point(x, y);
            prop_assert!(result.contains(hit), "{name}: {x} and {y} give {hit}, outside {result:?}");
        }
    }

    #[test]
    fn best_estimates_follow_the_point_arithmetic(a in interval(), b in interval()) {
        prop_assert_eq!((a + b).best, a.best + b.best);
        prop_assert_eq!((a - b).best, a.best - b.best);
        prop_assert_eq!((a * b).best, a.best * b.best);
        if b.best != 0.0 {
            prop_assert_eq!((a / b).best, a.best / b.best);
        }
    }

    #[test]
    fn exact_stays_exact(x in number(), y in number()) {
        let (a, b) = (Interval::exact(x), Interval::exact(y));
        prop_assert!((a + b).is_exact() && (a - b).is_exact() && (a * b).is_exact());
        prop_assert!(y == 0.0 || (a / b).is_exact());
    }

    #[test]
    fn any_parts_make_a_sound_interval(a in any::<f64>(), b in any::<f64>(), c in any::<f64>(), d in any::<f64>()) {
        let (x, y) = (Interval::new(a, b, c), Interval::exact(d));
        prop_assert!(sound(x) && sound(y));
        for result in [x + y, x - y, x * y, x / y, y / x, -x, x.powi(2), x.powi(-3), x.recip(), x.min(y), x.max(y), x.hull(y), x.clamp_low(0.0), x.scale(d)] {
            prop_assert!(sound(result), "{x:?} {y:?} {result:?}");
            prop_assert!(result.relative_spread() >= 0.0);
        }
    }

    #[test]
    fn powers_hold_every_point_and_grow((wide, a, x) in nested(), power in 0i32..5) {
        let result = a.powi(power);
        prop_assert!(wide.powi(power).encloses(result));
        let hit = (0..power).fold(1.0, |product, _| product * x);
        // Squaring and repeated multiplication round differently.
        let slack = hit.abs() * 1e-14;
        prop_assert!(result.low - slack <= hit && hit <= result.high + slack);
    }

    #[test]
    fn hull_is_the_least_that_holds_both(a in interval(), b in interval()) {
        let hull = a.hull(b);
        prop_assert!(hull.encloses(a) && hull.encloses(b) && hull.best == a.best);
        prop_assert!(hull.low == a.low || hull.low == b.low);
        prop_assert!(hull.high == a.high || hull.high == b.high);
    }

    #[test]
    fn order_is_certain_or_not_said(a in interval(), b in interval()) {
        prop_assert!(!(a.lies_below(b) && a.lies_above(b)));
        prop_assert_eq!(a.lies_below(b), b.lies_above(a));
        if a.lies_below(b) {
            prop_assert!(a.best < b.best);
        }
    }

    #[test]
    fn maps_follow_the_function((wide, a, x) in nested()) {
        let up = |x: f64| x * x * x;
        let down = |x: f64| -x;
        prop_assert!(a.map_increasing(up).contains(up(x)) && wide.map_increasing(up).encloses(a.map_increasing(up)));
        prop_assert!(a.map_decreasing(down).contains(down(x)));
    }
}

#[test]
fn edges() {
    assert_eq!(Interval::new(3.0, 9.0, 1.0), Interval { low: 1.0, best: 3.0, high: 3.0 });
    assert_eq!(Interval::exact(f64::NAN), Interval::WHOLE);
    assert_eq!(Interval::new(f64::NAN, 2.0, 3.0).low, f64::NEG_INFINITY);
    assert_eq!(Interval::range(10.0, 20.0).best, 15.0);
    assert_eq!(Interval::plus_minus(20.0, -2.0), Interval::plus_minus(20.0, 2.0));
    assert_eq!(Interval::range(4.0, 6.0).relative_spread(), 0.2);
    assert_eq!(Interval::ZERO.relative_spread(), 0.0);
    assert_eq!(Interval::range(-1.0, 1.0).relative_spread(), f64::INFINITY);
    let by_zero = Interval::ONE / Interval::range(0.0, 2.0);
    assert_eq!((by_zero.low, by_zero.high), (0.5, f64::INFINITY));
    let straddling = Interval::ONE / Interval::range(-1.0, 2.0);
    assert_eq!((straddling.low, straddling.high), (f64::NEG_INFINITY, f64::INFINITY));
    assert_eq!((Interval::range(0.0, 5.0) / Interval::range(0.0, 2.0)).low, 0.0);
    assert_eq!(Interval::range(-2.0, 3.0).powi(2), Interval::new(0.0, 0.25, 9.0));
    assert_eq!(Interval::ZERO * Interval::WHOLE, Interval::ZERO);
    let total: Interval = [Interval::ONE, Interval::range(1.0, 3.0)].iter().sum();
    assert_eq!(total, Interval::range(2.0, 4.0));
    assert_eq!(60.0 * Interval::exact(8.0), Interval::exact(480.0));
}
