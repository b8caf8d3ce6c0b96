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
        "K7" | "T2" => 0.2,
        "T1" | "T3" => 0.05,
        _ => panic!("unknown series {series}"),
    }
}

#[test]
fn solutions_drawn_at_random() {
    check(include_str!("data/oracle_kept_back.csv"), 300);
}

/// Sulfite, citrate and silicate, whose coefficients here are from memory or taken by likeness, against published
/// coefficients of another kind: ThermoChimie 12a (specific ion interaction theory) as `sit.dat` of PHREEQC 3.8.6.
/// `tests/oracle/specific_ion.py` makes the table.
#[test]
fn coefficients_without_a_source_against_specific_ion_theory() {
    check(include_str!("data/oracle_specific_ion.csv"), 30);
}

fn check(table: &str, least: usize) {
    let mut wrong = Vec::new();
    let table = rows(table);
    assert!(table.len() >= least);
    for row in table {
        let expected = number(&row, "pH_ref").unwrap();
        let ours = solve(&totals(&row), number(&row, "T_C").unwrap() + 273.15).unwrap().ph;
        if (ours - expected).abs() > promised(&row["series"]) {
            wrong.push(format!("{} {} at {} °C: {ours:.4} against {expected}", row["id"], row["series"], row["T_C"]));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}
