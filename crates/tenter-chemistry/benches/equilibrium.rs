//! Speed of the acid–base solver: soda-ash solutions a second.

#![allow(clippy::unwrap_used)]

use divan::{Bencher, black_box, counter::ItemsCount};
use tenter_chemistry::equilibrium::{Model, Totals, solve};

fn main() {
    divan::main();
}

fn soda_ash(i: u32) -> Totals {
    let molality = 0.01 + 0.02 * f64::from(i % 100);
    Totals { sodium: 2.0 * molality, carbonate: molality, ..Totals::default() }
}

/// One temperature, model built once.
#[divan::bench]
fn soda_ash_at_one_temperature(bencher: Bencher) {
    let model = Model::at(313.15).unwrap();
    bencher.counter(ItemsCount::new(100_u32)).bench_local(|| {
        for i in 0..100 {
            black_box(model.solve(black_box(&soda_ash(i))).unwrap());
        }
    });
}

/// Every solution at its own temperature.
#[divan::bench]
fn soda_ash_at_every_temperature(bencher: Bencher) {
    bencher.counter(ItemsCount::new(100_u32)).bench_local(|| {
        for i in 0..100 {
            black_box(solve(black_box(&soda_ash(i)), 278.15 + 0.8 * f64::from(i)).unwrap());
        }
    });
}

/// Soda ash half neutralised by citric acid, with salt: the longest sums met at the bench.
#[divan::bench]
fn soda_ash_salt_and_citric_acid(bencher: Bencher) {
    let model = Model::at(313.15).unwrap();
    let totals = Totals { sodium: 0.9, carbonate: 0.19, citrate: 0.05, chloride: 0.5, ..Totals::default() };
    bencher.counter(ItemsCount::new(1_u32)).bench_local(|| black_box(model.solve(black_box(&totals)).unwrap()));
}
