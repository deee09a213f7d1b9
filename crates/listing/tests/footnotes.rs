//! Limits that stand in notes: they reach the values that their mark stands behind. The wordings are invented; what they mean is common practice.

mod common;

use common::{check, unread};

#[test]
fn a_note_limits_the_marked_value_alone() {
    for (mark, note) in [
        ("*", "* Minimum."),
        ("†", "† Min."),
        (" [a]", "[a] Minimum values."),
        (" (1)", "(1) All dimensions minimum."),
        (" a)", "a) Min."),
        ("¹", "Note: ¹ Minimum"),
        (" (see note b)", "Note b: minimum."),
    ] {
        check(
            &format!("1. PACKING - Depth 4 in.{mark}, density 4 pcf.\n{note}\n"),
            &[
                "packing.depth: at least 4 in",
                "packing.density: nominal 4 pcf",
            ],
        );
    }
    // Behind a second value and what is measured.
    check(
        "1. PACKING - Wool 4 in. (102 mm) deep*.\n* Maximum.\n",
        &["packing.depth: at most 4 in"],
    );
}

#[test]
fn each_mark_has_its_own_note() {
    check(
        "1. PACKING - Depth 4 in.*, recess 1/2 in.**\n\n* Min. ** Max.\n",
        &[
            "packing.depth: at least 4 in",
            "packing.recess: at most 1/2 in",
        ],
    );
    // The next note below is meant.
    check(
        "1. PACKING - Depth 4 in.*\n* Minimum.\n2. SEALANT - Recess 1/4 in.*\n* Maximum.\n",
        &[
            "packing.depth: at least 4 in",
            "sealant.recess: at most 1/4 in",
        ],
    );
}

#[test]
fn a_note_reaches_the_rows_of_a_table() {
    let rows = "1 hr | 3 in. [a] | 4 pcf\n2 hr | 4 in. [a] | 6 pcf\n";
    check(
        &format!("1. PACKING - See table.\n\nRating | Depth | Density\n{rows}\n[a] Minimum.\n"),
        &[
            "packing.depth: at least 3 in if joint.rating = 1 hr",
            "packing.density: nominal 4 pcf if joint.rating = 1 hr",
            "packing.depth: at least 4 in if joint.rating = 2 hr",
            "packing.density: nominal 6 pcf if joint.rating = 2 hr",
        ],
    );
    // A marked heading is that of its column, and a marked label that of its value.
    let rows = "1 hr      3 in.      4 pcf\n2 hr      4 in.      6 pcf\n";
    check(
        &format!("1. PACKING - See table.\n\nRating    Depth*     Density\n{rows}\n* Minimum.\n"),
        &[
            "packing.depth: at least 3 in if joint.rating = 1 hr",
            "packing.density: nominal 4 pcf if joint.rating = 1 hr",
            "packing.depth: at least 4 in if joint.rating = 2 hr",
            "packing.density: nominal 6 pcf if joint.rating = 2 hr",
        ],
    );
    check(
        "1. PACKING\n   Depth*: 4 in.\n   Density: 4 pcf\n   * Min.\n",
        &[
            "packing.depth: at least 4 in",
            "packing.density: nominal 4 pcf",
        ],
    );
}

#[test]
fn what_a_note_says_of_a_limit_besides_is_left_to_a_person() {
    assert_eq!(
        unread("1. PACKING - Depth 4 in.*, density 4 pcf.\n* Minimum at midspan; see drawing.\n"),
        ["4 in."]
    );
    assert_eq!(
        unread("1. PACKING - Wool* in joints to a depth of 4 in.\n* Minimum.\n"),
        ["4 in."]
    );
    assert_eq!(unread("1. PACKING - Depth 4* in.\n* Minimum.\n"), ["4"]);
}

#[test]
fn other_notes_limit_nothing() {
    check(
        "1. PACKING - Depth 4 in.*\n* Measured at midspan.\n",
        &["packing.depth: nominal 4 in"],
    );
    // Nor does a note give a second limit, or one to a value without its mark.
    check(
        "1. PACKING - Min depth 4 in.*, density 4 pcf.\n* Maximum.\n",
        &[
            "packing.depth: at least 4 in",
            "packing.density: nominal 4 pcf",
        ],
    );
    check(
        "1. PACKING - Depth 4 in.\n* Min density 4 pcf.\n",
        &[
            "packing.depth: nominal 4 in",
            "packing.density: at least 4 pcf",
        ],
    );
}

#[test]
fn a_note_of_one_item_says_nothing_of_the_next() {
    let elsewhere = "1. PACKING - Depth 4 in.*\n   * Minimum\n\n2. SEALANT - Depth 1/2 in.\n\n3. CLIPS - 12 in. OC *\n";
    check(
        elsewhere,
        &[
            "packing.depth: at least 4 in",
            "sealant.depth: nominal 1/2 in",
        ],
    );
    assert_eq!(unread(elsewhere), ["12 in."]);
}

