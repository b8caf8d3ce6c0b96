//! The rules, one file each, in order of the alphabet.

use crate::rule::Rule;

mod accept_without_reason;
mod acid_and_soda_in_a_bottle;
mod acid_dye_in_alkali;
mod acid_dye_too_cold;
mod acid_dye_without_acid;
mod acid_in_alkali_step;
mod air_moves_powder;
mod alkali_before_level;
mod alkali_harms_wool;
mod alkali_in_one_dose;
mod ambiguous_measure;
mod amount_behind_name;
mod awkward_name;
mod back_comes_through;
mod batch_before_dye;
mod batch_dries_out;
mod batch_too_short;
mod bath_cannot_cover;
mod bath_never_made;
mod bath_too_short_for_level;
mod bicarbonate_without_heat;
mod black_or_turquoise_pale;
mod bleach_eats_cloth;
mod bleach_harms_fibre;
mod bleach_without_stop;
mod bottle_before_fold;
mod bottle_too_old;
mod broken_use;
mod children_at_work;
mod circular_mix;
pub(crate) mod class_cannot_dye_fibre;
mod clause_not_taken;
mod comment_without_blank;
mod corrosive_without_gloves;
mod cover_not_said;
mod damp_goods_dilute_soak;
mod dark_washed_with_light;
mod date_form;
mod disperse_dye_in_alkali;
mod disperse_dye_too_cold;
mod doubtful_unit;
mod drain_with_care;
mod dried_before_wash_off;
mod dripping_when_folded;
mod dust_before_protection;
mod dye_never_used;
mod dye_without_class;
mod far_more_than_needed;
mod far_out_number;
mod far_too_much_alkali;
mod far_too_much_dye;
mod food_vessel;
mod gas_in_closed_vessel;
mod goods_never_used;
mod hard_water;
mod hidden_character;
mod hot_first_rinse;
mod hotter_than_rated;
mod immersion_without_salt;
mod lots_do_not_add;
mod missing_goods;
mod missing_unit;
mod missing_value;
mod mix_never_used;
mod mix_overdrawn;
mod more_than_cloth_holds;
mod more_than_dissolves;
mod more_than_made_up;
mod natural_dye_without_mordant;
mod neighbours_to_mud;
mod never_mix;
mod no_alkali;
mod not_scoured;
mod number_form;
mod odd_temperature_scale;
mod overdye_cannot_show;
mod percent_of_what;
mod poured_away;
mod powder_by_the_spoon;
mod powder_into_brine;
pub(crate) mod powder_never_wetted;
mod powder_soaked_off;
mod publishing_line_missing;
mod said_twice;
mod salt_with_thickener;
mod same_line_twice;
mod same_name_twice;
mod scalding_water;
mod scale_too_coarse;
mod scour_too_cool;
mod soak_bath_spent;
mod soak_too_short;
mod soda_left_dry;
mod softener_too_early;
mod steam_too_short;
mod steam_uncovered;
mod step_without_effect;
mod stock_too_old;
mod stray_line;
mod stripping_too_mild;
mod temperature_jumps;
mod temperatures_disagree;
mod thread_stays_pale;
mod time_not_said;
mod too_cold_for_class;
mod too_few_soapings;
mod too_hot_for_class;
mod too_little_alkali;
pub(crate) mod too_little_dye;
mod too_short_at_heat;
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
mod vat_out_of_balance;
mod vat_too_hot;
mod vat_without_alkali;
mod vat_without_reducer;
mod vessel_too_small;
mod wash_bath_too_small;
mod water_misses_core;
mod weight_of_what;
mod which_goods;
mod which_soda;
mod wool_shocked;
mod wrong_dimension;
mod zone_before_fold;
mod zone_shares;

