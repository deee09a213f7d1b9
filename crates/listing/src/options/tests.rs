//! What is taken for an option, and what is left required, with a warning.

use crate::model::{OptionGroupKind, Reading, WarningKind};
use crate::read;

fn reading(text: &str) -> Reading {
    read("options.txt", text.as_bytes()).unwrap()
}

/// The groups of a text in short: `2A|also 2B: 2A, 2C`, `3: 3A or 3B`, `4?`.
fn groups(text: &str) -> Vec<String> {
    let group = |group: &crate::model::OptionGroup| match group.kind {
        OptionGroupKind::Optional => format!("{}?", group.id),
        OptionGroupKind::OneOf => format!("{}: {}", group.id, group.choices.join(" or ")),
        OptionGroupKind::Configurations => group.choices.join(" or "),
        OptionGroupKind::Alternates => {
            let also = group.also_replaced.join(", ");
            let also = if also.is_empty() {
                also
            } else {
                format!("|also {also}")
            };
            format!("{}{also}: {}", group.id, group.choices.join(", "))
        }
    };
    reading(text).options.iter().map(group).collect()
}

fn is_in_doubt(text: &str) -> bool {
    reading(text)
        .warnings
        .iter()
        .any(|warning| warning.kind == WarningKind::OptionNotPlaced)
}

/// A listing of a wall of two parts and a third that `head` begins.
fn wall(head: &str) -> String {
    format!(
        "1. Floor - Concrete, min 5 in. thick.\n\n2. Wall - Studs and board.\n   A. Runner - Min 25 ga, legs 2 in. long.\n   \
         B. Clips - Min 18 ga, spaced 16 in. OC max.\n   C. {head}\n3. Sealant - Min 1/2 in. deep.\n4. Trim - Min 20 ga.\n"
    )
}

#[track_caller]
fn check(head: &str, expected: &[&str], in_doubt: bool) {
    let text = wall(head);
    assert_eq!(groups(&text), expected, "{head}");
    assert_eq!(is_in_doubt(&text), in_doubt, "{head}");
}

#[test]
fn what_stands_in_the_place_of_a_whole_item() {
    let all = &["2A: 2A, 2C"][..];
    check(
        "Slotted Runner - (Alternate to Item 2A) - Min 20 ga.",
        all,
        false,
    );
    check("Slotted Runner (alternative to 2A). Min 20 ga.", all, false);
    check(
        "Slotted Runner -- As an alternate to Item 2A, min 20 ga steel.",
        all,
        false,
    );
    check(
        "Framing - Slotted Runner - As an alternate to Item 2A, min 20 ga.",
        all,
        false,
    );
    check("SLOTTED RUNNER, IN LIEU OF NOTE 2A: MIN 20 GA.", all, false);
    check(
        "Slotted runner, in place of the runner. Min 20 ga.",
        all,
        false,
    );
    check(
        "Slotted Runner - (Alternate to Item 2A, Not Shown) - Min 20 ga.",
        all,
        false,
    );
    check(
        "Slotted Runner - (Alternate to Items 2A and 2B) - Min 20 ga.",
        &["2A|also 2B: 2A, 2C"],
        false,
    );
}

#[test]
fn a_rating_or_a_width_after_a_citation_is_no_item() {
    let all = &["2A: 2A, 2C"][..];
    for head in [
        "Slotted Runner - (Alternate to Item 2A, 1 and 2 Hr walls only) - Min 20 ga.",
        "Slotted Runner - (Alternate to Item 2A, 3 hr only) - Min 20 ga.",
        "Slotted Runner in lieu of Item 2A, 1 Hr walls only. Min 20 ga.",
        "Slotted Runner - (Alternate to Item 2A, 1 in. to 2 in. joints only) - Min 20 ga.",
    ] {
        check(head, all, false);
    }
}

#[test]
fn what_replaces_a_part_leaves_the_whole_in_force() {
    let part = &["2C?"][..];
    for head in [
        "Plugs - (Alternate to Item 2A in flutes only) - Min 8 pcf.",
        "Plugs - (Alternate to Item 2A within the flutes, 1 Hr) - Min 8 pcf.",
        "Plugs - (Alternate to top leg of Item 2A) - Min 20 ga.",
        "Plugs (in place of 2A at deck valleys, joints to 1 in.). Min 20 ga.",
        "Framing - Slotted Runner - As an alternate to the top leg of Item 2A, min 20 ga.",
        "Screws - (Alternate to Item 2A fasteners) - No. 8.",
        "Plugs - (Alternate in flutes only) - Min 8 pcf.",
        "Furring - (Alternate to Item 2A on one side of wall, 1 Hr only) - Min 20 ga.",
    ] {
        check(head, part, true);
    }
}

