//! What a number bounds, and what stands beside it: short texts and the clauses they must yield. The wordings are invented; what they mean is
//! common practice.

#![allow(clippy::unwrap_used, reason = "a test may stop where it fails")]

mod common;

use common::{check, clauses};
use listing::read_text;

#[test]
fn a_number_is_not_lent_to_the_part_beside_it() {
    check(
        "1. DECK - Fluted steel deck.\n1A. BRIDGING PLATES - Bridging plates at max 16 in. o.c.\n",
        &["1A:bridging_plates_spacing: at most 16 in"],
    );
    check(
        "1. PACKING - Mineral wool held by shims 1/4 in. thick.\n",
        &[
            "1:shims_thickness: nominal 1/4 in",
            "packing.material: one of Mineral wool",
        ],
    );
    // The thickness of an angle on a floor is not the floor's.
    check(
        "1. FLOOR - Concrete, with steel angles 3/16 in. thick or more at the edge.\n",
        &["angle.steel_thickness: at least 3/16 in"],
    );
}

#[test]
fn a_spacing_is_of_screws_only_where_they_are_named() {
    check(
        "1. GYPSUM BOARD - Gypsum board on the studs, 24 in. o.c.\n",
        &["1:studs_spacing: nominal 24 in"],
    );
    check(
        "1. GYPSUM BOARD - Gypsum board with screws 12 in. o.c.\n",
        &["board.screw_spacing: nominal 12 in"],
    );
}

#[test]
fn what_is_added_is_no_property_and_a_tolerance_is_its_values() {
    check(
        "1. RUNNER - Legs = max joint width + 1 in.\n",
        &["1:joint_width_max_joint_width: nominal 1 in"],
    );
    check(
        "1. JOINT - Measure the width every 8 ft along the wall.\n",
        &["1:joint_the_width_every_along: nominal 8 ft"],
    );
    check(
        "1. SEALANT - Depth of sealant 1/2 in., tolerance ± 1/16 in.\n",
        &["sealant.depth: between 7/16 to 9/16 in"],
    );
}

#[test]
fn a_lap_is_onto_what_the_words_say() {
    check(
        "1. COATING - Lap 1/2 in. on gypsum board, 2 in. on fireproofing and 1 in. on clips, all min.\n",
        &[
            "coating.overlap_board: at least 1/2 in",
            "coating.overlap_fireproofing: at least 2 in",
            "1:fireproofing_on_clips: at least 1 in",
        ],
    );
}

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

/// The numbers that a reading shows as unread.
fn unread(text: &str) -> Vec<String> {
    read_text("sample", text)
        .warnings
        .iter()
        .filter(|warning| warning.kind == listing::WarningKind::UnreadNumber)
        .map(|warning| warning.words.clone())
        .collect()
}

