//! Schedules whose rows are requirements of numbered items, in columns of white space and in boxes. The schedules are invented; what their columns mean
//! is common practice.

use listing::{Reading, Requirement};

fn read(text: &str) -> Reading {
    listing::read_text("schedule.txt", text)
}

/// What a listing bounds: the item, how, the condition and the option.
fn bounds(listing: &Reading) -> Vec<String> {
    let bound = |clause: &listing::Clause| match &clause.requirement {
        Requirement::Bound(bound) => Some(format!(
            "{}: {bound}{}{}",
            clause.item,
            clause
                .condition
                .as_ref()
                .map_or_else(String::new, |condition| format!(" if {}", condition.words)),
            clause
                .option
                .as_ref()
                .map_or_else(String::new, |option| format!(" in {option}")),
        )),
        _ => None,
    };
    listing.clauses.iter().filter_map(bound).collect()
}

#[test]
fn each_number_opens_an_item_and_each_row_is_bounded_by_its_columns() {
    let found = read(
        "Item  Component            Requirement           Min.      Max.      Notes\n\
         -------------------------------------------------------------------------\n\
         1     Floor, concrete      Thickness, in.        4-1/2     -         a\n\
         \x20                          Density, pcf          105       150\n\
         2     Clip, galv. steel    Gauge                 20        -\n\
         \x20                          Bearing on floor, in. 1-1/2     -\n\
         \x20                          Offset of             -         3/8\n\
         \x20                          edges, in.\n\
         -------------------------------------------------------------------------\n\
         a  Sand and gravel aggregate.\n",
    );
    assert_eq!(
        bounds(&found),
        [
            "1: at least 4-1/2 in.",
            "1: between 105 pcf and 150 pcf",
            "2: at least 20 gauge",
            "2: at least 1-1/2 in.",
            "2: at most 3/8 in.",
        ]
    );
    let title = |path: &str| {
        let item = found.items.iter().find(|item| item.path == path);
        item.map(|item| item.title.clone())
    };
    assert_eq!(title("2").as_deref(), Some("Clip, galv. steel"));
}

#[test]
fn values_stand_in_the_middle_of_their_columns_and_titles_where_properties_do() {
    let found = read(
        "TABLE 1 - PARTITION\n\
         ----------------------------------------------------------------------------\n\
         REF   COMPONENT AND PROPERTY      RATING     MIN      NOM      MAX    UNIT\n\
         ----------------------------------------------------------------------------\n\
         3     RUNNER\n\
         \x20     Leg length                             2-1/2      -        -     in.\n\
         \x20     Spacing of anchors                       -        -       24     in. OC\n\
         \x20     Diameter of anchors                      -      3/16       -     in.\n\
         5     GYPSUM BOARD\n\
         \x20     Layers, each face           1 hr         1        -        -     no.\n\
         \x20     Layers, each face           2 hr         2        -        -     no.\n",
    );
    assert_eq!(
        bounds(&found),
        [
            "3: at least 2-1/2 in.",
            "3: at most 24 in.",
            "3: nominal 3/16 in.",
            "5: at least 1 if rating: 1 hr",
            "5: at least 2 if rating: 2 hr",
        ]
    );
}

#[test]
fn what_stands_below_the_rows_is_of_none_of_them() {
    let found = read(
        "No.  Component            Property              Minimum     Maximum\n\
         --------------------------------------------------------------------\n\
         1    Packing              Depth                 4 in.       -\n\
         2    Clips (optional)     Spacing               -           16 in.\n\
         --------------------------------------------------------------------\n\n\
         The joint shall be sealed with sealant at least 1/2 in. deep.\n",
    );
    assert_eq!(
        bounds(&found),
        [
            "1: at least 4 in.",
            "2: at most 16 in. in 2",
            "Below the rows: at least 1/2 in.",
        ]
    );
}

#[test]
fn parts_that_hold_rows_are_not_taken_for_rows_of_the_same_number() {
    let found = read(
        "PART 1 - STRUCTURE\n\n\
         Item  Component            Requirement           Min.      Max.\n\
         ---------------------------------------------------------------\n\
         1     Floor                Thickness, in.        4-1/2     -\n\
         2     Wall, concrete       Thickness, in.        5         -\n\
         2A    Wall, block (in lieu of 2)   Width, in.    8         -\n\n\
         PART 2 - PACKING\n\n\
         Packing is compressed at least 25 percent.\n",
    );
    let bounds = bounds(&found);
    assert_eq!(
        bounds.last().map(String::as_str),
        Some("Part 2: at least 25 %"),
        "{bounds:?}"
    );
}

