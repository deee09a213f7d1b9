//! Which lines begin items, how they nest, and which choices that makes of them. The wordings are invented.

mod common;

/// The items of a text.
fn items(text: &str) -> Vec<String> {
    let reading = listing::read_text("outline.txt", text);
    reading.items.into_iter().map(|item| item.path).collect()
}

/// The choices that a text leaves.
fn choices(text: &str) -> Vec<Vec<String>> {
    let reading = listing::read_text("outline.txt", text);
    reading
        .options
        .into_iter()
        .map(|group| group.choices)
        .collect()
}

#[test]
fn a_mark_that_begins_two_lines_is_of_a_note() {
    assert_eq!(
        items(
            "System FW-2\n\n1. JOINT. Width max 4 in.\n   A. Packing [a]. Density 4 pcf min.\n      [a] Invented Fibre: IF Strip 4\n   \
             B. Seal [a]. Depth 1/2 in. min.\n      [a] Invented Seals: IS Flex 2\n   C. Strip. Width 2 in. min.\n"
        ),
        ["1", "1A", "1B", "1C"]
    );
    // Marks that begin one line each are items, and those that go on with another's its parts.
    assert_eq!(
        items(
            "Detail B\n\n[1] Deck: 22 gauge min.\n\n[2] Wall: 5/8 in. board.\n    [2a] Screws 8 in. o.c.\n\n[3] Track: see [1].\n"
        ),
        ["[1]", "[2]", "[2a]", "[3]"]
    );
}

#[test]
fn parts_that_cite_their_whole_way_are_told_apart() {
    let text = "System FW-2\n\n1. JOINT. Width max 4 in.\n   A. Wool. Density 4 pcf min.\n   B. Seal. On the top only.\n      1B.1 Wet thickness min 1/8 in.\n      \
                1B.2 As an alternate to 1B.1, poured grade, 1/4 in. deep.\n   C. Strip. Width 2 in. min.\n";
    assert_eq!(items(text), ["1", "1A", "1B", "1B.1", "1B.2", "1C"]);
    assert_eq!(choices(text), [["1B.1", "1B.2"]]);
}

#[test]
fn parts_joined_by_or_are_a_choice_of_one() {
    let text = |first: &str| {
        format!(
            "System W-1\n\n1. Wall\n\n   (a) Studs shall be\n\n       (i)   galvanized steel, 0.46 mm thick or thicker{first}\n\n       \
             (ii)  wood, nominal 38 mm wide.\n\n   (b) The last stud is 20 mm back.\n\n2. Joint\n\n   (a) Width 2 in.\n"
        )
    };
    assert_eq!(
        items(&text("; or")),
        ["1", "1(a)", "1(a)(i)", "1(a)(ii)", "1(b)", "2", "2(a)"]
    );
    assert_eq!(choices(&text("; or")), [["1(a)(i)", "1(a)(ii)"]]);
    for both in ["; and", ";", "."] {
        assert!(choices(&text(both)).is_empty(), "{both}");
    }
}

#[test]
fn one_to_pick_and_a_substitute_are_choices() {
    assert_eq!(
        choices(
            "Detail B\n\n[5] Wool: 4 pcf min.\n\n[6] Joint spray / sealant, pick one\n\n    [6A] Spray\n         wet: 1/8 in. min\n    [6B] Sealant\n         depth: 5/8 in. min\n"
        ),
        [["[6A]", "[6B]"]]
    );
    assert_eq!(
        choices(
            "Report\n\n§ 1  Sealing compound\n\n   Depth ≥ 10 mm.\n\n§ 2  Coating as a substitute for § 1, widths ≤ 80 mm only\n\n   Dry layer 1 mm.\n"
        ),
        [["§1", "§2"]]
    );
    // What is built as another is has that one's requirements, too: both stay for a person.
    assert!(
        choices(
            "System B\n\n1. FLOOR -- One of the following floors shall be used:\n    1A. Flat -- Min 5 in. thick, 100 pcf min.\n    1B. Planks -- As Item 1A except min 8 in. deep.\n"
        )
        .is_empty()
    );
}

#[test]
fn a_count_within_letters_within_a_count() {
    let text = "1. FLOOR - Slab.\n\n2. JOINT - As follows:\n\n   A. PACKING - As follows:\n\n      1. Depth min 4 in.\n\n      2. Density min 4 pcf.\n\n   B. SEALANT - As follows:\n\n      1. Depth min 1/2 in.\n\n3. COATING - Min 1/8 in. wet.\n";
    assert_eq!(
        items(text),
        ["1", "2", "2A", "2A1", "2A2", "2B", "2B1", "3"]
    );
}

#[test]
fn letters_of_a_number_that_does_not_stand_alone() {
    let text = "1. FLOOR - Concrete min 4 in. thick.\n\n2A. CLIPS - Min 1 in. wide.\n\n2B. CLIPS - Min 2 in. wide.\n\n3A. WALL - Min 4 in. thick.\n\n4. SEALANT - Depth min 1/2 in.\n";
    assert_eq!(items(text), ["1", "2A", "2B", "3A", "4"]);
}

