//! Where an item begins and ends: a line that only goes on with what the line before cites, a number back at the margin, a sentence that falls back to the
//! part around, labels with a hyphen, Roman numerals of configurations. The wordings are invented.

mod common;

use common::{check, clauses};

#[test]
fn what_a_line_cites_at_its_beginning_begins_no_item() {
    check(
        "1. FLOOR -- Min 4 in. thick.\n\
         2. WALL --\n\
         \x20   A. Runners -- Min 2 in. flanges.\n\
         \x20       A1. Runners -- Slotted Runner -- (As an alternate to\n\
         \x20           Item 2A) -- No. 20 MSG, with 2-1/2 in. flanges.\n\
         \x20       A2. Runners -- Clipped Runner -- (As an alternate to\n\
         \x20           Items 2A and 2A1, max 2 Hr walls only, Not Shown) -- Flange height 1-1/4 in.\n\
         \x20   B. Studs -- Min 3-1/2 in. wide, with top nesting in the runner except as noted in Item\n\
         \x20       2A1. Stud spacing not to exceed 24 in. OC.\n",
        &[
            "floor.thickness: at least 4 in",
            "runner.leg_length: at least 2 in",
            "runner.gauge: nominal 20 gauge in 2A1",
            "runner.leg_length: nominal 5/2 in in 2A1",
            "wall.rating: at most 2 hr in 2A2",
            "runner.leg_length: nominal 5/4 in in 2A2",
            "stud.width: at least 7/2 in",
            "stud.spacing: at most 24 in",
        ],
    );
}

#[test]
fn a_bare_number_back_at_the_margin_begins_the_next_item() {
    let text = "1 Walls. As follows.\n\
                \x20   1.1 Concrete. Thickness 150 mm minimum.\n\
                \x20   1.2 Board-lined wall (Configuration A only; joint widths up to 75 mm). Studs\n\
                \x20        92 mm or deeper.\n\
                2 Joint. Nominal width 25 mm to 150 mm.\n\
                \x20   2.1 Mineral wool. Density 45 kg/m3 minimum.\n";
    let found = clauses(text);
    let has = |clause: &str| found.iter().any(|own| own == clause);
    assert!(
        has("1.2:studs_depth: at least 92 mm in Configuration A"),
        "{found:?}"
    );
    assert!(has("joint.width: between 25 to 150 mm"), "{found:?}");
    assert!(has("packing.density: at least 45 kg/m3"), "{found:?}");
}

#[test]
fn a_sentence_no_farther_in_than_a_part_is_of_the_item_around_it() {
    check(
        "1. SLABS\n\
         \x20  a) Concrete: 4-1/2\" min.\n\
         \x20  b) Deck slab (alternate to a): 3\" max. deck, pour\n\
         \x20      stop of 14 ga min. at joint.\n\
         \x20  Edges: plumb within 1/4 in.\n",
        &[
            "1:floor_or_roof_plumb: at most 1/4 in",
            "1a:concrete_min: at least 9/2 in",
            "deck.depth: at most 3 in if \"alternate to a\"",
            "1b:pour_stop_deck_pour_stop: at least 14 gauge if \"alternate to a\"",
        ],
    );
}

#[test]
fn labels_may_have_a_hyphen() {
    check(
        "1. Floor - Min 4 in. thick.\n\n2. Wall - One of the following.\n\n   2-A Concrete. Concrete min 6 in. thick.\n\n   2-B Shaft wall. Studs 24 in. OC max.\n",
        &[
            "floor.thickness: at least 4 in",
            "concrete.thickness: at least 6 in in 2-A",
            "stud.spacing: at most 24 in in 2-B",
        ],
    );
}

#[test]
fn configurations_may_have_roman_numerals() {
    check(
        "1. Floor - 5 in. thick min.\n\n2. Packing - For Configurations I and III the packing is 100 mm deep. For Configuration II the packing is 125 mm deep.\n\n3. Wall (Configuration III only). Studs 92 mm deep.\n",
        &[
            "floor.thickness: at least 5 in",
            "packing.depth: nominal 100 mm in Configuration I or Configuration III",
            "packing.depth: nominal 125 mm in Configuration II",
            "stud.width: nominal 92 mm in Configuration III",
        ],
    );
}

#[test]
fn exclamation_marks_may_be_uprights() {
    check(
        "1. Packing - Min 4 pcf, depth from the table:\n\
         \n\
         \x20   +-----------------------+---------------+-------------+\n\
         \x20   ! Rating                ! Depth         ! Compression !\n\
         \x20   +-----------------------+---------------+-------------+\n\
         \x20   ! 2 Hr                  ! 4 in.         ! 25%         !\n\
         \x20   ! 3 Hr                  ! 5 in.         ! 40%         !\n\
         \x20   +-----------------------+---------------+-------------+\n",
        &[
            "packing.density: at least 4 pcf",
            "packing.depth: nominal 4 in if joint.rating = 2 hr",
            "packing.compression: nominal 25 percent if joint.rating = 2 hr",
            "packing.depth: nominal 5 in if joint.rating = 3 hr",
            "packing.compression: nominal 40 percent if joint.rating = 3 hr",
        ],
    );
}