#[test]
fn an_alternative_that_cannot_be_placed_stays_required_with_a_warning() {
    for head in [
        "Slotted Runner - (Alternate to Item 2E) - Min 20 ga.",
        "Slotted runner (variant). Min 20 ga.",
        "Slotted runner, in place of the angle. Min 20 ga.",
        "Alternate spacing - Clips 12 in. OC.",
        "Framing - Clips are bent - As an alternate to Item 2A, min 20 ga.",
        "Slotted Runner - Not as an alternate to Item 2A. Min 20 ga.",
    ] {
        check(head, &[], true);
    }
    check(
        "Screws - No. 8, placed on alternate sides of the stud.",
        &[],
        false,
    );
    check("Runner - Concrete cast in place. Min 20 ga.", &[], false);
}

#[test]
fn a_number_in_brackets_is_of_the_same_item() {
    let text = "1. Floor - Min 5 in. thick.\n2. Wall.\n   A. Runners.\n      (1) Plain runner: min 25 ga.\n      \
                (2) Floor runner: min 25 ga.\n      (3) Slotted runner, as an alternate to (1): min 20 ga.\n";
    assert_eq!(groups(text), ["2A(1): 2A(1), 2A(3)"]);
}

#[test]
fn a_number_and_a_letter_set_apart_are_one_item_and_never_the_whole() {
    let replaced = |cited: &str| {
        groups(&format!(
            "1. Floor - Min 5 in. thick.\n2. Wall - Studs.\n   a) Runner, min 25 ga.\n   b) Clips, min 18 ga.\n   c) Studs, min 20 ga.\n   d) Slotted runner ({cited}). Min 20 ga.\n"
        ))
    };
    assert_eq!(replaced("alternate to 2 c)"), ["2c: 2c, 2d"]);
    assert_eq!(replaced("alternate to 2 (b)"), ["2b: 2b, 2d"]);
    assert_eq!(
        replaced("in place of 2 a) and 2 b)"),
        ["2a|also 2b: 2a, 2d"]
    );
    assert_eq!(
        replaced("in place of 2 a) to 2 c)"),
        ["2a|also 2b, 2c: 2a, 2d"]
    );
    assert!(replaced("alternate to 2 e)").is_empty());
}

#[test]
fn one_alternate_that_replaces_less_spares_what_another_replaces() {
    let text = "1. Floor - Min 5 in. thick.\n2. Wall - Studs.\n   A. Runner - Min 25 ga.\n   B. Clips - Min 18 ga.\n   C. Angle - (Alternate to Items 2A and 2B) - Min 20 ga.\n   \
                D. Channel - (Alternate to Item 2A) - Min 20 ga.\n   E. Track - (Alternate to Item 2D) - Min 20 ga.\n";
    assert_eq!(groups(text), ["2A: 2A, 2C, 2D, 2E"]);
}

/// A wall whose parts follow on some words.
fn parts(lead: &str, more: &str) -> String {
    format!(
        "1. Floor - Min 5 in. thick.\n\n2. Wall - {lead}\n   A. Concrete - Min 6 in. thick.\n   B. Block - Nom 8 in. thick.\n{more}\n3. Sealant - Min 1/2 in. deep.\n"
    )
}

#[test]
fn one_of_a_list() {
    for lead in [
        "One of the following:",
        "Use one of the following:",
        "Either of the following, rated as the joint:",
        "The joint is made in any one of these walls.",
        "Either of the walls below.",
        "Rated as the joint; one of:",
    ] {
        assert_eq!(groups(&parts(lead, "")), ["2: 2A or 2B"], "{lead}");
        assert!(!is_in_doubt(&parts(lead, "")), "{lead}");
    }
    let optional = "   C. Angles - (Optional) - Min 20 ga.\n";
    assert_eq!(
        groups(&parts("One of the following:", optional)),
        ["2: 2A or 2B", "2C?"]
    );
    let labelled = "   C. Gypsum board (Option G) - Two layers.\n";
    assert_eq!(
        groups(&parts("One of the following:", labelled)),
        ["2: 2A or 2B or 2C"]
    );
}

