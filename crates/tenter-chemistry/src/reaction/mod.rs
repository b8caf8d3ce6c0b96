//! How far a batch goes, and how long a bottle with alkali lives, in *equivalent batch time*.
//!
//! No rate constant of a dichlorotriazine dye has been found in print, and none is used. The trade
//! says how long a full batch takes at a class's usual temperature and how that time shrinks with
//! warmth; a history of temperatures is turned into hours at the usual temperature, and those into
//! "about N % of a full batch". That is not a share of dye: how much of the dye ends on the cloth
//! is another matter (50–80 % at home).

mod batch;
mod classes;
mod pot_life;

pub use batch::{Equivalent, Spell, batch_share, equivalent_time};
pub use classes::{Batch, DyeClass, FIXATION_YIELD};
pub use pot_life::{BottleState, PotLife, bottle, stock_life};