#[test]
fn what_stands_no_farther_in_than_an_option_is_of_the_item_around_it() {
    check(
        "1. Floor - Min 4-1/2 in. thick concrete.\n\
         2. Joint System - Max 2 in. wide\n\
         \x20  A. Packing - Min 4 pcf mineral wool\n\
         \x20  A1. Packing (As an alternate to Item 2A) - Min 6 pcf mineral wool\n\
         \x20  Packing shall be min 4 in. deep\n\
         \x20  B. Sealant\n\
         \x20     1. Top side: min 1/4 in. thick\n\
         \x20     2. Film (optional): max 5 mil thick.\n\
         \x20     Sealant shall lap concrete min 1/2 in.\n\
         \x20  C. Clips - (Optional) - Max 24 in. OC, each of them fastened with strong screws of steel\n\
         \x20     Type S, min 1 in. long.\n",
        &[
            "concrete.thickness: at least 9/2 in",
            "joint.width: at most 2 in",
            "packing.depth: at least 4 in",
            "packing.density: at least 4 pcf",
            "packing.material: one of mineral wool",
            "packing.density: at least 6 pcf in 2A1",
            "packing.material: one of mineral wool in 2A1",
            "sealant.overlap: at least 1/2 in",
            "2B1:sealant_thickness: at least 1/4 in",
            "2B2:coating_thickness: at most 5 mil in 2B2",
            "clip.spacing: at most 24 in in 2C",
            "fastener.length: at least 1 in in 2C",
        ],
    );
}

#[test]
fn text_at_the_margin_is_of_no_optional_item_before_it() {
    for gap in ["", "\n"] {
        let text = format!(
            "1. Floor - Min 4-1/2 in. thick concrete.\n2. Clips - (Optional) - Max 24 in. OC.\n{gap}Packing shall be recessed min 1/2 in.\n"
        );
        let found = clauses(&text);
        assert!(
            found
                .iter()
                .any(|own| own == "packing.recess: at least 1/2 in"),
            "{found:?}"
        );
    }
    // Where all text stands at the margin, so does that of an option.
    let found = clauses(
        "1. Floor\n\nMin 4-1/2 in. thick concrete.\n\n2. Packing (Optional) - As follows.\n\nPacking shall be recessed min 1/2 in.\n",
    );
    assert!(
        found
            .iter()
            .any(|own| own == "packing.recess: at least 1/2 in in 2"),
        "{found:?}"
    );
}

#[test]
fn notes_at_the_end_are_of_no_option() {
    check(
        "1. Wall* - Min 5 in. thick concrete.\n\
         2. Joint - Max 3 in. wide.\n\
         \x20  A. Packing - Min 4 pcf.(2)\n\
         \x20  B. Clips (Optional) - Max 24 in. OC.(3)\n\
         (2) Min 6 pcf for joints wider than 2 in.\n\
         (3) Min 16 ga.\n\
         * Walls shall be min 6 in. thick for 3 hr rating.\n",
        &[
            "concrete.thickness: at least 5 in",
            "joint.width: at most 3 in",
            "packing.density: at least 4 pcf",
            "clip.spacing: at most 24 in in 2B",
            "packing.density: at least 6 pcf if joint.width > 2 in.",
            "clip.gauge: at least 16 gauge",
            "wall.thickness: at least 6 in if joint.rating = 3 hr",
        ],
    );
    // Parts that other parts speak of are no notes.
    let found = clauses(
        "1. Wall - Min 5 in. thick.\n2. Clips (Optional) - As in (a) or (b).\n(a) Clips max 24 in. OC.\n(b) Clips max 12 in. OC.\n",
    );
    assert!(
        found
            .iter()
            .any(|own| own == "clip.spacing: at most 24 in in 2"),
        "{found:?}"
    );
}

#[test]
fn a_rating_may_stand_behind_the_name_of_a_configuration() {
    check(
        "CONFIGURATION A - 1 HR\n\
         1. Wall - Min 4 in. thick.\n\
         2. Packing - Min 3 in. deep.\n\
         CONFIGURATION B - 2 HR\n\
         1. Wall - Min 6 in. thick.\n\
         2. Packing - Min 4 in. deep.\n\
         Both configurations:\n\
         3. Clips - Max 24 in. OC.\n",
        &[
            "wall.thickness: at least 4 in in Configuration A",
            "packing.depth: at least 3 in in Configuration A",
            "2:packing_configuration_b: nominal 2 hr in Configuration B",
            "wall.thickness: at least 6 in in Configuration B",
            "packing.depth: at least 4 in in Configuration B",
            "clip.spacing: at most 24 in",
        ],
    );
}

#[test]
fn what_is_said_of_all_configurations_is_of_none() {
    for heading in [
        "Both configurations:",
        "Configurations A and B",
        "All Configurations",
    ] {
        let found = clauses(&format!(
            "Configuration A\n1. Wall - Min 4 in. thick.\nConfiguration B\n2. Wall - Min 6 in. thick.\n{heading}\n3. Clips - Max 24 in. OC.\n"
        ));
        let has = |clause: &str| found.iter().any(|own| own == clause);
        assert!(
            has("wall.thickness: at least 6 in in Configuration B"),
            "{found:?}"
        );
        assert!(has("clip.spacing: at most 24 in"), "{found:?}");
    }
}
