//! Tables of every layout: which cells say what others are, which joints they are for, and how they are limited.

#![allow(
    clippy::unwrap_used,
    reason = "what was set up is there; where it isn't, the test fails"
)]

use listing::{Requirement, read_text};

/// The bounds of a text, each `property: words` and the words of its condition.
fn check(text: &str, expected: &[&str]) {
    let reading = read_text("sample", text);
    let bounds = reading.clauses.iter().filter_map(|clause| {
        let Requirement::Bound(bound) = &clause.requirement else {
            return None;
        };
        let condition = clause.condition.as_ref();
        let condition = condition.map_or_else(String::new, |it| format!(" [{}]", it.words));
        Some(format!("{}: {bound}{condition}", clause.property))
    });
    assert_eq!(bounds.collect::<Vec<_>>(), expected, "{text}");
}

#[test]
fn a_column_of_properties_behind_one_of_parts() {
    check(
        "1  Make-up\n\n\
         Table 1 - Components\n\n\
         Component      Property              Value\n\
         ------------   -------------------   -------------\n\
         Seal strip     depth in the joint    >= 80 mm\n\
         Stone wool     density               >= 50 kg/m3\n\
         \x20              depth                 at least 60 mm\n\
         Cover strip    overlap, each side    min. 25 mm\n\
         (optional)     screw spacing         <= 250 mm\n\
         ------------   -------------------   -------------\n",
        &[
            "seal.depth: at least 80 mm",
            "packing.density: at least 50 kg/m³",
            "packing.depth: at least 60 mm",
            "Table 1:cover_strip_optional_overlap_each: at least 25 mm [Cover strip (optional)]",
            "fastener.spacing: at most 250 mm [Cover strip (optional)]",
        ],
    );
}

#[test]
fn columns_of_limits() {
    check(
        "5  Field of application\n\n\
         Table 3 - Limits\n\n\
         Characteristic             Lower limit    Upper limit\n\
         ------------------------   ------------   ------------\n\
         Depth of seal strip        80 mm          110 mm\n\
         Thickness of wall          150 mm         none\n\
         ------------------------   ------------   ------------\n",
        &[
            "seal.depth: at least 80 mm",
            "seal.depth: at most 110 mm",
            "wall.thickness: at least 150 mm",
        ],
    );
}

#[test]
fn columns_headed_by_the_ratings_they_are_for() {
    check(
        "A   SLAB\n\
         \x20   -------------------------------------------\n\
         \x20   Rating, hr            1        2        3\n\
         \x20   -------------------------------------------\n\
         \x20   Thickness, min in.    3-1/2    4-1/2    6\n\
         \x20   Density, pcf          100-150  100-150  140-150\n\
         \x20   -------------------------------------------\n\
         B   PACKING\n",
        &[
            "floor.thickness: at least 3-1/2 in. [Rating, hr: 1]",
            "floor.thickness: at least 4-1/2 in. [Rating, hr: 2]",
            "floor.thickness: at least 6 in. [Rating, hr: 3]",
            "A:slab_density_pcf: between 100 pcf and 150 pcf [Rating, hr: 1]",
            "A:slab_density_pcf: between 100 pcf and 150 pcf [Rating, hr: 2]",
            "A:slab_density_pcf: between 140 pcf and 150 pcf [Rating, hr: 3]",
        ],
    );
}

