//! Items that are alternates by their label or by the words of their head, however they are numbered. The wordings are invented; what they mean is common practice.

mod common;

use common::clauses;

/// Whether each number stands in the option or under the words that it is asked for with.
#[track_caller]
fn reads(text: &str, expected: &[(&str, &str)]) {
    let found = clauses(text);
    for (number, place) in expected {
        let own = found.iter().find(|own| own.contains(number));
        let told = own.is_some_and(|own| match *place {
            "" => !own.contains(" if ") && !own.contains(" in "),
            place => {
                own.ends_with(&format!(" in {place}")) || own.contains(&format!("\"{place}\""))
            }
        });
        assert!(told, "{number} {place:?} {found:?}");
    }
}

#[test]
fn a_letter_in_brackets_behind_the_label() {
    reads(
        "J-1     Infill. Wool, compressed 30 percent.\n\nJ-2     Sealant. Depth 10 mm min.\nJ-2(b)  Spray in lieu of J-2. Wet thickness 2.5 mm min.\nJ-3     Strip. Width 40 mm.\n",
        &[("10 mm", ""), ("5/2 mm", "J-2(b)"), ("40 mm", "")],
    );
}

#[test]
fn a_label_that_says_that_it_is_one() {
    reads(
        "A. Floor. Min 5 in. thick.\n\nB. Splice. Lap 6 in. min.\n  B-ALT. Butt splice. Cap 12 in. long.\nC. Pins. 8 in. OC.\n",
        &[("6 in", ""), ("12 in", "B-ALT. Butt splice"), ("8 in", "")],
    );
}

#[test]
fn the_same_label_again_with_the_word() {
    reads(
        "(a) Floor: 175 mm thick or more.\n\n(b) Wool: depth 120 mm.\n\n(b) alternate: foam strip, depth 40 mm.\n\n(c) Angle: 50 mm wide.\n",
        &[("120 mm", ""), ("40 mm", "(b) alternate"), ("50 mm", "")],
    );
}

#[test]
fn a_nought_before_the_letter() {
    reads(
        "   05. Wool. Depth 4 inches.\n\n   06. Fill. Min. 1/2 inch thick.\n\n   06.0A. Fill, spray (substitute for 06). Wet film 1/8 inch.\n\n   07. Rod. Diameter 3/4 inch.\n",
        &[("1/2 in", ""), ("1/8 in", "06.0A"), ("3/4 in", "")],
    );
}

#[test]
fn stars_before_and_behind_the_label() {
    reads(
        "* 1. Floor - Min 5 in. thick.\n\n** 2. Wall:\n     a. Runner. Min 25 ga.\n     b.* Board. Min 5/8 in. thick.\n\n  3. Strap - Optional. Width 2 in.\n",
        &[
            ("5 in", ""),
            ("25 gauge", ""),
            ("5/8 in", ""),
            ("2 in", "3"),
        ],
    );
}

#[test]
fn letters_that_a_dash_parts_from_the_name() {
    reads(
        "Item 1 - Floor. Min 5 in. thick.\n\nItem 2 - Hangers and Stiffener\n  A - Hangers. Width 38 mm.\n  B - Stiffener. Height 20 mm. Not needed where the posts are 700 mm or less apart.\n  C - Alternate to B. Bolts 400 mm o.c.\n",
        &[
            ("38 mm", ""),
            ("20 mm", "where the posts are 700 mm or less apart"),
            ("400 mm", "2C"),
        ],
    );
}

#[test]
fn optional_to_another_item() {
    reads(
        "1. Floor - Min 5 in. thick.\n\n2. Fill -\n   2A. Spray - Wet min 1/8 in.\n   2B. Sealant - Optional to 2A. Depth min 5/8 in.\n",
        &[("1/8 in", ""), ("5/8 in", "2B")],
    );
    // Left to somebody.
    reads(
        "1. Floor - Min 5 in. thick.\n\n2. Color - Optional to the owner. Coats min 2 mm.\n",
        &[("2 mm", "2")],
    );
}

#[test]
fn no_substitute_is_offered() {
    reads(
        "1. Floor - Min 5 in. thick.\n\n2. Wool - Depth 4 in. min.\n\n3. Foam - No substitute for Item 2. Width 2 in.\n",
        &[("4 in", ""), ("2 in", "")],
    );
}

#[test]
fn a_label_of_one_of_several_things_offers_no_item() {
    reads(
        "1. Floor - Min 5 in. thick.\n\n2. Support (Alternate A). Angle 2 in. wide.\n   Support (Alternate B). Wire 1/8 in. diam.\n   Packing min 4 in. deep.\n",
        &[("4 in", "")],
    );
}
