//! Columns of short cells: labels and values line by line, units and limits in columns of their own, marks that repeat. The wordings are
//! invented.

mod common;

use common::check;

#[test]
fn a_schedule_whose_rows_are_labels_and_values_is_read_line_by_line() {
    check(
        "SHEET HW 12\n\
         \n\
         ITEM   PART             REQUIREMENT                 VALUE\n\
         ----------------------------------------------------------------\n\
         A      Floor            thickness                   4-1/2 in. min\n\
         \x20                       density                     145 pcf min\n\
         \x20                       edge out of line            1/4 in. max\n\
         B      Track            gauge                       25 ga min\n\
         \x20                       leg                         2-1/2 in. min\n\
         \x20                       gap, joints over 2 in.      1 in. min\n\
         C      Packing          compression                 25 %\n\
         \x20                       recess                      -\n\
         \x20                       depth, 2 hr                 4 in. min\n\
         \x20                       depth                       Table A\n\
         \x20                       splices apart               24 in. min\n\
         ----------------------------------------------------------------\n",
        &[
            "floor.thickness: at least 9/2 in",
            "A:floor_density: at least 145 pcf",
            "A:floor_edge_out_of_line: at most 1/4 in",
            "runner.gauge: at least 25 gauge",
            "runner.leg_length: at least 5/2 in",
            "runner.butt_gap: at least 1 in if \"joints over 2 in.\"",
            "packing.compression: nominal 25 percent",
            "packing.depth: at least 4 in if joint.rating = 2 hr",
            "packing.splice_spacing: at least 24 in",
        ],
    );
    check(
        "SHEET HW 13\n\
         \n\
         ITEM   PART             REQUIREMENT                 REMARKS\n\
         ----------------------------------------------------------------\n\
         A      Floor            Concrete slab of at least   Clean and dry\n\
         \x20                       4 in. and of 110 pcf min    when sealed\n\
         B      Packing          Mineral wool 4 in. deep     Pressed in\n\
         \x20                       min, of 4 pcf or more       by hand\n",
        &[
            "A:concrete_slab_concrete_slab: at least 4 in",
            "concrete.density: at least 110 pcf",
            "packing.depth: at least 4 in",
            "packing.density: at least 4 pcf",
            "packing.material: one of Mineral wool",
        ],
    );
}

#[test]
fn a_box_whose_rows_are_labels_and_values_is_read_line_by_line() {
    check(
        "+------+----------------+----------------------+-------------------+\n\
         | Ref  | Part           | Requirement          | Value             |\n\
         +------+----------------+----------------------+-------------------+\n\
         | W1   | Concrete wall  | thickness            | 150 mm min        |\n\
         |      |                | density              | 2000 kg/m3 min    |\n\
         +------+----------------+----------------------+-------------------+\n\
         | J1   | Packing        | density              | 60 kg/m3 min      |\n\
         |      |                | compression          | 20 to 50 %        |\n\
         +------+----------------+----------------------+-------------------+\n",
        &[
            "wall.thickness: at least 150 mm",
            "wall.density: at least 2000 kg/m3",
            "packing.density: at least 60 kg/m3",
            "packing.compression: between 20 to 50 percent",
        ],
    );
}

#[test]
fn a_box_may_have_a_title_behind_each_number() {
    check(
        "1  Seal\n\
         \n\
         \x20   Mineral wool, density 80 kg/m3 or more.\n\
         \n\
         2  Field of application\n\
         \n\
         \x20   +------------------------+---------------------------------------------+\n\
         \x20   | 2.1 Joint width        | 10 mm to 100 mm                             |\n\
         \x20   | 2.2 Floor thickness    | ≥ 150 mm                                    |\n\
         \x20   | 2.3 Backing            | depth ≥ 100 mm, density ≥ 60 kg/m³,         |\n\
         \x20   |                        | compressed by 20 % or more                  |\n\
         \x20   +------------------------+---------------------------------------------+\n",
        &[
            "packing.density: at least 80 kg/m3",
            "packing.material: one of Mineral wool",
            "2.1:joint_width: between 10 to 100 mm",
            "2.2:floor_thickness: at least 150 mm",
            "packing.depth: at least 100 mm",
            "packing.density: at least 60 kg/m3",
            "packing.compression: at least 20 percent",
        ],
    );
}

