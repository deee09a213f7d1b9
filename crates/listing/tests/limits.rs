//! How numbers are limited, in the words of letters, drawings and lists: each limit is read for its own number, and for no other.

mod common;

use common::{check, clauses};

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
        &["coating.wet_thickness: between 54/5 to 66/5 mm"],
    );
}

#[test]
fn a_limit_before_a_statement_s_noun_stays_with_it() {
    let found = clauses("1. PACKING - PACK FULL. MIN. CLEARANCE SHALL BE 2 IN. ALL ROUND.\n");
    assert!(
        found.iter().any(|clause| clause.contains("at least 2 in")),
        "{found:?}"
    );
    // What closes a number ends the statement before another that permits.
    check(
        "1. BACKER - EXTEND 8\" BELOW SLAB MIN. BACKER MAY BE OMITTED FOR LOW SPANDRELS.\n",
        &["1:backer_distance: at least 8 in"],
    );
}

#[test]
fn tolerances_without_a_sign_and_shares_from_one_to_another() {
    for (text, expected) in [
        (
            "Wool of density 100 kg/m3 (tolerance 10 %).",
            "between 90 to 110 kg/m3",
        ),
        (
            "Recess of 25 mm (1 in.), more or less 6 mm (1/4 in.).",
            "between 19 to 31 mm",
        ),
        (
            "Wool is set with 16 % up to 25 % compression.",
            "between 16 to 25 percent",
        ),
        (
            "Compressed at least 33 %, but not more than 45 %.",
            "between 33 to 45 percent",
        ),
        (
            "Deck, 1-1/2 in. (38 mm) min to 3 in. (76 mm) max depth.",
            "between 3/2 to 3 in",
        ),
        ("Concrete strength 20 MPa or better.", "at least 20 MPa"),
        ("Bond strength 0.2 N/mm² or more.", "at least 1/5 MPa"),
        ("Bond strength 150 psf or greater.", "at least 150 psf"),
    ] {
        let found = clauses(&format!("1. PACKING - {text}\n"));
        assert!(
            found.len() == 1 && found.iter().all(|clause| clause.ends_with(expected)),
            "{text} {found:?}"
        );
    }
    // A tolerance over a length is of something else.
    let found = clauses("1. PACKING - Depth 100 mm, tolerance 2 mm in 3 m.\n");
    assert!(
        found.iter().all(|clause| !clause.contains("98")),
        "{found:?}"
    );
    // Two sizes are no range.
    let found = clauses("1. PACKING - At least 50 mm deep, but not more than 600 mm apart.\n");
    assert!(
        found.iter().all(|clause| !clause.contains("between")),
        "{found:?}"
    );
}

#[test]
fn a_tolerance_may_stand_behind_a_few_words_and_say_itself_twice() {
    check(
        "1. PACKING - Packing recessed 6 mm (1/4 in.) below the floor, with a tolerance of ± 1.5 mm (± 1/16 in.).\n",
        &["packing.recess: between 9/2 to 15/2 mm"],
    );
    check(
        "1. STUDS - Studs are cut twenty millimetres, give or take three, short.\n",
        &["stud.end_gap: between 17 to 23 mm"],
    );
    check(
        "1. SEALANT - Sealant 1/2 in. deep, within a tolerance of 1/16 in. either way.\n",
        &["sealant.depth: between 7/16 to 9/16 in"],
    );
    // A tolerance over a length is of flatness.
    check(
        "1. SEALANT - Sealant 12 mm deep, tolerance of 2 mm in 3 m.\n",
        &[
            "sealant.depth: nominal 12 mm",
            "1:tolerance_deep_tolerance_in: nominal 2 mm",
            "1:tolerance: nominal 3 m",
        ],
    );
}

#[test]
fn the_flatter_the_better() {
    check(
        "1. FLOOR - Floor flatness 1/4 in. in 10 ft or better.\n",
        &["1:floor_floor_flatness_in: at most 1/4 in"],
    );
    check(
        "1. FLOOR - Concrete of 4 in. thickness or better.\n",
        &["concrete.thickness: at least 4 in"],
    );
}

#[test]
fn a_word_before_within_limits_what_stands_before_it() {
    check(
        "1. PINS - 2 pins min within 3 in. of each end.\n",
        &[
            "fastener.count: at least 2 count",
            "fastener.end_distance: at most 3 in",
        ],
    );
    // Behind it, it is said of the distance.
    check(
        "1. PINS - Pins within max 3 in. of each end.\n",
        &["fastener.end_distance: at most 3 in"],
    );
}

#[test]
fn a_bullet_is_no_word_of_a_heading() {
    check(
        "1. CLIPS - Steel clips.\n   - Max clip depth: 6 ft 6 in.\n   - Min clip width: 2 in.\n",
        &["1:clip_depth: at most 78 in", "clip.width: at least 2 in"],
    );
}

#[test]
fn one_limit_reaches_two_measures_that_are_named_behind_them() {
    check(
        "1. STUDS - Steel studs not less than 70 mm in depth and 0.55 mm in thickness.\n",
        &[
            "stud.width: at least 70 mm",
            "stud.steel_thickness: at least 11/20 mm",
        ],
    );
    // About one size says nothing of another behind a comma.
    check(
        "1. BEADS - Two beads about 6 mm in diameter, 15 mm in from the edges.\n",
        &[
            "1:sealant_beads_about: exactly 2 count",
            "sealant.bead_diameter: about 6 mm",
            "1:beads_distance: nominal 15 mm",
        ],
    );
}

