//! The rules, one file each, in order of the alphabet.

use crate::rule::Rule;

mod accept_without_reason;
mod ambiguous_measure;
mod amount_behind_name;
mod awkward_name;
mod broken_use;
mod circular_mix;
mod clause_not_taken;
mod comment_without_blank;
mod date_form;
mod doubtful_unit;
mod hidden_character;
mod lots_do_not_add;
mod missing_goods;
mod missing_unit;
mod missing_value;
mod mix_never_used;
mod mix_overdrawn;
mod number_form;
mod percent_of_what;
mod powder_by_the_spoon;
mod said_twice;
mod same_name_twice;
mod stray_line;
mod two_steps_on_a_line;
mod unknown_block;
mod unknown_edition;
mod unknown_key;
mod unknown_name;
mod unknown_rule;
mod unknown_unit;
mod unknown_verb;
mod unreadable;
pub(crate) mod unused_accept;
mod variant_matches_nothing;
mod weight_of_what;
mod which_goods;
mod wrong_dimension;
mod zone_shares;

/// Every rule, sorted by name.
pub(crate) const ALL: &[&Rule] = &[
    &accept_without_reason::RULE,
    &ambiguous_measure::RULE,
    &amount_behind_name::RULE,
    &awkward_name::RULE,
    &broken_use::RULE,
    &circular_mix::RULE,
    &clause_not_taken::RULE,
    &comment_without_blank::RULE,
    &date_form::RULE,
    &doubtful_unit::RULE,
    &hidden_character::RULE,
    &lots_do_not_add::RULE,
    &missing_goods::RULE,
    &missing_unit::RULE,
    &missing_value::RULE,
    &mix_never_used::RULE,
    &mix_overdrawn::RULE,
    &number_form::RULE,
    &percent_of_what::RULE,
    &powder_by_the_spoon::RULE,
    &said_twice::RULE,
    &same_name_twice::RULE,
    &stray_line::RULE,
    &two_steps_on_a_line::RULE,
    &unknown_block::RULE,
    &unknown_edition::RULE,
    &unknown_key::RULE,
    &unknown_name::RULE,
    &unknown_rule::RULE,
    &unknown_unit::RULE,
    &unknown_verb::RULE,
    &unreadable::RULE,
    &unused_accept::RULE,
    &variant_matches_nothing::RULE,
    &weight_of_what::RULE,
    &which_goods::RULE,
    &wrong_dimension::RULE,
    &zone_shares::RULE,
];