#[test]
fn the_units_of_the_rows_may_have_a_column_of_their_own() {
    check(
        "1. Packing - Mineral wool, as in the table.\n\
         \n\
         TABLE 1  PACKING\n\
         Property               Unit     Min    Max\n\
         --------------------------------------------\n\
         Density                kg/m3    60     110\n\
         Depth                  mm       100    -\n\
         Recess                 mm       -      12\n\
         Moisture               % mass   n/a    1\n\
         Ash                    Bq       3      7\n",
        &[
            "packing.density: between 60 to 110 kg/m3",
            "packing.depth: at least 100 mm",
            "packing.recess: at most 12 mm",
            "Table 1:packing_moisture: at most 1 percent",
        ],
    );
    check(
        "Part 1 - Supporting structure\n\
         \n\
         No.    Requirement                                    Min       Max       Unit\n\
         -----  ---------------------------------------------  --------  --------  --------\n\
         1.1    Slab above, thickness                          130       -         mm\n\
         1.2    Stud, spacing                                  -         600       mm\n\
         \n\
         Part 2 - Joint\n\
         \n\
         Requirement                                                    Value     Unit\n\
         -------------------------------------------------------------  --------  -----------\n\
         2.1  Joint width at installation, minimum                      12        mm\n\
         2.2  Packing compression, minimum, joint over 25 mm            40        %\n\
         2.3  Air temperature while sealing, maximum                    38        degrees C\n",
        &[
            "floor.thickness: at least 130 mm",
            "stud.spacing: at most 600 mm",
            "joint.width: at least 12 mm",
            "packing.compression: at least 40 percent if joint.width > 25 mm",
            "Part 2:joint_air_temperature_while_sealing: at most 38 degC",
        ],
    );
    check(
        "1. Seal - As in the table.\n\
         \n\
         \x20 Part        Property        Req.           Unit\n\
         \x20 -----------------------------------------------\n\
         \x20 Wool        density         ≥ 45           kg/m³\n\
         \x20             depth           100 ± 5        mm\n\
         \x20             melting point   > 1000         °C\n\
         \x20 Mastic      depth           10             mm\n\
         \x20             wet film        1.0 - 1.5      mm\n",
        &[
            "packing.density: at least 45 kg/m3",
            "packing.depth: between 95 to 105 mm",
            "packing.melting_point: more than 1000 degC",
            "sealant.depth: nominal 10 mm",
            "coating.wet_thickness: between 1 to 3/2 mm",
        ],
    );
}

#[test]
fn two_columns_may_be_one_range() {
    check(
        "1. Packing - As in the table.\n\
         \n\
         TABLE 1  DEPTHS\n\
         \n\
         \x20 Joint width, mm      Depth     Strips\n\
         \x20 from      to         mm, min\n\
         \x20 -------------------------------------\n\
         \x20 10        30         60        1\n\
         \x20 31        60         90        2\n",
        &[
            "Table 1:depths_depth_mm_min: at least 60 mm if joint.width from 10 mm to 30 mm",
            "Table 1:steel_strip_strips: exactly 1 count if joint.width from 10 mm to 30 mm",
            "Table 1:depths_depth_mm_min: at least 90 mm if joint.width from 31 mm to 60 mm",
            "Table 1:steel_strip_strips: exactly 2 count if joint.width from 31 mm to 60 mm",
        ],
    );
    check(
        "1. Packing - As in the table.\n\
         \n\
         REQUIREMENTS\n\
         \n\
         Feature                        Value               Tolerance\n\
         --------------------------------------------------------------\n\
         Recess                         10 mm               ± 2 mm\n\
         Width oversize                 25 %                -\n\
         Depth                          12 mm               +2, -0\n",
        &[
            "REQUIREMENTS:requirements_recess: between 8 to 12 mm",
            "REQUIREMENTS:requirements_width_oversize: nominal 25 percent",
            "REQUIREMENTS:requirements_depth: between 12 to 14 mm",
        ],
    );
}

