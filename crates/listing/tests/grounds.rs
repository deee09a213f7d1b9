//! Sentences that are labelled with the part of the building or the sort of joint that they are of. The wordings are invented; what they mean is common practice.

mod common;

use common::{check_item, clauses};

#[test]
fn walls_and_floors_have_their_own_numbers() {
    for text in [
        "PACKING - Walls: min 4 in. deep. Floors: min 6 in. deep.",
        "PACKING - Walls: min 4 in. deep; floors: min 6 in. deep.",
    ] {
        let found = clauses(&format!("1. FLOOR - Min 5 in. thick.\n\n2. {text}\n"));
        for clause in [
            "packing.depth: at least 4 in if \"Walls\"",
            "6 in if \"Floors\"",
        ] {
            let read = found
                .iter()
                .any(|own| own.to_lowercase().contains(&clause.to_lowercase()));
            assert!(read, "{text} {found:?}");
        }
    }
}

#[test]
fn how_walls_and_floors_are_built_is_said_of_every_joint() {
    for text in [
        "CONSTRUCTION - Walls: min 6 in. thick. Floors: min 5 in. thick.",
        "CONSTRUCTION - Floors: concrete, min 5 in. Walls: block, min 8 in.",
        // One label alone names what is described.
        "PACKING - Walls: min 4 in. deep. Compressed 25 percent.",
    ] {
        let found = clauses(&format!("1. FLOOR - Min 5 in. thick.\n\n2. {text}\n"));
        assert!(
            found.iter().all(|own| !own.contains(" if ")),
            "{text} {found:?}"
        );
    }
}

#[test]
fn sorts_of_joints_that_are_no_rule_are_cases() {
    for (text, case) in [
        (
            "BARRIER - Curved joints: radius 20 ft minimum.",
            "Curved joints",
        ),
        ("COVER - Parking decks: slope 20 mm.", "Parking decks"),
        ("PRIMER - Porous faces primed, two coats.", "Porous faces"),
    ] {
        let found = clauses(&format!("1. FLOOR - Min 5 in. thick.\n\n2. {text}\n"));
        let cased = format!(" if \"{case}\"");
        assert!(
            found.iter().any(|own| own.contains(&cased)),
            "{text} {found:?}"
        );
    }
    // What is there anyway is none: an old wall is the wall.
    check_item(
        "WALL - Existing walls shall be at least 8 in. thick.",
        &["wall.thickness: at least 8 in"],
    );
}
