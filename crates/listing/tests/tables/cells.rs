//! Cells: values, lists, remarks, products, and cells that go on or stay empty.

use listing::{Requirement, read_text};

use crate::check;

#[test]
fn a_row_written_as_a_list() {
    check(
        "1. SEALANT - Any of those listed.\n\nDepth, min:   1 hr - 1/4 in.;   2 hr - 1/2 in.;   3 hr - 5/8 in.\n\n2. JOINT - As built.\n",
        &[
            "sealant.depth: at least 1/4 in. [1 hr]",
            "sealant.depth: at least 1/2 in. [2 hr]",
            "sealant.depth: at least 5/8 in. [3 hr]",
        ],
    );
    // Not every entry is a rating and a value: a sentence.
    let text = "1. SEALANT - Any.\n\nDepth: 1 hr - 1/4 in.; elsewhere as drawn.\n";
    let reading = read_text("sample", text);
    let cells = reading.clauses.iter();
    assert!(
        cells
            .flat_map(|clause| &clause.read_by)
            .all(|rule| rule != "table cell")
    );
}

/// EN 13501-2:2016, 7.5.9: the parts of the classification of linear joint seals.

#[test]
fn class_codes_run_together_or_set_apart() {
    let expected = [
        "joint.rating: nominal 90 min",
        "joint.classified_movement: nominal 20 %",
        "joint.width: between 15 mm and 60 mm",
    ];
    for code in [
        "EI 90-H-M20-B-W 15 to 60",
        "EI 90 - H - M 20 - B - W 15 to 60",
        "EI90–H–M20–B–W15–60",
    ] {
        check(&format!("1. Class: {code}.\n2. Other.\n"), &expected);
    }
    // The letters of a word begin no code, and no minutes are no class.
    for text in ["FEI 90-H-M20", "E 47 - H - W 10 to 20"] {
        let reading = read_text("sample", &format!("1. Class: {text}.\n2. Other.\n"));
        let rules = reading.clauses.iter().flat_map(|clause| &clause.read_by);
        assert!(
            rules.clone().all(|rule| rule != "class code"),
            "{text}: {rules:?}"
        );
    }
}

#[test]
fn a_remark_within_a_table_stays_for_a_person() {
    let text = "1. PACKING\n\n\
         ------------------------------------------------\n\
         Joint width, in.     Depth, min, in.    Pieces\n\
         ------------------------------------------------\n\
         up to 2              4                  one\n\
         over 2 to 4          6                  two\n\
         Wider joints are not covered.\n\
         ------------------------------------------------\n\
         2. JOINT\n";
    let reading = read_text("sample", text);
    let prose = |words: &str| {
        reading
            .clauses
            .iter()
            .any(|clause| clause.requirement == Requirement::Prose && clause.words.contains(words))
    };
    assert!(
        prose("Wider joints are not covered."),
        "{:?}",
        reading.clauses
    );
}

#[test]
fn none_is_no_limit_only_where_limits_stand_and_no_side_is_taken_of_two() {
    let table = |lower: &str, upper: &str| {
        let rule = "------------------------   ------------   ------------";
        format!(
            "5  Field\n\nTable 3 - Limits\n\nCharacteristic             {lower:<12}   {upper}\n{rule}\n\
             Depth of seal, min         80 mm          110 mm\n\
             Splices in a run           1              none\n{rule}\n"
        )
    };
    // Whether none need be, or none may be, nobody knows: a person says.
    let reading = read_text("sample", &table("Min", "Max"));
    let none = |clause: &listing::Clause| {
        clause.words.ends_with("none") && clause.requirement == Requirement::Prose
    };
    assert!(reading.clauses.iter().any(none), "{:?}", reading.clauses);
    // A least depth under an upper limit is neither.
    check(
        &table("Lower limit", "Upper limit").replace(
            "Splices in a run           1 ",
            "Depth of wool              9 mm",
        ),
        &["seal.depth: at least 80 mm", "packing.depth: at least 9 mm"],
    );
}

