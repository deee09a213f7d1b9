//! What must never leave a joint unasked: a condition that reaches too far, that contradicts itself or that is more than its words say is for a
//! person to answer, and no test that a joint may fail. The wordings are invented.

mod common;

use common::check;

/// An item of its own before the text, so that it is a listing.
fn check_item(item: &str, expected: &[&str]) {
    let expected: Vec<&str> = core::iter::once("floor.thickness: at least 5 in")
        .chain(expected.iter().copied())
        .collect();
    check(
        &format!("1. Floor - 5 in. thick min.\n\n{item}\n"),
        &expected,
    );
}

#[test]
fn a_condition_of_the_text_does_not_excuse_what_follows_it() {
    check_item(
        "2. Packing. In joints over 2 in.: depth 6 in. min. In joints 2 in. or less: depth 4 in. min. Compress 25 percent min.",
        &[
            "packing.depth: at least 6 in if joint.width > 2 in.",
            "packing.depth: at least 4 in if joint.width <= 2 in.",
            "2:packing_compress_min: at least 25 percent",
        ],
    );
    check_item(
        "2. Sealant - Primer is required where the joint exceeds 1 in. Depth 1/2 in. min. Lap 1/2 in. min.",
        &[
            "sealant.depth: at least 1/2 in if \"where the joint exceeds 1 in.\"",
            "sealant.overlap: at least 1/2 in if \"where the joint exceeds 1 in.\"",
        ],
    );
}

#[test]
fn a_list_led_by_a_condition_excuses_nothing_after_it() {
    check_item(
        "2. Packing\nIn joints over 2 in.:\n• 6 in. deep min.\nAll joints:\n• 4 pcf min.",
        &[
            "packing.depth: at least 6 in if \"In joints over 2 in.\"",
            "packing.density: at least 4 pcf",
        ],
    );
    check_item(
        "2. Sealant - Joints up to 2 in. may be filled by hand or otherwise, sealant at least 1/2 in. deep.",
        &[
            "joint.width: at most 2 in if \"may be filled by hand or otherwise\"",
            "sealant.depth: at least 1/2 in",
        ],
    );
}

#[test]
fn the_rest_is_told_from_what_stands_before_it() {
    for item in [
        "2. Sealant - In joints up to 50 mm the sealant is 12 mm deep at least, and in wider ones at least 20 mm deep.",
        "2. Sealant - In joints up to 50 mm the sealant is at least 12 mm deep, and at least 20 mm deep in wider ones.",
    ] {
        check_item(
            item,
            &[
                "sealant.depth: at least 12 mm if joint.width <= 50 mm",
                "sealant.depth: at least 20 mm if not (joint.width <= 50 mm)",
            ],
        );
    }
}

#[test]
fn a_rating_that_goes_on_is_more_than_one() {
    for (words, condition) in [
        ("For EI 60 upwards", "For EI 60 upwards"),
        (
            "For a two-hour wall or better",
            "For a two-hour wall or better",
        ),
        (
            "For ratings of 2 hr and more",
            "For ratings of 2 hr and more",
        ),
    ] {
        check_item(
            &format!("2. Packing - {words} the packing is at least 6 in. deep."),
            &[&format!("packing.depth: at least 6 in if \"{condition}\"")],
        );
    }
    check_item(
        "2. Packing - For EI 60 and higher the packing is at least 6 in. deep.",
        &["packing.depth: at least 6 in if joint.rating >= 60 min"],
    );
    // A wall's own class is no condition.
    check_item(
        "2. Wall - Rigid wall, minimum thickness 150 mm (REI 120).",
        &["wall.thickness: at least 150 mm"],
    );
}

#[test]
fn a_width_alone_may_be_a_boards() {
    check_item(
        "2. Boards\n - width 300 mm to 600 mm: 8 screws or more\n - width over 600 mm: 12 screws or more",
        &[
            "fastener.count: at least 8 count if \"width 300 mm to 600 mm\"",
            "fastener.count: at least 12 count if \"width over 600 mm\"",
        ],
    );
}

#[test]
fn times_between_coats_are_no_ratings() {
    check_item(
        "2. Coating. First coat 1/16 in. wet min., 2 hr; second coat 1/16 in. wet min., 4 hr.",
        &[
            "coating.wet_thickness: at least 1/16 in",
            "2:coat_wet: nominal 2 hr",
            "coating.wet_thickness: at least 1/16 in",
            "2:coat_wet: nominal 4 hr",
        ],
    );
}