#[test]
fn a_parts_noun_is_no_attribute_where_another_word_is() {
    check(
        "1. WALL\n\n\
         ----------------------------------------------\n\
         Rating   Stud depth   Steel ga.    Studs o.c.\n\
         hr       min in.      or heavier   max in.\n\
         ----------------------------------------------\n\
         1        2-1/2        25           24\n\
         3        3-5/8        20           16\n\
         ----------------------------------------------\n\
         2. JOINT\n",
        &[
            "stud.width: at least 2-1/2 in. [Rating hr: 1]",
            "1:wall_steel_ga_or_heavier: at least 25 gauge [Rating hr: 1]",
            "stud.spacing: at most 24 in. [Rating hr: 1]",
            "stud.width: at least 3-5/8 in. [Rating hr: 3]",
            "1:wall_steel_ga_or_heavier: at least 20 gauge [Rating hr: 3]",
            "stud.spacing: at most 16 in. [Rating hr: 3]",
        ],
    );
}

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
fn rows_under_a_line_of_their_own_and_columns_under_one_heading() {
    check(
        "2. WALLS\n\n\
         \x20   TABLE 1 - WALL JOINTS\n\
         \x20   ------------------------------------------------------------\n\
         \x20                                     Joint width (mm)\n\
         \x20                             ------------------------------\n\
         \x20                             10 to 25        26 to 50\n\
         \x20   ------------------------------------------------------------\n\
         \x20   FRL -/60/60\n\
         \x20     Packing depth, min (mm)     50              60\n\
         \x20     Compression, min (%)        15              20 (a)\n\
         \x20   FRL -/120/120\n\
         \x20     Packing depth, min (mm)     75              90\n\
         \x20   ------------------------------------------------------------\n\
         3. SLABS\n",
        &[
            "packing.depth: at least 50 mm [FRL -/60/60; Joint width (mm): 10 to 25]",
            "packing.depth: at least 60 mm [FRL -/60/60; Joint width (mm): 26 to 50]",
            "Table 1:wall_joints_compression_min: at least 15 % [FRL -/60/60; Joint width (mm): 10 to 25]",
            "Table 1:wall_joints_compression_min: at least 20 % [FRL -/60/60; Joint width (mm): 26 to 50]",
            "packing.depth: at least 75 mm [FRL -/120/120; Joint width (mm): 10 to 25]",
            "packing.depth: at least 90 mm [FRL -/120/120; Joint width (mm): 26 to 50]",
        ],
    );
}

#[test]
fn entries_with_their_unit_in_brackets() {
    check(
        "PART A   CONCRETE WALL\n\n\
         Thickness [mm]                   min. 125 for 60 and 90 minutes\n\
         \x20                                min. 150 for 120 minutes\n\
         Spread of grinding, from\n\
         \x20 joint edge [mm]                not less than 50\n\n\
         PART B   PACKING\n\n\
         Depth [mm]                       not below 90\n\
         Compression [%]:                 25 - 35\n\
         \x20                                in joints wider than 50 mm, 40 minimum\n\
         Length of pieces [mm]:           600 minimum. Short pieces shall not be placed next\n\
         \x20                                to one another.\n\n\
         PART C1  SEALANT\n\n\
         Depth, minimum [mm]:\n\
         \x20 60 minutes                     10\n\
         \x20 120 minutes                    15\n\
         Skin time [min]                  about 45\n\
         Bond breaker tape:               Required behind the sealant\n\
         \x20 thickness [mm]                 0.1 to 0.3\n\n\
         PART C2  COATING\n\n\
         Wet film [mm]:                   2.5\n\
         Overlap [mm]:                    onto concrete, 25 minimum\n",
        &[
            "wall.thickness: at least 125 mm [for 60 and 90 minutes]",
            "wall.thickness: at least 150 mm [for 120 minutes]",
            "A:joint_spread_of_grinding_from: at least 50 mm",
            "packing.depth: at least 90 mm",
            "packing.compression: between 25 % and 35 %",
            "packing.compression: at least 40 % [in joints wider than 50 mm]",
            "packing.length: at least 600 mm",
            "sealant.depth: at least 10 mm [60 minutes]",
            "sealant.depth: at least 15 mm [120 minutes]",
            "C1:sealant_skin_time: about 45 min",
            "tape.thickness: between 0.1 mm and 0.3 mm",
            "coating.wet_thickness: nominal 2.5 mm",
            "coating.overlap_concrete: at least 25 mm",
        ],
    );
}