#[test]
fn densities_in_pounds_with_stops_and_without_their_volume() {
    check(
        "1. FLOOR - Concrete floor, 110 to 153 lb. per cu. ft.\n",
        &["concrete.density: between 110 to 153 pcf"],
    );
    check(
        "1. PACKING - Wool of not less than 4 pounds per cubic foot, though 6 pounds is required in joints over 2 in. wide.\n",
        &[
            "packing.density: at least 4 pcf",
            "packing.density: nominal 6 pcf if joint.width > 2 in.",
        ],
    );
    // Pounds alone are no density.
    check("1. CLIPS - Clips carry 8 pounds.\n", &[]);
}

#[test]
fn what_is_limited_to_something_of_a_size_is_at_most_that() {
    check(
        "1. Sealant - Tooling is limited to a hollow of 2 mm.\n",
        &["1:sealant_to_a_hollow: at most 2 mm"],
    );
}

#[test]
fn another_measure_with_a_verb_of_its_own_shares_no_limit() {
    let found = clauses(
        "1. Angles - Anchors at a spacing of not more than 48 in., and a clearance of 1/8 in. shall be left at the wall.\n",
    );
    assert!(
        found
            .iter()
            .any(|clause| clause.ends_with(": nominal 1/8 in")),
        "{found:?}"
    );
    assert!(
        found
            .iter()
            .any(|clause| clause.ends_with(": at most 48 in")),
        "{found:?}"
    );
}

#[test]
fn another_case_of_a_limit_is_limited_alike() {
    for (text, expected) in [
        (
            "Sealant depth 1/2 in. min, except 1/4 in. where the joint is 3/4 in. or less wide.",
            "at least 1/4 in",
        ),
        (
            "Screws max 12 in. OC in the field and 8 in. OC at the edges.",
            "at most 8 in",
        ),
        (
            "Screws max 12 in. OC, 1-1/4 in. for one layer.",
            "nominal 5/4 in",
        ),
        ("Depth 4 in. min; 1 in. for the joint.", "nominal 1 in"),
    ] {
        let clauses = clauses(&format!("1. PACKING - {text}\n"));
        assert!(
            clauses.iter().any(|clause| clause.contains(expected)),
            "{text} {clauses:?}"
        );
    }
}

#[test]
fn a_unit_behind_a_range_is_both_ends_whatever_the_note_says() {
    for (text, expected) in [
        ("Depth 4 to 6 in.", "between 4 to 6 in"),
        ("Depth 1/2-3/4 in.", "between 1/2 to 3/4 in"),
        ("Depth 100 to 150.", "between 100 to 150 mm"),
    ] {
        let clauses = clauses(&format!(
            "ALL DIMENSIONS IN MM UNLESS NOTED.\n\n1. PACKING - {text}\n"
        ));
        assert!(
            clauses.iter().any(|clause| clause.contains(expected)),
            "{text} {clauses:?}"
        );
    }
}

#[test]
fn what_is_held_to_a_size_is_that_at_most() {
    check(
        "1. Joint - With Option G the joint is held to 3/4 in. and movement to 25 %.\n\n2. Movement - We have limited movement to 20 percent in compression and 10 percent in extension.\n",
        &[
            "1:joint_joint_is_held: at most 3/4 in if \"With Option G\"",
            "1:movement_movement: at most 25 percent if \"With Option G\"",
            "joint.movement_compression: at most 20 percent",
            "joint.movement_extension: at most 10 percent",
        ],
    );
}

#[test]
fn a_movement_is_in_the_direction_that_stands_behind_it() {
    for words in [
        "Movement is limited to 20 percent in compression and 10 percent in extension.",
        "Max 20 percent in compression and 10 percent in extension.",
    ] {
        check(
            &format!("1. Movement - {words}\n"),
            &[
                "joint.movement_compression: at most 20 percent",
                "joint.movement_extension: at most 10 percent",
            ],
        );
    }
    check(
        "1. Joint - Movement 20 percent compression, 10 percent extension.\n",
        &[
            "joint.movement_compression: nominal 20 percent",
            "joint.movement_extension: nominal 10 percent",
        ],
    );
    // A packing's compression is no movement.
    check(
        "1. Packing - Wool 25 percent compression.\n",
        &["packing.compression: nominal 25 percent"],
    );
}

#[test]
fn a_mixed_fraction_before_min_is_no_time() {
    let text = "1. WOOL - Depth = wall thickness, 3-5/8 MIN. Cure 90 MIN.\n";
    let found = common::clauses(text);
    assert!(
        found.iter().all(|clause| !clause.contains("29/8 min")),
        "{found:?}"
    );
}

#[test]
fn not_inferior_is_the_least() {
    let found = common::clauses(
        "1. WOOL - Density not inferior to 60 kg/m3, moisture not superior to 5 %.\n",
    );
    assert!(
        found
            .iter()
            .any(|clause| clause.ends_with("at least 60 kg/m3")),
        "{found:?}"
    );
    assert!(
        found
            .iter()
            .any(|clause| clause.ends_with("at most 5 percent")),
        "{found:?}"
    );
}
