//! Prints the two figures of the checker: silence over good recipes, and mutants caught. A word behind the command
//! keeps only the operators whose name contains it.

#![allow(clippy::print_stdout, clippy::disallowed_methods)]

fn main() {
    let only = std::env::args().nth(1).unwrap_or_default();
    if only == "batch" {
        for good in tenter_tests::good::all() {
            println!(
                "{} {:.2} {:.3}",
                good.name,
                tenter_tests::harm::worst_batch(&good),
                tenter_tests::harm::depth(&good)
            );
        }
        return;
    }
    println!("{}", tenter_tests::report::measure(&only));
}
