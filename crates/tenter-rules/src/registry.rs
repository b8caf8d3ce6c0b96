//! All rules, by name.

use crate::rule::Rule;
use crate::rules;

/// Every rule, sorted by name.
pub static RULES: &[&Rule] = rules::ALL;

/// The rule of this name.
pub fn rule(name: &str) -> Option<&'static Rule> {
    let at = RULES.binary_search_by(|rule| rule.name.cmp(name)).ok()?;
    RULES.get(at).copied()
}
