//! Lists of cases whose cases stand on lines of their own, or behind their values, and what stands below such a list. What is asked for under one case must not
//! be excused by another, nor what is said of every joint by any. The wordings are invented; what they mean is common practice.

mod common;

use common::clauses;

fn item(lines: &[&str]) -> Vec<String> {
    let widest =
        "The joint shall be built as described in the items below and as shown in the drawing.";
    let text = lines.join("\n   ");
    clauses(&format!(
        "{widest}\n\n1. Packing. Mineral wool batts.\n   {text}\n"
    ))
}

#[track_caller]
fn reads(lines: &[&str], expected: &[&str]) {
    let found = item(lines);
    for clause in expected {
        assert!(found.contains(&(*clause).to_owned()), "{clause} {found:?}");
    }
}

const OF_BOTH: [&str; 4] = [
    "packing.depth: at least 3 in if joint.rating = 1 hr",
    "packing.recess: at most 1/2 in if joint.rating = 1 hr",
    "packing.depth: at least 4 in if joint.rating = 2 hr",
    "packing.recess: at most 1/4 in if joint.rating = 2 hr",
];

#[test]
fn lines_under_a_case_are_under_it() {
    for [one, two] in [
        ["1 Hr Rating -", "2 Hr Rating -"],
        ["1 HR RATING", "2 HR RATING"],
        ["1 hr rating:", "2 hr rating:"],
        ["For 1 hr walls", "For 2 hr walls"],
    ] {
        for lead in ["", "  ", "- "] {
            let depth = |depth: u8| format!("{lead}Min depth {depth} in.");
            let recess = |part: &str| format!("{lead}Max recess {part} in.");
            reads(
                &[
                    one,
                    &depth(3),
                    &recess("1/2"),
                    two,
                    &depth(4),
                    &recess("1/4"),
                ],
                &OF_BOTH,
            );
        }
    }
    reads(
        &[
            "FOR JOINTS UP TO 2 IN. WIDE",
            "Min depth 3 in.",
            "FOR JOINTS OVER 2 IN. WIDE",
            "Min depth 4 in.",
        ],
        &[
            "packing.depth: at least 3 in if joint.width <= 2 in.",
            "packing.depth: at least 4 in if joint.width > 2 in.",
        ],
    );
}

#[test]
fn the_narrowest_listing_has_cases_too() {
    let found = clauses(
        "1. Clips - Min 20 ga.\n3 Hr Rating -\nSpacing max 12 in.\n2 Hr Rating -\nSpacing max 24 in.\n",
    );
    assert_eq!(
        found,
        [
            "clip.gauge: at least 20 gauge",
            "clip.spacing: at most 12 in if joint.rating = 3 hr",
            "clip.spacing: at most 24 in if joint.rating = 2 hr",
        ]
    );
}

#[test]
fn a_case_may_stand_in_brackets_before_what_is_asked() {
    reads(
        &[
            "Wool compressed min 25 percent",
            "(2 hr) 4 in. min depth",
            "(3 hr) 6 in. min depth",
            "Recessed 1/2 in. both sides.",
        ],
        &[
            "packing.compression: at least 25 percent",
            "packing.depth: at least 4 in if joint.rating = 2 hr",
            "packing.depth: at least 6 in if joint.rating = 3 hr",
            "packing.recess: nominal 1/2 in",
        ],
    );
    reads(
        &[
            "Where rated 2 hr",
            "min 4 in. deep",
            "Where rated 3 hr",
            "min 6 in. deep",
        ],
        &[
            "packing.depth: at least 4 in if joint.rating = 2 hr",
            "packing.depth: at least 6 in if joint.rating = 3 hr",
        ],
    );
}

#[test]
fn what_stands_below_the_last_case_is_of_every_joint() {
    let always = &["packing.splice_stagger: at least 12 in"];
    reads(
        &[
            "1 hr rating -",
            "  Min depth 3 in.",
            "2 hr rating -",
            "  Min depth 4 in.",
            "Splices staggered min 12 in.",
        ],
        always,
    );
    reads(
        &[
            "1 hr rating -",
            "Min depth 3 in.",
            "2 hr rating -",
            "Min depth 4 in.",
            "Splices staggered min 12 in.",
        ],
        always,
    );
    reads(
        &[
            "1 hr: min depth 3 in.",
            "2 hr: min depth 4 in. Splices are staggered min 12 in.",
        ],
        always,
    );
}

#[test]
fn a_case_alone_is_none() {
    let found = item(&["Joint width up to 2 in.", "Min depth 3 in."]);
    assert!(
        found
            .iter()
            .any(|clause| clause.starts_with("joint.width: at most 2 in")),
        "{found:?}"
    );
    // Hours of curing are times.
    let found = item(&[
        "Curing:",
        "  1 hr",
        "  Min depth 3 in. cured",
        "  2 hr",
        "  Min depth 4 in. cured",
    ]);
    assert!(
        !found.iter().any(|clause| clause.contains("joint.rating")),
        "{found:?}"
    );
}

