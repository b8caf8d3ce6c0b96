//! Speed of a whole rehearsal.

fn main() {
    divan::main();
}
