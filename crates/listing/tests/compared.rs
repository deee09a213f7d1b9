//! What a number is only compared with, deviates from or lies on, and which never names it. The wordings are invented; what they mean is common practice.

mod common;

use common::{check, clauses, unread};

#[test]
fn what_is_past_another_measure_is_no_size() {
    for words in [
        "Batts 1 in. over joint width, min.",
        "Batts cut 1 in. over width of joint min.",
        "Batts 1 in. over the joint width min.",
    ] {
        let found = clauses(&format!("1. PACKING - {words}\n"));
        let [clause] = found.as_slice() else {
            panic!("{words} {found:?}");
        };
        assert!(clause.starts_with("1:"), "{words} {clause}");
        assert!(clause.ends_with("at least 1 in"), "{words} {clause}");
    }
    // A size that lies over something is its own, and so is a number behind the other measure.
    check(
        "1. SEALANT - Min 1/2 in. deep over packing.\n2. PACKING - Width min 1 in. over the angle.\n3. SEALANT - Min 1/2 in. deep over full width of joint.\n",
        &[
            "sealant.depth: at least 1/2 in",
            "packing.width: at least 1 in",
            "sealant.depth: at least 1/2 in",
        ],
    );
}

#[test]
fn what_is_only_matched_has_no_limit_from_it() {
    for (words, named) in [
        (
            "Depth to match floor thickness, min 4 in.",
            "floor.thickness",
        ),
        ("Depth equal to joint width, min 4 in.", "joint.width"),
        ("Depth same as width, min 4 in.", "packing.width"),
        (
            "Depth to match the wall thickness but min 4 in.",
            "wall.thickness",
        ),
    ] {
        let found = clauses(&format!("1. PACKING - {words}\n"));
        let [clause] = found.as_slice() else {
            panic!("{words} {found:?}");
        };
        assert!(!clause.starts_with(named), "{words} {clause}");
        assert!(clause.ends_with("at least 4 in"), "{words} {clause}");
    }
    // The other measure's own number.
    check(
        "1. PACKING - Depth to match wall thickness of min 5 in.\n",
        &["wall.thickness: at least 5 in"],
    );
    check(
        "1. PACKING - Width of packing, min 2 in.\n2. FLOOR - Thickness, min 4 in.\n",
        &[
            "packing.width: at least 2 in",
            "floor.thickness: at least 4 in",
        ],
    );
}

#[test]
fn neither_more_nor_less_is_no_limit() {
    for words in [
        "no more, no less",
        "no less, no more",
        "no more and no less",
    ] {
        let text = format!("1. PACKING - Density 4 pcf, {words}.\n");
        let limits = |clause: &String| clause.contains("at most") || clause.contains("at least");
        assert!(!clauses(&text).iter().any(limits), "{words}");
        assert_eq!(unread(&text), ["4 pcf"], "{words}");
    }
    check(
        "1. PACKING - Density 4 pcf, no less.\n2. PACKING - Density 4 pcf, not more, depth 6 in.\n",
        &[
            "packing.density: at least 4 pcf",
            "packing.density: at most 4 pcf",
            "packing.depth: nominal 6 in",
        ],
    );
}

#[test]
fn a_deviation_stays_denied_past_what_it_is_from() {
    let found = clauses("1. SEALANT - Depth shall not vary from 1/2 in. by more than 1/16 in.\n");
    assert!(
        found
            .iter()
            .any(|clause| clause.ends_with("at most 1/16 in"))
            && !found.iter().any(|clause| clause.contains("more than")),
        "{found:?}"
    );
    assert!(
        !found
            .iter()
            .any(|clause| clause.starts_with("sealant.depth: at most")),
        "{found:?}"
    );
}

#[test]
fn a_lap_named_before_its_number_is_onto_that() {
    check(
        "1. COATING - Coating laps wall 1 in. min, deck 2 in. min, and fireproofing 1/2 in. min.\n",
        &[
            "coating.overlap_wall: at least 1 in",
            "coating.overlap_deck: at least 2 in",
            "coating.overlap_fireproofing: at least 1/2 in",
        ],
    );
    check(
        "1. COATING - Coating overlaps wall min 1 in. and deck min 2 in.\n",
        &[
            "coating.overlap_wall: at least 1 in",
            "coating.overlap_deck: at least 2 in",
        ],
    );
    // Where the places stand behind their numbers.
    check(
        "1. COATING - Lap coating min 1 in. onto deck, min 2 in. onto wall.\n2. COATING - Lap of 1 in. min on wall and 2 in. min on deck.\n",
        &[
            "coating.overlap_deck: at least 1 in",
            "coating.overlap_wall: at least 2 in",
            "coating.overlap_wall: at least 1 in",
            "coating.overlap_deck: at least 2 in",
        ],
    );
}