#[test]
fn values_that_end_with_their_case() {
    for head in ["Min depth of packing:", "Min depth -", "Min depth"] {
        reads(
            &[
                head,
                "3 in. for 1 hr",
                "4 in. for 2 hr",
                "Recess max 1/2 in.",
            ],
            &[
                "packing.depth: at least 3 in if joint.rating = 1 hr",
                "packing.depth: at least 4 in if joint.rating = 2 hr",
                "packing.recess: at most 1/2 in",
            ],
        );
    }
    reads(
        &[
            "Min depth as follows:",
            "3 in. (76 mm) for joints up to 2 in. wide, and",
            "4 in. (102 mm) for joints over 2 in. wide",
        ],
        &[
            "packing.depth: at least 3 in if joint.width <= 2 in.",
            "packing.depth: at least 4 in if joint.width > 2 in.",
        ],
    );
}

#[test]
fn what_leads_to_a_list_ends_with_it() {
    for recess in ["Max recess: 1/2 in.", "Max recess 1/2 in."] {
        reads(
            &[
                "Min depth of packing:",
                "- 3 in. for joints up to 2 in. wide",
                "- 4 in. for joints over 2 in. wide",
                recess,
            ],
            &[
                "packing.depth: at least 4 in if joint.width > 2 in.",
                "packing.recess: at most 1/2 in",
            ],
        );
    }
    reads(
        &[
            "Max recess of packing:",
            "- 1/2 in. for 1 hr",
            "- 1/4 in. for 2 hr",
            "Min depth of packing:",
            "- 3 in. for 1 hr",
            "- 4 in. for 2 hr",
        ],
        &OF_BOTH,
    );
    // No limit is left for what stands below the cases.
    reads(
        &[
            "Max recess:",
            "1 Hr: 1/2 in.",
            "2 Hr: 1/4 in.",
            "Depth: 4 in.",
        ],
        &["packing.depth: nominal 4 in"],
    );
    reads(
        &[
            "Minimum:",
            "  Depth 4 in.",
            "  Overlap 1 in.",
            "Maximum:",
            "  Recess 1/2 in.",
        ],
        &[
            "1:packing_overlap: at least 1 in",
            "packing.recess: at most 1/2 in",
        ],
    );
}

#[test]
fn a_sign_may_have_a_line_to_itself() {
    for sign in ["•", "-", "▪", "●"] {
        let found = item(&[
            "Density min 4 pcf.",
            sign,
            "For joint widths up to 2 in., min depth is 3 in.",
            sign,
            "For joint widths over 2 in., min depth is 4 in.",
        ]);
        for clause in [
            "packing.density: at least 4 pcf",
            "packing.depth: at least 3 in if joint.width <= 2 in.",
            "packing.depth: at least 4 in if joint.width > 2 in.",
        ] {
            assert!(
                found.contains(&clause.to_owned()),
                "{sign} {clause} {found:?}"
            );
        }
    }
}

#[test]
fn what_is_said_of_all_parts_is_of_none() {
    for closing in [
        "All splices are staggered min 12 in. in both cases.",
        "For all options, splices are staggered min 12 in.",
    ] {
        let text = format!(
            "The joint shall be built as described in the items below and as shown.\n\n1. Packing. Mineral wool batts.\n   a. Concrete wall - min depth 3 in.\n   b. Gypsum board wall - min depth 4 in.\n   {closing}\n"
        );
        let reading = listing::read_text("parts", &text);
        let splices = reading
            .clauses
            .iter()
            .find(|clause| clause.property == "packing.splice_stagger");
        let item = splices.map(|clause| clause.item.as_str());
        assert_eq!(item, Some("1"), "{closing}");
    }
}

#[test]
fn below_parts_of_which_one_is_built_a_sentence_is_of_none() {
    let found = item(&[
        "Use one of the following:",
        "A. Mineral wool, min 4 pcf.",
        "B. Ceramic fiber, min 6 pcf.",
        "Splices are staggered min 12 in.",
    ]);
    for clause in [
        "packing.density: at least 6 pcf in 1B",
        "packing.splice_stagger: at least 12 in",
    ] {
        assert!(found.contains(&clause.to_owned()), "{clause} {found:?}");
    }
}

#[test]
fn a_list_may_begin_on_the_line_of_its_item() {
    let found = clauses(
        "1. Fill (a) Joints up to 2 in.: sealant min 1/2 in. deep\n   (b) Joints over 2 in.: sealant min 3/4 in. deep\n   (c) All joints: sealant laps the wall min 1/2 in.\n",
    );
    for clause in [
        "sealant.depth: at least 1/2 in if joint.width <= 2 in.",
        "sealant.depth: at least 3/4 in if joint.width > 2 in.",
        "sealant.overlap: at least 1/2 in",
    ] {
        assert!(found.contains(&clause.to_owned()), "{clause} {found:?}");
    }
    // A cited item begins none.
    let found = clauses(
        "1. Sealant. Laps the board of Item (a) min 1/2 in.\n   (b) Sealant min 1/4 in. deep.\n",
    );
    assert!(
        found
            .iter()
            .any(|clause| clause.ends_with("at least 1/2 in")),
        "{found:?}"
    );
}