#[test]
fn a_row_of_values_under_another() {
    check(
        "All dimensions in millimetres. Densities in kg/m3.\n\n\
         1  Edges\n\n\
         Table 1    Slab edges\n\
         ____________________________________________________________________\n\
         \x20Ref    Part                   Period       Thickness    Density\n\
         \x20                                           min\n\
         ____________________________________________________________________\n\
         \x201a     Dense concrete, cast   2 h          140          2300 - 2450\n\
         \x20       in place               4 h          175\n\n\
         \x201b     Lightweight concrete   2 h          130          1750 - 1900\n\
         \x20                              4 h          not proved\n\
         ____________________________________________________________________\n",
        &[
            "concrete.thickness: at least 140 mm [Ref: 1a; Period: 2 h]",
            "concrete.density: between 2300 kg/m³ and 2450 kg/m³ [Ref: 1a; Period: 2 h]",
            "concrete.thickness: at least 175 mm [Ref: 1a; Period: 4 h]",
            // What is left empty takes what stands above.
            "concrete.density: between 2300 kg/m³ and 2450 kg/m³ [Ref: 1a; Period: 4 h]",
            "concrete.thickness: at least 130 mm [Ref: 1b; Period: 2 h]",
            "concrete.density: between 1750 kg/m³ and 1900 kg/m³ [Ref: 1b; Period: 2 h]",
            "concrete.density: between 1750 kg/m³ and 1900 kg/m³ [Ref: 1b; Period: 4 h]",
        ],
    );
}

#[test]
fn makers_and_products() {
    let text = "1  Cure\n\n28 days.\n\n2  Sources\n\n\
         Part           Maker                     Product            For\n\
         -------------  ------------------------  -----------------  ----------\n\
         Packing        Fennimoor Insulants       FN-Batt 40         all\n\
         \x20                                        FN-Batt 60         1 h only\n\
         Sealant        Sorrelby Protective       Sorrelgum J\n";
    let reading = read_text("sample", text);
    let read: Vec<String> = reading
        .clauses
        .iter()
        .filter(|clause| clause.item == "2")
        .map(|clause| match &clause.requirement {
            Requirement::Named { names } => {
                let names: Vec<String> = names
                    .iter()
                    .map(|name| format!("{} {}", name.maker, name.product))
                    .collect();
                format!("{}: {}", clause.property, names.join(", "))
            }
            _ => format!("to judge: {}", clause.attribute),
        })
        .collect();
    assert_eq!(
        read,
        [
            "packing.product: Fennimoor Insulants FN-Batt 40, Fennimoor Insulants FN-Batt 60",
            "to judge: for: 1 h only",
            "sealant.product: Sorrelby Protective Sorrelgum J",
        ]
    );
}

/// What a text asks for in its tables, words and names included.
fn asked(text: &str) -> Vec<String> {
    let clauses = read_text("sample", text).clauses;
    clauses.iter().map(|clause| clause.words.clone()).collect()
}

#[test]
fn no_word_of_a_cell_falls_away() {
    // A part may say more than its name, and a remark of two letters is a remark.
    let text = "1  Parts\n\n\
         Part                    Property         Value       Remark\n\
         ----------------------  ---------------  ----------  --------\n\
         Board, 5/8 in. thick    screw spacing    12 in. max  dry\n\
         Sealant                 depth            1/2 in.     a, [ii]\n\
         Coating                 lap              1 in. min   no\n\n\
         2  End\n\nNothing.\n";
    let asked = asked(text);
    for words in ["5/8 in. thick", "dry", "no"] {
        assert!(
            asked.iter().any(|own| own.contains(words)),
            "{words}: {asked:?}"
        );
    }
    assert!(!asked.iter().any(|own| own.contains("[ii]")), "{asked:?}");
}

#[test]
fn a_product_for_some_rows_only_is_left_to_a_person() {
    let text = "1  Cure\n\n28 days.\n\n2  Sources\n\n\
         Ref       Maker                     Product\n\
         --------  ------------------------  -----------------\n\
         2a, 2b    Fennimoor Insulants       FN-Batt 40\n\
         2b only   Fennimoor Insulants       FN-Batt 60\n\
         Others    by permission\n";
    let reading = read_text("sample", text);
    let judged = reading.clauses.iter().filter(|clause| {
        clause.requirement == Requirement::Prose && clause.attribute.contains("2b only")
    });
    assert_eq!(judged.count(), 1);
    // Nor does a row fall away that names none.
    let words = reading.clauses.iter().map(|clause| clause.words.as_str());
    assert!(
        words
            .into_iter()
            .any(|words| words.contains("by permission"))
    );
}

#[test]
fn several_rows_of_one_part() {
    let text = "1. SEAL\n\n     Table 1 - Components\n\n     Component         Property                 Value\n     ---------------   ----------------------   --------------------\n     Seal strip        raw density              (250 ± 25) kg/m³\n                       depth in the joint       ≥ 80 mm\n                       onset of expansion       approx. 180 °C\n     Surface sealant   depth                    10 mm, −0/+3 mm\n                       setting time             max. 48 h\n                       pot life                 min. 20 min\n";
    check(
        text,
        &[
            "seal.density: between 225 kg/m³ and 275 kg/m³",
            "seal.depth: at least 80 mm",
            "Table 1:seal_strip_onset_of_expansion: about 180 °C",
            "sealant.depth: between 10 mm and 13 mm",
            "Table 1:surface_sealant_setting_time: at most 48 hr",
            "Table 1:surface_sealant_pot_life: at least 20 min",
        ],
    );
}