/// Every rule, sorted by name.
pub(crate) const ALL: &[&Rule] = &[
    &accept_without_reason::RULE,
    &acid_and_soda_in_a_bottle::RULE,
    &acid_dye_in_alkali::RULE,
    &acid_dye_too_cold::RULE,
    &acid_dye_without_acid::RULE,
    &acid_in_alkali_step::RULE,
    &air_moves_powder::RULE,
    &alkali_before_level::RULE,
    &alkali_harms_wool::RULE,
    &alkali_in_one_dose::RULE,
    &ambiguous_measure::RULE,
    &amount_behind_name::RULE,
    &awkward_name::RULE,
    &back_comes_through::RULE,
    &batch_before_dye::RULE,
    &batch_dries_out::RULE,
    &batch_too_short::RULE,
    &bath_cannot_cover::RULE,
    &bath_never_made::RULE,
    &bath_too_short_for_level::RULE,
    &bicarbonate_without_heat::RULE,
    &black_or_turquoise_pale::RULE,
    &bleach_eats_cloth::RULE,
    &bleach_harms_fibre::RULE,
    &bleach_without_stop::RULE,
    &bottle_before_fold::RULE,
    &bottle_too_old::RULE,
    &broken_use::RULE,
    &children_at_work::RULE,
    &circular_mix::RULE,
    &class_cannot_dye_fibre::RULE,
    &clause_not_taken::RULE,
    &comment_without_blank::RULE,
    &corrosive_without_gloves::RULE,
    &cover_not_said::RULE,
    &damp_goods_dilute_soak::RULE,
    &dark_washed_with_light::RULE,
    &date_form::RULE,
    &disperse_dye_in_alkali::RULE,
    &disperse_dye_too_cold::RULE,
    &doubtful_unit::RULE,
    &drain_with_care::RULE,
    &dried_before_wash_off::RULE,
    &dripping_when_folded::RULE,
    &dust_before_protection::RULE,
    &dye_never_used::RULE,
    &dye_without_class::RULE,
    &far_more_than_needed::RULE,
    &far_out_number::RULE,
    &far_too_much_alkali::RULE,
    &far_too_much_dye::RULE,
    &food_vessel::RULE,
    &gas_in_closed_vessel::RULE,
    &goods_never_used::RULE,
    &hard_water::RULE,
    &hidden_character::RULE,
    &hot_first_rinse::RULE,
    &hotter_than_rated::RULE,
    &immersion_without_salt::RULE,
    &lots_do_not_add::RULE,
    &missing_goods::RULE,
    &missing_unit::RULE,
    &missing_value::RULE,
    &mix_never_used::RULE,
    &mix_overdrawn::RULE,
    &more_than_cloth_holds::RULE,
    &more_than_dissolves::RULE,
    &more_than_made_up::RULE,
    &natural_dye_without_mordant::RULE,
    &neighbours_to_mud::RULE,
    &never_mix::RULE,
    &no_alkali::RULE,
    &not_scoured::RULE,
    &number_form::RULE,
    &odd_temperature_scale::RULE,
    &overdye_cannot_show::RULE,
    &percent_of_what::RULE,
    &poured_away::RULE,
    &powder_by_the_spoon::RULE,
    &powder_into_brine::RULE,
    &powder_never_wetted::RULE,
    &powder_soaked_off::RULE,
    &publishing_line_missing::RULE,
    &said_twice::RULE,
    &salt_with_thickener::RULE,
    &same_line_twice::RULE,
    &same_name_twice::RULE,
    &scalding_water::RULE,
    &scale_too_coarse::RULE,
    &scour_too_cool::RULE,
    &soak_bath_spent::RULE,
    &soak_too_short::RULE,
    &soda_left_dry::RULE,
    &softener_too_early::RULE,
    &steam_too_short::RULE,
    &steam_uncovered::RULE,
    &step_without_effect::RULE,
    &stock_too_old::RULE,
    &stray_line::RULE,
    &stripping_too_mild::RULE,
    &temperature_jumps::RULE,
    &temperatures_disagree::RULE,
    &thread_stays_pale::RULE,
    &time_not_said::RULE,
    &too_cold_for_class::RULE,
    &too_few_soapings::RULE,
    &too_hot_for_class::RULE,
    &too_little_alkali::RULE,
    &too_little_dye::RULE,
    &too_short_at_heat::RULE,
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
    &vat_out_of_balance::RULE,
    &vat_too_hot::RULE,
    &vat_without_alkali::RULE,
    &vat_without_reducer::RULE,
    &vessel_too_small::RULE,
    &wash_bath_too_small::RULE,
    &water_misses_core::RULE,
    &weight_of_what::RULE,
    &which_goods::RULE,
    &which_soda::RULE,
    &wool_shocked::RULE,
    &wrong_dimension::RULE,
    &zone_before_fold::RULE,
    &zone_shares::RULE,
];
