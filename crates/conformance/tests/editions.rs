//! Two editions of a listing, clause by clause.

mod support;

use conformance::ChangeKind::{self, Added, Loosened, Removed, Tightened, Unchanged};
use conformance::{Change, compare};
use listing::Reading;
use support::{bound, movement, reading, width};

fn clauses(old: &Reading, new: &Reading) -> Vec<Change> {
    let changes = compare(old, new).into_iter();
    changes
        .filter(|change| {
            [&change.old, &change.new]
                .into_iter()
                .flatten()
                .all(|side| !side.item.is_empty())
        })
        .collect()
}

#[track_caller]
fn check_change(old: &str, new: &str, expected: ChangeKind) {
    let changes = clauses(&reading(&[old]), &reading(&[new]));
    let kinds: Vec<ChangeKind> = changes.iter().map(|change| change.kind).collect();
    assert_eq!(kinds, [expected], "{old} -> {new}");
}

/// What became of a clause; its old line, and its new one beneath.
const CASES: &str = "
unchanged
    packing.depth: at least 4 in.
    packing.depth: at least 4 in.
reworded
    packing.depth: at least 4 in. ; words min 4 in. deep
    packing.depth: at least 4 in. ; words depth 4 in. or more
tightened
    packing.depth: at least 4 in.
    packing.depth: at least 5 in.
loosened
    packing.depth: at least 4 in.
    packing.depth: at least 3 in.
tightened
    board.gap: at most 1 in.
    board.gap: at most 3/4 in.
tightened
    board.gap: at most 1 in.
    board.gap: less than 1 in.
reworded
    board.gap: at most 1 in.
    board.gap: at most 25.4 mm
loosened
    board.gap: between 1/2 in. and 1 in.
    board.gap: at most 1 in.
changed
    board.gap: between 1/2 in. and 1 in.
    board.gap: between 3/4 in. and 1-1/4 in.
tightened
    stud.gauge: at least 25 MSG
    stud.gauge: at least 20 MSG
changed
    packing.density: nominal 4 pcf
    packing.density: exactly 4 pcf
changed
    packing.density: nominal 4 pcf
    packing.density: nominal 6 pcf
changed
    seal.splice_spacing: about 40 in.
    seal.splice_spacing: at most 40 in.
changed
    packing.depth: at least 4 in.
    packing.depth: at least 4 pcf
tightened
    coating.product: named A | One, B | Two
    coating.product: named A | One
loosened
    coating.product: named A | One
    coating.product: named a | ONE, B | Two
changed
    coating.product: named A | One
    coating.product: named B | Two
tightened
    packing.flush: optional
    packing.flush: required
changed
    packing.flush: required
    packing.flush: absent
changed
    packing.depth: at least 4 in. ; if joint.rating = 1 hr
    packing.depth: at least 4 in. ; if joint.rating = 2 hr
unchanged
    packing.seams: prose ; words Seams tightly butted.
    packing.seams: prose ; words Seams  tightly butted.
changed
    packing.seams: prose ; words Seams tightly butted.
    packing.seams: prose ; words Seams butted.
";

#[test]
fn one_clause_became_another() {
    let lines: Vec<&str> = CASES
        .lines()
        .map(str::trim)
        .filter(|line| !line.is_empty())
        .collect();
    for case in lines.chunks(3) {
        let [expected, old, new] = case else {
            panic!("{case:?} is no case")
        };
        let changes = clauses(&reading(&[old]), &reading(&[new]));
        let kinds: Vec<&str> = changes.iter().map(|change| change.kind.words()).collect();
        assert_eq!(kinds, [*expected], "{old} -> {new}");
    }
}

#[test]
fn nominal_is_not_minimum() {
    // A wool heavier than the nominal one wasn't allowed before, and now it is.
    check_change(
        "packing.density: nominal 4 pcf",
        "packing.density: at least 4 pcf",
        Loosened,
    );
}

#[test]
fn what_is_new_and_what_is_gone() {
    let old = reading(&[
        "packing.depth: at least 4 in. ; item 3A",
        "board.gap: at most 1 in. ; item 2C",
    ]);
    let new = reading(&[
        "packing.depth: at least 4 in. ; item 3A",
        "stud.spacing: at most 24 in. ; item 2B",
    ]);
    let changes = clauses(&old, &new);
    let kinds: Vec<_> = changes
        .iter()
        .map(|change| (change.kind, change.property.as_str()))
        .collect();
    assert_eq!(
        kinds,
        [
            (Unchanged, "packing.depth"),
            (Removed, "board.gap"),
            (Added, "stud.spacing")
        ]
    );
}