#[test]
fn what_is_at_the_joint_is_no_measure_of_it() {
    check(
        "A. WALL\n\n\
         Edge screws from joint [mm]:     12 - 18\n\
         Joint width [mm]:                15 to 75\n\n\
         B. PACKING\n",
        &[
            "A:fastener_edge_screws_from_joint: between 12 mm and 18 mm",
            "joint.width: between 15 mm and 75 mm",
        ],
    );
}

#[test]
fn rules_drawn_within_a_heading_and_rows_repeated_in_another_unit() {
    check(
        "A. PACKING AND COATING\n\n\
         ------------------------------------------------------------------------\n\
         \x20                    Packing                            Movement\n\
         \x20 Joint width,       ----------------------------       of joint,\n\
         \x20 in. (mm)           Pieces    Depth,                   max, %\n\
         \x20                              min, in. (mm)\n\
         ------------------------------------------------------------------------\n\
         \x20 1/2 to 1           one       3-1/2 (89)               25\n\
         \x20 (13 to 25)\n\
         \x20 over 1 to 2        one       4 (102)                  20\n\
         \x20 (25 to 51)\n\
         ------------------------------------------------------------------------\n\
         B. TOP\n",
        &[
            "packing.layers: exactly 1 [Joint width, in. (mm): 1/2 to 1 (13 to 25)]",
            "packing.depth: at least 3-1/2 in. [Joint width, in. (mm): 1/2 to 1 (13 to 25)]",
            "A:joint_movement_of_joint_max: at most 25 % [Joint width, in. (mm): 1/2 to 1 (13 to 25)]",
            "packing.layers: exactly 1 [Joint width, in. (mm): over 1 to 2 (25 to 51)]",
            "packing.depth: at least 4 in. [Joint width, in. (mm): over 1 to 2 (25 to 51)]",
            "A:joint_movement_of_joint_max: at most 20 % [Joint width, in. (mm): over 1 to 2 (25 to 51)]",
        ],
    );
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
        clause.words == "none" && clause.requirement == Requirement::Prose
    };
    assert!(reading.clauses.iter().any(none), "{:?}", reading.clauses);
    // A least depth under an upper limit is neither.
    check(
        &table("Lower limit", "Upper limit").replace(
            "Splices in a run           1 ",
            "Depth of wool              9 mm",
        ),
        &[
            "seal.depth: at least 80 mm",
            "seal.depth: nominal 110 mm",
            "packing.depth: at least 9 mm",
        ],
    );
}

#[test]
fn remarks_and_words_are_about_what_the_label_names() {
    check(
        "Dimensions are in inches.\n\n\
         ITEM A.  TRACK\n\
         Property                     Requirement                    Remark\n\
         ---------------------------  -----------------------------  -----------------------\n\
         Steel, gauge                 20 or heavier\n\
         Leg                          3                              2-1/2 will do where the\n\
         \x20                                                           joint is 1/2 or less\n\
         Topmost screw below track    1/2 at least                   none\n\
         leg\n\
         Splice of track              gap 1/8 to 3/16                backing plate 6 long\n\n\
         ITEM B.  STUDS\n\
         Width is 3 min.\n",
        &[
            "runner.gauge: at least 20 gauge",
            "runner.leg_length: nominal 3 in.",
            "A:leg_will_do: nominal 2-1/2 in. [where the joint is 1/2 or less]",
            "A:runner_topmost_screw_below_track: at least 1/2 in.",
            "A:gap_gap: between 1/8 in. and 3/16 in.",
            "strip.length: nominal 6 in.",
            "stud.width: at least 3 in.",
        ],
    );
}

