//! What stands in columns: labels beside their values, tables, schedules. The wordings are invented.

mod common;

use common::check;

#[test]
fn a_label_without_a_colon_is_of_its_own_value() {
    check(
        "System HW-77\n\n1 Packing\n   Density           4 pcf nominal\n   Depth             min 4 in. (102 mm)\n\n\
         2 Coating\n   Wet film          1/8 in. min\n   Lap on board      1/2 in. min\n",
        &[
            "packing.density: nominal 4 pcf",
            "packing.depth: at least 4 in",
            "coating.wet_thickness: at least 1/8 in",
            "coating.overlap_board: at least 1/2 in",
        ],
    );
    // A sentence set wide is no list.
    check(
        "1. Packing - Mineral wool is  placed\n   with  a depth of min 4 in.\n",
        &[
            "packing.depth: at least 4 in",
            "packing.material: one of Mineral wool",
        ],
    );
}

#[test]
fn a_heading_over_several_columns_is_of_each() {
    check(
        "System HW-77\n\n1. Products as in the table.\n\n\
         \x20             |      Packing      |    Coating\n\
         \x20  Rating     | depth   | density | wet    | dry\n\
         \x20  (hr)       | (in.)   | (pcf)   | (mil)  | (mil)\n\
         \x20  -----------+---------+---------+--------+------\n\
         \x20  1          | 4       | 4       | 125    | 60\n\
         \x20  2          | 5       | 6       | 190    | 90\n",
        &[
            "packing.depth: nominal 4 in if joint.rating = 1 hr",
            "packing.density: nominal 4 pcf if joint.rating = 1 hr",
            "coating.wet_thickness: nominal 125 mil if joint.rating = 1 hr",
            "coating.dry_thickness: nominal 60 mil if joint.rating = 1 hr",
            "packing.depth: nominal 5 in if joint.rating = 2 hr",
            "packing.density: nominal 6 pcf if joint.rating = 2 hr",
            "coating.wet_thickness: nominal 190 mil if joint.rating = 2 hr",
            "coating.dry_thickness: nominal 90 mil if joint.rating = 2 hr",
        ],
    );
}

#[test]
fn the_unit_of_a_caption_is_that_of_every_measure() {
    check(
        "System HW-77\n\n1. Packing and coating.\n\nTable 1 - Packing depth and film, mm\n\
         Rating, h     Packing depth     Wet film\n1             102               3.2\n2             127               4.8\n\n2. Wall - Masonry.\n",
        &[
            "packing.depth: nominal 102 mm if joint.rating = 1 hr",
            "coating.wet_thickness: nominal 16/5 mm if joint.rating = 1 hr",
            "packing.depth: nominal 127 mm if joint.rating = 2 hr",
            "coating.wet_thickness: nominal 24/5 mm if joint.rating = 2 hr",
        ],
    );
}

#[test]
fn min_beside_a_label_in_hours_is_a_minimum() {
    check(
        "System HW-77\n\n1 Times\n\n                        Option A        Option B\n    Skin, minutes         30 max.         60 max.\n    \
         Traffic, h            24 min.         4 min.\n    Full cure, days       14 min.         7 min.\n    Apply at, °C          5 to 40         10 to 35\n",
        &[
            "1:times_skin_minutes: at most 30 min if \"Option A\"",
            "1:times_skin_minutes: at most 60 min if \"Option B\"",
            "1:times_traffic_h: at least 24 hr if \"Option A\"",
            "1:times_traffic_h: at least 4 hr if \"Option B\"",
            "1:times_full_cure_days: at least 14 day if \"Option A\"",
            "1:times_full_cure_days: at least 7 day if \"Option B\"",
            "1:times_apply_at_c: between 5 to 40 degC if \"Option A\"",
            "1:times_apply_at_c: between 10 to 35 degC if \"Option B\"",
        ],
    );
}

#[test]
fn limits_in_a_row_are_no_ratings() {
    check(
        "System HW-77\n\n1 Studs as below.\n\n                   1-hr             2-hr\n    Stud depth     2-1/2\" min       3-5/8\" min\n    \
         Stud gauge     25 ga min        20 ga min\n    Stud spacing   24\" o.c. max     16\" o.c. max\n",
        &[
            "stud.width: at least 5/2 in if joint.rating = 1 hr",
            "stud.width: at least 29/8 in if joint.rating = 2 hr",
            "stud.gauge: at least 25 gauge if joint.rating = 1 hr",
            "stud.gauge: at least 20 gauge if joint.rating = 2 hr",
            "stud.spacing: at most 24 in if joint.rating = 1 hr",
            "stud.spacing: at most 16 in if joint.rating = 2 hr",
        ],
    );
}

