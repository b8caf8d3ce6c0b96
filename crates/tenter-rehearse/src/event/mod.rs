//! What happens in a step that a rule, a sheet or a total may want to know, with its numbers.

mod kind;

use tenter_quantity::Place;

pub use kind::EventKind;

/// Something that happened, and where it is written.
#[derive(Clone, Debug)]
pub struct Event {
    /// The step's line.
    pub place: Place,
    /// Index of the frame it belongs to.
    pub frame: usize,
    /// What.
    pub kind: EventKind,
}

/// Where the alkali and the dye of a fixing step are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Medium {
    /// In the liquor held by a zone.
    Cloth,
    /// In a bath with the goods in it; masses are those of the whole bath.
    Bath(usize),
}
