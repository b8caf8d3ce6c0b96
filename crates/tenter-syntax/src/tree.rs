//! The document: what a text says, line by line, with nothing thrown away.
//!
//! Offsets inside a [`Block`] count bytes from the start of that block, so a block that only moved in the
//! file is the same block, and whatever was worked out from it still holds.

use std::sync::Arc;

/// A stretch of text, in bytes, half open. Inside a block it counts from the block's first byte.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Default)]
pub struct Span {
    /// First byte.
    pub start: u32,
    /// One past the last byte.
    pub end: u32,
}

impl Span {
    /// A span from `start` to `end`; an inverted pair becomes empty at `start`.
    pub const fn new(start: u32, end: u32) -> Self {
        Self { start, end: if end < start { start } else { end } }
    }

    /// The smallest span that covers both.
    pub fn cover(self, other: Self) -> Self {
        Self { start: self.start.min(other.start), end: self.end.max(other.end) }
    }

    /// True when it holds nothing.
    pub const fn is_empty(self) -> bool {
        self.start >= self.end
    }

    /// True when `offset` lies inside, or just behind the last byte.
    pub const fn touches(self, offset: u32) -> bool {
        self.start <= offset && offset <= self.end
    }

    /// The text it covers; empty when it does not fit `text`.
    pub fn of(self, text: &str) -> &str {
        text.get(self.start as usize..self.end as usize).unwrap_or("")
    }
}

/// A whole file, read. Parsing cannot fail; what could not be read is marked in the tree.
#[derive(Clone, Debug)]
pub struct Document {
    /// The blocks in file order. Text before the first block (comments, blank lines) is block 0 of kind
    /// [`BlockKind::Loose`] if there is any.
    pub blocks: Vec<PlacedBlock>,
}

/// A block and where it stands in the file.
#[derive(Clone, Debug)]
pub struct PlacedBlock {
    /// Byte offset of the block's first byte in the file.
    pub start: usize,
    /// The block itself, shared between versions of a document in which it did not change.
    pub block: Arc<Block>,
}

/// A line at the left edge and the indented lines under it (with the blank and comment lines between).
#[derive(Clone, Debug)]
pub struct Block {
    /// The block's own text, exactly as in the file; all spans index into it.
    pub text: Arc<str>,
    /// What kind of block it is.
    pub kind: BlockKind,
    /// The word that named the kind (empty for a loose block).
    pub keyword: Span,
    /// The rest of the header line, without comment and surrounding blanks: the name, or the `use` phrase.
    pub name: Span,
    /// Comment on the header line.
    pub comment: Option<Span>,
    /// The logical lines under the header, in order, comment-only lines included.
    pub lines: Vec<Line>,
    /// What the scanner or grammar noticed in this block, header included.
    pub oddities: Vec<Oddity>,
}

impl Block {
    /// The text of a span of this block.
    pub fn slice(&self, span: Span) -> &str {
        span.of(&self.text)
    }
}

/// The kinds of block.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum BlockKind {
    /// `edition 1`
    Edition,
    /// `use soda soak, rings from "house.dye"`
    Use,
    /// `recipe NAME`
    Recipe,
    /// `goods NAME`
    Goods,
    /// `dye NAME`
    Dye,
    /// `chemical NAME`
    Chemical,
    /// `mix NAME`
    Mix,
    /// `layout NAME`
    Layout,
    /// `vessel NAME`
    Vessel,
    /// `steps` or `steps NAME`
    Steps,
    /// `variant NAME`
    Variant,
    /// `log DATE`
    Log,
    /// `shelf`
    Shelf,
    /// A left-edge line whose first word is no known kind.
    Unknown,
    /// Lines that belong to no block: before the first one, or a stray body line at the left edge.
    Loose,
}

/// One logical line: a physical line and those that continue it.
#[derive(Clone, Debug)]
pub struct Line {
    /// From the first character after the indentation to the end of the last continued line's text
    /// (comment and line break left out). Empty for a comment-only line.
    pub span: Span,
    /// The indentation's width in columns (tab to the next multiple of four).
    pub indent: u32,
    /// The head: the first word or words when the line opens with a known verb or key, else the first
    /// word; `None` when the line opens with a number, a clause or is only a comment.
    pub head: Option<Head>,
    /// Items between the head and the first clause.
    pub items: Vec<Item>,
    /// The clauses, in order.
    pub clauses: Vec<Clause>,
    /// Text after the head up to the comment, for keys whose value is prose.
    pub rest: Span,
    /// What the grammar could not read at the end of the line.
    pub unread: Option<Span>,
    /// The comment at its end, from `#`.
    pub comment: Option<Span>,
    /// Comments inside a continued line: in front of a continuation, or on lines of their own between.
    pub inner_comments: Vec<Span>,
}

