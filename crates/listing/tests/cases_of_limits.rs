//! Which limit holds when: a case in brackets, what is said to hold in every case, what is optional, and what "where occurs" is said of.

mod common;

use common::check;

#[test]
fn a_case_in_brackets_has_the_limit_before_it() {
    check(
        "1. CLIPS - Clips at max 300 mm centres (200 mm in joints over 100 mm).\n",
        &[
            "clip.spacing: at most 300 mm",
            "clip.spacing: at most 200 mm if joint.width > 100 mm",
        ],
    );
    check(
        "1. SEALANT - Depth min 1/2 in. deep (1 in. in joints wider than 2 in.), overlap 1/2 in.\n",
        &[
            "sealant.depth: at least 1/2 in",
            "sealant.depth: at least 1 in if joint.width > 2 in.",
            "sealant.overlap: nominal 1/2 in",
        ],
    );
    check(
        "1. SEALANT - Depth min 4 in. (102 mm).\n",
        &["sealant.depth: at least 4 in"],
    );
}

#[test]
fn what_holds_in_all_cases_is_under_no_condition() {
    check(
        "1. SEALANT - In joints over 2 in., depth min 1 in. and overlap min 1/2 in. in all cases.\n",
        &[
            "sealant.depth: at least 1 in if joint.width > 2 in.",
            "sealant.overlap: at least 1/2 in",
        ],
    );
    check(
        "1. SEALANT - In all joints over 2 in. depth min 1 in.\n",
        &["sealant.depth: at least 1 in if joint.width > 2 in."],
    );
}

#[test]
fn only_what_a_title_names_is_optional() {
    for text in [
        "1. SEALANT - Optional primer, with sealant min 1/2 in. deep.\n",
        "1. SEALANT - Primer (optional), sealant min 1/2 in. deep.\n",
        "1. SEALANT - Optional tape may be used with min 1/2 in. deep sealant.\n",
        "1. SEALANT - Optional washers. Sealant min 1/2 in. deep.\n",
    ] {
        check(text, &["sealant.depth: at least 1/2 in"]);
    }
    for text in [
        "1. SEALANT - Optional. Min 1/2 in. deep.\n",
        "1. SEALANT - Optional sealant min 1/2 in. deep.\n",
        "1. SEALANT - (Optional) - Min 1/2 in. deep.\n",
        "1. SEALANT - Optional for walls. Min 1/2 in. deep.\n",
    ] {
        check(text, &["sealant.depth: at least 1/2 in in 1"]);
    }
}

#[test]
fn not_only_denies_nothing() {
    check("1. PRIMER - Primer used not only over 1 in. wide.\n", &[]);
    check(
        "1. SEALANT - Joints not over 1 in. wide.\n",
        &["joint.width: at most 1 in"],
    );
}

#[test]
fn where_occurs_ends_before_a_limit() {
    check(
        "1. BOARD - BOARD WHERE OCCURS MIN 5/8 IN THICK.\n",
        &["board.thickness: at least 5/8 in"],
    );
}