#[test]
fn what_is_provided_with_the_clips_is_provided_always() {
    check_item(
        "2. Provide packing at least 4 in. deep and clips not more than 18 in. o.c. where the joint is over 3 in.",
        &[
            "packing.depth: at least 4 in",
            "clip.spacing: at most 18 in if joint.width > 3 in.",
        ],
    );
    check_item(
        "2. IN JOINTS OVER 2 IN. ADD CLIPS 18 IN. O.C. MAX. PACK 4 IN. DEEP MIN.",
        &[
            "clip.spacing: at most 18 in if joint.width > 2 in.",
            "2:clips_depth: at least 4 in",
        ],
    );
    check_item(
        "2. Packing: compressed at least 25 percent, except in joints over 4 in., where 20 percent is allowed, depth 4 in. min.",
        &[
            "packing.compression: at least 25 percent",
            "2:packing_where_is_allowed: nominal 20 percent if joint.width > 4 in.",
            "packing.depth: at least 4 in",
        ],
    );
}

#[test]
fn a_qualifier_is_said_of_what_follows_it_behind_a_comma() {
    check_item(
        "2. COATING: LAP 1-1/2\" ONTO DECK, MAX. JOINT IN ANY ONE WALL IS 2\".",
        &[
            "coating.overlap_deck: nominal 3/2 in",
            "2:wall_any_one_wall: at most 2 in",
        ],
    );
    check_item(
        "2. WOOL 4 IN. DEEP, MAX. COMPRESSION OF IT WHEN PLACED IN THE JOINT 50%.",
        &[],
    );
    check_item(
        "2. Packing - Compress the wool 33 percent at joint width max.",
        &[],
    );
}

#[test]
fn what_joints_require_is_no_condition_of_what_stands_before_them() {
    check_item(
        "2. Packing - Packing is 4 in. deep min. but joints over 3 in. require packing 6 in. deep min.",
        &[
            "packing.depth: at least 4 in",
            "packing.depth: at least 6 in if joint.width > 3 in.",
        ],
    );
    check_item(
        "2. Packing - The packing is compressed 25 percent min., save that a joint less than 2 in. wide calls for 20 percent only.",
        &[
            "packing.compression: at least 25 percent",
            "2:packing_calls_for_only: nominal 20 percent if joint.width < 2 in.",
        ],
    );
    // A preposition before them makes a condition of them.
    check_item(
        "2. Packing - Packing 4 in. deep min. is used where joints over 3 in. are filled.",
        &["packing.depth: at least 4 in if joint.width > 3 in."],
    );
}

#[test]
fn what_holds_even_then_is_left_out_of_nothing() {
    for even in [
        "even when",
        "including where",
        "no matter if",
        "not just where",
    ] {
        check_item(
            &format!("2. Packing - Min 4 in. thick {even} the joint is less than 1 in. wide."),
            &["packing.thickness: at least 4 in"],
        );
    }
    // What is said of a place in its own words is no condition of what stands before.
    check_item(
        "2. Clips - Max 24 in. o.c. except near corners, where max 12 in. o.c.",
        &["clip.spacing: at most 24 in", "clip.spacing: at most 12 in"],
    );
    // A limit that is compared with a number is a case.
    check_item(
        "2. Packing - Depth 6 in. min. where max joint width is 2 in.",
        &["packing.depth: at least 6 in if \"where max joint width is 2 in.\""],
    );
}

#[test]
fn a_thing_that_is_only_a_place_is_not_what_is_measured() {
    check_item(
        "2. Sealant - Applied over backer rod of 25 mm dia, min 12 mm deep.",
        &[
            "2:backer_rod_diameter: nominal 25 mm",
            "sealant.depth: at least 12 mm",
        ],
    );
    for text in [
        "2. Cover plate - Fixed across the joint, max 300 mm wide.",
        "2. Brick - Mortar joints max 3/8 in. wide.",
        "2. Backer rod - Diameter greater than joint width, 12 mm min below the face.",
    ] {
        let found = common::clauses(&format!("1. Floor - 5 in. thick min.\n\n{text}\n"));
        assert!(
            !found.iter().any(|clause| clause.starts_with("joint.width")),
            "{text} {found:?}"
        );
    }
}
