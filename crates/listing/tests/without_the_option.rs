//! What an item that may be left out asks for where it is left out, or whether it is or not: that must not fall away with the item. The wordings are invented; what
//! they mean is common practice.

mod common;

use common::clauses;

#[track_caller]
fn reads(text: &str, expected: &str) {
    let found = clauses(text);
    assert!(found.contains(&expected.to_owned()), "{text} {found:?}");
}

#[test]
fn what_holds_where_the_item_is_left_out_is_no_part_of_it() {
    for said in [
        "If clips are not used",
        "Where the clips are omitted",
        "When clips are left out",
        "In joints without clips",
        "Without clips",
        "In the absence of clips",
        "Where no clips are installed",
        "Should the clips be left out",
        "For assemblies not using clips",
        "If not used",
        "Unless clips are installed",
    ] {
        let text = format!(
            "1. Clips (optional) - Max 24 in. OC. {said}, the sealant shall be min 1 in. thick.\n"
        );
        // A case that only names the thing is read as said of every joint.
        let unread = [
            "In joints without",
            "Without",
            "In the absence",
            "For assemblies",
        ];
        let words = if unread.iter().any(|own| said.starts_with(own)) {
            ""
        } else {
            said
        };
        let found = clauses(&text);
        let of_sealant: Vec<&String> = found
            .iter()
            .filter(|clause| clause.starts_with("sealant.depth: at least 1 in"))
            .collect();
        assert!(
            matches!(of_sealant.as_slice(), [clause] if !clause.ends_with(" in 1") && clause.contains(words)),
            "{said} {found:?}"
        );
        assert!(
            found.contains(&"clip.spacing: at most 24 in in 1".to_owned()),
            "{found:?}"
        );
    }
}

#[test]
fn what_holds_whether_the_item_is_built_or_not_is_no_part_of_it() {
    for said in [
        "The sealant shall be min 1/2 in. thick whether or not packing is used.",
        "Sealant min 1/2 in. thick shall be used in all cases.",
        "In every case the sealant shall be min 1/2 in. thick.",
        "Sealant min 1/2 in. thick with or without packing.",
        "Regardless of packing, sealant min 1/2 in. thick.",
    ] {
        reads(
            &format!("1. Packing (optional) - Min 4 in. deep. {said}\n"),
            "sealant.depth: at least 1/2 in",
        );
    }
}

#[test]
fn what_the_item_asks_for_itself_stays_a_part_of_it() {
    for said in [
        // Of itself, in all cases.
        "The packing shall be min 4 in. deep in all cases.",
        // Not without it, but where something else of it isn't done.
        "Where the packing is not compressed, min 4 in. deep.",
        "If packing is used, min 4 in. deep.",
    ] {
        let found = clauses(&format!("1. Packing (optional) - Min 4 pcf. {said}\n"));
        let of_depth = found
            .iter()
            .find(|clause| clause.starts_with("packing.depth: at least 4 in"));
        assert!(
            of_depth.is_some_and(|clause| clause.ends_with(" in 1")),
            "{said} {found:?}"
        );
    }
}

#[test]
fn bullets_below_what_leaves_the_item_out_are_no_part_of_it() {
    let text = "1. Clips (optional) - Max 24 in. OC. When clips are not used:\n   - packing min 6 in. deep\n   - joint width max 2 in.\n";
    let found = clauses(text);
    for asked in ["packing.depth: at least 6 in", "joint.width: at most 2 in"] {
        let own = found.iter().find(|clause| clause.starts_with(asked));
        assert!(
            own.is_some_and(|clause| !clause.ends_with(" in 1")),
            "{asked} {found:?}"
        );
    }
}

#[test]
fn what_is_optional_in_one_place_or_asked_for_in_another_stays_required() {
    for said in [
        "1. Sealant - Optional on walls, required on floors. Min 1/2 in. deep.\n",
        "1. Sealant - Optional on the underside. Min 1/2 in. deep.\n",
        "1. Packing - Min 4 in. deep.\n2. Sealant - Alternate to Item 1, mandatory for 3 hr joints. Min 1/2 in. deep.\n",
    ] {
        reads(said, "sealant.depth: at least 1/2 in");
    }
}

#[test]
fn a_cover_that_no_rating_needs_may_be_left_out() {
    reads(
        "1. Packing - Min 4 in. deep.\n2. COVER PLATE (OPTIONAL)\n   Steel, fasteners max 24 in. o.c. The plate is not required for the fire rating.\n",
        "fastener.spacing: at most 24 in in 2",
    );
    reads(
        "1. Packing\n   a) Wool min 4 in. deep.\n   b) Corner trim, min 20 ga, is optional.\n",
        "1b:trim_corner_trim: at least 20 gauge in 1b",
    );
}

#[test]
fn what_is_left_out_at_some_ratings_or_in_some_places_stays_required() {
    for said in [
        "The plate is not required for the fire rating of 1 hr.",
        "The plate is not required for the rating of 1 hr.",
        "The plate is not required for ratings under 2 hr.",
    ] {
        reads(
            &format!(
                "1. Packing - Min 4 in. deep.\n2. COVER PLATE (OPTIONAL)\n   Steel, fasteners max 24 in. o.c. {said}\n"
            ),
            "fastener.spacing: at most 24 in",
        );
    }
    let found = clauses(
        "1. Packing\n   a) Wool min 4 in. deep.\n   b) Sealant at walls is optional. Min 1/2 in. deep.\n",
    );
    assert!(
        found.iter().all(|clause| !clause.contains(" in 1b")),
        "{found:?}"
    );
}
