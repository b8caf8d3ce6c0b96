//! Colour difference.

use super::space::{Lab, Lch};

/// CIEDE2000 (ISO/CIE 11664-6, after Sharma, Wu & Dalal 2005, Color Res. Appl. 30:21), with all
/// weights one.
#[must_use]
pub fn delta_e_2000(one: Lab, two: Lab) -> f64 {
    let mean_chroma = 0.5 * (libm::hypot(one.a, one.b) + libm::hypot(two.a, two.b));
    let g = 0.5 * (1.0 - seventh(mean_chroma));
    let (a1, a2) = ((1.0 + g) * one.a, (1.0 + g) * two.a);
    let (c1, c2) = (libm::hypot(a1, one.b), libm::hypot(a2, two.b));
    let (h1, h2) = (hue(a1, one.b), hue(a2, two.b));
    let grey = c1 * c2 == 0.0;

    let lightness = two.l - one.l;
    let chroma = c2 - c1;
    let mut turn = if grey { 0.0 } else { h2 - h1 };
    if turn > 180.0 {
        turn -= 360.0;
    } else if turn < -180.0 {
        turn += 360.0;
    }
    let hue_part = 2.0 * (c1 * c2).sqrt() * sin(0.5 * turn);

    let mean_l = 0.5 * (one.l + two.l);
    let mean_c = 0.5 * (c1 + c2);
    let mean_h = if grey {
        h1 + h2
    } else if (h1 - h2).abs() <= 180.0 {
        0.5 * (h1 + h2)
    } else if h1 + h2 < 360.0 {
        0.5 * (h1 + h2 + 360.0)
    } else {
        0.5 * (h1 + h2 - 360.0)
    };
    let t = 1.0 - 0.17 * cos(mean_h - 30.0) + 0.24 * cos(2.0 * mean_h) + 0.32 * cos(3.0 * mean_h + 6.0)
        - 0.20 * cos(4.0 * mean_h - 63.0);
    let bend = (mean_h - 275.0) / 25.0;
    let rotation = -sin(60.0 * libm::exp(-bend * bend)) * 2.0 * seventh(mean_c);
    let middle = (mean_l - 50.0) * (mean_l - 50.0);
    let sl = 1.0 + 0.015 * middle / (20.0 + middle).sqrt();
    let sc = 1.0 + 0.045 * mean_c;
    let sh = 1.0 + 0.015 * mean_c * t;
    let (l, c, h) = (lightness / sl, chroma / sc, hue_part / sh);
    (l * l + c * c + h * h + rotation * c * h).max(0.0).sqrt()
}

/// Difference of chroma of two colours, positive when the second is the more vivid.
#[must_use]
pub fn chroma_difference(one: Lab, two: Lab) -> f64 {
    Lch::from(two).c - Lch::from(one).c
}

/// `√(c⁷/(c⁷ + 25⁷))`.
fn seventh(c: f64) -> f64 {
    let ratio = (c / 25.0).min(1e6);
    let cube = ratio * ratio * ratio;
    let seventh = cube * cube * ratio;
    (seventh / (seventh + 1.0)).sqrt()
}

/// Hue angle in degrees, 0–360; zero for grey.
fn hue(a: f64, b: f64) -> f64 {
    if a == 0.0 && b == 0.0 {
        return 0.0;
    }
    let degrees = libm::atan2(b, a).to_degrees();
    if degrees < 0.0 { degrees + 360.0 } else { degrees }
}

fn sin(degrees: f64) -> f64 {
    libm::sin(degrees.to_radians())
}

fn cos(degrees: f64) -> f64 {
    libm::cos(degrees.to_radians())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// From the published test data of Sharma, Wu & Dalal 2005 (pairs 1, 7, 13, 17, 25 and 34,
    /// from memory).
    #[test]
    fn published_pairs() {
        let pairs = [
            ([50.0, 2.6772, -79.7751], [50.0, 0.0, -82.7485], 2.0425),
            ([50.0, 0.0, 0.0], [50.0, -1.0, 2.0], 2.3669),
            ([50.0, -0.001, 2.49], [50.0, 0.0009, -2.49], 4.8045),
            ([50.0, 2.5, 0.0], [73.0, 25.0, -18.0], 27.1492),
            ([60.2574, -34.0099, 36.2677], [60.4626, -34.1751, 39.4387], 1.2644),
            ([2.0776, 0.0795, -1.135], [0.9033, -0.0636, -0.5514], 0.9082),
        ];
        for (one, two, expected) in pairs {
            let lab = |[l, a, b]: [f64; 3]| Lab { l, a, b };
            let ours = delta_e_2000(lab(one), lab(two));
            assert!((ours - expected).abs() < 1e-4, "{one:?} {two:?}: {ours} against {expected}");
            let back = delta_e_2000(lab(two), lab(one));
            assert!((ours - back).abs() < 1e-9);
        }
    }
}