#[test]
fn rows_behind_a_text_carry_on_with_the_columns_above() {
    let found = read(
        "Item  Component            Requirement           Min.      Max.\n\
         ---------------------------------------------------------------\n\
         6     Spray                Wet film, mils        120       -\n\
         \x20                          Passes                1         2\n\
         ---------------------------------------------------------------\n\
         Keep from frost.\n\n\
         7     Glass mesh           Opening, in.          1/16      1/8\n\
         \x20                          Laps, in.             3         -\n",
    );
    assert_eq!(
        bounds(&found),
        [
            "6: at least 120 mil",
            "6: between 1 and 2",
            "7: between 1/16 in. and 1/8 in.",
            "7: at least 3 in.",
        ]
    );
}

#[test]
fn boxes_of_numbered_rows_are_items_too() {
    let found = read(
        "+------+------------------+--------------------+--------+--------+------+\n\
         | Line | Part             | What is measured   |   F1   |   F2   | Unit |\n\
         |      |                  |                    |  1 hr  |  2 hr  |      |\n\
         +------+------------------+--------------------+--------+--------+------+\n\
         |  1   | Mullions         | Spacing on center  | max 72 | max 60 | in.  |\n\
         |  2   | Insulation board | Density            | min 4  | min 8  | pcf  |\n\
         |  3   | Cover            | Width past each    | none   | min 3  | in.  |\n\
         |      |                  | side of a mullion  |        |        |      |\n\
         +------+------------------+--------------------+--------+--------+------+\n",
    );
    assert_eq!(
        bounds(&found),
        [
            "1: at most 72 in. if 1 hr",
            "1: at most 60 in. if 2 hr",
            "2: at least 4 pcf if 1 hr",
            "2: at least 8 pcf if 2 hr",
            "3: at least 3 in. if 2 hr",
        ]
    );
}

#[test]
fn rows_of_one_number_say_each_which_part_they_are_of() {
    let found = read(
        "| Item | Part        | Property  | Limit   | Unit | Remarks |\n\
         | 1    | Floor slab  | Thickness | min 5   | in.  |         |\n\
         | 8    | Cover plate | Thickness | max 1/4 | in.  |         |\n\
         | 8    | Anchors     | Diameter  | 1/4     | in.  |         |\n\
         | 8    | Anchors     | Embedment | min 1   | in.  |         |\n",
    );
    let anchors = found
        .clauses
        .iter()
        .filter(|clause| clause.item == "8" && clause.component == "fastener");
    assert_eq!(anchors.count(), 2);
    assert_eq!(
        bounds(&found),
        [
            "1: at least 5 in.",
            "8: at most 1/4 in.",
            "8: nominal 1/4 in.",
            "8: at least 1 in.",
        ]
    );
}

#[test]
fn a_remark_may_hold_the_unit_or_say_when_its_row_holds() {
    let found = read(
        "No.  Component      Property      Min          Max       Rating, h   Remark\n\n\
         10   Wall           density       1760         2400      all         kg/m3\n\
         \x20                   thickness     140 mm       -         2           if used\n\
         11   Cover strip    width         joint + 50 mm   -        4           steel\n",
    );
    assert_eq!(
        bounds(&found),
        [
            "10: between 1760 kg/m³ and 2400 kg/m³",
            "10: at least 140 mm if rating, h: 2; remark: if used",
        ]
    );
    // What is added to the joint is no value of its own, and a person is told.
    assert!(
        found
            .clauses
            .iter()
            .any(|clause| clause.item == "11" && clause.requirement == Requirement::Prose)
    );
}

#[test]
fn a_unit_in_a_column_of_its_own_ends_a_value_that_needs_one() {
    let found = read(
        "Pos.   Component       Property             Value            Unit\n\
         ______________________________________________________________________\n\
         B1     Coating         dry film             2,0 (-0/+0,5)    mm\n\
         \x20                      coverage             1 900            g/m²\n\
         \x20                      melting point        > 1 000          °C\n",
    );
    assert_eq!(
        bounds(&found),
        [
            "B1: between 2 mm and 2.5 mm",
            "B1: nominal 1900 g/m²",
            "B1: more than 1000 °C",
        ]
    );
}