#[test]
fn ratings_behind_numbered_rows() {
    check(
        "A. CONSTRUCTION\n\
         -------------------------------------------------------------\n\
         REF  ITEM                              1 HR          2 HR\n\
         -------------------------------------------------------------\n\
         A1   SLAB, MIN THK, IN. (MM)           3-1/2 (89)    4-3/4 (121)\n\
         A2   PACKING, MIN COMPRESSION, %       20            25\n\
         A3   JOINT, MAX WIDTH, IN. (MM)        6 (152)       4 (102)\n\
         -------------------------------------------------------------\n\n\
         B. PARTS\n\nNothing else.\n",
        &[
            "floor.thickness: at least 3-1/2 in. [1 HR]",
            "floor.thickness: at least 4-3/4 in. [2 HR]",
            "packing.compression: at least 20 % [1 HR]",
            "packing.compression: at least 25 % [2 HR]",
            "joint.width: at most 6 in. [1 HR]",
            "joint.width: at most 4 in. [2 HR]",
        ],
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
fn labels_that_end_in_their_unit() {
    check(
        "DATA SHEET\n\nPACKING\n\
         Density, kg/m3               64 or more\n\
         Depth (mm)                   min 100\n\
         Compression (%)              25 to 33\n\n\
         COATING\n\
         Wet film (mm)                3\n\
         No. of coats                 2\n\n\
         RUNNER\n\
         Leg length: 75 mm, not less\n\
         Screw spacing: 400 mm\n",
        &[
            "packing.density: at least 64 kg/m³",
            "packing.depth: at least 100 mm",
            "packing.compression: between 25 % and 33 %",
            "coating.wet_thickness: nominal 3 mm",
            "coating.coats: exactly 2",
            "runner.leg_length: at least 75 mm",
            "runner.screw_spacing: nominal 400 mm",
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
fn a_unit_behind_a_number_of_the_label_is_not_the_cells() {
    check(
        "1. STRIPS\n\n     Property                       Case     Value\n     --------------------------------------------------\n     Strips, joint up to 30 mm      all      1 or more\n     Strips, joint over 30 mm       all      2 or more\n     Depth of backing, mm           all      80 to 160\n",
        &[
            "1:steel_strip_strips_joint_up: at least 1 [joint up to 30 mm]",
            "1:steel_strip_strips_joint_over: at least 2 [joint over 30 mm]",
            "packing.depth: between 80 mm and 160 mm",
        ],
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
fn a_schedule_with_columns_by_rating() {
    let text = "ref     part             what is required                      1 hr            2 hr\n-------------------------------------------------------------------------------------\n\nA1      Floor slab       Concrete, flat, troweled. Density     min 2-1/2 in.   min 4-1/2 in.\n                         100 to 150 pcf. Thickness as at\n                         right.\n\nA2      Studs            Steel, 25 ga, seated in the runner    24 in. o.c.     16 in. o.c.\n                         and screwed to it on one side.\n\nA3      Joint width      Measured board edge to floor. Not     1/4 to 1 in.    1/4 to 3/4 in.\n                         to vary more than 1/8 in. in any\n                         one stud bay.\n";
    check(
        text,
        &[
            "concrete.density: between 100 pcf and 150 pcf",
            "A1:floor_or_roof_floor_slab: at least 2-1/2 in. [1 hr]",
            "A1:floor_or_roof_floor_slab: at least 4-1/2 in. [2 hr]",
            "stud.gauge: nominal 25 gauge",
            "stud.spacing: nominal 24 in. [1 hr]",
            "stud.spacing: nominal 16 in. [2 hr]",
            "A3:joint_not_to_vary_in: at most 1/8 in.",
            "joint.width: between 1/4 in. and 1 in. [1 hr]",
            "joint.width: between 1/4 in. and 3/4 in. [2 hr]",
        ],
    );
}

#[test]
fn labels_under_a_marked_label() {
    check(
        "B       CURTAIN WALL\nB.1     mullions, depth        5 in. (127 mm) min\n        width                  2-1/2 in. (64 mm) min\n        wall thickness         0.100 in. (2.5 mm), nominal\nB.2     glass                  1/4 in.\n",
        &[
            "B.1:mullions_depth: at least 5 in.",
            "B.1:width: at least 2-1/2 in.",
            "B.1:wall_thickness: nominal 0.1 in.",
            "B.2:glass_glass: nominal 1/4 in.",
        ],
    );
}
