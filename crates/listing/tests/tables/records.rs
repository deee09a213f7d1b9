//! Tables of one requirement a row, and tables whose captions, closing sentences and heads say what the cells are. The wordings are invented.

use super::check;

#[test]
fn a_row_is_one_requirement() {
    check(
        "Sheet JS-5\n\nTable 1  Floor and wool\n\
         -----------------------------------------------------------------------\n\
         Row  Part        Property     Limit  Value    Unit    Var.   When\n\
         -----------------------------------------------------------------------\n\
         101  Slab        thickness    MIN    150      mm      all    120 min\n\
         102  do.         do.          MIN    175      mm      all    180 min\n\
         103  Wool strip  compression  BTW    25 - 40  %       I\n\
         104  do.         depth        EQ     100      mm      all\n\
         105  Coating     coats        MIN    2        -       I\n\
         -----------------------------------------------------------------------\n",
        &[
            "floor.thickness: at least 150 mm [when: 120 min]",
            "floor.thickness: at least 175 mm [when: 180 min]",
            "packing.compression: between 25 % and 40 % [var.: I]",
            "packing.depth: exactly 100 mm",
            "coating.coats: at least 2 [var.: I]",
        ],
    );
}

#[test]
fn a_limit_or_a_unit_that_is_not_known_leaves_the_row_as_words() {
    check(
        "Sheet JS-5\n\nTable 1  Wool\n\
         ----------------------------------------------------------\n\
         Row  Part        Property     Limit  Value    Unit\n\
         ----------------------------------------------------------\n\
         101  Wool strip  density      MIN    80       kg/m3\n\
         102  do.         depth        ZZZ    100      mm\n\
         103  do.         stiffness    MIN    5        bar\n\
         104  do.         recess       MAX    6        mm\n\
         ----------------------------------------------------------\n",
        &[
            "packing.density: at least 80 kg/m³",
            "packing.recess: at most 6 mm",
        ],
    );
}

#[test]
fn a_width_that_heads_a_column_limits_nothing() {
    check(
        "System HW-7\n\n1. Spray - Laps as Table 1.\n\n2. Board - Two layers.\n\n\
         TABLE 1. MINIMUM LAP OF JOINT SPRAY\n\n\
         Onto                        Joint 1 in. or less   Joint over 1 in.\n\
         -------------------------   -------------------   ----------------\n\
         Gypsum board                1/2 in. (13 mm)       1 in. (25 mm)\n\
         Cementitious fireproofing   1 in. (25 mm)         2 in. (51 mm)\n",
        &[
            "board.layers: exactly 2",
            "coating.overlap_board: at least 1/2 in. [Joint 1 in. or less]",
            "coating.overlap_board: at least 1 in. [Joint over 1 in.]",
            "coating.overlap_fireproofing: at least 1 in. [Joint 1 in. or less]",
            "coating.overlap_fireproofing: at least 2 in. [Joint over 1 in.]",
        ],
    );
}

#[test]
fn a_sentence_beside_a_table_says_how_its_values_are_meant() {
    let table = "Width of joint               1 hr      2 hr\n\
                 up to 1 in.                  20%       25%\n\
                 over 1 to 2 in.              25%       33%\n\n";
    check(
        &format!(
            "System HW-7\n\n1. Joint - Max 2 in. wide.\n\n2. Packing - Compression in the direction of the width:\n\n{table}All values are minimums.\n"
        ),
        &[
            "joint.width: at most 2 in.",
            "2:packing: at least 20 % [Width of joint: up to 1 in.; 1 hr]",
            "2:packing: at least 25 % [Width of joint: up to 1 in.; 2 hr]",
            "2:packing: at least 25 % [Width of joint: over 1 to 2 in.; 1 hr]",
            "2:packing: at least 33 % [Width of joint: over 1 to 2 in.; 2 hr]",
        ],
    );
}

#[test]
fn a_title_that_demands_is_read() {
    check(
        "System HW-7\n\n1. STUDS - (2) #10 SCREWS EACH END.\n\n2. BOARD - TWO LAYERS EACH SIDE.\n\n3. TRACK - 20 GA. MIN.\n",
        &[
            "1:stud: exactly 2",
            "fastener.size: nominal No. 10",
            "board.layers: exactly 2",
            "runner.gauge: at least 20 gauge",
        ],
    );
}

#[test]
fn a_box_without_a_rule_is_headed_by_its_first_row() {
    check(
        "Schedule FW-2\n\nPART 1  PACKING\n\n\
         | Item | Part         | Property    | Limit     | Unit | Remarks    |\n\
         | 4    | Mineral wool | Density     | min 4     | pcf  |            |\n\
         | 4    | Mineral wool | Depth       | min 5-1/2 | in.  | 3 hr       |\n\
         | 4    | Mineral wool | Compression | 25 to 50  | %    |            |\n\n\
         PART 2  COVER (OPTIONAL)\n\n\
         | Item | Part     | Property | Limit   | Unit |\n\
         | 8    | Anchors  | Diameter | 1/4     | in.  |\n\
         | 8    | Anchors  | Spacing  | max 18  | in.  |\n",
        &[
            "packing.density: at least 4 pcf",
            "packing.depth: at least 5-1/2 in. [remarks: 3 hr]",
            "packing.compression: between 25 % and 50 %",
            "fastener.diameter: nominal 1/4 in.",
            "fastener.spacing: at most 18 in.",
        ],
    );
}

#[test]
fn a_remark_in_words_is_a_clause_for_a_person() {
    let reading = listing::read_text(
        "sample",
        "Schedule FW-2\n\nPART 1  PACKING\n\n\
         | Item | Part         | Property    | Limit     | Unit | Remarks    |\n\
         | 4    | Mineral wool | Density     | min 4     | pcf  |            |\n\
         | 4    | Mineral wool | Length      | min 12    | in.  | butt tight |\n\
         | 4    | Mineral wool | Compression | 25 to 50  | %    |            |\n",
    );
    let prose: Vec<&str> = reading
        .clauses
        .iter()
        .filter(|clause| clause.requirement == listing::Requirement::Prose)
        .map(|clause| clause.words.as_str())
        .collect();
    assert!(prose.contains(&"butt tight"), "{prose:?}");
}

#[test]
fn a_product_that_a_cell_takes_out_is_not_listed() {
    let rows = [
        "Row      Company             Name               Columns",
        "--------------------------------------------------------------",
        "SEALANT  Invented Seals Co   Invoseal 300       all",
        "                             Invoseal 300 SL    none (floors only)",
    ];
    let rule = "--------------------------------------------------------------";
    let text = format!(
        "Sheet JS-5\n\nPRODUCTS\n\n{rule}\n{}\n{rule}\n",
        rows.join("\n")
    );
    let reading = listing::read_text("records.txt", &text);
    let named: Vec<String> = reading
        .clauses
        .iter()
        .filter_map(|clause| match &clause.requirement {
            listing::Requirement::Named { names } => Some(names),
            _ => None,
        })
        .flatten()
        .map(|name| name.product.clone())
        .collect();
    assert_eq!(named, ["Invoseal 300"]);
    assert!(
        reading
            .clauses
            .iter()
            .any(|clause| clause.words.contains("300 SL"))
    );
}
