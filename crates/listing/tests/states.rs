//! What holds only in a state, and what is required of the state itself. The wordings are invented; what they mean is common practice.

mod common;

use common::check;

#[test]
fn both_of_two_forbidden_states_are_required_away() {
    check(
        "1. SEALANT - Sealant shall not be placed when the air is below 40°F, nor where the gap is wider than 2 in.\n",
        &[
            "1:sealant_air_is_below: at least 40 degF",
            "sealant.width: at most 2 in",
        ],
    );
    check(
        "1. SEALANT - Do not apply when the slab is colder than 5 °C, or when its moisture exceeds 5 percent.\n",
        &[
            "1:slab_slab_is_colder: at least 5 degC",
            "1:slab_moisture_content: at most 5 percent",
        ],
    );
    check(
        "1. SEALANT - Sealant shall not be applied when the slab is colder than 5 °C, or where the joint is wider than 50 mm.\n",
        &[
            "1:slab_slab_is_colder: at least 5 degC",
            "joint.width: at most 50 mm",
        ],
    );
    // An exception leaves both to a person.
    check(
        "1. SEALANT - Do not apply when the slab is colder than 5 °C, or when it is hotter than 40 °C, unless it is shaded.\n",
        &[],
    );
}

#[test]
fn a_sentence_ends_after_a_temperature() {
    check(
        "1. SEALANT - Do not apply when the air is colder than 5 °C. Do not paint when the deck is hotter than 35 °C.\n",
        &[
            "1:sealant_air_is_colder: at least 5 degC",
            "1:deck_deck_is_hotter: at most 35 degC",
        ],
    );
}

#[test]
fn what_is_said_of_a_place_is_required_there() {
    check(
        "1. PLATES - Gaps where plates butt are no greater than 1/16 in. (3 mm).\n",
        &["1:gaps: at most 1/16 in"],
    );
    check(
        "1. PACKING - Where two lengths meet they are crowded together by about 1/4 inch.\n",
        &["1:packing_are_crowded_together: about 1/4 in if \"Where two lengths meet\""],
    );
    // Of the place itself the number says which it is.
    check(
        "1. PLATES - Plates are omitted where gaps are no greater than 1/16 in.\n",
        &[],
    );
}

#[test]
fn what_an_acceptance_rests_on_is_required() {
    check(
        "1. FLOOR - Hollow core slabs are accepted where they are no less than 8 in. (203 mm) deep.\n",
        &["1:slabs_depth: at least 8 in"],
    );
    // What is not accepted where something holds is for a person: no bound is better than one turned round.
    check(
        "1. FLOOR - Hollow core slabs are not accepted where they are less than 8 in. deep.\n",
        &[],
    );
    check(
        "1. FLOOR - Splices are not permitted where the slab is less than 8 in. deep.\n",
        &[],
    );
}

#[test]
fn pieces_that_are_not_to_be_used_are_bounded() {
    check(
        "1. PACKING - Lengths shorter than 18 inches (457 mm) are not to be used, and the rest is packed.\n",
        &["1:lengths_lengths_shorter_are_not: at least 18 in"],
    );
    check(
        "1. PACKING - Not permitted: wool pieces < 12 in. long.\n",
        &["packing.length: at least 12 in"],
    );
}

#[test]
fn what_an_alternate_is_confined_to_is_required_of_it() {
    check(
        "1. Seal - Coating, min 2 mm dry.\n2. Sealant, in place of 1, for joints up to 60 mm. Min 12 mm deep.\n",
        &[
            "coating.dry_thickness: at least 2 mm",
            "joint.width: at most 60 mm in 2",
            "sealant.depth: at least 12 mm in 2",
        ],
    );
    check(
        "1. Wall - Concrete, min 100 mm thick.\n1A. Shaft wall, as an alternate to Item 1, for joints not exceeding 38 mm in width and ratings not exceeding 2 h.\n",
        &[
            "concrete.thickness: at least 100 mm",
            "joint.width: at most 38 mm in 1A",
            "joint.rating: at most 2 hr in 1A",
        ],
    );
    // Where nothing else tells that the item may be left for another, the words themselves are the condition.
    check(
        "1. Packing - Alternate, joints not wider than 50 mm (2 in.) only.\n",
        &["joint.width: at most 50 mm if \"Alternate\""],
    );
    // What is no alternate only says for which joints it holds.
    check(
        "1. Sealant - For joints up to 60 mm. Min 12 mm deep.\n",
        &["sealant.depth: at least 12 mm"],
    );
}

#[test]
fn one_state_and_another_are_forbidden_and_neither_excuses_the_other() {
    for (text, expected) in [
        (
            "Sealant is not applied above 40 °C or where the relative humidity is over 90 %.",
            ["at most 40 degC", "at most 90 percent"],
        ),
        (
            "Do not pour in rain, nor when the air is colder than 8 °C or damper than 85 %.",
            ["at least 8 degC", "at most 85 percent"],
        ),
    ] {
        let found = common::clauses(&format!("1. SEALANT - {text}\n"));
        assert!(
            found.len() == 2
                && found
                    .iter()
                    .zip(expected)
                    .all(|(clause, expected)| clause.ends_with(expected)),
            "{text} {found:?}"
        );
    }
    for (text, expected) in [
        (
            "Not gunned where the wall encloses a stair and not at any temperature under 45 °F.",
            "at least 45 degF",
        ),
        (
            "The seal is to be placed when the floor has been struck for at least twenty-eight days.",
            "at least 28 day",
        ),
    ] {
        let found = common::clauses(&format!("1. SEALANT - {text}\n"));
        assert!(
            found.len() == 1 && found.iter().all(|clause| clause.ends_with(expected)),
            "{text} {found:?}"
        );
    }
    // Where clips are left out, nothing is asked of the joint.
    check(
        "1. CLIPS - Clips are not used where the joint is narrower than 2 in.\n",
        &[],
    );
}
