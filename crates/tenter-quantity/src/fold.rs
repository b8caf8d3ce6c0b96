//! How spellings are compared: stops are ignored, look-alike signs are one, and case counts only where it must.

/// The longest spelling worth looking up, in bytes.
pub const LONGEST: usize = 32;

/// A spelling reduced for comparison, without allocation.
#[derive(Clone, Copy, Debug)]
pub struct Folded {
    bytes: [u8; LONGEST],
    length: usize,
}

impl Folded {
    /// Nothing yet.
    pub const EMPTY: Self = Self { bytes: [0; LONGEST], length: 0 };

    /// Adds one word, after a blank if there are words already. `None` when it grows too long to be a unit.
    pub fn with(mut self, word: &str) -> Option<Self> {
        if self.length > 0 {
            self.push(" ")?;
        }
        let before = self.length;
        for character in word.chars() {
            let mut buffer = [0; 4];
            let text: &str = match character {
                '.' => "",
                'º' | '˚' | '°' => "°",
                '℃' => "°C",
                '℉' => "°F",
                'µ' | 'μ' => "u",
                '²' => "2",
                '³' => "3",
                '₃' => "3",
                '∕' | '⁄' => "/",
                '％' | '﹪' => "%",
                other => other.encode_utf8(&mut buffer),
            };
            self.push(text)?;
        }
        (self.length > before).then_some(self)
    }

    fn push(&mut self, text: &str) -> Option<()> {
        let end = self.length + text.len();
        self.bytes.get_mut(self.length..end)?.copy_from_slice(text.as_bytes());
        self.length = end;
        Some(())
    }

    /// The reduced spelling, case kept.
    pub fn as_str(&self) -> &str {
        std::str::from_utf8(self.as_bytes()).unwrap_or_default()
    }

    /// The reduced spelling as bytes, for comparing.
    pub fn as_bytes(&self) -> &[u8] {
        self.bytes.get(..self.length).unwrap_or_default()
    }

    /// The same with small letters.
    pub fn lower(mut self) -> Self {
        self.bytes.make_ascii_lowercase();
        self
    }
}
