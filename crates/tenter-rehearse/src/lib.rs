//! The recipe carried out on paper, step by step: what the goods and liquors hold, how warm they are, how far dye has
//! reacted, what the clock says.
//!
//! [`rehearse`] performs every step once in order (repeats and lots included) and keeps a [`Frame`] after each. What a step
//! did is told as [`Event`]s with their numbers, and what became of each dye on each zone as a [`Dyeing`]; rules read
//! these and compute no chemistry of their own. pH and reaction are worked out when somebody asks, and kept.
//!
//! The account is on paper: each simplification and its likely error stands in the chapter "What the rehearsal assumes" of
//! the specification.

mod acidity;
mod bathing;
mod bench;
mod contents;
mod dipping;
mod drawing;
mod dyeing;
mod event;
mod exhaustion;
mod figures;
mod frame;
mod immersion;
mod ledger;
mod life;
mod melting;
mod mixing;
mod passing;
mod reaction;
mod running;
mod saturation;
mod schedule;
mod starting;
mod state;
mod substances;
mod summary;
mod uptake;
mod usual;
mod verbs;
mod warmth;
mod zones;

use tenter_resolve::Recipe;

pub use acidity::{Acidity, acidity};
pub use contents::Contents;
pub use dyeing::Dyeing;
pub use event::{Event, EventKind, Medium};
pub use frame::{Frame, Note, Rehearsal};
pub use reaction::{Bathed, Reaction, Spell, Widener};
pub use saturation::{Saturation, saturation};
pub use schedule::{Held, Slot, Wait};
pub use state::{Clock, Face, GoodsState, Ice, LiquorName, LiquorState, ZoneKey, ZoneState};
pub use substances::{SODA_ASH_MOLAR_MASS, Substance, Substances, reactive_class};
pub use summary::{clock_line, widest_input, zone_line};
pub use warmth::Cooling;

/// Carries a recipe out on paper.
pub fn rehearse(recipe: &Recipe) -> Rehearsal {
    bench::Bench::new(recipe).run()
}
