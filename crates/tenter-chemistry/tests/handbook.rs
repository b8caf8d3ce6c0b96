//! Water and solubility against the handbook tables (see `data/README.md`).

#![allow(clippy::unwrap_used)]

mod common;

use common::{number, rows};
use tenter_chemistry::solubility::{Solute, solubility};
use tenter_chemistry::water;

#[test]
fn water_follows_iapws() {
    for row in rows(include_str!("data/water_properties_0_100C.csv")) {
        let celsius = number(&row, "T_C").unwrap();
        let t = celsius + 273.15;
        let check = |name: &str, ours: f64, column: &str, scale: f64, share: f64| {
            let table = number(&row, column).unwrap() * scale;
            assert!((ours - table).abs() <= share * table, "{name} at {celsius} °C: {ours} {table}");
        };
        check("density", water::density(t), "density_kg_m3_IAPWS95", 1.0, 3e-5);
        check("heat capacity", water::heat_capacity(t), "cp_kJ_kgK_IAPWS95", 1e3, 1e-6);
        check("vapour pressure", water::vapour_pressure(t), "p_sat_kPa_IAPWS97", 1e3, 3e-4);
        check("vaporisation", water::heat_of_vaporisation(t), "hvap_kJ_kg_IAPWS97", 1e3, 6e-4);
    }
}

#[test]
fn water_between_the_rows_follows_iapws() {
    for row in rows(include_str!("data/water_extra.csv")) {
        let celsius = number(&row, "T_C").unwrap();
        let t = celsius + 273.15;
        let table = number(&row, "density_kg_m3_IAPWS95").unwrap();
        assert!((water::density(t) - table).abs() < 0.03, "density at {celsius} °C");
        let table = 1000.0 * number(&row, "cp_kJ_kgK_IAPWS95").unwrap();
        assert!((water::heat_capacity(t) - table).abs() < 2.0, "heat capacity at {celsius} °C");
    }
}

#[test]
fn water_boils_cooler_at_altitude() {
    for row in rows(include_str!("data/boiling_point_vs_altitude.csv")) {
        let metres = number(&row, "altitude_m").unwrap();
        let table = number(&row, "boiling_point_C").unwrap();
        let ours = water::boiling_point_at_altitude(metres) - 273.15;
        assert!((ours - table).abs() < 0.03, "{metres} m: {ours} against {table}");
        let pressure = number(&row, "ISA_pressure_kPa").unwrap();
        assert!((water::pressure_at_altitude(metres) / 1000.0 - pressure).abs() < 0.02, "{metres}");
    }
}

#[test]
fn solubility_gives_back_every_row() {
    for row in rows(include_str!("data/solubility_vs_temperature.csv")) {
        let name = match row["substance"].as_str() {
            "citric_acid_anh" => "C6H8O7",
            "urea" => "CO(NH2)2",
            other => other,
        };
        let solute = Solute::from_formula(name).unwrap();
        let celsius = number(&row, "T_C").unwrap();
        let Some(table) = number(&row, "g_per_100g_water") else {
            continue;
        };
        let ours = 100.0 * solubility(solute, celsius + 273.15);
        assert!((ours - table).abs() < 1e-6 * table, "{name} at {celsius} °C: {ours} {table}");
    }
}

/// Between the rows: sodium chloride and sodium sulfate against solubilities computed
/// independently with PHREEQC 3.8.6 and its Pitzer data base (the check column of the table).
#[test]
fn computed_solubility_agrees_with_the_handbook() {
    for row in rows(include_str!("data/solubility_vs_temperature.csv")) {
        let Some(computed) = number(&row, "phreeqc_pitzer_check_g_per_100g") else {
            continue;
        };
        let celsius = number(&row, "T_C").unwrap();
        let solute = Solute::from_formula(&row["substance"]).unwrap();
        let ours = 100.0 * solubility(solute, celsius + 273.15);
        assert!((ours / computed - 1.0).abs() < 0.06, "{} at {celsius} °C", row["substance"]);
    }
}
