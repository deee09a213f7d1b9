//! Kinds that a document sets side by side, "System A" and "System B": a joint is of one of them, and they are the choices of one group.

use listing::{OptionGroupKind, Reading};

fn read(text: &str) -> Reading {
    listing::read_text("kinds.txt", text)
}

/// The option and the condition of the clause that bounds the number written so.
#[track_caller]
fn of(text: &str, number: &str) -> (String, String) {
    let reading = read(text);
    let mut clauses = reading.clauses.into_iter();
    let clause = clauses.find(|clause| {
        let at = clause.bound().map(|bound| bound.at);
        at.is_some_and(|at| at.of(text) == number)
    });
    assert!(clause.is_some(), "no clause bounds {number}: {text}");
    clause.map_or_else(Default::default, |clause| {
        let condition = clause.condition.map(|own| own.expr.to_string());
        (
            clause.option.unwrap_or_default(),
            condition.unwrap_or_default(),
        )
    })
}

fn option(text: &str, number: &str) -> String {
    of(text, number).0
}

/// The groups of a text: what each is about, and its choices.
fn groups(text: &str) -> Vec<(String, Vec<String>)> {
    let groups = read(text).options.into_iter();
    let kinds = groups.filter(|group| group.kind == OptionGroupKind::Configurations);
    kinds.map(|group| (group.id, group.choices)).collect()
}

#[test]
fn items_under_lines_that_name_kinds_are_choices_of_one_group() {
    let text = "1. Wall. Concrete min 5 in. thick.\nSystem A\n2. Packing. Min 4 in. deep.\n3. Sealant. Min 1/2 in. deep.\nSystem B\n4. Packing. Min 6 in. deep.\n5. Installation. Sealant min 1 in. deep.\n";
    assert_eq!(option(text, "5 in."), "");
    assert_eq!(option(text, "4 in."), "System A");
    assert_eq!(option(text, "1/2 in."), "System A");
    assert_eq!(option(text, "6 in."), "System B");
    // What is said of the whole joint is of neither.
    assert_eq!(option(text, "1 in."), "");
    let choices = vec!["System A".to_owned(), "System B".to_owned()];
    assert_eq!(groups(text), [("system".to_owned(), choices)]);
}

#[test]
fn a_kind_alone_and_kinds_that_are_all_built_are_no_choice() {
    let text = |second: &str, more: &str| {
        format!(
            "1. Wall. Concrete min 5 in. thick.\nSystem A\n2. Packing. Min 4 in. deep.\n{second}\n3. Packing. Min 6 in. deep.\n{more}\n"
        )
    };
    assert_eq!(of(&text("Packing", ""), "4 in."), Default::default());
    let both = text("System B", "Both systems are installed.");
    assert_eq!(option(&both, "4 in."), "");
    assert!(groups(&both).is_empty());
    assert_eq!(option(&text("System B", ""), "4 in."), "System A");
    // In capitals a sentence that goes on names nothing.
    let capitals = "1. JOINT: 2 IN. WIDE MAX; SYSTEM IS LISTED FOR 25% COMPRESSION.\n";
    assert_eq!(of(capitals, "25%"), Default::default());
}

#[test]
fn paragraphs_under_the_names_of_kinds_are_theirs() {
    for (one, other) in [
        ("Type HW", "Type FF"),
        ("Method A", "Method B"),
        ("Variant 1", "Variant 2"),
        ("Seal Type 1", "Seal Type 2"),
    ] {
        for sign in ["\n", ": ", ". ", " - "] {
            let text = format!(
                "1. Wall. Concrete.\n2. Seal. Clean the joint.\n{one}{sign}Packing min 4 in. deep.\n{other}{sign}Packing min 6 in. deep.\n"
            );
            assert_eq!(option(&text, "4 in."), one, "{text}");
            assert_eq!(option(&text, "6 in."), other, "{text}");
        }
    }
}

#[test]
fn references_to_kinds_are_of_them() {
    let text = "1. Packing. Min 5 in. deep (Type B only).\n2. Sealant. Min 1/2 in. deep for Type A and 3/4 in. for Type B.\n3. Clips. Types A and C: min 3 in. long. Type B: min 2 in. long.\n4. Board. Type X: 5/8 in. thick min.\n";
    assert_eq!(option(text, "5 in."), "Type B");
    assert_eq!(option(text, "1/2 in."), "Type A");
    assert_eq!(option(text, "3/4 in."), "Type B");
    assert_eq!(option(text, "3 in."), "Type A or Type C");
    assert_eq!(option(text, "2 in."), "Type B");
    assert_eq!(of(text, "5/8 in."), Default::default());
    // Where the document heads no other kind, only a person can say.
    let alone = "1. Packing. Min 5 in. deep (Type B only).\n";
    assert_eq!(of(alone, "5 in."), (String::new(), "\"Type B\"".to_owned()));
}

#[test]
fn options_are_a_choice_of_one_only_where_the_document_says_so() {
    let text = |lead: &str| {
        format!(
            "1. Clips. {lead}\n\n   Option A: 18 ga. clips 12 in. OC.\n\n   Option B: 16 ga. clips 24 in. OC.\n"
        )
    };
    assert_eq!(option(&text("Steel."), "12 in."), "");
    assert_eq!(
        option(&text("Use one of the options below."), "12 in."),
        "Option A"
    );
}

#[test]
fn kinds_that_a_joint_has_at_once_are_no_choice() {
    let text = |said: &str| {
        format!(
            "1. Wall. Concrete.\n2. Wall types. {said}\nType A\nMin 6 in. thick.\nType B\nMin 4 in. thick.\n"
        )
    };
    for said in [
        "Type A wall at one side and Type B wall at the other.",
        "Type A is followed by Type B.",
    ] {
        let text = text(said);
        assert_eq!(option(&text, "6 in."), "", "{said}");
        assert_eq!(option(&text, "4 in."), "", "{said}");
        assert!(!of(&text, "4 in.").1.is_empty(), "{said}");
    }
    assert_eq!(option(&text("As drawn."), "4 in."), "Type B");
    assert_eq!(
        option(&text("One of the types: Type A and Type B."), "4 in."),
        "Type B"
    );
}
