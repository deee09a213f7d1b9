//! Cases that a sentence opens or closes with, in the words of different hands: a number in them is no requirement, and what is said of one case is asked of no
//! other.

mod common;

use common::check;

#[test]
fn joints_may_be_meant_by_where_something_lies() {
    check(
        "1. Fill - Sealant min 1/4 in. deep across joints up to 2 in. and min 1/2 in. deep across joints over 2 in.\n",
        &[
            "sealant.depth: at least 1/4 in if joint.width <= 2 in.",
            "sealant.depth: at least 1/2 in if joint.width > 2 in.",
        ],
    );
    check(
        "1. Fill - Sealant min 6 mm deep along joints up to 40 mm and min 12 mm deep along joints up to 100 mm.\n",
        &[
            "sealant.depth: at least 6 mm if joint.width <= 40 mm",
            "sealant.depth: at least 12 mm if joint.width <= 100 mm",
        ],
    );
    check(
        "1. Fill - Sealant min 1/4 in. deep over joints up to 2 in.\n",
        &["sealant.depth: at least 1/4 in if joint.width <= 2 in."],
    );
}

#[test]
fn the_wider_joints_need_no_noun() {
    check(
        "1. Fill - Sealant min 1/4 in. deep for joints up to 1 in., and min 1/2 in. deep for anything wider.\n",
        &[
            "sealant.depth: at least 1/4 in if joint.width <= 1 in.",
            "sealant.depth: at least 1/2 in if not (joint.width <= 1 in.)",
        ],
    );
    check(
        "1. Packing - Joints 1 to 2 in.: min 4 in. deep; wider: min 5 in. deep.\n",
        &[
            "packing.depth: at least 4 in if joint.width from 1 in. to 2 in.",
            "packing.depth: at least 5 in if \"wider\"",
        ],
    );
    check(
        "1. Fill - Sealant min 1/4 in. deep up to 1 in. joint width; above that, 1/2 in. min.\n",
        &[
            "sealant.depth: at least 1/4 in if joint.width <= 1 in.",
            "sealant.depth: at least 1/2 in if not (joint.width <= 1 in.)",
        ],
    );
    // The joint's own limit stands behind no number.
    check(
        "1. Joint - Up to 1 in. joint width.\n",
        &["joint.width: at most 1 in"],
    );
}

#[test]
fn bands_that_head_their_stretches_are_no_widths_of_the_thing() {
    check(
        "1. Packing - Mineral wool. Between 2 and 3 in. wide, min 6 in. deep; up to 2 in., min 4 in. deep.\n",
        &[
            "packing.depth: at least 6 in if \"Between 2 and 3 in. wide\"",
            "packing.depth: at least 4 in if \"up to 2 in.\"",
        ],
    );
    check(
        "1. Packing - Up to 2 in., min 3 in. deep; over 2 in. up to 4 in., min 4 in. deep; over 4 in., min 6 in. deep.\n",
        &[
            "packing.depth: at least 3 in if \"Up to 2 in.\"",
            "packing.depth: at least 4 in if \"over 2 in. up to 4 in.\"",
            "packing.depth: at least 6 in if \"over 4 in.\"",
        ],
    );
    // One alone may say how wide the thing is.
    check(
        "1. Packing - Between 2 and 3 in. wide, min 6 in. deep.\n",
        &[
            "packing.width: between 2 to 3 in",
            "packing.depth: at least 6 in",
        ],
    );
}

#[test]
fn a_place_and_a_width_open_one_case() {
    check(
        "1. Packing - In ceilings with a joint width above 3 in. the packing shall be min 6 in. deep.\n",
        &["packing.depth: at least 6 in if \"In ceilings with a joint width above 3 in.\""],
    );
    check(
        "1. Packing - With a width of up to 2 in. the packing shall be min 4 in. deep.\n",
        &["packing.depth: at least 4 in if \"With a width of up to 2 in.\""],
    );
}

#[test]
fn what_can_be_done_is_a_case_before_the_main_clause() {
    check(
        "1. Packing - Where only one side can be reached the packing is min 6 in. deep.\n",
        &["packing.depth: at least 6 in if \"Where only one side can be reached\""],
    );
}

