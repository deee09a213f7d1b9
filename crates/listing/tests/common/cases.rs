//! The numbers of a text with the cases that they are for.

/// The bounds of a text with the words of their conditions.
pub(crate) fn governed(text: &str) -> Vec<(String, Option<String>)> {
    let text = format!("1. Packing - {text}\n2. Sealant - Min 1/2 in. deep.\n");
    let reading = listing::read_text("conditions.txt", &text);
    let of_packing = reading
        .clauses
        .into_iter()
        .filter(|clause| clause.item == "1");
    of_packing
        .filter_map(|clause| {
            let value = clause
                .bound()?
                .low()
                .or(clause.bound()?.high())?
                .to_string();
            Some((value, clause.condition.map(|condition| condition.words)))
        })
        .collect()
}

#[track_caller]
pub(crate) fn check(text: &str, expected: &[(&str, bool)]) {
    let found = governed(text);
    let found: Vec<(&str, bool)> = found
        .iter()
        .map(|(value, condition)| (value.as_str(), condition.is_some()))
        .collect();
    assert_eq!(found, expected, "{text}");
}

/// The bounds of a text, each with its condition as a test.
#[track_caller]
pub(crate) fn check_cases(text: &str, expected: &[(&str, &str)]) {
    let text = format!("1. Packing - {text}\n2. Sealant - Min 1/2 in. deep.\n");
    let reading = listing::read_text("conditions.txt", &text);
    let mut found = Vec::new();
    for clause in reading.clauses.iter().filter(|clause| clause.item == "1") {
        let Some(bound) = clause.bound() else {
            continue;
        };
        let value = bound.low().or(bound.high()).map(|own| own.to_string());
        let condition = clause.condition.as_ref().map(|own| own.expr.to_string());
        found.push((value.unwrap_or_default(), condition.unwrap_or_default()));
    }
    let found: Vec<(&str, &str)> = found
        .iter()
        .map(|(value, condition)| (value.as_str(), condition.as_str()))
        .collect();
    assert_eq!(found, expected, "{text}");
}