#[test]
fn class_codes_lead_rows_that_no_rule_parts() {
    check(
        "1  Floor\n\nConcrete, ≥ 150 mm thick.\n\n2  Classification\n\n\
         Class                              Backing depth (mm)   Coating (mm)\n\
         EI 90 - H - X - F - W 10 to 50     ≥ 100                ≥ 1,0\n\
         EI 120 - H - X - F - W 10 to 100   ≥ 120                ≥ 2,0\n",
        &[
            "concrete.thickness: at least 150 mm",
            "joint.rating: nominal 90 min [Class: EI 90 - H - X - F - W 10 to 50]",
            "joint.width: between 10 mm and 50 mm [Class: EI 90 - H - X - F - W 10 to 50]",
            "packing.depth: at least 100 mm [Class: EI 90 - H - X - F - W 10 to 50]",
            "2:coating_coating_mm: at least 1 mm [Class: EI 90 - H - X - F - W 10 to 50]",
            "joint.rating: nominal 120 min [Class: EI 120 - H - X - F - W 10 to 100]",
            "joint.width: between 10 mm and 100 mm [Class: EI 120 - H - X - F - W 10 to 100]",
            "packing.depth: at least 120 mm [Class: EI 120 - H - X - F - W 10 to 100]",
            "2:coating_coating_mm: at least 2 mm [Class: EI 120 - H - X - F - W 10 to 100]",
        ],
    );
}

#[test]
fn a_caption_s_parenthesis_that_limits_is_a_clause() {
    let clauses = crate::bounds(
        "1. FLOOR - Concrete slab, 4-1/2 in. thick min.\n\n\
         TABLE 2   PACKING (Wexwool 440; density 4 pcf (64 kg/m3) min)\n\n\
         \x20 Joint width     Depth       Compression\n\
         \x20 in.             min in.     %\n\
         \x20 1/2 to 1        3           20 min\n\
         \x20 over 1 to 3     4           25-33\n",
    );
    assert!(
        clauses.contains(&"packing.density: at least 4 pcf".to_owned()),
        "{clauses:?}"
    );
    assert!(
        clauses
            .iter()
            .any(|clause| clause.starts_with("packing.depth: at least 4 in. [")),
        "{clauses:?}"
    );
}

#[test]
fn a_limit_in_a_heading_reaches_a_cell_that_is_read_as_text() {
    let clauses = crate::bounds(
        "1. FLOOR - Concrete slab, 4-1/2 in. thick min.\n\nTABLE 2 - RATING OF ASSEMBLY\n\n\
         | Rating, hr | Board layers | Fireproofing on beam, min | Stud width |\n\
         |------------|--------------|---------------------------|------------|\n\
         | 1          | 1            | about 1/2 in. of it       | 3-5/8 in.  |\n\
         | 2          | 2            | of 7/8 in. average        | 3-5/8 in.  |\n",
    );
    assert!(
        clauses
            .iter()
            .any(|clause| clause.contains(": at least 7/8 in. [")),
        "{clauses:?}"
    );
    assert!(
        clauses
            .iter()
            .any(|clause| clause.contains(": about 1/2 in. [")),
        "{clauses:?}"
    );
}

#[test]
fn a_cell_s_own_limit_in_brackets_or_behind_a_comma() {
    let cells = |depth: &str, spacing: &str| {
        of_first_row(&format!(
            "Sheet PF-3\n\n1. Packing - Mineral wool, see Table A.\n\nTABLE A\n\n\
             Joint width, in.   Packing depth     Clip spacing\n\
             up to 4            {depth:<17} {spacing}\n\
             over 4 to 8        {depth:<17} {spacing}\n"
        ))
    };
    for (depth, spacing) in [
        ("4 in. (min)", "12 in. OC (max)"),
        ("4 in., min", "12 in. OC, max"),
        ("4 in. min", "12 in. OC max"),
    ] {
        let expected = [
            "packing.depth: at least 4 in.",
            "clip.spacing: at most 12 in.",
        ];
        assert_eq!(cells(depth, spacing), expected, "{depth} {spacing}");
    }
}

