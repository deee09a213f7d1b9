//! What a number bounds, and what stands beside it: short texts and the clauses they must yield. The wordings are invented; what they mean is
//! common practice.

#![allow(clippy::unwrap_used, reason = "a test may stop where it fails")]

mod common;

use common::{check, clauses};

#[test]
fn kinds_beside_numbers_are_asked() {
    check(
        "1. FLOOR - Min 4-1/2 in. thick lightweight or normal weight concrete.\n",
        &[
            "concrete.thickness: at least 9/2 in",
            "concrete.kind: one of lightweight | normal weight",
        ],
    );
    // What is denied is for a person.
    check(
        "1. FLOOR - Not less than 4 in. of concrete other than lightweight.\n",
        &["concrete.thickness: at least 4 in"],
    );
}

#[test]
fn what_is_forbidden_in_a_state_requires_the_other() {
    check(
        "1. SEALANT - Sealant shall not be placed when the air is colder than 40°F.\n",
        &["1:sealant_air_is_colder: at least 40 degF"],
    );
    check(
        "1. COATING - Pails older than nine months shall be refused.\n",
        &["1:pails_pails_older_shall_be: at most 9 month"],
    );
    // A state with an exception is for a person.
    check(
        "1. SEALANT - Sealant shall not be placed when the air is colder than 40°F, unless the room is heated.\n",
        &[],
    );
}

#[test]
fn lists_of_counts() {
    check(
        "1. BOARD - Gypsum board applied in one, two or three layers for 1, 2 and 3 Hr ratings.\n",
        &[
            "board.layers: exactly 1 count if joint.rating = 1 hr",
            "board.layers: exactly 2 count if joint.rating = 2 hr",
            "board.layers: exactly 3 count if joint.rating = 3 hr",
        ],
    );
    check(
        "1. PACKING - One or two layers of mineral wool.\n",
        &[
            "packing.layers: between 1 to 2 count",
            "packing.material: one of mineral wool",
        ],
    );
}

#[test]
fn a_captioned_table_does_not_fall_away_with_an_option() {
    let text = "1. PACKING - Depth per Table A.\n2. SEALANT - Any.\n2A. SPRAY - (Alternate to Item 2) Depth per Table A. Sprayed in two coats.\n\n\
                TABLE A\n\n  Joint width, in.    Packing depth, min in.\n  up to 1             3\n  over 1 to 2         4\n";
    check(
        text,
        &[
            "coating.coats: exactly 2 count in 2A",
            "packing.depth: at least 3 in if joint.width <= 1 in.",
            "packing.depth: at least 4 in if joint.width over 1 in. to 2 in.",
        ],
    );
}

#[test]
fn a_table_by_rating_says_which_value_is_for_which() {
    let text = "1. SEAL\n\n                              1 hr         2 hr\n\nBoard layers, each side       1            2\nPacking depth, in., min       3            4-1/2\n";
    check(
        text,
        &[
            "board.layers: exactly 1 count if joint.rating = 1 hr",
            "board.layers: exactly 2 count if joint.rating = 2 hr",
            "packing.depth: at least 3 in if joint.rating = 1 hr",
            "packing.depth: at least 9/2 in if joint.rating = 2 hr",
        ],
    );
}

#[test]
fn a_width_behind_the_mark_of_its_row_is_required_and_not_a_case() {
    let text = "1. JOINTS\n\n+-----+---------+-----------+\n| Ref | Width   | Sealant   |\n|     | mm      | depth, mm |\n+-----+---------+-----------+\n| J1  | 10-25   | 12        |\n| J2  | 10-40   | 15        |\n+-----+---------+-----------+\n";
    check(
        text,
        &[
            "joint.width: between 10 to 25 mm if \"Ref: J1\"",
            "sealant.depth: nominal 12 mm if \"Ref: J1\"",
            "joint.width: between 10 to 40 mm if \"Ref: J2\"",
            "sealant.depth: nominal 15 mm if \"Ref: J2\"",
        ],
    );
}