#[test]
fn a_heading_says_in_which_unit_its_cells_are() {
    check(
        "System HW-77\n\n1 Sealant as in the table.\n\n   +--------------+---------------+------------+-------------+\n   | Joint width  | Depth of com- | Bond       | Movement    |\n   \
         | b in mm      | pound t in mm | in mm      | in % of b   |\n   +--------------+---------------+------------+-------------+\n   \
         | 20 to 40     | ≥ 10          | ≥ 12       | ± 20        |\n   | 41 to 80     | ≥ 15          | ≥ 17       | ± 7,5       |\n   \
         +--------------+---------------+------------+-------------+\n",
        &[
            "sealant.depth: at least 10 mm if joint.width from 20 mm to 40 mm",
            "sealant.bond: at least 12 mm if joint.width from 20 mm to 40 mm",
            "1:joint_movement_in_of_b: between -20 to 20 percent if joint.width from 20 mm to 40 mm",
            "sealant.depth: at least 15 mm if joint.width from 41 mm to 80 mm",
            "sealant.bond: at least 17 mm if joint.width from 41 mm to 80 mm",
            "1:joint_movement_in_of_b: between -15/2 to 15/2 percent if joint.width from 41 mm to 80 mm",
        ],
    );
}

#[test]
fn labels_side_by_side_have_each_its_own_value() {
    let found = common::clauses(
        "Detail BP-3\n\n[1] Deck: 22 gauge min.\n\n[2] Spray\n    wet: 1/8 in. min    dry: 70 mils min\n    lap on board: 1/2\" min\n    lap on deck: 2\" min\n",
    );
    // None is the dry film's or the lap's but its own.
    let held = |value: &str| {
        found
            .iter()
            .find(|clause| clause.ends_with(value))
            .cloned()
            .unwrap_or_default()
    };
    assert!(!held("at least 1/8 in").contains("dry"), "{found:?}");
    assert!(!held("at least 70 mil").contains("board"), "{found:?}");
    assert!(held("at least 1/2 in").contains("board"), "{found:?}");
    assert!(held("at least 2 in").contains("deck"), "{found:?}");
}

#[test]
fn a_mark_that_numbers_parts_is_no_case() {
    let clauses = common::clauses(
        "1. PARTS - As listed.\n\n\
         | Part | Description          | Requirement      |\n\
         |------|----------------------|------------------|\n\
         | B1   | Sprayed fireproofing | density 15 pcf   |\n\
         | W1   | Studs                | 25 ga min.       |\n",
    );
    assert!(
        !clauses.is_empty() && clauses.iter().all(|clause| !clause.contains(" if ")),
        "{clauses:?}"
    );
}

#[test]
fn both_sides_of_a_size_are_in_the_unit_of_its_column() {
    let text = |heading: &str, size: &str| {
        format!(
            "1. Angles - Sizes according to Table 1.\n\nTABLE 1 - ANGLES\n\nRating,   {heading:<16}   Spacing,\nHr                           max in.\n-------------------------------------\n1         {size:<16}   18\n2         2 x 2              12\n-------------------------------------\n"
        )
    };
    let sides = |text: &str| -> Vec<String> {
        let clauses = common::clauses(text);
        let nominal = clauses
            .iter()
            .filter_map(|clause| clause.split_once(": nominal "));
        nominal
            .map(|(_, value)| value.split(" if ").next().unwrap_or_default().to_owned())
            .collect()
    };
    assert_eq!(
        sides(&text("Angle, in.", "1-1/2 x 2")),
        ["3/2 in", "2 in", "2 in", "2 in"]
    );
    // Each side has a name of its own, and none is the joint's width.
    let named = common::clauses(&text("Angle, in.", "1-1/2 x 2"));
    let named = |side: &str| named.iter().filter(|clause| clause.contains(side)).count();
    assert_eq!(
        [
            named("first_side"),
            named("second_side"),
            named("joint.width")
        ],
        [2, 2, 0]
    );
    // Nobody says in what unit.
    assert!(sides(&text("Angle", "1-1/2 x 2")).is_empty());
}
