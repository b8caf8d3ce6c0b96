//! What two dyes give on one cloth.
//!
//! The one-constant theory of Kubelka & Munk 1931 (Z. Techn. Physik 12:593): where cloth reflects the
//! share R of the light, `K/S = (1 − R)²/(2R)`, and the K/S of dyes on one cloth add, over that of the
//! cloth itself, in proportion to their amounts. Here it is applied to three wide bands, the linear
//! red, green and blue of sRGB, instead of to a spectrum: a simplification that keeps hue within
//! reach and says which mixtures go dull, and is no more exact than the screen the colours came from.

use super::space::{Lab, Lch, Rgb};

/// A dye as it looks on the cloth at some depth, and how much of that depth is laid.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Layer {
    /// Colour of the dyed cloth at a depth of one.
    pub colour: Rgb,
    /// Depth laid, 1 for the depth the colour was seen at; may be above one.
    pub depth: f64,
}

/// No cloth is blacker than this in any band.
const BLACKEST: f64 = 0.003;

fn absorption(reflectance: f64) -> f64 {
    let r = reflectance.clamp(BLACKEST, 1.0);
    (1.0 - r) * (1.0 - r) / (2.0 * r)
}

fn reflectance(absorption: f64) -> f64 {
    let k = absorption.max(0.0);
    // 1 + k − √(k² + 2k), in the form that keeps its figures for large k.
    1.0 / (1.0 + k + (k * k + 2.0 * k).sqrt())
}

/// Colour of layers of dye on a cloth.
#[must_use]
pub fn mix(cloth: Rgb, layers: &[Layer]) -> Rgb {
    let ground = cloth.linear().map(absorption);
    let mut sum = ground;
    for layer in layers {
        let depth = if layer.depth.is_finite() { layer.depth.clamp(0.0, 100.0) } else { 0.0 };
        let dyed = layer.colour.linear().map(absorption);
        for ((s, d), g) in sum.iter_mut().zip(dyed).zip(ground) {
            *s += depth * (d - g).max(0.0);
        }
    }
    Rgb::from_linear(sum.map(reflectance))
}

/// Chroma lost where two zones run together half and half: the mean chroma of the two colours less
/// that of their mixture on the cloth. Large when they go to brown or grey; below zero never counts
/// as a loss.
#[must_use]
pub fn chroma_lost(cloth: Rgb, one: Rgb, two: Rgb) -> f64 {
    let half = |colour| Layer { colour, depth: 0.5 };
    let together = mix(cloth, &[half(one), half(two)]);
    let chroma = |c: Rgb| Lch::from(Lab::from(c)).c;
    (0.5 * (chroma(one) + chroma(two)) - chroma(together)).max(0.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    const CLOTH: Rgb = Rgb { r: 0.98, g: 0.98, b: 0.96 };

    #[test]
    fn one_dye_at_its_own_depth_is_itself_and_none_is_the_cloth() {
        let blue = Rgb::from_bytes(30, 60, 150);
        let same = mix(CLOTH, &[Layer { colour: blue, depth: 1.0 }]);
        assert_eq!(same.to_bytes(), blue.to_bytes());
        assert_eq!(mix(CLOTH, &[]).to_bytes(), CLOTH.to_bytes());
    }

    #[test]
    fn yellow_and_turquoise_make_green_and_opposites_go_dull() {
        let yellow = Rgb::from_bytes(245, 215, 30);
        let turquoise = Rgb::from_bytes(0, 160, 190);
        let magenta = Rgb::from_bytes(190, 20, 100);
        let green = Rgb::from_bytes(40, 140, 60);
        let layer = |colour| Layer { colour, depth: 0.5 };
        let mixed = Lch::from(Lab::from(mix(CLOTH, &[layer(yellow), layer(turquoise)])));
        assert!((110.0..180.0).contains(&mixed.h), "hue {}", mixed.h);
        let friendly = chroma_lost(CLOTH, yellow, turquoise);
        let dull = chroma_lost(CLOTH, magenta, green);
        assert!(dull > friendly + 15.0, "{dull} against {friendly}");
    }

    #[test]
    fn more_dye_is_never_lighter() {
        let blue = Rgb::from_bytes(30, 60, 150);
        let mut last = f64::INFINITY;
        for step in 0..40 {
            let colour = mix(CLOTH, &[Layer { colour: blue, depth: 0.1 * f64::from(step) }]);
            let lightness = Lab::from(colour).l;
            assert!(lightness <= last + 1e-9);
            last = lightness;
        }
    }
}