#[test]
fn past_a_slash_the_next_number_is_named() {
    let found = clauses("1. COATING - Wet 125 mils min / dry 60 mils min.\n");
    assert!(
        !found
            .iter()
            .any(|clause| clause.starts_with("coating.dry_thickness: at least 125")),
        "{found:?}"
    );
    check(
        "1. COATING - 125 mils min wet / 60 mils min dry.\n2. CLIPS - 12 in. o/c max.\n",
        &[
            "coating.wet_thickness: at least 125 mil",
            "coating.dry_thickness: at least 60 mil",
            "clip.spacing: at most 12 in",
        ],
    );
}

#[test]
fn spacings_are_of_what_stands_apart() {
    // The legs stand nearer than the clips; a person says which it is.
    let found = clauses("1. CLIPS - Clips with 1 in. min legs, 12 in. max OC.\n");
    assert!(
        !found
            .iter()
            .any(|clause| clause.starts_with("clip.leg_length: at most")),
        "{found:?}"
    );
    let found = clauses("1. CLIPS - Twice the joint width or max 12 in. OC, whichever is less.\n");
    assert!(
        !found.iter().any(|clause| clause.starts_with("joint.")),
        "{found:?}"
    );
    let found = clauses("1. STRIP - Strip laps deck min 1 in., nailed max 12 in. OC.\n");
    assert!(
        !found.iter().any(|clause| clause.starts_with("deck.")),
        "{found:?}"
    );
    check(
        "1. DECK - Flutes max 12 in. OC.\n",
        &["deck.flute_spacing: at most 12 in"],
    );
}

#[test]
fn a_layer_that_screws_are_for_is_not_measured() {
    let found =
        clauses("1. BOARD - Screws min 1 in. long for first layer, 1-5/8 in. for second.\n");
    assert!(
        !found
            .iter()
            .any(|clause| clause.starts_with("board.thickness")),
        "{found:?}"
    );
    check(
        "1. BOARD - Screws max 12 in. OC. First layer min 5/8 in. thick for 1 hr walls.\n",
        &[
            "fastener.spacing: at most 12 in",
            "board.thickness: at least 5/8 in if joint.rating = 1 hr",
        ],
    );
}

#[test]
fn wet_and_dry_films_are_told_by_their_letters() {
    for (words, wrong) in [
        (
            "60 mils DFT min, 120 mils WFT max",
            "coating.dry_thickness: at most",
        ),
        (
            "120 mils WFT max, 60 mils DFT min",
            "coating.wet_thickness: at least",
        ),
    ] {
        let found = clauses(&format!("1. COATING - {words}.\n"));
        assert_eq!(found.len(), 2, "{words} {found:?}");
        assert!(
            !found.iter().any(|clause| clause.starts_with(wrong)),
            "{words} {found:?}"
        );
    }
}

#[test]
fn what_lies_below_has_its_own_size() {
    for words in [
        "Over packing min 4 in. deep, sealant min 1/2 in. deep.",
        "Cover packing (min 4 in. deep) with sealant min 1/2 in. deep.",
    ] {
        check(
            &format!("1. SEALANT - {words}\n"),
            &[
                "packing.depth: at least 4 in",
                "sealant.depth: at least 1/2 in",
            ],
        );
    }
    // The size of what lies over it.
    check(
        "1. SEALANT - Sealant over packing min 1/2 in. deep.\n",
        &["sealant.depth: at least 1/2 in"],
    );
}

#[test]
fn what_no_component_is_has_no_size_of_one() {
    for (words, named) in [
        (
            "1. PACKING - Void behind max 4 in. wide shall be packed.",
            "packing.width",
        ),
        (
            "1. INSULATION - Vision glass max 6 ft above slab.",
            "curtain_wall",
        ),
        (
            "1. RUNNER - Legs extend min 1 in. over board.",
            "runner.leg_length",
        ),
    ] {
        let found = clauses(&format!("{words}\n"));
        assert_eq!(found.len(), 1, "{words} {found:?}");
        assert!(
            !found.iter().any(|clause| clause.starts_with(named)),
            "{words} {found:?}"
        );
    }
    check(
        "1. PACKING - Fill void min 4 in. deep.\n2. PACKING - Packed into the cavity, min 4 in. deep.\n3. RUNNER - Legs min 2 in. long.\n",
        &[
            "packing.depth: at least 4 in",
            "packing.depth: at least 4 in",
            "runner.leg_length: at least 2 in",
        ],
    );
}
