//! Laws of the batch: time and warmth never take anything back.

use proptest::prelude::*;
use tenter_chemistry::reaction::{DyeClass, Spell, batch_share, bottle, equivalent_time};

fn class() -> impl Strategy<Value = DyeClass> {
    prop_oneof![
        Just(DyeClass::Dichlorotriazine),
        Just(DyeClass::Monofluorotriazine),
        Just(DyeClass::Difluorochloropyrimidine),
        Just(DyeClass::Dichloroquinoxaline),
        Just(DyeClass::VinylSulfone),
        Just(DyeClass::Monochlorotriazine),
        Just(DyeClass::Trichloropyrimidine),
    ]
}

fn spell() -> impl Strategy<Value = Spell> {
    (0.0..400_000.0_f64, 270.0..375.0_f64, prop::option::of(6.0..14.0_f64))
        .prop_map(|(seconds, temperature, ph)| Spell { seconds, temperature, ph })
}

proptest! {
    #[test]
    fn more_time_never_lowers_the_batch(
        class in class(),
        history in prop::collection::vec(spell(), 0..6),
        more in spell(),
    ) {
        let before = equivalent_time(class, &history);
        let mut longer = history.clone();
        longer.push(more);
        let after = equivalent_time(class, &longer);
        prop_assert!(after.low >= before.low && after.best >= before.best && after.high >= before.high);
        let (a, b) = (batch_share(class, &before), batch_share(class, &after));
        prop_assert!(b.0 >= a.0 && b.1 >= a.1 && b.2 >= a.2);
        let (old, older) = (bottle(class, &history), bottle(class, &longer));
        prop_assert!(older.0 >= old.0 && older.1 >= old.1 && older.2 >= old.2);
    }

    #[test]
    fn the_range_is_in_order(class in class(), history in prop::collection::vec(spell(), 0..6)) {
        let time = equivalent_time(class, &history);
        prop_assert!(time.low <= time.best * (1.0 + 1e-12) && time.best <= time.high * (1.0 + 1e-12));
        let share = batch_share(class, &time);
        prop_assert!(0.0 <= share.0 && share.0 <= share.1 && share.1 <= share.2 && share.2 <= 1.0);
    }

    #[test]
    fn warmth_never_slows(class in class(), one in spell(), warmer in 0.0..40.0_f64) {
        let hot = Spell { temperature: one.temperature + warmer, ..one };
        let (a, b) = (equivalent_time(class, &[one]), equivalent_time(class, &[hot]));
        prop_assert!(b.best >= a.best);
    }
}
