//! What a permission is confined to, and what must be done in return for it. The wordings are invented; what they mean is common practice.

mod common;

use common::{check, clauses};

#[test]
fn a_permission_must_keep_to_its_joints() {
    for (words, expected) in [
        (
            "Sealant may be used in joints up to 38 mm wide.",
            "joint.width: at most 38 mm if \"Sealant may be used\"",
        ),
        (
            "Openings no wider than 2 in. may instead be caulked.",
            "joint.width: at most 2 in if \"may instead be caulked\"",
        ),
        (
            "Foam rod is permitted only in joints of 25 mm or less.",
            "1:joints_only_in_joints_or: at most 25 mm if \"Foam rod is permitted only\"",
        ),
        (
            "Cover strips are suitable for joints up to 60 mm.",
            "joint.width: at most 60 mm if \"Cover strips are suitable\"",
        ),
    ] {
        let found = clauses(&format!("1. JOINT - {words}\n"));
        assert_eq!(found, [expected], "{words}");
    }
}

#[test]
fn what_is_tolerated_holds_for_all_of_its_kind() {
    check(
        "1. FACES - Hollows up to 4 mm deep may be left.\n",
        &["1:faces_depth: at most 4 mm"],
    );
    check(
        "1. FILM - Pinholes up to 1/32 in. are tolerated.\n",
        &["1:pinholes_pinholes_are_tolerated: at most 1/32 in"],
    );
    check(
        "1. JOINT - Only in joints narrower than 3 in.\n",
        &["joint.width: less than 3 in"],
    );
}

#[test]
fn what_may_be_left_out_or_changed_somewhere_is_a_case() {
    // The number says where, and limits no joint.
    check(
        "1. CLIPS - Clips may be omitted in joints up to 25 mm wide.\n",
        &[],
    );
    check(
        "1. CLIPS - In joints up to 25 mm wide the spacing may be increased to 600 mm.\n",
        &["clip.spacing: at most 600 mm if joint.width <= 25 mm"],
    );
    // A number beside it holds in its case.
    check(
        "1. SEALANT - A depth of 10 mm may be used in joints up to 25 mm wide.\n",
        &["sealant.depth: nominal 10 mm if joint.width <= 25 mm"],
    );
    check(
        "1. PACKING - Shear is max. 10 %, for joint widths up to 30 mm only.\n",
        &["1:packing_shear: at most 10 percent if joint.width <= 30 mm"],
    );
}

#[test]
fn what_is_done_in_return_for_a_permission_is_required() {
    check(
        "1. SEALANT - The packing may be cut back to 75 mm where the sealant is made 5 mm deeper.\n",
        &[
            "1:packing_be_cut_back_where: at least 75 mm if \"where the sealant is made 5 mm deeper\"",
            "1:sealant_deeper: nominal 5 mm if \"The packing may be cut back to 75 mm\"",
        ],
    );
    // What is only found there is a case.
    let found = clauses(
        "1. PACKING - The depth may be reduced to 75 mm where the slab is thicker than 200 mm.\n",
    );
    assert!(
        found.len() == 1
            && found
                .iter()
                .all(|clause| clause.contains("at least 75 mm if")),
        "{found:?}"
    );
}

#[test]
fn an_alternate_is_confined_by_the_words_that_close_it() {
    let found = clauses(
        "1. SEALANT - Alternate: 1/2 in. deep, flush with the board, in joints 3/4 in. or less.\n",
    );
    assert!(
        found.iter().any(|clause| clause.contains("at most 3/4 in")),
        "{found:?}"
    );
}

#[test]
fn what_only_says_where_a_thing_is_used_keeps_the_joints_to_that() {
    check(
        "1. Rod - Backer rod of foam. Use only in joints of 10 to 25 mm.\n\n2. Foam - Suitable for joints up to 50 mm.\n",
        &[
            "1:joints_only_in_joints: between 10 to 25 mm",
            "joint.width: at most 50 mm",
        ],
    );
    // The least of a scope may be the case of another part.
    check(
        "1. Wall - 4 in. thick min.\n\n2. Cover - Use where joint is over 2 in.\n",
        &["wall.thickness: at least 4 in"],
    );
}
