//! Numbers that say which walls, slabs or beams are meant, or in which weather. The wordings are invented; what they mean is common practice.

mod common;

use common::{check, clauses};

#[test]
fn a_number_that_tells_things_apart_bounds_nothing() {
    for words in [
        "For walls over 12 ft high, use 20 gauge studs.",
        "In walls more than 3 m high the studs stand 400 mm apart.",
        "At beams deeper than 12 in. the clips are 12 in. on center.",
        "On slabs thinner than 150 mm the packing is 100 mm deep.",
        "Over 50 mm, use clips at 300 mm centers.",
        "Within 12 in. of a corner the anchors are 8 in. apart.",
        "Below 10 °C it takes 96 hours to cure.",
        "For partitions not exceeding 12 ft in height, studs are 25 gauge.",
        "Gaps greater than 1/8 in. between boards are filled.",
    ] {
        let found = clauses(&format!("1. WALL - {words}\n"));
        let bare: Vec<&String> = found
            .iter()
            .filter(|clause| !clause.contains(" if "))
            .collect();
        assert!(bare.is_empty(), "{words} {found:?}");
    }
}

#[test]
fn a_phrase_that_closes_its_stretch_goes_with_the_number_before() {
    check(
        "1. STUDS - Spaced 24 in. o.c.; 16 in. o.c. in walls above 16 ft in height.\n",
        &[
            "stud.spacing: nominal 24 in",
            "stud.spacing: nominal 16 in if wall.height > 16 ft",
        ],
    );
}

#[test]
fn what_a_part_is_asked_to_be_stays_required() {
    for (words, expected) in [
        ("In no case less than 4 in. deep.", "at least 4 in"),
        ("With screws not less than 25 mm long.", "at least 25 mm"),
        ("Up to 15 % movement is taken.", "at most 15 percent"),
        (
            "Within 3 in. of the joint, remove curing compound.",
            "at most 3 in",
        ),
        ("Within 1 in. of each end one pin.", "at most 1 in"),
        ("Within 1 in. of each end one pin.", "exactly 1 count"),
        ("Below 5 °C the coating shall not be applied.", "5 degC"),
        ("Studs of not less than 20 gauge.", "at least 20 gauge"),
    ] {
        let found = clauses(&format!("1. WALL - {words}\n"));
        assert!(
            found.iter().any(|clause| clause.ends_with(expected)),
            "{words} {found:?}"
        );
    }
}

#[test]
fn after_an_exception_the_words_say_what_holds_in_it() {
    check(
        "1. STUDS - Studs stand no more than 24 in. apart, unless the wall exceeds 15 ft in height, when they stand 12 in. apart.\n",
        &[
            "stud.spacing: at most 24 in if not (wall.height > 15 ft)",
            "stud.spacing: nominal 12 in if wall.height > 15 ft",
        ],
    );
    check(
        "1. JOINT - Shear is limited to ± 10 mm, except with the partition, where it is reduced to ± 4 mm.\n",
        &[
            "1:joint_shear: between -10 to 10 mm",
            "1:joint: between -4 to 4 mm if \"except with the partition, where it\"",
        ],
    );
}

#[test]
fn how_a_material_is_kept_is_required() {
    check(
        "1. COATING - Shelf life 12 months when stored between 40°F and 90°F.\n",
        &[
            "coating.shelf_life: nominal 12 month",
            "coating.storage_temperature: between 40 to 90 degF",
        ],
    );
    // What happens to it elsewhere is a case.
    let found = clauses(
        "1. COATING - Discard the coating if it is kept below 5 °C for a day, never longer.\n",
    );
    assert!(
        !found.iter().any(|clause| clause.contains("between")),
        "{found:?}"
    );
}

#[test]
fn a_state_in_which_work_stops_is_required_away() {
    check(
        "1. COATING - Work shall stop when the air falls below 4 °C.\n",
        &["1:coating_air_falls_below: at least 4 degC"],
    );
    for words in [
        "Work should stop when the air is below 4 °C.",
        "Spraying stops when the air is below 4 °C.",
        "Spraying ceases where the air falls below 4 °C.",
    ] {
        let found = clauses(&format!("1. COATING - {words}\n"));
        assert_eq!(found.len(), 1, "{words} {found:?}");
        assert!(
            found
                .iter()
                .all(|clause| clause.ends_with("at least 4 degC")),
            "{words} {found:?}"
        );
    }
    check(
        "1. COATING - It shall not be applied when the slab is colder than 40°F or has not aged 28 days.\n",
        &[
            "1:slab_slab_is_colder_or: at least 40 degF",
            "1:slab_has_not_aged: at least 28 day",
        ],
    );
}

#[test]
fn a_rating_that_is_said_of_the_joint_is_stated() {
    check(
        "1. JOINT - The assembly achieved an F rating of 2 hours and a T rating of 1 hour.\n",
        &[
            "joint.f_rating: nominal 2 hr",
            "joint.t_rating: nominal 1 hr",
        ],
    );
    // In walls of a rating something else holds.
    check(
        "1. PACKING - In walls with a rating of 2 hours the depth is 4 in.\n",
        &["packing.depth: nominal 4 in"],
    );
}

#[test]
fn the_sign_of_a_diameter_hides_no_number() {
    let found = clauses("1. SLEEVE - Anchors Ø6 mm, 40 mm long. Rod ø12 mm.\n");
    let values: Vec<&str> = found
        .iter()
        .filter_map(|clause| clause.split_once(": ").map(|(_, asked)| asked))
        .collect();
    assert_eq!(
        values,
        ["nominal 6 mm", "nominal 40 mm", "nominal 12 mm"],
        "{found:?}"
    );
}
