//! What words of a configuration carry.

/// The bounds of a text with their options, and whether they stand in doubt.
fn options(text: &str) -> Vec<(String, Option<String>, bool)> {
    let reading = listing::read_text("conditions.txt", &format!("1. Joint - {text}\n"));
    let bounds = reading.clauses.into_iter().filter_map(|clause| {
        let value = clause.bound()?.low().or(clause.bound()?.high())?;
        let doubt = clause.confidence == listing::Confidence::WithDoubt;
        Some((value.to_string(), clause.option, doubt))
    });
    bounds.collect()
}

#[test]
fn a_configuration_of_the_subject_governs_what_is_said_of_it() {
    let a = || Some("Configuration A".to_owned());
    let b = || Some("Configuration B".to_owned());
    assert_eq!(
        options(
            "The system of Configuration A is designed for max 25 percent shear, and that of Configuration B a max 12 percent shear. Depth min 4 in."
        )
        .iter()
        .map(|(value, option, _)| (value.as_str(), option.clone()))
        .collect::<Vec<_>>(),
        [("25 %", a()), ("12 %", b()), ("4 in.", None)]
    );
    // At the end of what is said it governs what stands before.
    assert_eq!(
        options(
            "Packing min 5 in. wide for Configuration A and min 6 in. wide for Configuration B."
        )
        .into_iter()
        .map(|(_, option, _)| option)
        .collect::<Vec<_>>(),
        [a(), b()]
    );
}

#[test]
fn words_of_one_configuration_never_carry_another() {
    let reading = listing::read_text(
        "conditions.txt",
        "1. Packing - Cut to a min width of 5 in. for Configuration A and a width no less than that of the wall for Configuration B.\n",
    );
    let words = reading
        .clauses
        .iter()
        .find(|clause| clause.words.contains("that of the wall"));
    assert_eq!(
        words.and_then(|clause| clause.option.as_deref()),
        Some("Configuration B")
    );
}

#[test]
fn what_is_asked_besides_a_configuration_is_a_condition() {
    let reading = listing::read_text(
        "conditions.txt",
        "1. Coating - In Configuration B with the sprayed deck of Item 2, the overlap shall be min 3 in.\n2. Deck - Sprayed, min 1/2 in. thick.\n",
    );
    let overlap = reading
        .clauses
        .iter()
        .find(|clause| clause.bound().is_some());
    let overlap = overlap.map(|clause| {
        let condition = clause.condition.as_ref();
        (
            clause.option.clone(),
            condition.map(|condition| condition.expr.to_string()),
        )
    });
    assert_eq!(
        overlap,
        Some((
            Some("Configuration B".to_owned()),
            Some("\"with the sprayed deck of Item 2\"".to_owned())
        ))
    );
}

#[test]
fn a_place_that_stays_words_leaves_its_numbers_in_doubt() {
    let doubts = |text| -> Vec<bool> {
        options(text)
            .into_iter()
            .map(|(_, _, doubt)| doubt)
            .collect()
    };
    assert_eq!(
        doubts(
            "In the gap between the top of the board and the valleys, wool min 2 in. deep is set."
        ),
        [true]
    );
    assert_eq!(doubts("Wool min 2 in. deep is set in the gap."), [false]);
}
