//! What the user can switch.

use serde::Deserialize;
use serde_json::Value;
use tenter_features::hints::HintKind;
use tenter_features::lenses::LensKind;

/// Settings, read from `initializationOptions`, from `workspace/configuration` (section `tenter`) or from
/// `workspace/didChangeConfiguration`. What is not said keeps its default.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "camelCase", default)]
pub(crate) struct Settings {
    /// Kinds of inlay hint.
    pub hints: Hints,
    /// Kinds of code lens.
    pub lenses: Lenses,
    /// Most findings told of one file.
    pub most_findings: usize,
}

/// Which inlay hints are shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(default)]
pub(crate) struct Hints {
    amount: bool,
    mix: bool,
    state: bool,
    step: bool,
    recipe: bool,
}

/// Which code lenses are shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(default)]
pub(crate) struct Lenses {
    recipe: bool,
    clock: bool,
    uses: bool,
}

impl Default for Settings {
    fn default() -> Self {
        Self { hints: Hints::default(), lenses: Lenses::default(), most_findings: 1_000 }
    }
}

impl Default for Hints {
    fn default() -> Self {
        Self { amount: true, mix: true, state: true, step: true, recipe: true }
    }
}

impl Default for Lenses {
    fn default() -> Self {
        Self { recipe: true, clock: true, uses: true }
    }
}

impl Settings {
    /// Reads settings; `{ "tenter": … }` is looked into. Nothing usable gives nothing.
    pub fn read(value: &Value) -> Option<Self> {
        let inner = value.get("tenter").unwrap_or(value);
        if !inner.is_object() {
            return None;
        }
        serde_json::from_value(inner.clone()).ok()
    }

    /// Whether a kind of hint is shown.
    pub fn hint(&self, kind: HintKind) -> bool {
        match kind {
            HintKind::Amount => self.hints.amount,
            HintKind::Mix => self.hints.mix,
            HintKind::State => self.hints.state,
            HintKind::Step => self.hints.step,
            HintKind::Recipe => self.hints.recipe,
        }
    }

    /// Whether a kind of lens is shown.
    pub fn lens(&self, kind: LensKind) -> bool {
        match kind {
            LensKind::Recipe => self.lenses.recipe,
            LensKind::Clock => self.lenses.clock,
            LensKind::Uses => self.lenses.uses,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn what_is_not_said_keeps_its_default() {
        let read = Settings::read(&json!({ "tenter": { "hints": { "step": false } } })).unwrap();
        assert!(!read.hint(HintKind::Step) && read.hint(HintKind::Amount) && read.lens(LensKind::Uses));
        assert_eq!(Settings::read(&json!(null)), None);
        assert_eq!(Settings::read(&json!({ "hints": 3 })), None);
    }
}