#[test]
fn a_configuration_governs_what_follows_it() {
    check(
        "1. BOARD - Gypsum board. Configuration A uses one layer, Configuration B two layers.\n",
        &[
            "board.layers: exactly 1 count in Configuration A",
            "board.layers: exactly 2 count in Configuration B",
        ],
    );
    check(
        "1. PACKING - Configuration A: depth 4 in. min. Configuration B: depth 6 in. min.\n",
        &[
            "packing.depth: at least 4 in in Configuration A",
            "packing.depth: at least 6 in in Configuration B",
        ],
    );
}

#[test]
fn a_condition_keeps_all_its_values() {
    check(
        "1. PACKING - Min 4 in. deep where the joint is 2 in. or 3 in. wide and 6 in. where it is 4 in. wide.\n",
        &[
            "packing.depth: at least 4 in if \"where the joint is 2 in. or 3 in. wide\"",
            "packing.depth: at least 6 in if \"where it is 4 in. wide\"",
        ],
    );
}

#[test]
fn numbers_in_words_are_read_whole_or_not_at_all() {
    check(
        "1. SEALANT - Sealant depth not less than an inch and a half.\n",
        &["sealant.depth: at least 3/2 in"],
    );
    check("1. SEAL - Depth one hundred and fifty millimetres.\n", &[]);
    check("1. SEAL - Depth twenty five millimetres.\n", &[]);
}

#[test]
fn of_several_resistance_levels_none_is_taken() {
    check(
        "1. CLASS - For joints up to 50 mm the FRL is -/120/120, and for joints over 50 mm the FRL is -/90/90.\n",
        &[],
    );
}

#[test]
fn a_caption_of_several_attributes_limits_none() {
    let text = "1. SEAL\n\nTABLE 1  MINIMUM PACKING DEPTH AND CLIP SPACING\n\n+-----+-----------+--------------+\n| Mk  | Packing   | Clip         |\n|     | depth, mm | spacing, mm  |\n+-----+-----------+--------------+\n| A   | 100       | 600          |\n| B   | 120       | 450          |\n+-----+-----------+--------------+\n";
    let relations: Vec<bool> = clauses(text)
        .iter()
        .map(|clause| clause.contains("at least"))
        .collect();
    assert_eq!(relations, [false; 4]);
}

#[test]
fn what_is_measured_in_things_counts_none_of_them() {
    check(
        "1. BOARD - Joints are staggered at least one stud space.\n",
        &["1:joints_joints_are_staggered_stud: at least 1 count"],
    );
}

#[test]
fn a_screw_s_length_has_its_second_value() {
    for text in [
        "1. SCREWS - No. 8 by 1-1/4 in. (32 mm) long screws.\n",
        "1. SCREWS - No. 8 by 1-1/4 in. (32 mm) screws.\n",
    ] {
        let reading = listing::read_text("sample", text);
        let seconds: Vec<_> = reading
            .clauses
            .iter()
            .filter_map(|clause| match &clause.requirement {
                listing::Requirement::Bound(bound) => bound.second.as_ref(),
                _ => None,
            })
            .map(|second| (second.lo.map(|lo| lo.to_string()), second.unit))
            .collect();
        assert_eq!(
            seconds,
            [(Some("32".to_owned()), measure::Unit::Millimetre)],
            "{text}"
        );
        let contradicted =
            |warning: &listing::Warning| warning.kind == listing::WarningKind::Contradiction;
        assert!(!reading.warnings.iter().any(contradicted), "{text}");
    }
}

#[test]
fn each_box_of_a_list_to_tick_is_a_paragraph_of_its_own() {
    let clauses = clauses(
        "1. CLIPS\n\n   ( ) on 18 in. centers, maximum\n   ( ) two fasteners per clip\n   [ ] two coats where lap is on fireproofing\n   [ ] rain kept off for 24 hr or more\n",
    );
    assert!(
        clauses
            .iter()
            .any(|clause| clause.ends_with("exactly 2 count")),
        "{clauses:?}"
    );
    assert!(
        clauses
            .iter()
            .any(|clause| clause.ends_with("at least 24 hr")),
        "{clauses:?}"
    );
}
