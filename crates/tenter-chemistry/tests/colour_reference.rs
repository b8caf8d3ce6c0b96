//! Colour conversions and differences against the PyPI package colour-science 0.4.7.

#![allow(clippy::unwrap_used)]

mod common;

use common::{number, rows};
use tenter_chemistry::colour::{Lab, Lch, Rgb, Xyz, delta_e_2000};

#[test]
fn conversions_and_differences() {
    for row in rows(include_str!("data/colour_extra.csv")) {
        let n = |column: &str| number(&row, column).unwrap();
        let rgb = |r: &str, g: &str, b: &str| Rgb { r: n(r) / 255.0, g: n(g) / 255.0, b: n(b) / 255.0 };
        let one = rgb("r", "g", "b");
        let xyz = Xyz::from(one);
        let lab = Lab::from(one);
        let near = |name: &str, ours: f64, column: &str, within: f64| {
            assert!((ours - n(column)).abs() < within, "{name}: {ours} against {}", n(column));
        };
        near("X", xyz.x, "X", 2e-6);
        near("Y", xyz.y, "Y", 2e-6);
        near("Z", xyz.z, "Z", 2e-6);
        near("L*", lab.l, "L", 2e-4);
        near("a*", lab.a, "a", 2e-4);
        near("b*", lab.b, "bstar", 2e-4);
        let lch = Lch::from(lab);
        near("C*", lch.c, "C", 2e-4);
        if lch.c > 0.1 {
            near("h", lch.h, "h", 0.01);
        }
        let two = Lab::from(rgb("r2", "g2", "b2"));
        near("ΔE00", delta_e_2000(lab, two), "dE00_to_second", 2e-4);
        let back = Rgb::from(Lab::from(lch));
        assert_eq!(back.to_bytes(), one.to_bytes());
    }
}