#[test]
fn a_limit_never_goes_to_a_number_of_another_column() {
    // The value stands between two columns, and nearer to neither.
    let found = read(
        "No.  Component            Property              Minimum     Maximum\n\
         --------------------------------------------------------------------\n\
         1    Packing              Depth                        4 in.\n\
         2    Clips                Spacing                      16 in.\n",
    );
    for clause in &found.clauses {
        if let Requirement::Bound(bound) = &clause.requirement {
            assert!(
                !matches!(
                    bound.relation,
                    listing::Relation::AtLeast | listing::Relation::AtMost
                ),
                "{bound}"
            );
        }
    }
    // A dash alone in its column is no sign.
    let found = read("1. Cover strip\n\n   width    joint + 50 mm    -    4\n");
    let bounded = bounds(&found);
    assert!(
        bounded.iter().all(|bound| !bound.contains("between")),
        "{bounded:?}"
    );
    // A heading that no list knows may be anything.
    let found = read(
        "No.  Component            Property              Minimum     Brightness\n\
         -----------------------------------------------------------------------\n\
         1    Packing              Depth                 4 in.       80\n\
         2    Clips                Width                 1 in.       90\n",
    );
    assert!(found.items.iter().all(|item| item.title != "Packing"));
}

#[test]
fn columns_of_widths_may_lie_on_their_side() {
    let found = read(
        "1. Packing - Min 4 pcf.\n\n\
         Movement by width\n\n\
         Width of joint, mm          12-20       over 20-38      over 38-50\n\
         Compression, max. %         10          20              25\n\
         Sealant grade               V2          V2 or V4        V4\n\n\
         2. Sealant - Min 6 mm deep.\n",
    );
    assert_eq!(
        bounds(&found),
        [
            "1: at least 4 pcf",
            "1: at most 10 % if Width of joint, mm: 12-20",
            "1: at most 20 % if Width of joint, mm: over 20-38",
            "1: at most 25 % if Width of joint, mm: over 38-50",
            "2: at least 6 mm",
        ]
    );
    // Where a line has a cell less, nobody knows which is empty.
    let found = read(
        "1. Packing - Min 4 pcf.\n\n\
         Width of joint, mm          12-20       over 20-38      over 38-50\n\
         Compression, max. %         10                          25\n",
    );
    assert_eq!(bounds(&found), ["1: at least 4 pcf"]);
}

#[test]
fn numbers_of_two_columns_or_lines_are_never_one() {
    for (text, wrong) in [
        (
            "1. Clips\n\nEdge screws  1     100 mm max from end\n",
            "1100",
        ),
        (
            "1. Clips\n\n2. Packing\n\n3. Screws - Type 1\n   300 mm o.c. max.\n",
            "1300",
        ),
        ("1. Angle\n\nAngle   10 ft     2 in. min\n", "122"),
    ] {
        let found = bounds(&read(text));
        assert!(
            found.iter().all(|bound| !bound.contains(wrong)),
            "{found:?}"
        );
    }
    // Thousands in one cell are one number.
    let found = bounds(&read("1. Concrete - Density min 2 350 kg/m3.\n"));
    assert_eq!(found, ["1: at least 2350 kg/m³"]);
}

#[test]
fn headings_that_nobody_knows_end_the_columns_above() {
    let found = read(
        "Item  Component     Requirement           Min    Max    Unit\n\n\
         1     Slab          Thickness             150    -      mm\n\
         2     Packing       Depth                 100    -      mm\n\n\
         Item  Component     Requirement           Max    Min    Grade\n\
         --------------------------------------------------------------\n\
         3     Clip          Spacing               300    -      mm\n\
         4     Sealant       Depth                 -      12     mm\n",
    );
    let found = bounds(&found);
    assert!(
        found
            .iter()
            .all(|bound| !bound.contains("300") && !bound.contains("12 mm")),
        "{found:?}"
    );
}

#[test]
fn a_row_behind_a_rule_without_a_number_is_of_nobody_knows_which_item() {
    let found = read(
        "Item  Component     Requirement           Min    Max    Unit\n\
         ------------------------------------------------------------\n\
         1     Slab          Thickness             150    -      mm\n\
         ------------------------------------------------------------\n\
         2     Packing       Density               64     -      kg/m3\n\
         ------------------------------------------------------------\n\
         \x20                   Depth                 12     -      mm\n\
         3     Sealant       Lap                   15     -      mm\n",
    );
    let depth = found
        .clauses
        .iter()
        .filter(|clause| clause.property.starts_with("packing.depth"));
    assert_eq!(depth.count(), 0);
}

