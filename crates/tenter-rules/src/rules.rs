//! The rules, one file each, in order of the alphabet.

use crate::rule::Rule;

mod accept_without_reason;
mod acid_in_alkali_step;
mod alkali_before_level;
mod alkali_in_one_dose;
mod ambiguous_measure;
mod amount_behind_name;
mod awkward_name;
mod bicarbonate_without_heat;
mod bottle_too_old;
mod broken_use;
mod circular_mix;
pub(crate) mod class_cannot_dye_fibre;
mod clause_not_taken;
mod comment_without_blank;
mod corrosive_without_gloves;
mod damp_goods_dilute_soak;
mod date_form;
mod doubtful_unit;
mod drain_with_care;
mod dust_before_protection;
mod dye_without_class;
mod far_more_than_needed;
mod far_too_much_alkali;
mod far_too_much_dye;
mod food_vessel;
mod hidden_character;
mod hotter_than_rated;
mod lots_do_not_add;
mod missing_goods;
mod missing_unit;
mod missing_value;
mod mix_never_used;
mod mix_overdrawn;
mod never_mix;
mod no_alkali;
mod not_scoured;
mod number_form;
mod percent_of_what;
mod powder_by_the_spoon;
mod said_twice;
mod same_name_twice;
mod scalding_water;
mod soak_bath_spent;
mod soak_too_short;
mod stray_line;
mod thread_stays_pale;
mod too_little_alkali;
pub(crate) mod too_little_dye;
mod two_steps_on_a_line;
mod undyeable_share;
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
    &acid_in_alkali_step::RULE,
    &alkali_before_level::RULE,
    &alkali_in_one_dose::RULE,
    &ambiguous_measure::RULE,
    &amount_behind_name::RULE,
    &awkward_name::RULE,
    &bicarbonate_without_heat::RULE,
    &bottle_too_old::RULE,
    &broken_use::RULE,
    &circular_mix::RULE,
    &class_cannot_dye_fibre::RULE,
    &clause_not_taken::RULE,
    &comment_without_blank::RULE,
    &corrosive_without_gloves::RULE,
    &damp_goods_dilute_soak::RULE,
    &date_form::RULE,
    &doubtful_unit::RULE,
    &drain_with_care::RULE,
    &dust_before_protection::RULE,
    &dye_without_class::RULE,
    &far_more_than_needed::RULE,
    &far_too_much_alkali::RULE,
    &far_too_much_dye::RULE,
    &food_vessel::RULE,
    &hidden_character::RULE,
    &hotter_than_rated::RULE,
    &lots_do_not_add::RULE,
    &missing_goods::RULE,
    &missing_unit::RULE,
    &missing_value::RULE,
    &mix_never_used::RULE,
    &mix_overdrawn::RULE,
    &never_mix::RULE,
    &no_alkali::RULE,
    &not_scoured::RULE,
    &number_form::RULE,
    &percent_of_what::RULE,
    &powder_by_the_spoon::RULE,
    &said_twice::RULE,
    &same_name_twice::RULE,
    &scalding_water::RULE,
    &soak_bath_spent::RULE,
    &soak_too_short::RULE,
    &stray_line::RULE,
    &thread_stays_pale::RULE,
    &too_little_alkali::RULE,
    &too_little_dye::RULE,
    &two_steps_on_a_line::RULE,
    &undyeable_share::RULE,
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
