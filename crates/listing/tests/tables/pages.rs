//! Pages printed to text: tables that tabs part, headings, and bullets under bullets. The wordings are invented.

use super::check;

#[test]
fn tabs_part_the_cells_of_a_table() {
    check(
        "JOINT JX-1\n\n## Packing\n\n\
         Rating\tJoint width\tDepth\tCompression\n\
         1 hr\tUp to 2\"\t3\" min\t25% min\n\
         1 hr\tOver 2\" to 4\"\t5\" min\t33% min\n\n\
         ## Spray\n\n\t1 hr\t2 hr\nWet film, min\t1/8\"\t1/4\"\nDry film, min\t66 mil\t130 mil\n",
        &[
            "packing.depth: at least 3 in. [Rating: 1 hr; Joint width: Up to 2\"]",
            "packing.compression: at least 25 % [Rating: 1 hr; Joint width: Up to 2\"]",
            "packing.depth: at least 5 in. [Rating: 1 hr; Joint width: Over 2\" to 4\"]",
            "packing.compression: at least 33 % [Rating: 1 hr; Joint width: Over 2\" to 4\"]",
            "coating.wet_thickness: at least 1/8 in. [1 hr]",
            "coating.wet_thickness: at least 1/4 in. [2 hr]",
            "coating.dry_thickness: at least 66 mil [1 hr]",
            "coating.dry_thickness: at least 130 mil [2 hr]",
        ],
    );
    // Two lines of label and value are no table under headings.
    check(
        "JOINT JX-1\n\n## Clips\n\nSpacing\t18 in. max\nWidth\t1 in. min\n",
        &["clip.spacing: at most 18 in.", "clip.width: at least 1 in."],
    );
}

#[test]
fn headings_are_items_where_only_the_notes_are_numbered() {
    let bullets = "* Depth: 4\" min\n* Density: 4 pcf min\n";
    let notes = "1. Keep dry.\n2. Keep clean.\n";
    for (packing, sealant, last) in [
        ("## Packing\n\n", "## Sealant\n\n", "## Notes\n\n"),
        ("== Packing ==\n\n", "== Sealant ==\n\n", "== Notes ==\n\n"),
        ("Packing\n=======\n", "Sealant\n=======\n", "Notes\n=====\n"),
        ("Packing\n", "Sealant\n", "Notes\n\n"),
    ] {
        check(
            &format!(
                "JOINT JX-1\n\n{packing}{bullets}\n{sealant}* Depth: 1/2\" min\n* Bond: 3/8\" min on each face\n\n{last}{notes}"
            ),
            &[
                "packing.depth: at least 4 in.",
                "packing.density: at least 4 pcf",
                "sealant.depth: at least 1/2 in.",
                "sealant.bond: at least 3/8 in.",
            ],
        );
    }
}

#[test]
fn bullets_are_about_the_line_that_leads_to_them() {
    check(
        "JOINT JX-1\n\n## Joint\n\n* Safing insulation:\n    - density: 4 pcf minimum\n    - depth: 4 in. minimum\n\
         * Safing is held with Z-clips where the joint exceeds 6 in.:\n    - 20 gauge or heavier\n    - 24 in. o.c. max\n\
         * Studs\n    - spacing: 24 in. max\n* Width: 1 in. to 10 in.\n",
        &[
            "packing.density: at least 4 pcf",
            "packing.depth: at least 4 in.",
            "clip.gauge: at least 20 gauge [where the joint exceeds 6 in.]",
            "clip.spacing: at most 24 in. [where the joint exceeds 6 in.]",
            "stud.spacing: at most 24 in.",
            "joint.width: between 1 in. and 10 in.",
        ],
    );
}

#[test]
fn a_line_that_only_says_where_bullets_hold_names_nothing() {
    check(
        "1. Floor - Concrete slab.\n\n2. Packing\n\nIn joints over 2 in.:\n\n- 6 in. deep min.\n\n- 33 percent compression min.\n\n\
         In joints up to 2 in.:\n\n- 4 in. deep min.\n",
        &[
            "packing.depth: at least 6 in. [In joints over 2 in.]",
            "packing.compression: at least 33 % [In joints over 2 in.]",
            "packing.depth: at least 4 in. [In joints up to 2 in.]",
        ],
    );
}
