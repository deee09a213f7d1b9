//! What a heading's condition governs, and what it must not: a number that is wrongly taken to hold in wide joints only would excuse a narrow one.

mod common;

use common::{check, clauses};

#[test]
fn a_thing_that_is_required_only_somewhere_is_so_in_all_its_numbers() {
    for (opening, condition) in [
        (
            "3. Support clips - (Required only where the joint is wider than 3 in.) - ",
            "where the joint is wider than 3 in.",
        ),
        (
            "3. Support clips. Required where the joint is wider than 3 in. ",
            "where the joint is wider than 3 in.",
        ),
        (
            "3. Support clips, for joints wider than 3 in.: ",
            "for joints wider than 3 in.",
        ),
    ] {
        check(
            &format!(
                "1. Floor - 5 in. thick min.\n\n2. Packing - 4 in. deep min.\n\n{opening}Steel 2 in. wide. Two screws each.\n"
            ),
            &[
                "floor.thickness: at least 5 in",
                "packing.depth: at least 4 in",
                "clip.width: nominal 2 in if joint.width > 3 in.",
                // Whose screws they are is a guess: whether the condition holds for them is for a person to say.
                &format!("fastener.count: exactly 2 count if \"{condition}\""),
            ],
        );
    }
}

#[test]
fn a_heading_governs_the_items_in_it_and_no_other() {
    check(
        "1. Floor - 5 in. thick min.\n\n2. Clips (joints over 3 in.)\n\n2.1 Clips 2 in. wide.\n\n3. Packing - 4 in. deep min.\n",
        &[
            "floor.thickness: at least 5 in",
            "clip.width: nominal 2 in if joint.width > 3 in.",
            "packing.depth: at least 4 in",
        ],
    );
}

#[test]
fn what_a_heading_does_not_say_stays_required() {
    // After the comma the sentence goes on: only the depth is for wide joints.
    check(
        "1. Floor - 5 in. thick min.\n\n2. Packing. For joints over 3 in., depth 5 in. min. Compressed min 25 percent.\n",
        &[
            "floor.thickness: at least 5 in",
            "packing.depth: at least 5 in if joint.width > 3 in.",
            "packing.compression: at least 25 percent",
        ],
    );
    // What is measured is no thing that is there or isn't.
    check(
        "1. Floor - 5 in. thick min.\n\n2. Packing\n\nDepth, for joints over 3 in.: min 5 in. Compressed min 25 percent.\n",
        &[
            "floor.thickness: at least 5 in",
            "packing.depth: at least 5 in if joint.width > 3 in.",
            "packing.compression: at least 25 percent",
        ],
    );
    // An upper limit says where the thing may be used, and excuses nobody.
    for limited in ["joints up to 2 in. only", "1 Hr only"] {
        check(
            &format!("1. Floor - 5 in. thick min.\n\n2. Foam rod ({limited}) - Min 2 in. deep.\n"),
            &[
                "floor.thickness: at least 5 in",
                "backer.depth: at least 2 in",
            ],
        );
    }
    // So does an alternate's.
    check(
        "1. Packing - 4 in. deep min.\n\n1A. Blanket (alternate to Item 1 for joints over 2 in.) - 2 in. deep min.\n",
        &[
            "packing.depth: at least 4 in",
            "packing.depth: at least 2 in in 1A",
            "joint.width: more than 2 in in 1A",
        ],
    );
}

#[test]
fn what_holds_in_every_case_says_so() {
    check(
        "1. Floor - 5 in. thick min.\n\n2. Clips (required in joints over 3 in.). Clips 2 in. wide. In all joints the packing is 4 in. deep min.\n",
        &[
            "floor.thickness: at least 5 in",
            "clip.width: nominal 2 in if \"in joints over 3 in.\"",
            "packing.depth: at least 4 in",
        ],
    );
}

#[test]
fn a_line_like_a_heading_ends_what_a_heading_governs() {
    check(
        "1. Floor - 5 in. thick min.\n\n2. Clips (required in joints over 3 in.)\n\n- Clips 2 in. wide.\n\nStep 4a  Coat\n\n- Coating 1/8 in. wet min.\n",
        &[
            "floor.thickness: at least 5 in",
            "clip.width: nominal 2 in if joint.width > 3 in.",
            "coating.wet_thickness: at least 1/8 in",
        ],
    );
}

#[test]
fn a_thing_spoken_of_first_under_a_condition_is_there_only_under_it() {
    check(
        "1. Floor - 5 in. thick min.\n\n2. Support. In joints over 3 in., Z-brackets 2 in. wide hold it up. Each bracket has two screws. The packing is 4 in. deep min.\n",
        &[
            "floor.thickness: at least 5 in",
            "clip.width: nominal 2 in if joint.width > 3 in.",
            "fastener.count: exactly 2 count if \"In joints over 3 in.\"",
            "packing.depth: at least 4 in",
        ],
    );
}