#[test]
fn a_second_part_under_one_number_keeps_its_name() {
    let found = read(
        "Item  Component     Requirement      Min    Max    Unit\n\n\
         1     Slab          Thickness        150    -      mm\n\
         2     Packing       Density          64     -      kg/m3\n\
         \x20     Sealant       Depth            12     -      mm\n\
         5     Tape          Width            75     -      mm\n\
         \x20     Cover strip   Lap              25     -      mm\n\
         \x20     (optional)\n",
    );
    let property = |value: &str| {
        let clause = found
            .clauses
            .iter()
            .find(|clause| match &clause.requirement {
                Requirement::Bound(bound) => bound.to_string().contains(value),
                _ => false,
            });
        clause.map(|clause| (clause.component.clone(), clause.option.clone()))
    };
    assert_eq!(property("12 mm"), Some(("sealant".to_owned(), None)));
    assert_eq!(property("75 mm").and_then(|(_, option)| option), None);
    let boxed = read(
        "+---+---------+---------+-----+-----+-------+\n\
         | No. | Part  | Property | Min | Max | Unit |\n\
         +---+---------+---------+-----+-----+-------+\n\
         | 1 | Slab    | Thickness | 150 | | mm |\n\
         +---+---------+---------+-----+-----+-------+\n\
         | 2 | Packing | Density | 64 | | kg/m3 |\n\
         +---+---------+---------+-----+-----+-------+\n\
         |   | Sealant | Lap     | 15 | | mm    |\n\
         +---+---------+---------+-----+-----+-------+\n\
         |   |         | Depth   | 12 | | mm    |\n\
         +---+---------+---------+-----+-----+-------+\n",
    );
    assert!(
        boxed
            .clauses
            .iter()
            .all(|clause| clause.property != "packing.depth"),
        "{:?}",
        bounds(&boxed)
    );
}

#[test]
fn a_letter_of_a_note_is_no_unit_and_a_remark_that_says_more_is_no_case() {
    let found = read(
        "Item  Component          Requirement   Min    Max    Notes\n\
         ----------------------------------------------------------\n\
         5     Clip, galv. steel  Gauge         20     -      d\n\
         6     Packing            Depth, in.    4      -      h\n\
         7     Clip               Spacing, in.  -      12     where the deck spans over 9 ft it is 6 in. max\n",
    );
    let found = bounds(&found);
    assert!(
        found.contains(&"5: at least 20 gauge".to_owned()),
        "{found:?}"
    );
    assert!(found.contains(&"6: at least 4 in.".to_owned()), "{found:?}");
    assert!(found.contains(&"7: at most 12 in.".to_owned()), "{found:?}");
}

#[test]
fn a_list_under_item_and_description_is_read_as_a_list() {
    let found = read(
        "Item   Description\n\
         ----   ------------------------------------------------\n\
         1      Walls. Reinforced concrete, min 120 mm thick.\n\
         \x20      1.1  Density shall be 2200 kg/m3 or higher.\n\n\
         2      Joint. Width 10 - 50 mm as built, measured at the\n\
         \x20      narrowest point.\n",
    );
    assert_eq!(
        bounds(&found),
        [
            "1: at least 120 mm",
            "1.1: at least 2200 kg/m³",
            "2: between 10 mm and 50 mm",
        ]
    );
}

#[test]
fn a_requirement_may_be_a_text_beside_its_property() {
    let found = read(
        "Ref   Item               Property              Requirement            Note\n\
         ==========================================================================\n\
         S1    Floor slab         Thickness             150 mm min             -\n\
         \x20                        Edge chamfer          not over 10 mm\n\
         --------------------------------------------------------------------------\n\
         S3    Mineral wool       Depth                 100 mm min\n\
         \x20                        Piece length          600 mm min\n",
    );
    assert_eq!(
        bounds(&found),
        [
            "S1: at least 150 mm",
            "S1: at most 10 mm",
            "S3: at least 100 mm",
            "S3: at least 600 mm",
        ]
    );
}
