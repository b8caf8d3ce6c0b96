//! Compares the pH of solutions read from standard input with the model: a table as `tests/oracle/kept_back.py` writes it.
//! Prints the worst and the mean difference of each series; with `-- --each` every difference.

#![allow(missing_docs, clippy::unwrap_used, clippy::print_stdout, clippy::disallowed_methods)]

#[path = "../tests/common/mod.rs"]
mod common;

use std::collections::BTreeMap;
use std::io::Read;

use common::{number, rows, totals};
use tenter_chemistry::equilibrium::solve;

fn main() {
    let mut text = String::new();
    std::io::stdin().read_to_string(&mut text).unwrap();
    let mut series = BTreeMap::<String, (usize, f64, f64, String)>::new();
    for row in rows(&text) {
        let celsius = number(&row, "T_C").unwrap();
        for (column, name) in [("pH_ref", ""), ("pH_stock_pitzer", ", stock pitzer.dat")] {
            let Some(expected) = number(&row, column) else { continue };
            let difference = match solve(&totals(&row), celsius + 273.15) {
                Ok(solution) => solution.ph - expected,
                Err(why) => {
                    println!("{} is not solved: {why:?}", row["id"]);
                    f64::INFINITY
                }
            };
            let entry = series.entry(format!("{}{name}", row["series"])).or_default();
            if std::env::args().any(|word| word == "--each") {
                println!("{} {name} {celsius} °C: {difference:+.4} from {expected}", row["id"]);
            }
            entry.0 += 1;
            entry.1 += difference.abs();
            if difference.abs() >= entry.2.abs() {
                entry.2 = difference;
                entry.3 = format!("{} at {celsius} °C", row["id"]);
            }
        }
    }
    for (name, (count, sum, worst, at)) in series {
        println!("{name}: {count} solutions, mean {:.4}, worst {worst:+.4} ({at})", sum / count as f64);
    }
}
