//! How long reading takes, and how much of it is the grammar.

fn main() {
    divan::main();
}
