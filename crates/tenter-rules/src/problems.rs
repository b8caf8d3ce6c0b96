//! Which rule tells of which trouble of reading.

use tenter_resolve::{Problem, ProblemKind};
use tenter_syntax::OddityKind;

use crate::context::Context;

/// The one rule that tells of a trouble.
pub fn rule_of(kind: &ProblemKind) -> &'static str {
    match kind {
        ProblemKind::UnknownName { .. } => "unknown-name",
        ProblemKind::SameName { .. } => "same-name-twice",
        ProblemKind::WrongDimension { .. } => "wrong-dimension",
        ProblemKind::AmbiguousMeasure { .. } => "ambiguous-measure",
        ProblemKind::DoubtfulUnit { .. } => "doubtful-unit",
        ProblemKind::UnknownUnit { .. } | ProblemKind::HalfUnit { .. } => "unknown-unit",
        ProblemKind::MissingUnit { .. } => "missing-unit",
        ProblemKind::PercentOfWhat { .. } => "percent-of-what",
        ProblemKind::NumberForm { .. } => "number-form",
        ProblemKind::DateForm { .. } => "date-form",
        ProblemKind::UnknownVerb { .. } => "unknown-verb",
        ProblemKind::UnknownKey { .. } => "unknown-key",
        ProblemKind::UnknownBlock { .. } => "unknown-block",
        ProblemKind::ClauseNotTaken { .. } => "clause-not-taken",
        ProblemKind::SaidTwice { .. } => "said-twice",
        ProblemKind::Unreadable { .. } => "unreadable",
        ProblemKind::MissingValue { .. } => "missing-value",
        ProblemKind::MissingGoods => "missing-goods",
        ProblemKind::AmountBehindName { .. } => "amount-behind-name",
        ProblemKind::WeightOfWhat { .. } => "weight-of-what",
        ProblemKind::Shares { .. } => "zone-shares",
        ProblemKind::LotsDoNotAdd { .. } => "lots-do-not-add",
        ProblemKind::WhichGoods { .. } => "which-goods",
        ProblemKind::BrokenUse { .. } => "broken-use",
        ProblemKind::UnknownEdition { .. } => "unknown-edition",
        ProblemKind::VariantMatch { .. } => "variant-matches-nothing",
        ProblemKind::AwkwardName { .. } => "awkward-name",
        ProblemKind::CircularMix { .. } => "circular-mix",
        ProblemKind::Oddity(kind) => match kind {
            OddityKind::CommentWithoutBlank => "comment-without-blank",
            OddityKind::OpenQuote | OddityKind::OpenBracket | OddityKind::NotUtf8 => "unreadable",
            OddityKind::InvisibleCharacter | OddityKind::ControlCharacter => "hidden-character",
            OddityKind::TwoSteps => "two-steps-on-a-line",
            OddityKind::StrayLine | OddityKind::LooksLikeOwnLine => "stray-line",
            OddityKind::HeaderReadsAsStep => "unknown-block",
            OddityKind::MissingName => "missing-value",
        },
    }
}

/// The troubles a rule tells of. What only follows from another trouble at the same spot is left out.
pub(crate) fn told_by<'a>(context: &Context<'a>, rule: &'static str) -> impl Iterator<Item = &'a Problem> {
    let problems = &context.recipe.problems;
    problems.iter().filter(move |problem| rule_of(&problem.kind) == rule && !follows_from_another(problem, problems))
}

/// A name with an invisible character in it is unknown because of that character; `#word` is unread because of its `#`.
fn follows_from_another(problem: &Problem, problems: &[Problem]) -> bool {
    if matches!(problem.kind, ProblemKind::Oddity(_)) {
        return false;
    }
    problems.iter().any(|other| {
        let at_fault = matches!(
            other.kind,
            ProblemKind::Oddity(
                OddityKind::InvisibleCharacter | OddityKind::ControlCharacter | OddityKind::CommentWithoutBlank
            )
        );
        at_fault
            && other.place.block == problem.place.block
            && problem.place.start <= other.place.start
            && other.place.start < problem.place.end
    })
}
