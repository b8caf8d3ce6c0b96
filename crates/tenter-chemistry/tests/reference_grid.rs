//! The equilibrium model against the reference grids computed with PHREEQC 3.8.6 and the Pitzer
//! coefficients of data0.ypf.R2, row by row (see `data/README.md`).

#![allow(clippy::unwrap_used, clippy::print_stdout)]

mod common;

use common::{Row, number, rows, totals};
use tenter_chemistry::equilibrium::solve;

/// Accepted difference in pH for a series. The model here and the reference share coefficients, so
/// these are far tighter than what may be said of a real solution (see `realistic_spread`); they
/// catch mistakes of coding. Citrate has no published sodium coefficients and its reference is
/// itself uncertain by 0.2.
fn tolerance(row: &Row) -> f64 {
    let series = row.get("series").map_or("", String::as_str);
    let code = series.get(..2).unwrap_or("");
    match code {
        "S1" | "S2" | "S3" | "S4" | "S9" => 0.005,
        "S5" => 0.01,
        "S6" => 0.001,
        "S7" if series.contains("buffers") => 0.2,
        "S7" => 0.01,
        "S8" if series.contains("citric") => 0.1,
        "S8" => 0.01,
        // Another kind of model altogether.
        "D1" | "D2" | "D3" | "D4" | "D5" => 0.05,
        _ => panic!("unknown series {series}"),
    }
}

fn check(text: &str, name: &str) {
    let mut worst = std::collections::BTreeMap::<String, (f64, String)>::new();
    let mut wrong = Vec::new();
    for row in rows(text) {
        let t = number(&row, "T_C").unwrap() + 273.15;
        let expected = number(&row, "pH_ref").unwrap();
        let solution = solve(&totals(&row), t).unwrap();
        let difference = solution.ph - expected;
        let series = row["series"].clone();
        let entry = worst.entry(series).or_insert((0.0, String::new()));
        if difference.abs() > entry.0.abs() {
            *entry = (difference, row["id"].clone());
        }
        if difference.abs() > tolerance(&row) {
            wrong.push(format!(
                "{} {} at {} °C: {:.4} against {expected}",
                row["id"], row["series"], row["T_C"], solution.ph
            ));
        }
    }
    for (series, (difference, id)) in &worst {
        println!("{name} {series}: worst {difference:+.4} ({id})");
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn soda_ash() {
    check(include_str!("data/oracle_dev_carbonate.csv"), "carbonate");
}

#[test]
fn alkalis_and_salts() {
    check(include_str!("data/oracle_dev_alkali_salt.csv"), "alkali");
}

#[test]
fn acids_and_soda_ash_partly_neutralised() {
    check(include_str!("data/oracle_dev_acid_neutralised.csv"), "acid");
}

/// Temperatures and mixtures that no coefficient was looked at with.
#[test]
fn further_conditions() {
    check(include_str!("data/oracle_extra.csv"), "further");
}

/// Potash, ammonia, silicate, hard water and bisulfate in dilute solution, against a data base that
/// shares neither equations nor coefficients with the model.
#[test]
fn other_bases_and_acids_in_dilute_solution() {
    check(include_str!("data/oracle_dilute.csv"), "dilute");
}

/// Species, ionic strength and carbon dioxide pressure of the same rows.
#[test]
fn species_and_carbon_dioxide_of_the_grid() {
    let mut checked = 0;
    for text in [include_str!("data/oracle_dev_carbonate.csv"), include_str!("data/oracle_dev_alkali_salt.csv")] {
        for row in rows(text) {
            let t = number(&row, "T_C").unwrap() + 273.15;
            let s = solve(&totals(&row), t).unwrap();
            let mut compare = |name: &str, ours: f64, column: &str, share: f64| {
                if let Some(table) = number(&row, column).filter(|x| *x > 0.0) {
                    let id = &row["id"];
                    assert!((ours / table - 1.0).abs() < share, "{id} {name}: {ours:e} {table:e}");
                    checked += 1;
                }
            };
            compare("hydroxide", s.oh_molality, "m_OH", 0.02);
            compare("bicarbonate", s.bicarbonate, "m_HCO3", 0.02);
            compare("carbonate", s.carbonate, "m_CO3", 0.02);
            compare("carbon dioxide", s.carbon_dioxide, "m_CO2aq", 0.06);
            compare("ionic strength", s.ionic_strength, "ionic_strength", 0.005);
            let unscaled = number(&row, "pH_pitzer_unscaled").unwrap();
            assert!((s.ph_unscaled - unscaled).abs() < 0.005, "{} unscaled pH", row["id"]);
            if let Some(log) = number(&row, "log10_pCO2_atm") {
                let ours = libm::log10(s.carbon_dioxide_pressure / 101_325.0);
                assert!((ours - log).abs() < 0.03, "{}: pCO2 {ours} against {log}", row["id"]);
            }
        }
    }
    assert!(checked > 500, "{checked}");
}