#[test]
fn a_thing_that_is_there_anyway_is_not_introduced() {
    // The packing is the item's own, whatever the joint.
    check(
        "1. Floor - 5 in. thick min.\n\n2. Strips. For joints wider than 3 in., strips are held 1 in. below the surface. Strips are compressed min 25 percent.\n",
        &[
            "floor.thickness: at least 5 in",
            "2:strips_recess: nominal 1 in if joint.width > 3 in.",
            "2:strips_compression: at least 25 percent",
        ],
    );
    // Clips that were spoken of before.
    check(
        "1. Clips - Steel clips 2 in. wide.\n\n2. Packing. In joints over 3 in., clips are spaced 8 in. max. Clips have two screws.\n",
        &[
            "clip.width: nominal 2 in",
            "clip.spacing: at most 8 in if joint.width > 3 in.",
            "fastener.count: exactly 2 count",
        ],
    );
}

#[test]
fn a_pronoun_leaves_the_condition_to_a_person() {
    check(
        "1. Floor - 5 in. thick min.\n\n2. Support. In joints over 3 in., Z-brackets 2 in. wide hold it up. They are spaced 8 in. max.\n",
        &[
            "floor.thickness: at least 5 in",
            "clip.width: nominal 2 in if joint.width > 3 in.",
            "clip.spacing: at most 8 in if \"In joints over 3 in.\"",
        ],
    );
}

#[test]
fn titles_that_are_ratings_side_by_side_are_cases() {
    check(
        "1. Floor - 5 in. thick min.\n\n2. Packing\n\n2.1 1 h wall: min 3 in. deep.\n\n2.2 2 h wall: min 5 in. deep.\n",
        &[
            "floor.thickness: at least 5 in",
            "packing.depth: at least 3 in if joint.rating = 1 hr",
            "packing.depth: at least 5 in if joint.rating = 2 hr",
        ],
    );
}

#[test]
fn what_an_item_is_required_for_says_nothing_of_another_part_of_every_joint() {
    // Common practice: clips are needed in wide joints, and sealant is in all of them.
    let text = "1. CLIPS - Used in joints over 4 in. wide only. Clips are 2 in. wide. The sealant is min 1/2 in. deep. It is applied in 2 coats. \
                Sealant over the clips is min 1/4 in. deep.\n";
    let found = clauses(text);
    let confined = |end: &str| {
        let mut clauses = found.iter().filter(|clause| clause.contains(end));
        clauses.next().is_some_and(|clause| clause.contains(" if "))
    };
    assert!(confined("2 in"), "{found:?}");
    assert!(!confined("1/2 in"), "{found:?}");
    assert!(!confined("2 count"), "{found:?}");
    assert!(confined("1/4 in"), "{found:?}");
}

#[test]
fn nor_in_a_later_paragraph() {
    let text = "1. CLIPS - Steel, 20 ga, required only where the joint is wider than 4 in.\n\n   The packing shall be min 4 in. deep.\n";
    let found = clauses(text);
    let packing = found
        .iter()
        .find(|clause| clause.contains("4 in") && clause.contains("packing"));
    assert!(
        packing.is_some_and(|clause| !clause.contains(" if ")),
        "{found:?}"
    );
}

#[test]
fn what_an_item_is_not_required_for_says_nothing_of_other_joints() {
    for (text, always) in [
        (
            "1. ANGLE - Min 20 ga. Not required where the deck is fluted. Wall min 6 in. thick. Joint width max 2 in.\n",
            ["wall.thickness: at least 6 in", "joint.width: at most 2 in"],
        ),
        (
            "1. ANGLE - Min 20 ga. Not required where Item 4 is used. If omitted, sealant depth shall be min 1 in. Sealant - Min 1/4 in. wide.\n",
            [
                "sealant.depth: at least 1 in if \"If omitted\"",
                "sealant.width: at least 1/4 in",
            ],
        ),
    ] {
        let found = clauses(text);
        for clause in always {
            assert!(found.contains(&clause.to_owned()), "{clause} {found:?}");
        }
        assert!(
            found
                .iter()
                .any(|own| own.starts_with("angle.gauge: at least 20 gauge if")),
            "{found:?}"
        );
    }
}

#[test]
fn no_joint_stands_under_two_bands_that_exclude_each_other() {
    let text = "1. PACKING - Required only where joint exceeds 2 in. In joints up to 2 in., packing compressed min 33%.\n";
    assert_eq!(
        clauses(text),
        ["packing.compression: at least 33 percent if joint.width <= 2 in."]
    );
}

#[test]
fn what_is_not_needed_somewhere_is_needed_in_all_other_places() {
    for said in [
        "Not needed where the mullions are 30 in. or less apart.",
        "May be omitted where the mullions are 30 in. or less apart.",
    ] {
        check(
            &format!(
                "1. Floor - 5 in. thick min.\n\n2. Stiffener - Steel, 20 ga or heavier. {said}\n"
            ),
            &[
                "floor.thickness: at least 5 in",
                "2:stiffener_steel_or_heavier: at least 20 gauge if not (\"where the mullions are 30 in. or less apart\")",
            ],
        );
    }
}
