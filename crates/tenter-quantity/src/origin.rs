//! Where a figure came from.

use std::sync::Arc;

use crate::figure::Figure;
use crate::place::Place;

/// Where a figure came from.
#[derive(Debug)]
pub enum Origin {
    /// The dyer wrote it.
    Written {
        /// Where.
        place: Place,
    },
    /// Looked up in the reference data.
    Looked {
        /// What was looked up: "bulk density of soda ash".
        what: Arc<str>,
        /// The source the data names.
        source: Arc<str>,
    },
    /// Taken because nobody said.
    Assumed {
        /// What was assumed: "room temperature".
        what: Arc<str>,
        /// Why this value: "no `room` line".
        why: Arc<str>,
    },
    /// Worked out from other figures.
    Worked {
        /// The formula with `{0}`, `{1}` … for the inputs: "{0} × {1}".
        formula: &'static str,
        /// The inputs, each with a label that may be empty.
        inputs: Vec<(&'static str, Figure)>,
    },
}

/// Chains of figures can be as long as a recipe: they are taken apart in a loop, for the call stack is not.
impl Drop for Origin {
    fn drop(&mut self) {
        let Self::Worked { inputs, .. } = self else {
            return;
        };
        let mut waiting = std::mem::take(inputs);
        while let Some((_, figure)) = waiting.pop() {
            if let Some(mut origin) = Arc::into_inner(figure.origin)
                && let Self::Worked { inputs, .. } = &mut origin
            {
                waiting.append(inputs);
            }
        }
    }
}
