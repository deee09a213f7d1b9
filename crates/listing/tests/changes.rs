//! How far something may be changed, what a limit behind it closes, and what is denied.

mod common;

use common::{check, check_item, clauses};

#[test]
fn what_may_come_down_has_a_least() {
    check_item(
        "Sill - Not less than 30 in. above the slab, but may come down to 24 in.",
        &[
            "2:sill_distance: at least 30 in",
            "2:slab_may_come_down: at least 24 in",
        ],
    );
}

#[test]
fn beside_a_free_change_the_other_goes_as_far_as_its_number() {
    let read = |item: &str| clauses(&format!("1. Floor - {item}\n")).join("\n");
    let least = read("Density: increase without limit; decrease to 1980 kg/m³.");
    assert!(least.contains("at least 1980 kg/m3"), "{least}");
    let most = read("Spacing: decrease unlimited, increase to 600 mm.");
    assert!(most.contains("at most 600 mm"), "{most}");
    // Alone it is what is to be done.
    let plain = read("Density: decrease to 1980 kg/m³.");
    assert!(!plain.contains("at least"), "{plain}");
    let raised = read("Density: increase without limit; depth 150 mm.");
    assert!(raised.contains("nominal 150 mm"), "{raised}");
}

#[test]
fn what_must_not_pass_a_share_must_not_pass_the_next_either() {
    let read = clauses("1. Beam - Deflection not to pass span/360, nor 12 mm.\n").join("\n");
    assert!(read.contains("at most 12 mm"), "{read}");
}

#[test]
fn each_of_three_sizes_is_limited() {
    let read = |item: &str| clauses(&format!("1. Angle - {item}\n")).join("\n");
    let heavier = read("1-1/2 by 1-1/2 in. by 0.055 in. (38 by 38 by 1.4 mm) or heavier.");
    assert_eq!(heavier.matches("at least 3/2 in").count(), 2, "{heavier}");
    assert!(heavier.contains("at least 11/200 in"), "{heavier}");
    let plain = read("1-1/2 by 1-1/2 in. by 0.055 in. or heavier.");
    assert_eq!(plain.matches("at least").count(), 3, "{plain}");
    // Only the sheet may be thicker.
    let thicker = read("1-1/2 by 1-1/2 in. by 0.055 in. or thicker.");
    assert_eq!(thicker.matches("at least").count(), 1, "{thicker}");
}

#[test]
fn a_limit_far_behind_its_number_closes_it() {
    check_item(
        "Sealant - Run a 3/8 IN. DIAM BEAD, MIN. TOOL WITHIN 10 MIN.",
        &[
            "sealant.bead_diameter: at least 3/8 in",
            "2:bead_duration: at most 10 min",
        ],
    );
    // What stands behind may have the limit.
    check_item(
        "Sealant - Run a 3/8 IN. DIAM BEAD, MIN. DEPTH AT THE EDGE 4 IN.",
        &[
            "sealant.bead_diameter: nominal 3/8 in",
            "2:bead_depth: at least 4 in",
        ],
    );
    check_item(
        "Clips - Two per length of packing as a minimum.",
        &["2:clip_count: at least 2 count"],
    );
    let topping =
        "1. Floor - 2-1/2 in. of topping as measured from the top plane of the deck, minimum.\n";
    let read = clauses(topping).join("\n");
    assert!(read.contains("at least 5/2 in"), "{read}");
}

#[test]
fn a_level_that_is_denied_is_no_rating() {
    check_item(
        "Strip - 30 mm deep. Not for FRL -/120/120.",
        &["2:strip_depth: nominal 30 mm"],
    );
    check(
        "1. Joint - FRL not less than -/120/120.\n",
        &[
            "joint.integrity: at least 120 min",
            "joint.rating: at least 120 min",
        ],
    );
}