#[test]
fn a_renumbered_item_keeps_its_clauses() {
    let mut old = reading(&[
        "packing.depth: at least 4 in. ; item 3A",
        "coating.coats: bare 2 ; item 3B",
    ]);
    let mut new = reading(&[
        "backer.depth: at least 1 in. ; item 3A",
        "packing.depth: at least 5 in. ; item 3B",
        "coating.coats: bare 2 ; item 3C",
    ]);
    for (items, titles) in [
        (&mut old.items, ["Packing", "Coating", ""]),
        (&mut new.items, ["Backer", "Packing", "Coating"]),
    ] {
        for (item, title) in items.iter_mut().zip(titles) {
            item.title = title.to_owned();
        }
    }
    let changes = clauses(&old, &new);
    let seen: Vec<_> = changes
        .iter()
        .map(|change| (change.kind, change.property.as_str(), change.moved))
        .collect();
    assert_eq!(
        seen,
        [
            (Added, "backer.depth", false),
            (Tightened, "packing.depth", true),
            (Unchanged, "coating.coats", true)
        ]
    );
    assert_eq!(
        changes[1].sentence,
        "Packing depth: at least 4 in. (101.6 mm) became at least 5 in. (127 mm); item 3A is now item 3B."
    );
}

#[test]
fn several_clauses_of_one_property_are_matched_by_condition_and_words() {
    let old = reading(&[
        "packing.depth: at least 1 in. ; if joint.rating = 1 hr",
        "packing.depth: at least 2 in. ; if joint.rating = 2 hr",
    ]);
    let new = reading(&[
        "packing.depth: at least 2 in. ; if joint.rating = 2 hr",
        "packing.depth: at least 1-1/2 in. ; if joint.rating = 1 hr",
    ]);
    let kinds: Vec<ChangeKind> = clauses(&old, &new)
        .iter()
        .map(|change| change.kind)
        .collect();
    assert_eq!(kinds, [Unchanged, Tightened]);
}

#[test]
fn the_head() {
    let (mut old, mut new) = (
        reading(&["packing.depth: at least 4 in."]),
        reading(&["packing.depth: at least 4 in."]),
    );
    old.header.width = Some(width("at most 1 in."));
    new.header.width = Some(width("at most 2 in."));
    old.header.movement = vec![movement("II, III compression 25")];
    new.header.movement = vec![
        movement("II, III compression 10"),
        movement("II extension 10"),
    ];
    let kind = |id: &str| {
        let changes = compare(&old, &new);
        let found = changes
            .iter()
            .find(|change| change.new.as_ref().is_some_and(|side| side.clause == id));
        found.map(|change| change.kind)
    };
    assert_eq!(kind("header/rating"), Some(Unchanged));
    assert_eq!(kind("header/width"), Some(Loosened));
    assert_eq!(
        kind("header/movement: Class II and III, compression"),
        Some(Tightened)
    );
    assert_eq!(kind("header/movement: Class II, extension"), Some(Added));
}

#[test]
fn a_bound_is_never_tighter_than_itself() {
    for text in [
        "at least 4 in.",
        "at most 4 in.",
        "nominal 4 in.",
        "about 4 in.",
        "between 1 in. and 2 in.",
        "over 1 in. and 2 in.",
    ] {
        let _ = bound(text);
        let line = format!("packing.depth: {text}");
        check_change(&line, &line, Unchanged);
    }
}

#[test]
fn a_head_that_states_several_values() {
    let old = {
        let mut listing = support::reading(&[]);
        listing.header.width = Some(listing::WidthLimit {
            strictest_hi: Some(measure::Number::whole(2)),
            ..support::width("at most 4 in.")
        });
        listing.header.leakage = ["ambient 1 cfm/ft", "ambient 2 cfm/ft"]
            .map(support::leakage)
            .to_vec();
        listing
    };
    let kinds = |new: &listing::Reading| -> Vec<ChangeKind> {
        let changes = conformance::compare(&old, new);
        let of_these = |change: &&conformance::Change| {
            change.property == "joint.width" || change.property.starts_with("joint.leakage")
        };
        changes
            .iter()
            .filter(of_these)
            .map(|change| change.kind)
            .collect()
    };
    assert_eq!(kinds(&old), [ChangeKind::Unchanged; 2]);
    let mut new = old.clone();
    new.header.width.as_mut().unwrap().strictest_hi = Some(measure::Number::ONE);
    new.header.leakage[1] = support::leakage("ambient 3 cfm/ft");
    assert_eq!(kinds(&new), [ChangeKind::Changed; 2]);
}
