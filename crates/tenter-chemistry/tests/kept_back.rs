//! Solutions drawn at random that no coefficient was looked at with, against PHREEQC 3.8.6 with the Pitzer coefficients of
//! data0.ypf.R2: `tests/oracle/kept_back.py` at the root of the project draws them, with any seed.

#![allow(clippy::unwrap_used, clippy::print_stdout)]

mod common;

use common::{number, rows, totals};
use tenter_chemistry::equilibrium::solve;

/// What the model promises for each kind of solution, pH.
fn promised(series: &str) -> f64 {
    match series.get(..2).unwrap_or("") {
        "K1" | "K2" | "K3" | "K4" | "K9" => 0.02,
        "K5" | "K8" => 0.1,
        "K6" => 0.03,
        "K7" => 0.2,
        _ => panic!("unknown series {series}"),
    }
}

#[test]
fn solutions_drawn_at_random() {
    let mut wrong = Vec::new();
    let table = rows(include_str!("data/oracle_kept_back.csv"));
    assert!(table.len() >= 300);
    for row in table {
        let expected = number(&row, "pH_ref").unwrap();
        let ours = solve(&totals(&row), number(&row, "T_C").unwrap() + 273.15).unwrap().ph;
        if (ours - expected).abs() > promised(&row["series"]) {
            wrong.push(format!("{} {} at {} °C: {ours:.4} against {expected}", row["id"], row["series"], row["T_C"]));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}