#[test]
fn chapters_without_a_number_of_their_own_follow_one_another() {
    let text = |second: &str| {
        format!(
            "System F-1\n\n1.1 Slabs. Concrete, 115 mm thick.\n1.2 Option B, blockout. 64 mm wide.\n{second} Width 25 to 200 mm.\n2.2 Movement 12 %.\n"
        )
    };
    assert_eq!(items(&text("2.1")), ["1.1", "1.2", "2.1", "2.2"]);
    // A gap is none.
    assert_eq!(items(&text("4.1")), ["1.1", "1.2"]);
}

#[test]
fn a_citation_that_a_line_breaks_begins_no_item() {
    assert_eq!(
        items(
            "1. Wall\n\n   A. Runners - Min 25 ga.\n\n      A1. Channel - (As an alternate to the runner of Item\n          1A) - Min 20 ga steel.\n\n   B. Studs - Min 3-5/8 in. wide.\n"
        ),
        ["1", "1A", "1A1", "1B"]
    );
    assert_eq!(
        items(
            "1. Wall\n\n   A. Board - A max 3/4 in. gap (Configuration\n      A) or a max 1-1/2 in. gap (Configuration B) is left.\n\n   B. Studs - Min 3-5/8 in. wide.\n"
        ),
        ["1", "1A", "1B"]
    );
    // A list goes on behind a bracket that nobody closed.
    assert_eq!(
        items(
            "1) Floor (concrete, min 4 in. thick\n2) Wall, min 6 in. thick\n3) Sealant, min 1/2 in. deep\n"
        ),
        ["1", "2", "3"]
    );
}

#[test]
fn a_part_named_with_or_stands_in_the_place_of_its_whole() {
    let schedule = |second: &str| {
        format!(
            "+------+-------------------+--------------------------------+\n\
             | W1   | CONCRETE WALL     | Min 6 in. thk. 100-150 pcf.    |\n\
             | W1.a | or CONCRETE BLOCK | Nom 8 in. Cells grouted solid. |\n\
             | W1.b | {second} | 2 layers 5/8 in. board.        |\n\
             +------+-------------------+--------------------------------+\n\
             | F1   | PACKING           | 4 pcf min.                     |\n\
             +------+-------------------+--------------------------------+\n"
        )
    };
    assert_eq!(
        choices(&schedule("or GYPSUM BOARD  ")),
        [["W1", "W1.a", "W1.b"]]
    );
    // Behind a part that is built besides it may be said of that one.
    let text = schedule("or GYPSUM BOARD  ").replace("or CONCRETE BLOCK", "LINTEL           ");
    assert!(choices(&text).is_empty());
}

#[test]
fn a_word_like_a_unit_behind_a_number_opens_an_item() {
    let text = "1. Floor\n1.1 Concrete, min 5 in. thick.\n1.2 In joints over 2 in. a chamfer is allowed.\n1.3 Min length of piece 24 in.\n1.4 F Rating 2 hr.\n";
    assert_eq!(items(text), ["1", "1.1", "1.2", "1.3", "1.4"]);
    // Text that a line breaks before a number and its unit begins no item.
    let text = "1. Floor\n1.1 Concrete, the cover of its bars being\n1.2 in. or more.\n";
    assert_eq!(items(text), ["1", "1.1"]);
}

#[test]
fn a_page_from_the_middle_of_a_listing_has_the_items_that_stand_on_it() {
    let text = "the batts are min 4 in. deep.\n3. Packing\n3.1 Mineral wool, 4 pcf min.\n3.2 Min depth 4 in.\n4. Sealant\n4.1 Depth 1/2 in. min.\n";
    assert_eq!(items(text), ["3", "3.1", "3.2", "4", "4.1"]);
    let found = common::clauses(text);
    assert!(
        found.contains(&"packing.depth: at least 4 in".to_owned()),
        "{found:?}"
    );
    // One number alone counts nothing.
    assert!(items("The clips are described in item\n7. They are of steel.\n").is_empty());
}

#[test]
fn the_item_that_a_sentence_ends_in_is_cited() {
    let text = "1. Runner\n1.1 Runner - 25 ga.\n1.2 Studs - Not fastened to the runner of\n    Item 1.1.\n\n1.3 Board - 5/8 in. thick.\n";
    assert_eq!(items(text), ["1", "1.1", "1.2", "1.3"]);
}

#[test]
fn a_note_in_the_head_holds_no_items() {
    let text = "Movement: Class III, 50% (a)\n                  (a) 25% where Option 4B is used\n\n1.   DECK. 22 MSG steel.\n2.   WALL. 5 in. thick.\n";
    assert_eq!(items(text), ["a", "1", "2"]);
}

#[test]
fn sections_of_a_part_may_count_in_two_figures() {
    let text = "PART 1 - GENERAL\n\n1.01  SUMMARY\n      A.  Type J3: recess 2 in.\n1.02  QUALITY\n      A.  Samples one per 500 ft.\n\nPART 2 - PRODUCTS\n\n2.01  JOINTS\n      A.  Depth 4 in.\n";
    assert_eq!(
        items(text),
        ["1", "1.01", "1.01A", "1.02", "1.02A", "2", "2.01", "2.01A"]
    );
    let text =
        "1.00  FLOOR: Min 5 in. thick\n\n1.01  TOPPING: Min 2 in.\n\n2.00  WALL: Min 6 in. thick\n";
    assert_eq!(items(text), ["1", "1.01", "2"]);
    // A number in a text is none.
    let text = "1. FLOOR\n   Shims of no more than\n   1.05 in. are used\n   1.05 times over.\n";
    assert_eq!(items(text), ["1"]);
}
