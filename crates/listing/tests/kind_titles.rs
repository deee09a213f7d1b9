//! Titles that name the kind of joint which all under them is asked of. The wordings are invented; that a joint is of one such kind is common practice.

use listing::read_text;

/// The options of the clauses of a listing's items.
fn options(text: &str) -> Vec<Option<String>> {
    let clauses = read_text("kinds.txt", text).clauses;
    let asked = clauses
        .into_iter()
        .filter(|clause| matches!(clause.requirement, listing::Requirement::Bound(_)));
    asked.map(|clause| clause.option).collect()
}

#[test]
fn kinds_that_titles_explain_are_choices() {
    for (one, other) in [
        (
            "Seal type S (static joints, no movement), EI 120",
            "Seal type M (moving joints), EI 60",
        ),
        ("Seal type S, static joints", "Seal type M, moving joints"),
        ("Joint Type 1, flush", "Joint Type 2, recessed"),
    ] {
        let text = format!(
            "(1) Floor\n    (1.1) Slab at least 150 mm thick.\n(2) {one}\n    (2.1) Wool strip, at least 100 kg/m3.\n(3) {other}\n    (3.1) Wool mat, at least 50 kg/m3.\n"
        );
        let found = options(&text);
        let mut of_kind = found.iter().skip(1).flatten();
        assert_eq!(found.first(), Some(&None), "{one}: {found:?}");
        assert_eq!(
            of_kind.next().map(|own| own.ends_with(['S', '1'])),
            Some(true),
            "{one}: {found:?}"
        );
        assert_eq!(
            of_kind.next().map(|own| own.ends_with(['M', '2'])),
            Some(true),
            "{other}: {found:?}"
        );
    }
}

#[test]
fn one_kind_alone_and_kinds_of_board_are_none() {
    for (one, other) in [
        ("Seal type S (static joints)", "Sealant"),
        ("Board Type X, two layers", "Board Type C, one layer"),
    ] {
        let text = format!(
            "(1) Floor\n    (1.1) Slab at least 150 mm thick.\n(2) {one}\n    (2.1) Wool strip, at least 100 kg/m3.\n(3) {other}\n    (3.1) Depth at least 50 mm.\n"
        );
        let found = options(&text);
        assert!(found.iter().all(Option::is_none), "{one}: {found:?}");
    }
}
