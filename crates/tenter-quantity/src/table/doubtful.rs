//! Spellings that two people would read differently: asked about, never guessed.

/// A spelling nobody should have to guess.
#[derive(Debug)]
pub struct DoubtfulSpelling {
    /// Exactly as written, case and all.
    pub spelling: &'static str,
    /// Symbols of the units it may mean.
    pub meant: &'static [&'static str],
    /// Why it is doubtful.
    pub why: &'static str,
}

/// Every doubtful spelling.
pub static DOUBTFUL: &[DoubtfulSpelling] = &[
    DoubtfulSpelling {
        spelling: "T",
        meant: &["US tbsp", "tonne"],
        why: "a tablespoon to some, a tonne or a teaspoon to others",
    },
    DoubtfulSpelling {
        spelling: "t",
        meant: &["US tsp", "tonne"],
        why: "a teaspoon to some, a tonne or a tablespoon to others",
    },
    DoubtfulSpelling { spelling: "c", meant: &["US cup", "°C"], why: "a cup to some, degrees to others" },
    DoubtfulSpelling { spelling: "gr", meant: &["g", "grain"], why: "a gram to some, a grain (0.065 g) to others" },
    DoubtfulSpelling { spelling: "°", meant: &["°C", "°F"], why: "degrees of which scale" },
    DoubtfulSpelling { spelling: "deg", meant: &["°C", "°F"], why: "degrees of which scale" },
    DoubtfulSpelling { spelling: "degree", meant: &["°C", "°F"], why: "degrees of which scale" },
    DoubtfulSpelling { spelling: "degrees", meant: &["°C", "°F"], why: "degrees of which scale" },
    DoubtfulSpelling {
        spelling: "in",
        meant: &["inch"],
        why: "`in` says where something happens and is never a length",
    },
    DoubtfulSpelling {
        spelling: "ton",
        meant: &["tonne", "lb"],
        why: "a US ton, a British ton and a tonne differ by up to 12 %",
    },
    DoubtfulSpelling {
        spelling: "tons",
        meant: &["tonne", "lb"],
        why: "a US ton, a British ton and a tonne differ by up to 12 %",
    },
];