#[test]
fn sorts_of_construction_in_parallel_have_their_numbers() {
    check(
        "1. Packing - Min 100 mm deep in framed walls and 125 mm in concrete walls.\n",
        &[
            "packing.depth: at least 100 mm if \"in framed walls\"",
            "packing.depth: at least 125 mm if \"in concrete walls\"",
        ],
    );
    check(
        "1. Packing - Compressed 33 percent at the head, 25 percent at vertical joints.\n",
        &[
            "packing.compression: nominal 33 percent if \"at the head\"",
            "packing.compression: nominal 25 percent if \"at vertical joints\"",
        ],
    );
    check(
        "1. Packing - Compressed 33 percent at the head and 25 percent at the base.\n",
        &[
            "packing.compression: nominal 33 percent if \"at the head\"",
            "packing.compression: nominal 25 percent if \"at the base\"",
        ],
    );
    check(
        "1. Fill - Sealant 1/2 in. deep min; on CMU, 5/8 in. min.\n",
        &[
            "sealant.depth: at least 1/2 in",
            "sealant.depth: at least 5/8 in if \"on CMU\"",
        ],
    );
    // One number for both, and one sort alone, which may be all that there is.
    check(
        "1. Packing - Min 100 mm deep in concrete and masonry walls.\n",
        &["packing.depth: at least 100 mm"],
    );
    check(
        "1. Packing - Min 100 mm deep in framed walls.\n",
        &["packing.depth: at least 100 mm"],
    );
}

#[test]
fn parts_whose_titles_are_nothing_but_joints_are_for_them() {
    check(
        "1. Packing\n\n1.1 Joints up to 25 mm\n\nPacking min 50 mm deep.\n\n1.2 Joints over 25 mm and up to 50 mm\n\nPacking min 100 mm deep.\n",
        &[
            "packing.depth: at least 50 mm if \"Joints up to 25 mm\"",
            "packing.depth: at least 100 mm if \"Joints over 25 mm and up to 50 mm\"",
        ],
    );
    // One alone may be what the joint must be.
    check(
        "1. Packing\n\n1.1 Joints up to 25 mm\n\nPacking min 50 mm deep.\n",
        &[
            "joint.width: at most 25 mm",
            "packing.depth: at least 50 mm",
        ],
    );
}

#[test]
fn a_sort_set_off_behind_a_number_has_the_number_beside_it() {
    check(
        "1. Packing - Min 100 mm deep, 125 mm in concrete walls.\n",
        &[
            "packing.depth: at least 100 mm",
            "1:packing_deep: at least 125 mm if \"in concrete walls\"",
        ],
    );
}

#[test]
fn an_item_that_says_for_which_rating_it_is_stands_under_it() {
    for opening in [
        "(Required for the FTH Rating only.)",
        "Required only for the FTH Rating.",
    ] {
        let text = format!("1. Fill - {opening} Sealant min 1/2 in. deep.\n");
        let words = opening.trim_matches(['(', ')', '.']);
        check(
            &text,
            &[&format!("sealant.depth: at least 1/2 in if \"{words}\"")],
        );
    }
    check(
        "1. Fill - 2 hr systems only. Sealant min 1/2 in. deep.\n",
        &["sealant.depth: at least 1/2 in if \"2 hr systems only\""],
    );
    // Farther on it may be said of another thing.
    check(
        "1. Fill - Sealant min 1/2 in. deep. Tooled flush. Required for the FTH Rating only.\n",
        &["sealant.depth: at least 1/2 in"],
    );
}

#[test]
fn what_may_be_used_on_a_limit_must_keep_to_it() {
    check(
        "1. Fill - The existing sealant may be used if at least 5/8 in. deep throughout.\n",
        &["sealant.depth: at least 5/8 in if \"The existing sealant may be used\""],
    );
    // What may be left out where something is deep enough is left out there.
    check(
        "1. Fill - The sealant may be omitted if at least 5/8 in. deep throughout.\n",
        &[],
    );
}

#[test]
fn a_share_of_the_joint_has_a_least_length() {
    check(
        "1. Fill - Sealant depth half the joint width but not less than 10 mm.\n",
        &[
            "sealant.depth: nominal 1/2 times joint width",
            "sealant.depth: at least 10 mm",
        ],
    );
}

#[test]
fn letters_are_configurations_where_the_head_names_them() {
    let items = "1. Slab - Concrete, 6 in. min. (A), 7 in. min. (B).\n\n2. Packing - Mineral wool min 6 pcf or, in A, 4 pcf min.\n";
    let head = "SYSTEM XX-01\nRating: 2 h (Config. A), 3 h (Config. B)\n\n";
    let of = |text: &str| -> Vec<Option<String>> {
        let reading = listing::read_text("sample", text);
        let numbers = reading.clauses.into_iter().filter(|clause| {
            matches!(clause.requirement, listing::Requirement::Bound(_)) && !clause.item.is_empty()
        });
        numbers.map(|clause| clause.option).collect()
    };
    let (a, b) = (
        Some("Configuration A".to_owned()),
        Some("Configuration B".to_owned()),
    );
    assert_eq!(
        of(&format!("{head}{items}")),
        [a.clone(), b, None, a],
        "named"
    );
    assert_eq!(of(items), [None, None, None, None], "not named");
}
