//! Items whose numbers leave some out or have two figures, `Item 01.`, `02A`, and parts that cite each other by their letters alone.

mod common;

use common::check;

#[test]
fn numbers_with_a_nought_before_them_count_the_items() {
    check(
        "Item 01. FLOOR\n\n     Slab min 150 mm thick.\n\nItem 02. BEAM\n\n   A.   Beam: min 200 mm deep.\n\n   B.   Sprayed material, min 15 mm thick.\n\nItem 03. PACKING\n\n   A.   Depth min 100 mm.\n",
        &[
            "floor.thickness: at least 150 mm",
            "beam.depth: at least 200 mm",
            "fireproofing.thickness: at least 15 mm",
            "packing.depth: at least 100 mm",
        ],
    );
    let paths: Vec<String> = listing::read_text(
        "sample",
        "01. FLOOR - Min 6 in. thick.\n02. PACKING - Min 4 in. deep.\n03. SEALANT - Min 1/2 in. deep.\n",
    )
    .items
    .into_iter()
    .map(|item| item.path)
    .collect();
    assert_eq!(paths, ["01", "02", "03"]);
}

#[test]
fn a_part_cites_another_of_its_item_by_the_letter_alone() {
    let lettered = |number: &str, said: &str| {
        format!(
            "{number}. Packing\n   A. Packing, min 4 in. deep.\n   B. Clips, max 24 in. o.c.\n   {said}\n"
        )
    };
    for (number, said, option) in [
        ("1", "C. Alternative to A: packing, min 6 in. deep.", "1C"),
        (
            "1",
            "B1. Packing strip (alternate to A), min 6 in. deep.",
            "1B1",
        ),
        ("01", "C. In lieu of A, packing, min 6 in. deep.", "01C"),
    ] {
        check(
            &lettered(number, said),
            &[
                "packing.depth: at least 4 in",
                "clip.spacing: at most 24 in",
                &format!("packing.depth: at least 6 in in {option}"),
            ],
        );
    }
}

#[test]
fn a_letter_with_a_name_behind_it_is_no_part() {
    let text = "1. PACKING\n   A. MINERAL WOOL, MIN 4 IN. DEEP.\n   C. ALTERNATIVE TO A STEEL CLIP: WOOD CLIP, MAX 24 IN. O.C.\n";
    let found = common::clauses(text);
    assert!(
        found.iter().all(|clause| !clause.contains(" in 1C")),
        "{found:?}"
    );
}

#[test]
fn an_option_in_the_brackets_of_an_untitled_part_is_one() {
    check(
        "1. Wall\n   1.1 Concrete wall. Min 150 mm thick.\n   1.2 Shaft wall (option; not for movement). Steel studs at max 600 mm o.c.\n",
        &[
            "wall.thickness: at least 150 mm",
            "stud.spacing: at most 600 mm in 1.2",
        ],
    );
}

#[test]
fn items_behind_a_gap_in_the_numbers_are_items_of_their_own() {
    check(
        "1. Floor - Min 6 in. thick.\n2. Clips (Optional) - Max 24 in. o.c.\n5. Packing - Min 4 in. deep.\n8. Sealant - Min 1/2 in. deep.\n",
        &[
            "floor.thickness: at least 6 in",
            "clip.spacing: at most 24 in in 2",
            "packing.depth: at least 4 in",
            "sealant.depth: at least 1/2 in",
        ],
    );
    check(
        "Item 01 - Clips (optional): max 24 in. o.c.\nItem 02 - Packing: Min 4 in. deep\n",
        &[
            "clip.spacing: at most 24 in in 01",
            "packing.depth: at least 4 in",
        ],
    );
}

#[test]
fn a_number_far_beyond_that_heads_nothing_is_no_item() {
    let reading = listing::read_text(
        "sample",
        "1. Floor - Min 6 in. thick.\n2. Clips - Fastened with screws.\n9. and 12 in. from the end of each run.\n3. Packing - Min 4 in. deep.\n",
    );
    let paths: Vec<String> = reading.items.into_iter().map(|item| item.path).collect();
    assert_eq!(paths, ["1", "2", "3"]);
}