#[test]
fn a_number_that_no_clause_holds_is_shown() {
    assert_eq!(
        unread(
            "1. CLIPS - Supplied where the joint is wider than 75 mm.\n2. SEAL - Depth 12 mm (1/2 in.) min.\n"
        ),
        ["75 mm"]
    );
    // A second value, a tolerance in the other unit, a product's name and an item are held.
    assert!(
        unread(
            "1. STUDS - Cut 3/4 in. +/- 1/8 in. (19 +/- 3 mm) short, as Item 3C.\n2. PACKING - Depth 4 in. (102 mm) of \"Marlwool 4\".\n"
        )
        .is_empty()
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
fn a_stroke_between_two_numbers_makes_no_fraction() {
    assert_eq!(
        unread("1. PACKING - Depth min 50/75 mm (wall/floor).\n"),
        ["50/75 mm"]
    );
    check(
        "1. PACKING - Depth min 3/4 in. or more.\n",
        &["packing.depth: at least 3/4 in"],
    );
}

#[test]
fn a_condition_keeps_all_its_values() {
    check(
        "1. PACKING - Min 4 in. deep where the joint is 2 in. or 3 in. wide and 6 in. where it is 4 in. wide.\n",
        &[
            "packing.depth: at least 4 in if \"where the joint is 2 in. or 3 in. wide\"",
            "packing.depth: nominal 6 in if \"where it is 4 in. wide\"",
        ],
    );
}

#[test]
fn a_lap_lends_nothing_to_a_spacing() {
    check(
        "1. CLIPS - Clips overlapping the slab at least 2 in. on each side and 24 in. on center.\n",
        &[
            "1:slab_overlap: at least 2 in",
            "clip.spacing: nominal 24 in",
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
fn a_tolerance_never_widens_a_limit() {
    check(
        "1. SEALANT - Min 1/2 in. deep, plus or minus 1/16 in.\n",
        &[
            "sealant.depth: at least 1/2 in",
            "1:sealant_deep: between -1/16 to 1/16 in",
        ],
    );
    check(
        "1. COATING - 12 mm wet, +10/-10 %.\n",
        &["1:coating: between 54/5 to 66/5 mm"],
    );
}

#[test]
fn what_is_left_of_a_thickness_is_no_compression() {
    check(
        "1. PACKING - Compressed to not less than two-thirds of its original thickness.\n",
        &["1:packing_compressed_of_its_original: at least 200/3 percent"],
    );
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
fn a_number_beside_its_like_keeps_its_own_words() {
    check(
        "1. JOINT - Movement 100 percent in shear, 50 percent in compression.\n",
        &[
            "joint.movement_shear: nominal 100 percent",
            "joint.movement_compression: nominal 50 percent",
        ],
    );
}

#[test]
fn what_is_measured_in_things_counts_none_of_them() {
    check(
        "1. BOARD - Joints are staggered at least one stud space.\n",
        &["1:joints_joints_are_staggered_stud: at least 1 count"],
    );
}

#[test]
fn a_word_that_may_name_anything_names_nothing_alone() {
    check(
        "1. BRACES - Supplied in lengths of 10 ft.\n",
        &["1:lengths_length: nominal 10 ft"],
    );
}

#[test]
fn a_size_that_is_no_size_of_the_part_keeps_its_own_words() {
    for (text, not) in [
        (
            "1. WALL - Concrete wall, plumb to within 5 mm over its height.\n",
            "wall.height",
        ),
        (
            "1. JOINT WIDTH - Not to vary more than 1/8 in. in one bay.\n",
            "joint.width",
        ),
        (
            "1. FLOOR - Precast tees, flange min 50 mm thick.\n",
            "floor.thickness",
        ),
        (
            "1. PIN - Each track length has a pin inside the last 3 in.\n",
            "fastener.length",
        ),
        (
            "1. PACKING - Squeezed to two-thirds of its free thickness.\n",
            "packing.compression",
        ),
        (
            "1. TRAY - Its flanges bearing not less than 1-1/2 in. on the floor.\n",
            "beam.flange_width",
        ),
    ] {
        let found = clauses(text);
        assert!(!found.is_empty(), "{text}");
        assert!(
            !found.iter().any(|clause| clause.starts_with(not)),
            "{text} {found:?}"
        );
    }
}

#[test]
fn a_screw_has_its_length_behind_its_size() {
    check(
        "1. SCREWS - One No. 8 by 1/2 in. pan head screw per stud.\n",
        &[
            "1:fastener: exactly 1 count",
            "1:fastener_by: nominal 8 screw_no",
            "fastener.length: nominal 1/2 in",
        ],
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
fn shorthand_of_limits() {
    for (text, expected) in [
        ("Recess 0-1/16\" behind face.", "between 0 to 1/16 in"),
        ("Pinned every 9 inches or so.", "about 9 in"),
        (
            "Wait at least 4 but not more than 24 hr between coats.",
            "between 4 to 24 hr",
        ),
        ("Cured at (50 ± 5) % humidity.", "between 45 to 55 percent"),
        (
            "Safing of nominal 4 pound-per-cubic-foot density.",
            "nominal 4 pcf",
        ),
    ] {
        let clauses = clauses(&format!("1. COATING - {text}\n"));
        assert!(
            clauses.iter().any(|clause| clause.ends_with(expected)),
            "{text} {clauses:?}"
        );
    }
}

#[test]
fn a_limit_in_a_heading_that_nothing_holds_is_shown() {
    let table = "  Rating      Depth       Compression\n  hr          min in.     %\n  1           3           20 min\n  2           4           25-33\n";
    assert_eq!(
        unread(&format!(
            "1. FLOOR - Slab 5 in. thick min.\n\nTABLE 2   PACKING (joints not more than 2 in.)\n\n{table}"
        )),
        ["2 in."]
    );
    assert_eq!(
        unread(&format!(
            "1. FLOOR - Slab 5 in. thick min.\n\nTABLE 2   PACKING OF 2 IN. JOINTS\n\n{table}"
        )),
        [""; 0]
    );
}

#[test]
fn limits_of_a_letter() {
    for (text, expected) in [
        ("The density must reach 13 pcf.", "at least 13 pcf"),
        (
            "We would limit movement to 19 percent in compression.",
            "at most 19 percent",
        ),
        (
            "The spray needs a minimum cure of thirty-six (36) hours.",
            "at least 36 hr",
        ),
        (
            "Screws: first row 2 to 3 in. below the track.",
            "between 2 to 3 in",
        ),
        (
            "Studs at centres of 16 in., or up to 24 in. if the wall is low.",
            "nominal 16 in",
        ),
    ] {
        let clauses = clauses(&format!("1. COATING - {text}\n"));
        assert!(
            clauses.iter().any(|clause| clause.ends_with(expected)),
            "{text} {clauses:?}"
        );
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

#[test]
fn a_name_is_that_of_the_thing_named_last() {
    for (text, never) in [
        (
            "1. SAFING - Safing is carried on clips of 20 ga steel, 1 in. wide.\n",
            "packing.width",
        ),
        (
            "1. BOARD - Hold board down 1-1/2 in. max fr deck.\n",
            "deck.",
        ),
        (
            "1. JOINTS - Strips are compressed together by 10 mm at every joint.\n",
            "joint.width",
        ),
        (
            "1. FLANGES - Differences in level of flanges shall not exceed 3/8 in. in joints up to 2 in. wide.\n",
            "joint.width",
        ),
        (
            "1. PACKING - Depth full wall thickness less 1 in.\n",
            "wall.thickness",
        ),
        (
            "1. BLANKET - Hang blanket with a sag of 1 inch per inch of width.\n",
            "packing.width",
        ),
    ] {
        let found = clauses(text);
        assert!(!found.is_empty(), "{text}");
        assert!(
            !found.iter().any(|clause| clause.starts_with(never)),
            "{text} {found:?}"
        );
    }
}

#[test]
fn when_a_strength_is_reached_is_no_limit_and_a_reach_is_one() {
    for (text, expected, never) in [
        (
            "Strength 4000 psi min at 28 days.",
            "at least 4000 psi",
            "at least 28",
        ),
        (
            "Lateral shift may reach 4 in.",
            "at most 4 in",
            "nominal 4 in",
        ),
        (
            "Distance between joints at least 200 mm, reducible to 100 mm.",
            "at least 100 mm",
            "nominal 100 mm",
        ),
    ] {
        let found = clauses(&format!("1. SLAB - {text}\n"));
        assert!(
            found.iter().any(|clause| clause.ends_with(expected)),
            "{text} {found:?}"
        );
        assert!(
            !found.iter().any(|clause| clause.contains(never)),
            "{text} {found:?}"
        );
    }
}

#[test]
fn limits_that_stand_before_their_numbers_are_read_forward() {
    check(
        "1. SEALANT - MIN. DEPTH 1/2 IN. MAX. JOINT WIDTH 2 IN. MIN. OVERLAP 1/2 IN.\n",
        &[
            "sealant.depth: at least 1/2 in",
            "joint.width: at most 2 in",
            "1:joint_width_overlap: at least 1/2 in",
        ],
    );
    check(
        "1. CLIPS - MIN. 20 GA. CLIPS MAX. 24\" O.C. MIN. 2 ANCHORS EACH MAX. 3\" FROM ENDS\n",
        &[
            "clip.gauge: at least 20 gauge",
            "clip.spacing: at most 24 in",
            "clip.fasteners_each: at least 2 count",
            "fastener.end_distance: at most 3 in",
        ],
    );
    // Behind their numbers they are read backward, as before.
    check(
        "1. SEALANT - 1/2 IN. DEEP MIN. 2 IN. WIDE JOINT MAX.\n",
        &[
            "sealant.depth: at least 1/2 in",
            "joint.width: at most 2 in",
        ],
    );
}

#[test]
fn limits_of_two_things_are_no_range() {
    for (text, expected) in [
        (
            "Anchors spaced 16 in. max, 2 in. min edge distance.",
            ["at most 16 in", "at least 2 in"],
        ),
        (
            "Joint 3 in. wide or up to 4 in. when dynamic.",
            ["nominal 3 in", "at most 4 in"],
        ),
    ] {
        let found = clauses(&format!("1. ANCHORS - {text}\n"));
        for expected in expected {
            assert!(
                found.iter().any(|clause| clause.contains(expected)),
                "{text} {found:?}"
            );
        }
    }
    for (text, expected) in [
        (
            "A minimum of 10 and a maximum of 20 mm deep.",
            "between 10 to 20 mm",
        ),
        (
            "Between twenty-five (25) and fifty (50) percent compression.",
            "between 25 to 50 percent",
        ),
    ] {
        let found = clauses(&format!("1. PACKING - {text}\n"));
        assert!(
            found.iter().any(|clause| clause.contains(expected)),
            "{text} {found:?}"
        );
    }
}