#[test]
fn a_note_that_is_not_sure_leaves_its_value_unread() {
    // A figure that has lost its height, and a note that goes on.
    let figure = "1. PACKING - Depth 4 in.1, density min 4 pcf.\n\n1 Minimum.\n";
    check(figure, &["packing.density: at least 4 pcf"]);
    assert_eq!(unread(figure), ["4 in.", "1"]);
    let runs_on = "1. PACKING - Depth 4 in.* Density 4 pcf.\n* Minimum. Clips 12 in. OC.\n";
    check(
        runs_on,
        &[
            "packing.density: nominal 4 pcf",
            "clip.spacing: nominal 12 in",
        ],
    );
    assert_eq!(unread(runs_on), ["4 in."]);
    check(
        "1. PACKING - Depth 4 in. (*), density 4 pcf.\n(*) Minimum\n",
        &[
            "packing.depth: at least 4 in",
            "packing.density: nominal 4 pcf",
        ],
    );
}

#[test]
fn what_a_note_says_in_numbers_is_said_of_the_cells_that_lead_to_it() {
    let text = "1. PACKING\n\n\
         Table 1  Packing\n\
         ------------------------------------------\n\
         Joint width     Compression      Depth\n\
         mm              min %            min mm\n\
         ------------------------------------------\n\
         10 to 25        15               50\n\
         26 to 50        25 (a)           60\n\
         ------------------------------------------\n\
         (a)  40 % in core-filled block.\n";
    let reading = listing::read_text("footnotes.txt", text);
    let of = |value: &str| {
        let mut bounds = reading.clauses.iter();
        let clause = bounds.find(|clause| {
            let low = clause.bound().and_then(listing::Bound::low);
            low.is_some_and(|low| low.to_string() == value)
        });
        clause.map(|clause| {
            let condition = clause.condition.as_ref();
            (
                condition.map(|condition| condition.expr.to_string()),
                clause.confidence,
            )
        })
    };
    let note = of("40 %").and_then(|(condition, _)| condition);
    assert!(note.is_some_and(|condition| condition.contains("\"25 (a)\"")));
    let doubts = |value| of(value).map(|(_, confidence)| confidence);
    assert_eq!(doubts("25 %"), Some(listing::Confidence::WithDoubt));
    assert_eq!(doubts("15 %"), Some(listing::Confidence::ByRule));
}

#[test]
fn one_sentence_of_a_note_limits_the_value_shown() {
    let found = |note: &str| {
        common::clauses(&format!(
            "1. SPRAY - See Table 1.\n\nTABLE 1 - FILL\n\
             | Type | Fill wet, in. |\n|------|---------------|\n\
             | A    | 1/2           |\n| B    | 1/8  (b)      |\n\n\
             (b) {note}\n"
        ))
    };
    let read = found("Spray. Wet thickness shown is minimum. Lap on slab >= 1 in.");
    assert!(
        read.iter().any(|one| one.contains("at least 1/8 in")),
        "{read:#?}"
    );
    assert!(
        read.iter().any(|one| one.contains("nominal 1/2 in")),
        "{read:#?}"
    );
    // What is limited by another name, isn't the value; nor is what isn't limited.
    for note in [
        "Spray. Recess shown is minimum. Lap on slab >= 1 in.",
        "Spray. Wet thickness shown is not minimum. Lap on slab >= 1 in.",
        "Spray. Wet film minimum as shown on drawing 4.",
    ] {
        let read = found(note);
        assert!(
            !read.iter().any(|one| one.contains("at least 1/8 in")),
            "{note} {read:#?}"
        );
    }
}

#[test]
fn a_second_value_in_brackets_leads_to_no_note() {
    let notes = "(1) Strip is ordered 20 % wider than the joint.\n(2) Recess: 6 mm.\n";
    let table = |cells: [&str; 2]| {
        format!(
            "Sheet 4\n\nTable 2   Strip, depth in mm (in.)\n\nRating | Wall | Floor\n1 hr | {} | 65\n2 hr | {} | 90\n\nGENERAL NOTES\n{notes}",
            cells[0], cells[1]
        )
    };
    let shares = |cells| {
        let found = common::clauses(&table(cells)).into_iter();
        found
            .filter(|clause| clause.contains("20 percent"))
            .collect::<Vec<_>>()
    };
    // The first note holds of every strip, whatever cell has an inch beside its millimetres.
    for cells in [
        ["25 (1)", "50 (2)"],
        ["1 (25)", "2 (50)"],
        ["80 (1)", "50 (2)"],
    ] {
        let found = shares(cells);
        assert!(found.len() == 1 && !found[0].contains(" if "), "{found:?}");
    }
}
