//! A column that says row by row how the values beside it are meant. The wordings are invented.

use super::bounds;

fn table(limits: [&str; 3]) -> String {
    let [first, second, third] = limits;
    format!(
        "Sheet PL-1\n\n1. ELASTOMER\n\n\
        Property                 Limit     Wall joint     Floor joint\n\
        ---------------------------------------------------------------\n\
        Wet thickness, mm        {first:<10}2.0            3.0\n\
        Lap onto concrete, mm    {second:<10}13             25\n\
        Temperature, °C          {third:<10}4 to 38        4 to 38\n\
        ---------------------------------------------------------------\n"
    )
}

/// The bounds, without the columns that they are for.
fn limits(text: &str) -> Vec<String> {
    let found = bounds(text).into_iter();
    found
        .filter_map(|one| Some(one.split_once(": ")?.1.to_owned()))
        .collect()
}

#[test]
fn each_row_is_limited_by_its_own_word() {
    for (low, high, range) in [
        ("min.", "max.", "range"),
        ("minimum", "maximum", "-"),
        ("≥", "≤", "between"),
    ] {
        let found = limits(&table([low, high, range]));
        let expected = [
            "at least 2 mm [Wall joint]",
            "at least 3 mm [Floor joint]",
            "at most 13 mm [Wall joint]",
            "at most 25 mm [Floor joint]",
            "between 4 °C and 38 °C [Wall joint]",
            "between 4 °C and 38 °C [Floor joint]",
        ];
        assert_eq!(found, expected);
    }
}

#[test]
fn a_range_beside_one_number_is_left_to_a_person() {
    let text = table(["range", "min.", "range"]);
    let found = bounds(&text);
    assert!(!found.iter().any(|one| one.contains(" 2 mm")), "{found:?}");
    let reading = listing::read_text("sample", &text);
    assert!(
        reading
            .warnings
            .iter()
            .any(|warning| warning.words == "2.0")
    );
}

#[test]
fn a_label_that_says_another_limit_is_left_to_a_person() {
    let text =
        table(["min.", "min.", "range"]).replace("Lap onto concrete, mm", "Lap maximum, mm      ");
    let found = bounds(&text);
    assert!(!found.iter().any(|one| one.contains("13 mm")), "{found:?}");
}
