//! Numbers whose unit stands elsewhere, or nowhere: in the label, behind the last of several, in the words before. What can't be read is shown.
//! The wordings are invented; what they mean is common practice.

mod common;

use common::{check, unread};

fn shown(text: &str) -> Vec<String> {
    unread(&format!("1. JOINT - {text}\n"))
}

#[test]
fn the_lower_end_of_a_chain_is_shown() {
    assert_eq!(shown("20 ≤ w ≤ 80 mm."), ["20"]);
    assert_eq!(shown("0.75 <= G <= 3 in."), ["0.75"]);
    assert_eq!(shown("15 < w < 45 mm."), ["15"]);
    assert_eq!(shown("≥ 15, ≤ 45 (mm)."), ["15", "45"]);
}

#[test]
fn numbers_that_strokes_part_are_shown_whole() {
    assert_eq!(shown("Closing/opening 20/7.5 percent."), ["20/7.5 percent"]);
    assert_eq!(
        shown("Density for 1/2/3 hr walls: 4/6/9 pcf."),
        ["1/2/3 hr", "4/6/9 pcf"]
    );
    // A fraction is none.
    assert!(shown("Width 3/4 in. max.").is_empty());
}

#[test]
fn a_tolerance_in_a_bracket_before_the_unit_hides_no_number() {
    assert_eq!(shown("Width 30 (-4, +8) mm."), ["30 (-4, +8) mm"]);
    assert_eq!(shown("40 (+6/-0) mm."), ["40 (+6/-0) mm"]);
    // A second value is no tolerance.
    assert!(shown("Width 1 in. (25 mm) max.").is_empty());
}

#[test]
fn what_measures_a_number_without_a_unit_shows_it() {
    assert_eq!(shown("Readings of 40 mils, none less than 35."), ["35"]);
    assert_eq!(shown("Shear, percent max: 15."), ["15"]);
    assert_eq!(shown("Recess 1/2 in. in walls, 1/8 at floors."), ["1/8"]);
    assert_eq!(shown("Pins 4.2 dia. @ 550 max."), ["4.2", "550"]);
    assert_eq!(shown("Rod Ø 1.5 x w."), ["1.5"]);
    assert_eq!(shown("Anchors, 3 pieces/m."), ["3"]);
    // The names of items and the numbers of pages are no sizes.
    assert!(shown("See <3> and <4>.\n                                    1/2").is_empty());
}

#[test]
fn numbers_in_words_are_shown_whole() {
    assert_eq!(
        shown("Not below four inches in narrow joints, and no less than eight in wide ones."),
        ["eight"]
    );
    assert_eq!(
        shown("It may come down to five eighths at the corners."),
        ["five eighths"]
    );
    assert!(shown("At least one half of the depth.").is_empty());
}

#[test]
fn parts_in_words() {
    check(
        "1. JOINT - The joint shall be no wider than two and one half inches.\n",
        &["joint.width: at most 5/2 in"],
    );
    check(
        "1. PACKING - One half to three quarters inch deep.\n",
        &["packing.depth: between 1/2 to 3/4 in"],
    );
    check(
        "1. PACKING - Depth a minimum of 3 and 1/2 in.\n",
        &["packing.depth: at least 7/2 in"],
    );
    // The first number is a name's.
    check(
        "1. PACKING - Depth 4 in. in Items 2 and 1/2 in. recessed.\n",
        &[
            "packing.depth: nominal 4 in",
            "packing.recess: nominal 1/2 in",
        ],
    );
}

#[test]
fn the_unit_of_a_label_is_that_of_its_number() {
    check(
        "1. PACKING - Depth (in.): 5; density (pcf): min 4; compression (%) = 30.\n",
        &[
            "packing.depth: nominal 5 in",
            "packing.density: at least 4 pcf",
            "packing.compression: nominal 30 percent",
        ],
    );
    check(
        "1. PACKING - Density (pcf): 6 min. Depth (mm): 80 to 120.\n",
        &[
            "packing.density: at least 6 pcf",
            "packing.depth: between 80 to 120 mm",
        ],
    );
    // A letter names something, "min" is a minimum, and a unit of its own goes before.
    check(
        "1. PACKING - Depth (min): 4 in. Density (pcf): 64 kg/m3.\n",
        &[
            "packing.depth: at least 4 in",
            "packing.density: nominal 64 kg/m3",
        ],
    );
}

#[test]
fn measures_in_a_row_share_the_last_unit() {
    check(
        "1. MOVEMENT - Compression 20, extension 15 and shear 5 percent.\n",
        &[
            "1:movement_compression: nominal 20 percent",
            "1:movement_extension: nominal 15 percent",
            "1:movement_and_shear: nominal 5 percent",
        ],
    );
}

#[test]
fn the_letter_of_an_item_is_no_hour() {
    check("1. USE - Item 4J excludes Items 4H and 5H.\n", &[]);
    check(
        "1. FILL - Cured for 5H.\n",
        &["1:fill_duration: nominal 5 hr"],
    );
}
