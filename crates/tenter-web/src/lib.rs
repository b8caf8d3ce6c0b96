//! The engine for a page in a browser. One call takes a question as JSON and gives the answer as JSON.
//!
//! ```text
//! page ──{"ask":"look","path":"a.dye",…}──▶ Engine::answer ──{"findings":[…],…}──▶ page
//! ```
//!
//! Nothing is worked out here: texts go to the stages, answers come back in the page's positions (UTF-16 units from the
//! start of the text, in which line breaks count one).

pub mod abi;
mod account;
mod engine;
mod look;
mod offsets;
mod words;

pub use engine::Engine;