/// A verb or key.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Head {
    /// Where it stands (one or two words).
    pub span: Span,
    /// Canonical spelling from the tables (`fibre` for `fiber`, `soap off`), lower case; the folded word
    /// itself when no table knows it.
    pub word: Arc<str>,
    /// Whether a table knows it for this kind of block.
    pub known: bool,
}

/// A connecting word and what follows it.
#[derive(Clone, Debug)]
pub struct Clause {
    /// The connecting word.
    pub connector: Connector,
    /// Where that word stands.
    pub word: Span,
    /// What follows; may be empty while the line is being typed.
    pub items: Vec<Item>,
    /// From the connecting word to the end of the last item.
    pub span: Span,
}

/// The connecting words.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[allow(missing_docs)]
pub enum Connector {
    In,
    Into,
    With,
    Without,
    At,
    For,
    From,
    To,
    On,
    Onto,
    Over,
    Under,
    Until,
    As,
    Every,
    Through,
    By,
    Before,
    After,
    Bought,
    Because,
    And,
}

/// The smallest readable pieces of a line.
#[derive(Clone, Debug, PartialEq)]
pub enum Item {
    /// A number in any of its forms.
    Number(Number),
    /// Words, with a unit in front if a number precedes it: `g/L soda ash`.
    Words(Span),
    /// A quoted name, quotes included in the span.
    Quoted(Span),
    /// `#1d5fa6`
    Colour(Span),
    /// `(…)`: kept, not read.
    Aside(Span),
    /// `,`
    Comma(Span),
    /// One thing the grammar has no reading for.
    Odd(Span),
}

impl Item {
    /// Where it stands.
    pub fn span(&self) -> Span {
        match self {
            Self::Number(number) => number.span,
            Self::Words(span)
            | Self::Quoted(span)
            | Self::Colour(span)
            | Self::Aside(span)
            | Self::Comma(span)
            | Self::Odd(span) => *span,
        }
    }
}

/// A number as it was written. The value of each numeral is read by whoever needs it.
#[derive(Clone, Debug, PartialEq)]
pub struct Number {
    /// All of it, qualifier included.
    pub span: Span,
    /// The form.
    pub form: NumberForm,
    /// `about`, `at least`, `at most` before it.
    pub qualifier: Option<Qualifier>,
}

/// The forms a number takes.
#[derive(Clone, Debug, PartialEq)]
pub enum NumberForm {
    /// `60`, `0.5`, `1/4`, `1 1/2`, `1½`, `−18`
    Plain(Span),
    /// `10-20`, `10–20`, `10 to 20`
    Range(Span, Span),
    /// `20 ± 2`: value and half width; a unit may stand before the sign (`20 °C ± 2 °C`), its words are given.
    Tolerance {
        /// The value.
        value: Span,
        /// The unit written before the sign.
        unit_before: Option<Span>,
        /// The half width.
        half_width: Span,
    },
    /// `1:20`, `14:30`: place decides which.
    Pair(Span, Span),
    /// `2026-05-03`
    Date(Span),
    /// `2,5`, `1,000`, `1-1/2`, `3.4.5`: a number, but not one of the forms.
    Malformed(Span),
}

/// Words that loosen a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[allow(missing_docs)]
pub enum Qualifier {
    About,
    AtLeast,
    AtMost,
}

/// Something noticed while reading that is no error of grammar but worth a word.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Oddity {
    /// What.
    pub kind: OddityKind,
    /// Where, in the block.
    pub span: Span,
}

/// What can be noticed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum OddityKind {
    /// `#the old one`: a comment needs a blank after `#`.
    CommentWithoutBlank,
    /// A quote that is never closed on its line.
    OpenQuote,
    /// A bracket that is never closed on its line.
    OpenBracket,
    /// A character that shows nothing: zero width, soft hyphen, text direction marks.
    InvisibleCharacter,
    /// A control character.
    ControlCharacter,
    /// Two steps joined by `and`.
    TwoSteps,
    /// A line that stands at the left edge but reads as a line of the block above.
    StrayLine,
    /// A body line indented four columns or more deeper than the one above it, read as its continuation,
    /// although it would make sense by itself.
    LooksLikeOwnLine,
    /// A header that reads as a complete step (`dye tees in dye bath for 1 h`).
    HeaderReadsAsStep,
    /// A header line of a kind that takes a name has none.
    MissingName,
    /// The file holds bytes that are no UTF-8 (set by the face that decoded it).
    NotUtf8,
}