#[test]
fn a_mark_repeats_the_cell_above_or_in_a_labelled_row_the_one_to_the_left() {
    check(
        "1. Fixings - As in the table.\n\
         \n\
         TABLE 7\n\
         Substrate     Length, mm    Spacing, mm    Edge distance, mm\n\
         ------------------------------------------------------------\n\
         Concrete      40 min        300 max        50 min\n\
         Masonry       50 min        do.            \"\n",
        &[
            "Table 7:length_mm: at least 40 mm if \"Substrate: Concrete\"",
            "Table 7:spacing_mm: at most 300 mm if \"Substrate: Concrete\"",
            "Table 7:edge_distance_mm: at least 50 mm if \"Substrate: Concrete\"",
            "Table 7:length_mm: at least 50 mm if \"Substrate: Masonry\"",
            "Table 7:spacing_mm: at most 300 mm if \"Substrate: Masonry\"",
            "Table 7:edge_distance_mm: at least 50 mm if \"Substrate: Masonry\"",
        ],
    );
    check(
        "1. Packing - One of the boards in Table 2.\n\
         \n\
         TABLE 2  BOARDS\n\
         +------------------+-----------+-----------+-----------+\n\
         | Property         | Board A   | Board B   | Board C   |\n\
         +------------------+-----------+-----------+-----------+\n\
         | Density, pcf     | 4 min     | 6 min     | 8 min     |\n\
         | Thickness, in.   | 2         | 2-1/2     | do.       |\n\
         +------------------+-----------+-----------+-----------+\n",
        &[
            "Table 2:boards_density_pcf: at least 4 pcf if \"Board A\"",
            "Table 2:boards_density_pcf: at least 6 pcf if \"Board B\"",
            "Table 2:boards_density_pcf: at least 8 pcf if \"Board C\"",
            "board.thickness: nominal 2 in if \"Board A\"",
            "board.thickness: nominal 5/2 in if \"Board B\"",
            "board.thickness: nominal 5/2 in if \"Board C\"",
        ],
    );
}

#[test]
fn columns_headed_by_numbers_of_one_thing_are_cases() {
    check(
        "1. Boards - Strips of board as in the table.\n\
         \n\
         TABLE 4  STRIP DEPTH, MM (MINIMUM)\n\
         Joint width      1 layer      2 layers\n\
         ------------------------------------------\n\
         up to 25 mm      100          75\n\
         26 to 50 mm      150          100\n\
         over 50 mm       not allowed  125\n",
        &[
            "Table 4:steel_strip_strip_depth_mm: at least 100 mm if joint.width <= 25 mm and \"1 layer\"",
            "Table 4:steel_strip_strip_depth_mm: at least 75 mm if joint.width <= 25 mm and \"2 layers\"",
            "Table 4:steel_strip_strip_depth_mm: at least 150 mm if joint.width from 26 mm to 50 mm and \"1 layer\"",
            "Table 4:steel_strip_strip_depth_mm: at least 100 mm if joint.width from 26 mm to 50 mm and \"2 layers\"",
            "Table 4:steel_strip_strip_depth_mm: at least 125 mm if joint.width > 50 mm and \"2 layers\"",
        ],
    );
}

#[test]
fn remarks_with_numbers_are_read_and_a_label_tells_its_rating() {
    let text = "1. Data\n\n\
        Sr.\tParameter\tMin\tMax\tUnit\tRemarks\n\
        1.1\tClip spacing\t\t450\tmm\tEnd clip 100 mm (max) from end of piece\n\
        1.2\tCompression\t25\t50\t%\t33% min if joint exceeds 50 mm\n\
        1.3\tClip depth for 3 hrs\t125\t\tmm\t\n\
        1.4\tClip width\t25\t\tmm\tsee Note 2\n";
    let found = common::clauses(text);
    for expected in [
        "clip.end_distance: at most 100 mm",
        "at least 33 percent if joint.width > 50 mm",
        "at least 125 mm if joint.rating = 3 hr",
    ] {
        assert!(
            found.iter().any(|clause| clause.ends_with(expected)),
            "{expected} {found:?}"
        );
    }
    assert_eq!(found.len(), 6, "{found:?}");
}

#[test]
fn values_in_columns_of_a_text_without_items_are_a_table() {
    let text = "The sealant is on both faces.\n\n\
        \x20    Sealant, by grade                  Gun grade            Spray grade\n\n\
        \x20    Depth, wet, at least               13 mm (1/2 in.)      3 mm (1/8 in.)\n\
        \x20    Depth, dry, at least               10 mm (3/8 in.)      1.5 mm (1/16 in.)\n\
        \x20    Lap on slab, at least              6 mm (1/4 in.)       25 mm (1 in.)\n\
        \x20    Joint width, not over              32 mm (1-1/4 in.)    50 mm (2 in.)\n\
        \x20    Hours to touch, about              3                    1-1/2\n";
    let found = common::clauses(text);
    assert_eq!(found.len(), 10, "{found:?}");
    let grades = |grade: &str| found.iter().filter(|clause| clause.contains(grade)).count();
    assert_eq!((grades("Gun grade"), grades("Spray grade")), (5, 5));
    // A time to wait is no rating.
    assert!(!found.iter().any(|clause| clause.contains("joint.rating")));
}
