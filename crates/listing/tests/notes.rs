//! Notes whose marks stand behind words elsewhere: wherever they stand they are of no item, and fall away with no optional part above them. The wordings
//! are invented; what they mean is common practice.

mod common;

use common::clauses;

/// The one clause of a text that asks for an amount.
#[track_caller]
fn clause_with(text: &str, amount: &str) -> String {
    let all = clauses(text);
    let found = all.iter().find(|clause| clause.contains(amount));
    assert!(found.is_some(), "no {amount} in {all:#?}\n{text}");
    found.cloned().unwrap_or_default()
}

#[test]
fn a_note_below_an_optional_item_falls_away_with_none() {
    for (mark, note) in [
        (" (a)", "(a)"),
        (".(1)", "(1)"),
        (" (b)", "b)"),
        ("¹", "¹"),
        ("*", "*"),
        (" (Note 1)", "Note 1:"),
    ] {
        for behind in [
            "3. SEALANT - Depth min 1/4 in.\n",
            "",
            "Issued by the house.\n",
        ] {
            let text = format!(
                "1. PACKING - Min 4 pcf{mark}\n2. CLIPS (optional) - Max 24 in. OC.\n{note} Packing min 6 pcf for 3 hr rating.\n{behind}"
            );
            let own = clause_with(&text, "6 pcf");
            assert!(
                own.ends_with("6 pcf if joint.rating = 3 hr"),
                "{own}\n{text}"
            );
        }
    }
}

#[test]
fn a_note_may_say_what_holds_without_the_option_that_leads_to_it() {
    let text = "1. JOINT - Width max 3 in.\n   A. PACKING - Min 4 pcf.(1)\n   B. CLIPS (Optional) - Max 24 in. OC.(2)\n(1) Min 6 pcf for 3 hr rating.\n(2) Joint width shall be max 1 in. when clips are omitted.\n2. SEALANT - Depth min 1/4 in.\n";
    assert!(!clause_with(text, "at most 1 in").contains(" in 1B"));
    assert_eq!(
        clause_with(text, "24 in"),
        "clip.spacing: at most 24 in in 1B"
    );
}

#[test]
fn a_note_that_more_than_an_option_cites_falls_away_with_none() {
    let text = "1. CLIPS (optional) [1] - Max 24 in. OC.\n2. SEALANT [1] - Depth min 1/4 in.\n[1] Applied above 40 F, max 16 in. OC.\n";
    assert!(!clause_with(text, "16 in").ends_with(" in 1"));
}

#[test]
fn parts_of_an_option_are_no_notes() {
    let amount = |lead: &str, item: &str| {
        clause_with(
            &format!(
                "1. JOINT - {lead}\n2. CLIPS (optional){item}\n(a) Max 24 in. OC.\n(b) Min 16 ga.\n3. SEALANT - Depth min 1/4 in.\n"
            ),
            "24 in",
        )
    };
    for (lead, item) in [
        ("Width max 3 in.", ""),
        ("Width max 3 in., as Item 2(a) directs.", ""),
        ("Width max 3 in. (a)", " as follows:"),
        ("Width max 3 in. with (a) or (b).", ""),
    ] {
        assert!(
            amount(lead, item).ends_with("24 in in 2"),
            "{lead}: {}",
            amount(lead, item)
        );
    }
}

#[test]
fn a_raised_bracket_closes_the_mark_of_a_note() {
    let text = |mark: &str| {
        format!(
            "1   Packing {mark}\n\n    Min 4 pcf.\n\n2   Cover plate (optional)\n\n    Aluminium, 5 mm thick.\n\n¹⁾ Offcuts not shorter than 250 mm.\n"
        )
    };
    assert!(!clause_with(&text("¹⁾"), "250 mm").contains(" in 2"));
    // Nothing leads to it: it stands where it stands.
    assert!(clause_with(&text(""), "250 mm").ends_with(" in 2"));
}
