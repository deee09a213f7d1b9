//! Lines in turn, and the items that they are.

use super::super::marker::marker;
use super::*;

/// Places each line in turn; lines that are no items are marked `-`.
fn check(lines: &[&str], expected: &[&str]) {
    check_in(Sequence::default(), lines, expected);
}

fn check_in(mut sequence: Sequence, lines: &[&str], expected: &[&str]) {
    let mut found = Vec::new();
    for (index, line) in lines.iter().enumerate() {
        let text = line.trim_start();
        let indent = line.len() - text.len();
        let placed = marker(text).and_then(|m| sequence.place(&m, indent).map(|p| (m, p)));
        if let Some((marker, placement)) = placed {
            found.push(placement.path.clone());
            sequence.enter(&marker, &placement, indent, index);
        } else {
            found.push("-".to_owned());
        }
    }
    assert_eq!(found, expected);
}

#[test]
fn tens() {
    let lines = [
        "10  SLABS",
        "11  Thickness",
        "14  Levels",
        "20  JOINT",
        "21  Width",
        "12  Bolts",
    ];
    check_in(
        Sequence::in_tens(),
        &lines,
        &["10", "11", "14", "20", "21", "-"],
    );
    check(&lines, &["-"; 6]);
}

#[test]
fn articles() {
    let lines = [
        "Article 1.  THE FLOOR.",
        "Article 2.  THE WALL.",
        "  (a) The blocks",
    ];
    check(&lines, &["1", "2", "2(a)"]);
}

#[test]
fn hundreds() {
    check(
        &[
            "100  FLOOR",
            "110  Slab",
            "111  Edge",
            "120  Deck",
            "200  JOINT",
            "210  Width",
            "400 mm wide",
        ],
        &["100", "110", "111", "120", "200", "210", "-"],
    );
}

#[test]
fn parts_that_cite_their_whole_way() {
    check(
        &[
            "1. JOINT",
            "   A. Wool",
            "   B. Seal",
            "      1B.1 Wet",
            "      1B.2 Self-levelling",
            "   C. Cover",
            "2. WALL",
        ],
        &["1", "1A", "1B", "1B.1", "1B.2", "1C", "2"],
    );
}

#[test]
fn roman_numerals_within_letters() {
    check(
        &[
            "1. WALL",
            "  (a) Studs",
            "      (i) Steel",
            "      (ii) Wood",
            "  (b) Board",
            "2. JOINT",
            "  (a) Wool",
            "  (i) of it",
        ],
        &["1", "1(a)", "1(a)(i)", "1(a)(ii)", "1(b)", "2", "2(a)", "-"],
    );
}

#[test]
fn numbers_with_letters() {
    check(
        &[
            "1. FLOOR",
            " A. STEEL",
            " B. CONCRETE",
            "2. WALL",
            "  A. RUNNERS",
            "    A1. SLOTTED",
            "  B. STUDS",
            "3. JOINT",
            "  A. FORM",
            "    A1. PLUG",
            "  B. FILL",
        ],
        &[
            "1", "1A", "1B", "2", "2A", "2A1", "2B", "3", "3A", "3A1", "3B",
        ],
    );
    check(
        &[
            "1. Beam",
            " 1.1 Fire",
            "2. Att",
            " 2A. Clips",
            " 2B. Angle",
            "  2B.1 Butted",
            " 2C. Direct",
            "3. Shaft",
            " a. J",
            " b. Studs",
        ],
        &["1", "1.1", "2", "2A", "2B", "2B.1", "2C", "3", "3a", "3b"],
    );
}

#[test]
fn decimals_and_sections() {
    check(
        &[
            "1 SUPPORT",
            " 1.1 Floor",
            "  1.1.1 Spalled",
            " 1.2 Hollow",
            "3.1.3 is increased",
            "2 THE",
        ],
        &["1", "1.1", "1.1.1", "1.2", "-", "2"],
    );
    check(
        &[
            "§ 1. The",
            " (a) The",
            " (b) Where",
            "§ 2. Wall",
            " (a) The",
        ],
        &["§1", "§1(a)", "§1(b)", "§2", "§2(a)"],
    );
    check(
        &[
            "A.  RATED",
            "  A-1   Reinf",
            "  A-2   Block",
            "B.  CURTAIN",
            "  B-1   Fram",
            "  B-2   Span",
            "   (i)  Glass",
            "   (ii) Alum",
            "  B-3  In",
        ],
        &[
            "A", "A-1", "A-2", "B", "B-1", "B-2", "B-2(i)", "B-2(ii)", "B-3",
        ],
    );
    check(
        &[
            "I.   SUPP",
            "  (i)  Floor",
            "  (ii) Wall",
            "II.  PEN",
            "  (a)  PVC",
        ],
        &["I", "I(i)", "I(ii)", "II", "II(a)"],
    );
    check(
        &["1.0  WALL", " 1.1  Studs", "2.0  OPEN"],
        &["1", "1.1", "2"],
    );
    check(
        &[
            "Item 1: Floor",
            "Item 1-a) Slab",
            "Item 1-b) Deck",
            "Item 2: Wall",
        ],
        &["1", "1-a", "1-b", "2"],
    );
}

#[test]
fn a_count_for_each_letter() {
    check(
        &[
            "1A. WALLS",
            "2A. JOINT",
            "4A. COAT",
            "1B. WALLS",
            "2B. JOINT",
            "3B. PACK",
            "1C. BEAM",
        ],
        &["1A", "2A", "4A", "1B", "2B", "3B", "1C"],
    );
    // What bears no stop may go on from the line before.
    check(
        &["1A. WALLS", "2A. JOINT as in", "1B and more"],
        &["1A", "2A", "-"],
    );
}
