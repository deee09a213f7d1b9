//! What leads a list, and how far it reaches: its condition, its limit, and what another item says. The wordings are invented; what they mean is common
//! practice.

mod common;

use common::{check, unread};
use listing::{Requirement, read_text};

#[test]
fn a_list_ends_where_a_line_stands_no_farther_in_than_its_bullets() {
    check(
        "1. PACKING - In joints over 2 in.:\n- depth min 6 in.\n- density min 8 pcf.\nIn joints up to 2 in.:\n- depth min 4 in.\n",
        &[
            "packing.depth: at least 6 in if \"In joints over 2 in.\"",
            "packing.density: at least 8 pcf if \"In joints over 2 in.\"",
            "packing.depth: at least 4 in if \"In joints up to 2 in.\"",
        ],
    );
    check(
        "1. SEAL - Where exposed to weather:\n   - depth min 1/2 in.\n   Clips max 12 in. OC.\n",
        &[
            "seal.depth: at least 1/2 in if \"Where exposed to weather\"",
            "clip.spacing: at most 12 in",
        ],
    );
    // A line that goes on stands farther in, or begins in small letters.
    check(
        "1. SEAL - Where exposed to weather:\n   - depth min 1/2 in. at the top,\n     Type B.\n",
        &["seal.depth: at least 1/2 in if \"Where exposed to weather\""],
    );
}

#[test]
fn a_condition_keeps_its_brackets() {
    for words in [
        "Steel clips max 12 in. OC (width over 4 in.)",
        "Steel clips (width over 4 in. only) max 12 in. OC.",
    ] {
        let reading = read_text("sample", &format!("1. CLIPS - {words}\n"));
        let conditions = reading
            .clauses
            .iter()
            .filter_map(|clause| clause.condition.as_ref());
        let said: Vec<&str> = conditions
            .map(|condition| condition.words.as_str())
            .collect();
        assert_eq!(said, ["width over 4 in."], "{words}");
    }
}

#[test]
fn a_condition_in_brackets_governs_what_stands_there() {
    check(
        "1. PACKING - Min 4 in. deep (in joints over 4 in. wide, min 6 in. deep), 4 pcf.\n",
        &[
            "packing.depth: at least 4 in",
            "packing.depth: at least 6 in if joint.width > 4 in.",
            "packing.density: nominal 4 pcf",
        ],
    );
    // Alone in its brackets it is said of the number before.
    check(
        "1. PACKING - Min 6 in. deep (in joints over 4 in. wide).\n",
        &["packing.depth: at least 6 in if joint.width > 4 in."],
    );
}

#[test]
fn what_another_item_says_is_still_asked_for() {
    for words in [
        "As Item 1A except min 6 in. thick.",
        "Same as Item 1A but min 6 in. thick.",
    ] {
        let reading = read_text(
            "sample",
            &format!("1. FLOOR - One of:\n A. Slab - Min 4 in. thick.\n B. Slab - {words}\n"),
        );
        let left = reading.clauses.iter().any(|clause| {
            matches!(clause.requirement, Requirement::Prose) && clause.words.contains("Item 1A")
        });
        assert!(left, "{words} {:?}", reading.clauses);
    }
}

#[test]
fn a_limit_in_brackets_heads_the_labels_below() {
    check(
        "1. PACKING - Wool (min)\n   Depth: 4 in.\n   Density: 4 pcf\n   Recess (max): 1/2 in.\n",
        &[
            "packing.depth: at least 4 in",
            "packing.density: at least 4 pcf",
            "packing.recess: at most 1/2 in",
        ],
    );
    // The least that clips stand apart is hardly meant.
    assert_eq!(
        unread("1. CLIPS - Clips (min)\n   Width: 1 in.\n   Spacing: 12 in. OC\n"),
        ["12 in."]
    );
}

#[test]
fn what_the_head_asks_of_a_part_is_a_clause() {
    check(
        "JOINT SYSTEM\nMax joint width 2 in.\nSealant min 1/2 in. deep.\nRating 2 hr.\n\n1. FLOOR - Slab min 4 in. thick.\n2. WALL - Concrete.\n",
        &[
            "sealant.depth: at least 1/2 in",
            "floor.thickness: at least 4 in",
        ],
    );
}

#[test]
fn what_a_lead_adds_of_another_item_leaves_its_limit() {
    check(
        "1. Sealant - Minimum depth, all with the backing of Item 2:\n   (a) 10 mm for EI 60, 15 mm for EI 120;\n   (b) 20 mm for EI 180.\n",
        &[
            "1(a):sealant: at least 10 mm if joint.rating = 60 min",
            "1(a):sealant: at least 15 mm if joint.rating = 120 min",
            "1(b):sealant: at least 20 mm if joint.rating = 180 min",
        ],
    );
    // A measure behind the comma is another statement.
    check(
        "1. Sealant - Minimum depth, 12 mm in all:\n   (a) 10 mm for EI 60.\n",
        &[
            "sealant.depth: at least 12 mm",
            "1(a):sealant: nominal 10 mm if joint.rating = 60 min",
        ],
    );
}
