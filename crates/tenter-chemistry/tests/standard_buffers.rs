//! The equilibrium model against measured primary pH standards, which owe nothing to its
//! coefficients: Staples & Bates 1969, J. Res. NBS 73A:37 (carbonate, citrate); Bates 1962,
//! J. Res. NBS 66A:179 (phosphate).

#![allow(clippy::unwrap_used, clippy::print_stdout)]

mod common;

use common::{number, rows};
use tenter_chemistry::equilibrium::{Totals, solve};

fn check(buffer: &str, totals: Totals, tolerance: f64, least_rows: usize) {
    let mut checked = 0;
    let mut worst = 0.0_f64;
    for row in rows(include_str!("data/nist_iupac_pH_buffers.csv")) {
        if !row["buffer"].starts_with(buffer) {
            continue;
        }
        let celsius = number(&row, "T_C").unwrap();
        let standard = number(&row, "pH_NBS_NIST_3dec").unwrap();
        let ph = solve(&totals, celsius + 273.15).unwrap().ph;
        println!("{buffer} {celsius} °C {ph:.4} against {standard} ({:+.4})", ph - standard);
        worst = worst.max((ph - standard).abs());
        assert!((ph - standard).abs() < tolerance, "{buffer} at {celsius} °C: {ph:.4} against {standard}");
        checked += 1;
    }
    println!("{buffer}: worst {worst:.4}");
    assert!(checked >= least_rows, "{buffer}: only {checked} rows");
}

#[test]
fn carbonate_buffer() {
    let totals = Totals { sodium: 0.075, carbonate: 0.05, ..Totals::default() };
    check("carbonate_0.025m", totals, 0.02, 12);
}

#[test]
fn phosphate_buffer() {
    let totals = Totals { potassium: 0.025, sodium: 0.05, phosphate: 0.05, ..Totals::default() };
    check("phosphate", totals, 0.035, 17);
}

#[test]
fn potassium_dihydrogen_citrate() {
    let totals = Totals { potassium: 0.05, citrate: 0.05, ..Totals::default() };
    check("KH2", totals, 0.03, 11);
}

/// The only measured soda-ash figures found: 1, 5 and 10 % by mass at 25 °C (old producer data; that
/// the figures are by mass is from memory).
#[test]
fn producer_figures_for_soda_ash() {
    for (percent, measured) in [(1.0, 11.37), (5.0, 11.58), (10.0, 11.70)] {
        let molality = percent / (100.0 - percent) / 0.105_988;
        let totals = Totals { sodium: 2.0 * molality, carbonate: molality, ..Totals::default() };
        let ph = solve(&totals, 298.15).unwrap().ph;
        assert!((ph - measured).abs() < 0.08, "{percent} %: {ph:.3} against {measured}");
    }
}
