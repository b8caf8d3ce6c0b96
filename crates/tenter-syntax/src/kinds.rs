//! The kinds of block: the words that open one.

use crate::fold::fold_name_cow;
use crate::tree::BlockKind;

/// One kind of block.
#[derive(Clone, Copy, Debug)]
pub struct Kind {
    /// What it is.
    pub kind: BlockKind,
    /// The word that opens it.
    pub name: &'static str,
    /// Other words that open it.
    pub synonyms: &'static [&'static str],
    /// Whether its header names something.
    pub takes_name: bool,
    /// What it holds, in a line.
    pub summary: &'static str,
}

/// All kinds, in the order a recipe usually has them.
pub const KINDS: &[Kind] = &[
    Kind {
        kind: BlockKind::Edition,
        name: "edition",
        synonyms: &[],
        takes_name: true,
        summary: "the edition of the notation this file is written in",
    },
    Kind {
        kind: BlockKind::Use,
        name: "use",
        synonyms: &[],
        takes_name: true,
        summary: "takes names from another file of the same collection",
    },
    Kind {
        kind: BlockKind::Recipe,
        name: "recipe",
        synonyms: &[],
        takes_name: true,
        summary: "who wrote it, its licence and version, what it is for, the room it is done in",
    },
    Kind {
        kind: BlockKind::Goods,
        name: "goods",
        synonyms: &[],
        takes_name: true,
        summary: "the pieces to dye: how many, how heavy, of which fibre, in which state",
    },
    Kind {
        kind: BlockKind::Dye,
        name: "dye",
        synonyms: &[],
        takes_name: true,
        summary: "a dye: its class, Colour Index name, colour and strength",
    },
    Kind {
        kind: BlockKind::Chemical,
        name: "chemical",
        synonyms: &["material"],
        takes_name: true,
        summary: "any other material, or figures of your own for a known one",
    },
    Kind {
        kind: BlockKind::Mix,
        name: "mix",
        synonyms: &[],
        takes_name: true,
        summary: "what goes into one liquor, bottle, paste or dry blend, in the order of putting in",
    },
    Kind {
        kind: BlockKind::Layout,
        name: "layout",
        synonyms: &[],
        takes_name: true,
        summary: "how the goods are folded or bound, and the zones that gives",
    },
    Kind {
        kind: BlockKind::Vessel,
        name: "vessel",
        synonyms: &[],
        takes_name: true,
        summary: "a pot, tub, bottle or sprayer: what it holds and stands",
    },
    Kind {
        kind: BlockKind::Steps,
        name: "steps",
        synonyms: &["step"],
        takes_name: false,
        summary: "what is done, in order",
    },
    Kind {
        kind: BlockKind::Variant,
        name: "variant",
        synonyms: &[],
        takes_name: true,
        summary: "the lines that differ from the recipe above",
    },
    Kind {
        kind: BlockKind::Log,
        name: "log",
        synonyms: &[],
        takes_name: true,
        summary: "one time it was really done: what was made, changed and found",
    },
    Kind {
        kind: BlockKind::Shelf,
        name: "shelf",
        synonyms: &[],
        takes_name: false,
        summary: "what is in stock, bought when, at what price",
    },
];

/// The kind a word opens, without regard to case.
pub fn lookup_kind(word: &str) -> Option<&'static Kind> {
    // No kind is longer; a long word need not be folded to know it is none.
    if word.len() > 32 {
        return None;
    }
    let folded = fold_name_cow(word);
    KINDS.iter().find(|kind| kind.name == folded || kind.synonyms.iter().any(|synonym| *synonym == folded))
}

/// The table row of a kind; none for [`BlockKind::Unknown`] and [`BlockKind::Loose`].
pub fn kind_row(kind: BlockKind) -> Option<&'static Kind> {
    KINDS.iter().find(|row| row.kind == kind)
}