/// The bounds of a table's first row, without the row that they are for.
fn of_first_row(text: &str) -> Vec<String> {
    let found = crate::bounds(text).into_iter();
    let of_first = found.filter(|one| one.contains("up to 4"));
    of_first
        .filter_map(|one| Some(one.split_once(" [")?.0.to_owned()))
        .collect()
}

/// EN 13501-2 and AS 1530.4: classes and levels stand alone in a column that says what it holds.
#[test]
fn a_class_alone_in_its_column_is_the_joint_s() {
    check(
        "Sheet PF-3\n\n1. Seal - As in Table 1.\n\nTable 1 - Seals\n\n\
         Joint width w in mm    Depth in mm, min.    Classification\n\
         ----------------------------------------------------------\n\
         10 ≤ w ≤ 30            10                   EI 120\n\
         30 < w ≤ 60            12,5                 EI 90 - V - X - F\n\
         ----------------------------------------------------------\n",
        &[
            "seal.depth: at least 10 mm [Joint width w in mm: 10 ≤ w ≤ 30]",
            "joint.rating: nominal 120 min [Joint width w in mm: 10 ≤ w ≤ 30]",
            "seal.depth: at least 12.5 mm [Joint width w in mm: 30 < w ≤ 60]",
            "joint.rating: nominal 90 min [Joint width w in mm: 30 < w ≤ 60]",
        ],
    );
    let text = "Sheet PF-3\n\n1. Seal - As in Table 1.\n\nTable 1 - Seals\n\n\
         Joint width, mm    Depth, mm, min    FRL\n\
         ----------------------------------------------\n\
         10 to 20           10                -/240/180\n\
         21 to 35           15                -/120/120\n\
         ----------------------------------------------\n";
    let levels = crate::bounds(text).into_iter();
    let levels: Vec<String> = levels.filter(|one| one.contains("min [")).collect();
    assert_eq!(
        levels,
        [
            "joint.integrity: nominal 240 min [Joint width, mm: 10 to 20]",
            "joint.rating: nominal 180 min [Joint width, mm: 10 to 20]",
            "joint.integrity: nominal 120 min [Joint width, mm: 21 to 35]",
            "joint.rating: nominal 120 min [Joint width, mm: 21 to 35]",
        ]
    );
}

/// AS 1530.4: the level of a wall is none of the joint's, and a level may be a limit.
#[test]
fn a_level_of_a_wall_is_not_the_joint_s() {
    let found = crate::bounds(
        "1. Walls - Lined steel stud wall with an established FRL of at least -/120/120.\n\n2. Joint - The FRL is limited to -/60/60.\n",
    );
    let limits = |limit: &str| found.iter().filter(|one| one.contains(limit)).count();
    assert_eq!(limits("at least 120 min"), 2, "{found:#?}");
    assert_eq!(limits("joint.rating: at most 60 min"), 1, "{found:#?}");
    assert!(
        found
            .iter()
            .all(|one| !one.starts_with("joint.rating: at least")),
        "{found:#?}"
    );
}

/// EN 13501-2: rows that begin with their class are for that class.
#[test]
fn rows_that_begin_with_a_class_are_for_it() {
    let found = crate::bounds(
        "1. Classification - As below.\n\n\
         +--------------------------------+---------------------+-------------+\n\
         | Class                          | Element             | Depth       |\n\
         +--------------------------------+---------------------+-------------+\n\
         | EI 120 - H - M 7,5 - B - W 10 to 60 | rigid floor    | min. 120 mm |\n\
         | EI 90 - V - X - F - W 15 to 40 | rigid wall          | min. 90 mm  |\n\
         +--------------------------------+---------------------+-------------+\n",
    );
    let of = |class: &str| {
        let own = found.iter().filter(|one| one.contains(class));
        own.filter_map(|one| one.split_once(" [").map(|(bound, _)| bound.to_owned()))
            .collect::<Vec<_>>()
    };
    let first = of("[Class: EI 120");
    assert_eq!(
        first.get(..3).unwrap(),
        [
            "joint.rating: nominal 120 min",
            "joint.classified_movement: nominal 7.5 %",
            "joint.width: between 10 mm and 60 mm",
        ]
    );
    assert!(
        first.iter().any(|one| one.ends_with("at least 120 mm")),
        "{found:#?}"
    );
    assert_eq!(of("[Class: EI 90").len(), 3, "{found:#?}");
}

