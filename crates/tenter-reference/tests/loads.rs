//! The bundled data loads, and says where it is wrong if it does not.

use tenter_reference::{Files, Reference};

#[test]
fn bundled_data_loads() {
    if let Err(error) = Reference::load(&Files::bundled()) {
        panic!("{error}");
    }
    assert!(Reference::bundled().materials().count() >= 30);
}
