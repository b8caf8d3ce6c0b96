//! One spelling for many: how names are compared.
//!
//! Case, accents, hyphens, brackets, commas and runs of blanks do not matter; apostrophes vanish; `sulph` is `sulf`,
//! `aluminum` is `aluminium`, `fiber` is `fibre`, `-ized` is `-ised`; a leading article or `C.I.` is dropped. Subscript and other
//! compatibility digits are plain digits.

use unicode_normalization::UnicodeNormalization;
use unicode_normalization::char::is_combining_mark;

/// Longest folded name that is kept. No name in the data comes near it; anything longer matches nothing.
const CAPACITY: usize = 96;

/// A folded name in a fixed buffer, built a word at a time without allocating.
#[derive(Debug, Clone, Copy)]
pub struct Folded {
    buffer: [u8; CAPACITY],
    length: usize,
    overflow: bool,
}

impl Default for Folded {
    fn default() -> Self {
        Self { buffer: [0; CAPACITY], length: 0, overflow: false }
    }
}

impl Folded {
    /// Folds a whole name.
    pub fn new(name: &str) -> Self {
        let mut folded = Self::default();
        folded.push(name);
        folded
    }

    /// Adds more text, as if it followed after a blank.
    pub fn push(&mut self, text: &str) {
        if self.overflow {
            return;
        }
        let mut word_start = None;
        if text.is_ascii() {
            for byte in text.bytes() {
                self.take(char::from(byte), &mut word_start);
            }
        } else {
            for character in text.nfkd().filter(|c| !is_combining_mark(*c)).flat_map(char::to_lowercase) {
                if self.overflow {
                    break;
                }
                self.take(character, &mut word_start);
            }
        }
        self.end_word(word_start);
    }

    /// The key names are looked up by. Empty if the name was blank or too long to be one.
    pub fn key(&self) -> &str {
        if self.overflow {
            return "";
        }
        let bytes = self.buffer.get(..self.length).unwrap_or_default();
        let mut key = str::from_utf8(bytes).unwrap_or_default();
        for lead in ["the ", "some ", "an ", "a ", "ci ", "c i "] {
            key = key.strip_prefix(lead).unwrap_or(key);
        }
        key
    }

    fn take(&mut self, character: char, word_start: &mut Option<usize>) {
        match character {
            '\'' | '\u{2019}' | '\u{2018}' | '`' | '\u{2BC}' => {}
            c if c.is_alphanumeric() => {
                if word_start.is_none() {
                    if self.length > 0 {
                        self.write(' ');
                    }
                    *word_start = Some(self.length);
                }
                self.write(c.to_ascii_lowercase());
            }
            _ => self.end_word(word_start.take()),
        }
    }

    fn write(&mut self, character: char) {
        let mut encoded = [0; 4];
        for &byte in character.encode_utf8(&mut encoded).as_bytes() {
            match self.buffer.get_mut(self.length) {
                Some(slot) => {
                    *slot = byte;
                    self.length += 1;
                }
                None => self.overflow = true,
            }
        }
    }

    /// Settles the spelling of the word that has just ended.
    fn end_word(&mut self, word_start: Option<usize>) {
        let Some(start) = word_start else { return };
        if self.overflow {
            return;
        }
        while let Some(at) = self.find(start, b"sulph") {
            self.replace(at + 3, 2, b"f");
        }
        let word = self.buffer.get(start..self.length).unwrap_or_default();
        if word == b"aluminum" {
            self.replace(start + 6, 2, b"ium");
        } else if word == b"fiber" || word == b"fibers" {
            self.replace(start + 3, 2, b"re");
        } else if word.len() > 6 && word.ends_with(b"ized") {
            self.replace(self.length - 3, 1, b"s");
        }
    }

    fn find(&self, start: usize, needle: &[u8]) -> Option<usize> {
        let word = self.buffer.get(start..self.length)?;
        word.windows(needle.len()).position(|window| window == needle).map(|at| start + at)
    }

    /// Puts `with` in place of `count` bytes at `at`.
    fn replace(&mut self, at: usize, count: usize, with: &[u8]) {
        let end = self.length;
        let length = end - count + with.len();
        if length > CAPACITY {
            self.overflow = true;
            return;
        }
        self.buffer.copy_within(at + count..end, at + with.len());
        for (slot, byte) in self.buffer.iter_mut().skip(at).zip(with) {
            *slot = *byte;
        }
        self.length = length;
    }
}

/// The folded form of a name, as a string.
///
/// ```
/// assert_eq!(tenter_reference::fold("the Glauber’s  Salt"), "glaubers salt");
/// assert_eq!(tenter_reference::fold("C.I. Reactive-Blue 4"), "reactive blue 4");
/// assert_eq!(tenter_reference::fold("Aluminum Sulphate"), "aluminium sulfate");
/// ```
pub fn fold(name: &str) -> String {
    Folded::new(name).key().to_owned()
}
