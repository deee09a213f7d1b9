//! What a wall or floor may be, in parts: of several constructions one is built. The wordings are invented; what they mean is common practice.

#[test]
fn what_a_wall_may_be_is_a_choice() {
    let choices = |lead: &str| -> Vec<String> {
        let text = format!(
            "1. Construction - {lead}\n   (a) Cast concrete, min 6 in. thick;\n   (b) Solid block, min 8 in. thick.\n\n2. Packing - Min 4 pcf.\n"
        );
        let options = listing::read_text("list.txt", &text).options;
        options
            .into_iter()
            .flat_map(|group| group.choices)
            .collect()
    };
    for lead in [
        "Walls on either side of the joint may be",
        "The wall may be:",
        "Floors are either:",
        "Floor on one side at least. The slab may be of",
    ] {
        assert_eq!(choices(lead), ["1(a)", "1(b)"], "{lead}");
    }
    // What is done to a wall may all be done to one, and lets nothing of it fall away.
    let done = listing::read_text(
        "list.txt",
        "1. Construction - The wall may be:\n   (a) Concrete, min 6 in. thick;\n   (b) Sealed with min 1/2 in. of sealant.\n",
    );
    assert!(done.clauses.iter().all(|clause| clause.option.is_none()));
    // What may be done to a thing may all be done; and a number says more than which it is.
    for lead in [
        "The sealant may be:",
        "Walls at least 6 in. thick may be",
        "The wall shall be:",
    ] {
        assert!(choices(lead).is_empty(), "{lead}");
    }
}
