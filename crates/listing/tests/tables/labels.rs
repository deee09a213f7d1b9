//! Labels of rows: what they name, and the units and ratings they bring.

use crate::check;

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
            "A:leg_leg_will_do: nominal 2-1/2 in. [where the joint is 1/2 or less]",
            "A:fastener_topmost_screw_below_track: at least 1/2 in.",
            "A:gap_gap: between 1/8 in. and 3/16 in.",
            "strip.length: nominal 6 in.",
            "stud.width: at least 3 in.",
        ],
    );
}

#[test]
fn a_permitted_range_is_no_case() {
    let field = |heading: &str| {
        format!(
            "A. FIELD OF APPLICATION\n\
             +-------------------+-----------------------+\n\
             | Parameter         | {heading:<21} |\n\
             +-------------------+-----------------------+\n\
             | Wall density      | at least 550 kg/m3    |\n\
             | Wall thickness    | at least 150 mm       |\n\
             +-------------------+-----------------------+\n"
        )
    };
    for heading in ["Permitted range", "Range"] {
        check(
            &field(heading),
            &[
                "wall.density: at least 550 kg/m³",
                "wall.thickness: at least 150 mm",
            ],
        );
    }
    check(
        &field("Shaft wall"),
        &[
            "wall.density: at least 550 kg/m³ [Shaft wall]",
            "wall.thickness: at least 150 mm [Shaft wall]",
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
fn a_unit_behind_a_number_of_the_label_is_not_the_cells() {
    check(
        "1. STRIPS\n\n     Property                       Case     Value\n     --------------------------------------------------\n     Strips, joint up to 30 mm      all      1 or more\n     Strips, joint over 30 mm       all      2 or more\n     Depth of backing, mm           all      80 to 160\n",
        &[
            "1:steel_strip_strips: at least 1 [joint up to 30 mm]",
            "1:steel_strip_strips: at least 2 [joint over 30 mm]",
            "packing.depth: between 80 mm and 160 mm",
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
