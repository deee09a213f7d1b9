//! Tables with columns for limits and units: `Requirement | Min | Max | Unit`. The wordings are invented.

use super::check;

#[test]
fn a_requirement_has_its_limits_and_its_unit_in_columns_of_their_own() {
    check(
        "Sheet JS-6\n\nPart 1 - Shaft wall\n\n\
         No.    Requirement                              Min       Max       Unit\n\
         -----  ---------------------------------------  --------  --------  --------\n\
         1.1    Stud, depth                              64        102       mm\n\
         1.2    Stud, spacing                            -         600       mm\n\
         1.3    Sprayed fireproofing on beam, density    240       -         kg/m3\n\
         1.4    Downturned beam, width (where used)      200       -         mm\n\n\
         Part 2 - Joint\n\n\
         Requirement                                          Value     Unit\n\
         ---------------------------------------------------  --------  -----------\n\
         2.1  Joint width at installation, minimum            12        mm\n\
         2.2  Packing compression, minimum, joint over 25 mm  40        %\n\
         2.3  Packing depth, minimum, 90 minutes              64        mm\n\
         2.4  Sealant lap over the slab                       15        mm\n\
         2.5  Pieces of packing per 3 m of joint, maximum     3         pieces\n",
        &[
            "stud.width: between 64 mm and 102 mm",
            "stud.spacing: at most 600 mm",
            "fireproofing.density: at least 240 kg/m³",
            "beam.flange_width: at least 200 mm [where used]",
            "joint.width: at least 12 mm",
            "packing.compression: at least 40 % [joint over 25 mm]",
            "packing.depth: at least 64 mm [90 minutes]",
            "sealant.overlap: nominal 15 mm",
            "Part 2:packing_pieces_of_packing_per: at most 3",
        ],
    );
}

#[test]
fn columns_of_limits_stand_in_any_order_and_wording() {
    for heads in [
        "Characteristic          ≥        ≤        Unit ",
        "Parameter               From     To       Units",
        "Item                    Minimum  Maximum  Unit ",
        "Packing                 Lower    Upper    Unit ",
    ] {
        check(
            &format!(
                "Sheet JS-6\n\n1. Packing\n\n{heads}\n------------------------------------------------\n\
                 Depth                   100      -        mm\n\
                 Density                 64       96       kg/m3\n\
                 Compression             25                %\n"
            ),
            &[
                "packing.depth: at least 100 mm",
                "packing.density: between 64 kg/m³ and 96 kg/m³",
                "packing.compression: at least 25 %",
            ],
        );
    }
    check(
        "Sheet JS-6\n\n1. Packing\n\n\
         | Property    | Unit  | Upper limit | Lower limit | Note            |\n\
         |-------------|-------|-------------|-------------|-----------------|\n\
         | Depth       | mm    | --          | 100         |                 |\n\
         | Recess      | mm    | 6           | none        |                 |\n",
        &[
            "packing.depth: at least 100 mm",
            "packing.recess: at most 6 mm",
        ],
    );
}

#[test]
fn without_a_rule_one_row_with_a_unit_is_a_table() {
    check(
        "Sheet JS-6\n\n1. Requirements\n\n\
         Requirement                    Min     Max     Unit\n\
         SLAB\n\
         \x20 Thickness                    125     -       mm\n\
         CLIPS (OPTIONAL)\n\
         \x20 Spacing                      -       450     mm\n\n\
         2. Sealant\n\n\
         \x20               Minimum    Maximum    Unit\n\
         Depth           1/2        3/4        in.\n",
        &[
            "floor.thickness: at least 125 mm",
            "clip.spacing: at most 450 mm [CLIPS (OPTIONAL)]",
            "sealant.depth: between 1/2 in. and 3/4 in.",
        ],
    );
}

#[test]
fn a_rating_may_head_each_column_of_values() {
    check(
        "Sheet JS-6\n\n1. Board and screws\n\n\
         Requirement                              90 minutes     2 hours        Unit\n\
         ---------------------------------------  -------------  -------------  ------------\n\
         1.1  Layers of board, minimum            1              2              layers\n\
         1.2  Screw length, outer layer, minimum  25             41             mm\n",
        &[
            "board.layers: at least 1 [90 minutes]",
            "board.layers: at least 2 [2 hours]",
            "fastener.length: at least 25 mm [90 minutes]",
            "fastener.length: at least 41 mm [2 hours]",
        ],
    );
}

#[test]
fn what_contradicts_or_has_no_known_unit_stays_words() {
    check(
        "Sheet JS-6\n\n1. Packing\n\n\
         Property               Min      Max      Unit\n\
         ---------------------  -------  -------  -------\n\
         Depth, minimum         -        100      mm\n\
         Density                60 - 64  96       kg/m3\n\
         Stiffness              5        -        Bq   \n\
         Recess                 -        6        mm\n",
        &[
            "packing.density: at most 96 kg/m³",
            "packing.recess: at most 6 mm",
        ],
    );
    // A heading that no list knows may ask something of its own.
    check(
        "Sheet JS-6\n\n1. Packing\n\n\
         Property     Min      Facing      Paint       Unit\n\
         -----------  -------  ----------  ----------  -------\n\
         Depth        100      foil        none        mm\n\
         Density      64       foil        none        kg/m3\n",
        &[],
    );
}

#[test]
fn a_tolerance_stands_behind_its_value() {
    check(
        "Sheet JS-6\n\n1. Joint\n\n\
         Parameter               Unit     Value    Tolerance\n\
         ------------------------------------------------\n\
         Width                   mm       40       ±5\n\
         Recess of packing       mm       6        +2\n",
        &["joint.width: between 35 mm and 45 mm"],
    );
}

#[test]
fn headings_that_name_properties_limits_and_values_need_no_rule() {
    check(
        "FLOOR JOINT FJ-12\n\n\
         1  SEALANT\n\
         Component                 Property            Limit         Value\n\
         Elastomeric sealant       depth, 2 hr         min           1/4 in (6 mm)\n\
         \x20                         lap on floor        min           1/2 in (13 mm) each side\n\
         \x20                         tooling                           concave\n\
         \x20                         cure time           min           7 days\n\
         Product                   Amberfield                        AF Elasto\n\n\
         2  COVER PLATE (width over 4 in)\n\
         Component                 Property            Limit         Value\n\
         Steel plate               length              max           10 ft\n\
         \x20                         width               min           2 in past the joint edge\n\n\
         3  NOTES\n\
         \x20  Keep dry.\n",
        &[
            "sealant.depth: at least 1/4 in. [2 hr]",
            "sealant.overlap: at least 1/2 in.",
            "sealant.cure_time: at least 7 days",
            "strip.length: at most 10 ft [width over 4 in]",
        ],
    );
}

#[test]
fn a_numbered_sheet_of_cells_is_a_table_where_its_columns_are_of_limits() {
    check(
        "TEST HOUSE\nData sheet SP/1\nRating\t2 hrs\n\n\
         Sr.\tParameter\tMin\tMax\tUnit\tRemarks\n\
         1\tSLAB\t\t\t\t\n\
         1.1\tSlab thickness\t125\t\tmm\t\n\
         1.2\tPlaster thk on soffit\t\t20\tmm\t\n\
         2\tJOINT\t\t\t\t\n\
         2.1\tJoint width\t20\t75\tmm\tas built\n\
         2.2\tGrade of concrete\t\t\t\tM25\n",
        &[
            "floor.thickness: at least 125 mm",
            "Table:floor_or_roof_plaster_thk: at most 20 mm",
            "joint.width: between 20 mm and 75 mm",
        ],
    );
}
