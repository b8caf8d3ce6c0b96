//! sRGB, XYZ, Lab and LCh.
//!
//! sRGB by IEC 61966-2-1:1999 with its four-figure matrix; Lab by CIE 15 (ISO/CIE 11664-4) under
//! illuminant D65, chromaticity (0.3127, 0.3290).

/// Illuminant D65 from its chromaticity, Y = 1.
const WHITE: [f64; 3] = [0.3127 / 0.3290, 1.0, (1.0 - 0.3127 - 0.3290) / 0.3290];

/// sRGB, each channel 0–1, gamma-encoded.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rgb {
    /// Red.
    pub r: f64,
    /// Green.
    pub g: f64,
    /// Blue.
    pub b: f64,
}

/// Tristimulus values, Y = 1 for the white.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Xyz {
    /// X.
    pub x: f64,
    /// Y.
    pub y: f64,
    /// Z.
    pub z: f64,
}

/// CIE L*a*b*.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lab {
    /// Lightness, 0–100.
    pub l: f64,
    /// Red–green.
    pub a: f64,
    /// Yellow–blue.
    pub b: f64,
}

/// CIE L*C*h.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lch {
    /// Lightness, 0–100.
    pub l: f64,
    /// Chroma.
    pub c: f64,
    /// Hue angle, degrees, 0–360.
    pub h: f64,
}

fn decode(v: f64) -> f64 {
    if v <= 0.04045 { v / 12.92 } else { libm::pow((v + 0.055) / 1.055, 2.4) }
}

fn encode(v: f64) -> f64 {
    let v = v.clamp(0.0, 1.0);
    if v <= 0.0031308 { 12.92 * v } else { 1.055 * libm::pow(v, 1.0 / 2.4) - 0.055 }
}

impl Rgb {
    /// From eight-bit channels.
    #[must_use]
    pub fn from_bytes(r: u8, g: u8, b: u8) -> Self {
        Self { r: f64::from(r) / 255.0, g: f64::from(g) / 255.0, b: f64::from(b) / 255.0 }
    }

    /// To eight-bit channels, clipped to the gamut.
    #[must_use]
    pub fn to_bytes(self) -> [u8; 3] {
        [self.r, self.g, self.b].map(|v| {
            let scaled = libm::round(v.clamp(0.0, 1.0) * 255.0);
            if scaled.is_nan() { 0 } else { scaled as u8 }
        })
    }

    /// Linear light in each channel, 0–1.
    #[must_use]
    pub fn linear(self) -> [f64; 3] {
        [decode(self.r), decode(self.g), decode(self.b)]
    }

    /// From linear light, clipped to the gamut.
    #[must_use]
    pub fn from_linear([r, g, b]: [f64; 3]) -> Self {
        Self { r: encode(r), g: encode(g), b: encode(b) }
    }
}

impl From<Rgb> for Xyz {
    fn from(rgb: Rgb) -> Self {
        let [r, g, b] = rgb.linear();
        Self {
            x: 0.4124 * r + 0.3576 * g + 0.1805 * b,
            y: 0.2126 * r + 0.7152 * g + 0.0722 * b,
            z: 0.0193 * r + 0.1192 * g + 0.9505 * b,
        }
    }
}

impl From<Xyz> for Rgb {
    fn from(c: Xyz) -> Self {
        Self::from_linear([
            3.2406 * c.x - 1.5372 * c.y - 0.4986 * c.z,
            -0.9689 * c.x + 1.8758 * c.y + 0.0415 * c.z,
            0.0557 * c.x - 0.2040 * c.y + 1.0570 * c.z,
        ])
    }
}

const EDGE: f64 = 6.0 / 29.0;

fn root(t: f64) -> f64 {
    if t > EDGE * EDGE * EDGE { libm::cbrt(t) } else { t / (3.0 * EDGE * EDGE) + 4.0 / 29.0 }
}

fn unroot(f: f64) -> f64 {
    if f > EDGE { f * f * f } else { 3.0 * EDGE * EDGE * (f - 4.0 / 29.0) }
}

impl From<Xyz> for Lab {
    fn from(c: Xyz) -> Self {
        let (x, y, z) = (root(c.x / WHITE[0]), root(c.y / WHITE[1]), root(c.z / WHITE[2]));
        Self { l: 116.0 * y - 16.0, a: 500.0 * (x - y), b: 200.0 * (y - z) }
    }
}

impl From<Lab> for Xyz {
    fn from(c: Lab) -> Self {
        let y = (c.l + 16.0) / 116.0;
        Self { x: WHITE[0] * unroot(y + c.a / 500.0), y: WHITE[1] * unroot(y), z: WHITE[2] * unroot(y - c.b / 200.0) }
    }
}

impl From<Rgb> for Lab {
    fn from(rgb: Rgb) -> Self {
        Xyz::from(rgb).into()
    }
}

impl From<Lab> for Rgb {
    fn from(lab: Lab) -> Self {
        Xyz::from(lab).into()
    }
}

impl From<Lab> for Lch {
    fn from(c: Lab) -> Self {
        let degrees = libm::atan2(c.b, c.a).to_degrees();
        Self { l: c.l, c: libm::hypot(c.a, c.b), h: if degrees < 0.0 { degrees + 360.0 } else { degrees } }
    }
}

impl From<Lch> for Lab {
    fn from(c: Lch) -> Self {
        let h = c.h.to_radians();
        Self { l: c.l, a: c.c * libm::cos(h), b: c.c * libm::sin(h) }
    }
}