#[test]
fn a_list_that_may_be_no_choice_of_one_stays_required() {
    for (lead, more) in [
        ("One or more of the following:", ""),
        (
            "Either of the following:",
            "   C. Gypsum board - Two layers.\n",
        ),
        (
            "One of the following:",
            "   C. Angles - In all cases, min 20 ga.\n",
        ),
        ("One of the following products:", ""),
        ("Not less than one of the following:", ""),
    ] {
        let text = parts(lead, more);
        assert!(groups(&text).is_empty(), "{lead} {more}");
    }
    assert!(
        groups(&parts(
            "The wall shall be one of those in the Register and shall include:",
            ""
        ))
        .is_empty()
    );
}

#[test]
fn what_an_alternate_is_confined_to_is_a_clause_of_it() {
    let confined = |head: &str| {
        let reading = reading(&wall(head));
        let of = reading
            .clauses
            .into_iter()
            .filter(|clause| clause.read_by == ["confined to"]);
        of.map(|clause| {
            assert_eq!(
                (clause.option.as_deref(), clause.condition),
                (Some("2C"), None)
            );
            (clause.property, clause.words)
        })
        .collect::<Vec<_>>()
    };
    let width = |words: &str| vec![("joint.width".to_owned(), words.to_owned())];
    assert_eq!(
        confined(
            "Sealant - (Alternate to Item 2A for joints 1 in. wide or less) - Min 1/2 in. deep."
        ),
        width("for joints 1 in. wide or less")
    );
    assert_eq!(
        confined(
            "Sealant - As an alternate to Item 2A where the joint is not wider than 1 in., sealant 1/2 in. deep."
        ),
        width("where the joint is not wider than 1 in.")
    );
    let words = |head: &str| {
        confined(head)
            .into_iter()
            .map(|(_, words)| words)
            .collect::<Vec<_>>()
    };
    assert_eq!(
        words("Sealant - (Alternate to Item 2A, 2 Hr rating only) - Min 1/2 in. deep."),
        ["2 Hr rating only"]
    );
    assert_eq!(
        words("Sealant - (Alternate to Item 2A, not with Item 1) - Min 1/2 in. deep."),
        ["not with Item 1"]
    );
    assert_eq!(
        words("Angle - (Optional, one side only) - Min 20 ga."),
        ["one side only"]
    );
    assert!(words("Angle - (Optional, Not Shown) - Min 20 ga.").is_empty());
}

#[test]
fn items_that_may_be_left_out() {
    let optional = &["2C?"][..];
    for head in [
        "Spray* - (Optional) - Where the deck is sprayed, min 3/8 in. thick.",
        "Trim (opt) Min 18 ga.",
        "Rod (OPT.) Closed cell, min 1 in. diam.",
        "Cover strip, optional. Min 18 ga.",
        "OPTION - TRIM ANGLE. MIN 20 GA.",
    ] {
        check(head, optional, false);
    }
    check(
        "Stiffener (optional, except at corners): min 20 ga.",
        &[],
        false,
    );
    check("Cover strip, not optional. Min 18 ga.", &[], false);
    check(
        "Cover strip - Min 18 ga. An optional bead may be added.",
        &[],
        false,
    );
}

#[test]
fn an_alternate_named_by_its_configurations_belongs_to_any_of_them() {
    let reading = reading(&wall(
        "Slotted Runner - (Alternate to Item 2A, Configurations A and C only) - Min 20 ga.",
    ));
    let option = reading
        .clauses
        .iter()
        .find(|clause| clause.item == "2C")
        .and_then(|clause| clause.option.clone());
    assert_eq!(
        option.as_deref(),
        Some("2C & Configuration A or Configuration C")
    );
}

#[test]
fn a_sentence_that_only_confines_an_alternate_always_asks() {
    let text = wall(
        "Slotted Runner - (Alternate to Item 2A) - Min 20 ga steel. 2 Hr rating only. For joints 1 in. wide or less.",
    );
    let reading = reading(&text);
    for words in ["2 Hr rating only.", "For joints 1 in. wide or less."] {
        let clause = reading
            .clauses
            .iter()
            .find(|clause| clause.words == words)
            .unwrap();
        assert_eq!(clause.condition, None, "{words}");
        assert_eq!(clause.option.as_deref(), Some("2C"), "{words}");
    }
}
