//! Variants that a table names by labels alone: what is said "in C2" or "for V5" is of that one. The wordings are invented.

use listing::{Requirement, read_text};

/// The bounds of an item beside a table of variants, each with the words of its condition.
fn bounds(heading: &str, (first, second): (&str, &str), words: &str) -> Vec<String> {
    let text = format!(
        "Report KR-11\n\n1. Sealant - Acrylic, white.\n\n2. Backing - {words}\n\n3. Classes\n\n\
         \x20  {heading:<12}Class\n\
         \x20  ----------  ------------------------------\n\
         \x20  {first:<12}EI 60 - V - X - F - W 10 to 30\n\
         \x20  {second:<12}EI 90 - V - X - F - W 10 to 50\n\
         \x20  ----------  ------------------------------\n\n4. Label the seal.\n"
    );
    let reading = read_text("sample", &text);
    let own = reading.clauses.iter().filter(|clause| clause.item == "2");
    let bounds = own.filter_map(|clause| {
        let Requirement::Bound(bound) = &clause.requirement else {
            return None;
        };
        let condition = clause.condition.as_ref();
        let condition = condition.map_or_else(String::new, |it| format!(" [{}]", it.words));
        Some(format!("{}: {bound}{condition}", clause.property))
    });
    bounds.collect()
}

#[test]
fn what_is_said_of_a_label_is_of_its_variant() {
    for heading in ["Variant", "Config.", "Ref", "System"] {
        let found = bounds(
            heading,
            ("C2", "C3"),
            "Wool inserted to a depth of 100 mm min in C2, 50 mm min in C3.",
        );
        assert_eq!(
            found,
            [
                "packing.depth: at least 100 mm [in C2]",
                "packing.depth: at least 50 mm [in C3]",
            ],
            "{heading}"
        );
    }
    let found = bounds(
        "Variant",
        ("V1", "V5"),
        "Floors at least 150 mm thick, or 200 mm for V5.",
    );
    assert!(
        found.iter().any(|one| one.ends_with("200 mm [for V5]")),
        "{found:#?}"
    );
    assert!(
        found.iter().any(|one| one.ends_with("150 mm")),
        "{found:#?}"
    );
    let found = bounds(
        "Variant",
        ("V1", "V5"),
        "Walls at least 150 mm thick (V1: 100 mm).",
    );
    assert!(
        found.iter().any(|one| one.ends_with("100 mm [V1]")),
        "{found:#?}"
    );
    assert!(
        found.iter().any(|one| one.ends_with("at least 150 mm")),
        "{found:#?}"
    );
}

#[test]
fn what_holds_always_isn_t_excused_by_a_label() {
    for words in [
        "Wool at least 100 mm deep, except in V5.",
        "Wool at least 100 mm deep on each side of a V5 joint.",
        "Wool at least 100 mm deep. V1 and V5 are sealed on both sides.",
        "Wool at least 100 mm deep, as tested with V1 wool and V5 wool.",
    ] {
        let found = bounds("Variant", ("V1", "V5"), words);
        assert_eq!(
            found.first().map(String::as_str),
            Some("packing.depth: at least 100 mm"),
            "{words}"
        );
    }
    // A class of reaction to fire, and a label that no table has.
    let found = bounds("Class", ("A1", "A2"), "Wool (A1), at least 100 mm deep.");
    assert_eq!(found, ["packing.depth: at least 100 mm"]);
    let found = bounds("Variant", ("V1", "V5"), "Steel angles 40 mm long in S2.");
    assert!(found.iter().all(|one| !one.contains('[')), "{found:#?}");
}