#[test]
fn a_movement_is_meant_both_ways_under_its_sign() {
    let found = |head: &str, cell: &str| {
        crate::bounds(&format!(
            "Sheet PF-3\n\n1. Sealant - See Table A.\n\nTABLE A - SEALANT\n\n\
             | Type | Depth, in. | {head} |\n|------|------------|------|\n\
             | A    | 1/2        | {cell} |\n| B    | 3/4        | 12   |\n"
        ))
    };
    for head in ["Movement, % +/-", "Movement % (±)", "Movement, +/- %"] {
        let read = found(head, "25");
        assert!(
            read.iter()
                .any(|one| one.contains("-25") && one.contains("25 %")),
            "{head} {read:#?}"
        );
        assert!(
            !read.iter().any(|one| one.contains("nominal 25")),
            "{head} {read:#?}"
        );
    }
    // How far another value may be off is none of it, and what the cell says besides leaves words.
    for (head, cell) in [("Recess, +/- in.", "1/8"), ("Movement, % +/-", "20 to 25")] {
        let read = found(head, cell);
        assert_eq!(
            read.iter().filter(|one| one.contains("[Type: A]")).count(),
            1,
            "{read:#?}"
        );
    }
    // One way alone is as it says.
    let read = found("Movement, %", "25");
    assert!(
        read.iter().any(|one| one.contains("nominal 25")),
        "{read:#?}"
    );
}

#[test]
fn a_letter_behind_a_temperature_is_its_scale() {
    let found = |label: &str| {
        crate::bounds(&format!(
            "Sheet PF-3\n\n1. Spray - See Table A.\n\nTABLE A - APPLICATION\n\
             ------------------------------------------------\n\
             \u{20}                    Gun          Brush\n\
             ------------------------------------------------\n\
             {label:<20} 40 - 95      >= 35\n\
             Foot traffic after   24 hr        48 hr\n\
             ------------------------------------------------\n"
        ))
    };
    let read = found("Air temp, F");
    assert!(
        read.iter().any(|one| one.contains("at least 35 °F")),
        "{read:#?}"
    );
    let read = found("Air, F");
    assert!(!read.iter().any(|one| one.contains("°F")), "{read:#?}");
}

#[test]
fn the_size_of_a_part_is_no_case_of_its_row() {
    let found = |second: &str| {
        crate::bounds(&format!(
            "Sheet PF-3\n\n1. Retainers - See Table A.\n\nTABLE A - RETAINERS\n\
             -------------------------------------------------------------\n\
             Part            Size                        Spacing\n\
             -------------------------------------------------------------\n\
             Clip            20 ga, 1-1/2 in. wide       12 in. max\n\
             {second:<15} 16 ga, galv                 8 in. max\n\
             -------------------------------------------------------------\n"
        ))
    };
    let read = found("Wire");
    assert!(read.iter().any(|one| one.contains("20 ga")), "{read:#?}");
    assert!(
        read.iter().any(|one| one == "clip.spacing: at most 12 in."),
        "{read:#?}"
    );
    // A number with words behind it is read once.
    assert_eq!(
        read.iter().filter(|one| one.contains("nominal 16")).count(),
        1,
        "{read:#?}"
    );
    // Of two rows of one part, the size tells which is which.
    let read = found("Clip");
    assert!(
        !read.iter().any(|one| one.contains("nominal 16")),
        "{read:#?}"
    );
    assert!(
        read.iter().any(|one| one.contains("[Size: 16 ga, galv]")),
        "{read:#?}"
    );
}

#[test]
fn a_cell_of_every_column_stands_under_each() {
    let found = |cell: &str| {
        crate::bounds(&format!(
            "Sheet PF-3\n\n1. Wall - See below.\n\n\
             Item                      | 1 hr   | 2 hr   | 3 hr\n\
             --------------------------|--------|--------|------\n\
             Wall thickness, in., min  | 4      | 5      | 6\n\
             Recess, in.               | {cell}\n"
        ))
    };
    let read = found("8 in every column");
    for rating in ["[1 hr]", "[2 hr]", "[3 hr]"] {
        let held = |one: &&String| one.contains("nominal 8 in.") && one.contains(rating);
        assert_eq!(read.iter().filter(held).count(), 1, "{read:#?}");
    }
    let read = found("8");
    assert_eq!(read.len(), 3, "{read:#?}");
}

#[test]
fn a_number_doesn_t_reach_over_the_gap_between_columns() {
    let text = |gap: &str| {
        format!(
            "Sheet PF-3\n\n1. Seal - See below.\n\nJoints up to 1{gap}1/4 in.\n\n2. Wool - 4 in. deep min.\n"
        )
    };
    let read = crate::bounds(&text("            "));
    assert!(!read.iter().any(|one| one.contains("1-1/4")), "{read:#?}");
    let read = crate::bounds(&text(" "));
    assert!(read.iter().any(|one| one.contains("1-1/4")), "{read:#?}");
}
