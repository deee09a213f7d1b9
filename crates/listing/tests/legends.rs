//! Signs at items that a legend explains.

mod common;

use common::clauses;

/// The options of the bounds, in order.
fn options(text: &str) -> Vec<Option<String>> {
    let reading = listing::read_text("sample", text);
    let bounds = reading
        .clauses
        .into_iter()
        .filter(|own| own.bound().is_some());
    bounds.map(|own| own.option).collect()
}

#[test]
fn a_sign_before_the_number_begins_an_item_all_the_same() {
    let text = "* 1. Floor - Min 5 in. thick.\n\n** 2. Strap - Min 20 ga steel.\n   *a. Screws - Min 4 screws.\n\n\
                3. Sealant - Min 1/2 in. deep.\n\n*  Requires marking.\n** May be omitted.\n";
    let items: Vec<String> = listing::read_text("sample", text)
        .clauses
        .into_iter()
        .filter(|own| own.bound().is_some())
        .map(|own| own.item)
        .collect();
    assert_eq!(items, ["1", "2", "2a", "3"], "{:?}", clauses(text));
}

#[test]
fn what_the_legend_leaves_out_is_optional() {
    for (item, legend) in [
        ("** 2. Strap - Min 20 ga steel.", "** May be omitted."),
        ("2.** Strap - Min 20 ga steel.", "** Optional"),
        ("2. Strap** - Min 20 ga steel.", "** Optional item."),
        ("† 2. Strap - Min 20 ga steel.", "†  - Optional."),
    ] {
        let text = format!(
            "1. Floor - Min 5 in. thick.\n\n{item}\n\n3. Sealant - Min 1/2 in. deep.\n\n* Bears the mark.\n{legend}\n"
        );
        assert_eq!(options(&text), [None, Some("2".to_owned()), None], "{text}");
    }
}

#[test]
fn a_note_is_no_part_of_the_legend_before_it() {
    let text = "1. Floor - Min 5 in. thick.\n\n** 2. Spray - Min 1/8 in. wet. Sold as Brenlo# spray.\n\n** May be omitted.\n#  Cure not less than 48 h.\n";
    assert_eq!(options(text), [None, Some("2".to_owned()), None]);
}

#[test]
fn a_sign_that_says_more_or_something_else_leaves_nothing_out() {
    for (item, legend) in [
        (
            "** 2. Strap - Min 20 ga steel.",
            "** Optional for 1 hr only.",
        ),
        (
            "** 2. Strap - Min 20 ga steel.",
            "** May be omitted.\n** In walls only.",
        ),
        ("* 2. Strap - Min 20 ga steel.", "** May be omitted."),
        ("2. Strap - Min 20 ga** steel.", "** Optional."),
        ("2. Strap and washer** - Min 20 ga steel.", "** Optional."),
        ("2. Strap with screws** - Min 20 ga steel.", "** Optional."),
        (
            "** 2. Strap - Min 20 ga steel.",
            "** May be omitted where the joint is under 1 in.",
        ),
    ] {
        let text = format!(
            "1. Floor - Min 5 in. thick.\n\n{item}\n\n3. Sealant - Min 1/2 in. deep.\n\n{legend}\n"
        );
        let found = options(&text);
        assert!(
            found.iter().take(3).all(Option::is_none),
            "{text}\n{found:?}"
        );
    }
}
