//! Density of solutions against handbook figures at 20 °C, g/cm³: CRC Handbook of Chemistry and
//! Physics, "Concentrative Properties of Aqueous Solutions" (figures from memory).

use tenter_chemistry::density::{DensitySolute, Part, density, density_range, volume_range};

fn at(solute: DensitySolute, percent: f64) -> f64 {
    let part = Part { solute, mass: percent / 100.0 };
    density(1.0 - percent / 100.0, &[part], 293.15) / 1000.0
}

#[test]
fn handbook_densities() {
    let rows = [
        (DensitySolute::SodiumCarbonate, 5.0, 1.0502, 0.001),
        (DensitySolute::SodiumCarbonate, 10.0, 1.1029, 0.001),
        (DensitySolute::SodiumChloride, 10.0, 1.0707, 0.001),
        (DensitySolute::SodiumChloride, 20.0, 1.1478, 0.001),
        (DensitySolute::SodiumSulfate, 10.0, 1.0905, 0.002),
        (DensitySolute::SodiumHydroxide, 10.0, 1.1089, 0.002),
        (DensitySolute::SodiumBicarbonate, 5.0, 1.0354, 0.002),
        (DensitySolute::AceticAcid, 10.0, 1.0121, 0.003),
        (DensitySolute::Urea, 10.0, 1.0254, 0.002),
        (DensitySolute::CitricAcid, 10.0, 1.0392, 0.002),
    ];
    for (solute, percent, handbook, within) in rows {
        let ours = at(solute, percent);
        assert!((ours - handbook).abs() < within, "{solute:?} {percent} %: {ours} against {handbook}");
    }
}

#[test]
fn plain_water_and_unknown_solutes() {
    let water = density(1.0, &[], 293.15);
    assert!((water - 998.207).abs() < 0.03, "{water}");
    let part = Part { solute: DensitySolute::Other, mass: 0.1 };
    let (low, best, high) = density_range(1.0, &[part], 293.15);
    assert!(low < best && best < high && low > 998.0);
    let (small, middle, large) = volume_range(1.0, &[part], 293.15);
    assert!(small < middle && middle < large);
}

#[test]
fn absurd_mixtures_have_a_finite_density() {
    for mass in [0.0, 1e-9, 5.0, 1e6] {
        for solute in [DensitySolute::SodiumCarbonate, DensitySolute::PotassiumChloride] {
            let (low, best, high) = density_range(0.0, &[Part { solute, mass }], 350.0);
            assert!(low.is_finite() && best.is_finite() && high.is_finite());
        }
    }
}
