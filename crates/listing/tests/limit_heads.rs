//! Limits that stand over a list, and labels that stand before their values: each limit and each label is for its own values.

mod common;

use common::check;

#[test]
fn a_heading_of_limits_reaches_over_the_lines_below_it() {
    for heading in [
        "Requirements, minimum:",
        "Minimum values",
        "All values are minimums:",
        "Minimum:",
        "Required values (min):",
    ] {
        check(
            &format!(
                "1. PACKING - Mineral wool.\n   {heading}\n   Depth 4 in.\n   Density 4 pcf\n"
            ),
            &[
                "packing.depth: at least 4 in",
                "packing.density: at least 4 pcf",
            ],
        );
    }
    check(
        "1. PACKING - Minimum: depth 4 in., density 4 pcf. Maximum: joint width 2 in.\n",
        &[
            "packing.depth: at least 4 in",
            "packing.density: at least 4 pcf",
            "joint.width: at most 2 in",
        ],
    );
    check(
        "1. COATING - Minima:\n   Overlap: 1/2 in.\n   Wet film: 1/8 in.\n   Maxima:\n   Joint width: 2 in.\n",
        &[
            "coating.overlap: at least 1/2 in",
            "coating.wet_thickness: at least 1/8 in",
            "joint.width: at most 2 in",
        ],
    );
    check(
        "1. PACKING - Minimum values\n\n   a. Depth 4 in.\n\n   b. Density 4 pcf\n",
        &[
            "packing.depth: at least 4 in",
            "packing.density: at least 4 pcf",
        ],
    );
    check(
        "1. PACKING - Depth 4 in. Density 4 pcf. All values are minimums.\n",
        &[
            "packing.depth: at least 4 in",
            "packing.density: at least 4 pcf",
        ],
    );
}

#[test]
fn a_heading_of_one_measure_and_a_statement_are_no_list() {
    check(
        "1. PACKING - Minimum depth: 4 in. Density 4 pcf.\n",
        &[
            "packing.depth: at least 4 in",
            "packing.density: nominal 4 pcf",
        ],
    );
    check(
        "1. PACKING - Minimum values: depth 4 in. The clips shall be 1 in. wide.\n",
        &["packing.depth: at least 4 in", "clip.width: nominal 1 in"],
    );
}

#[test]
fn a_label_names_its_own_value_and_no_other() {
    check(
        "1. SEALANT - Overlap: ≥ 12 mm; voids: ≤ 3 mm; depth: ≥ 10 mm.\n",
        &[
            "sealant.overlap: at least 12 mm",
            "1:sealant_voids: at most 3 mm",
            "sealant.depth: at least 10 mm",
        ],
    );
    check(
        "1. SEALANT - overlap ≥12 mm, voids ≤ 3 mm, depth ≥ 10 mm\n",
        &[
            "sealant.overlap: at least 12 mm",
            "1:sealant_voids: at most 3 mm",
            "sealant.depth: at least 10 mm",
        ],
    );
    check(
        "1. SEALANT - Depth: min 1/2 in.; overlap: 1/2 in. min; voids: max 1/8 in.\n",
        &[
            "sealant.depth: at least 1/2 in",
            "sealant.overlap: at least 1/2 in",
            "1:sealant_voids: at most 1/8 in",
        ],
    );
    // A label names what it is of, whatever is spoken of behind the number.
    check(
        "1. WALL - Height of joint: max 5 m without support (clips, see below)\n",
        &["1:joint_height: at most 5 m"],
    );
}

#[test]
fn two_movements_before_a_number_are_both_bounded() {
    check(
        "1. JOINT - Movement, compression or extension: 15 percent maximum.\n",
        &[
            "joint.movement_extension: at most 15 percent",
            "joint.movement_compression: at most 15 percent",
        ],
    );
}

#[test]
fn a_title_of_limits_is_of_the_labels_and_values_under_it() {
    check(
        "1. MAXIMUM JOINT WIDTHS\n   Floor to floor 6 in.; wall to wall 5 in.; head of wall 3 in.\n   Packing is 4 in. deep.\n",
        &[
            "1:floor_floor_to_floor: at most 6 in",
            "1:wall_wall_to_wall: at most 5 in",
            "1:head_of_wall_head_of: at most 3 in",
            "packing.depth: nominal 4 in",
        ],
    );
}

#[test]
fn a_heading_of_limits_reaches_over_lines_with_leaders() {
    let read = |heading: &str, last: &str| {
        let text = format!(
            "1. SUPPORTS - {heading}\n\n     Concrete wall ................... 120 mm ......... 2200 kg/m3\n     Concrete floor .................. 150 mm\n     {last}\n\n2. SEALANT - Acrylic, white.\n"
        );
        common::clauses(&text)
    };
    let led = read(
        "Supporting construction, minimum thickness and density:",
        "Timber floor .................... 100 mm",
    );
    assert_eq!(
        led.iter().filter(|one| one.contains("at least")).count(),
        4,
        "{led:#?}"
    );
    // Behind the lines it is said of no statement.
    let behind = read(
        "Supporting construction, minimum thickness and density:",
        "Boards are 100 mm wide.",
    );
    assert_eq!(
        behind.iter().filter(|one| one.contains("at least")).count(),
        3,
        "{behind:#?}"
    );
    let plain = read(
        "Supporting construction:",
        "Timber floor .................... 100 mm",
    );
    assert!(
        plain.iter().all(|one| !one.contains("at least")),
        "{plain:#?}"
    );
}
