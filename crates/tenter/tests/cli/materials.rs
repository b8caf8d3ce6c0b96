//! `tenter materials`.

use crate::bench::Bench;

#[test]
fn an_entry_is_found_by_any_of_its_names_and_shows_its_sources() {
    let bench = Bench::new();
    let soda = bench.run(&["materials", "Sodium", "Carbonate"]);
    assert_eq!(soda.status, 0, "{soda:?}");
    assert_eq!(bench.run(&["materials", "soda ash"]).out, soda.out);
    for part in ["Na2CO3", "g/mol [", "497-19-8", "H319", "Sources\n", "safety data sheet"] {
        assert!(soda.out.contains(part), "{part}: {soda:?}");
    }
}

#[test]
fn every_listed_name_has_an_entry_that_fits_the_page() {
    let bench = Bench::new();
    let list = bench.run(&["materials"]);
    let names: Vec<&str> = list
        .out
        .lines()
        .filter(|line| line.starts_with("  ") && !line.starts_with("   "))
        .filter_map(|line| line.trim_start().split("  ").next())
        .collect();
    assert!(names.len() > 70, "{}", names.len());
    let mut shown = 0;
    for name in names {
        let run = bench.run(&["materials", name]);
        // A long name is broken over two lines of the list.
        shown += usize::from(run.status == 0);
        assert!(run.out.lines().all(|line| line.chars().count() <= 80), "{name}: {run:?}");
    }
    assert!(shown > 70, "{shown}");
}

#[test]
fn a_slip_gets_the_nearest_name() {
    let run = Bench::new().run(&["materials", "sdoa", "ash"]);
    assert_eq!((run.status, run.out.as_str()), (2, ""));
    assert!(run.err.contains("soda ash"), "{run:?}");
}
