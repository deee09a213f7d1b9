//! What the words around a list of products make of it: those that deny it, limit it or leave it open leave it for a person. All names are invented.

use listing::{Clause, Confidence, Expr, Reading, Requirement, read_text};

/// The names that a reading asks for in every case: the clause's property with maker and product of each.
fn named(text: &str) -> Vec<String> {
    names_of(text, |clause| clause.condition.is_none())
}

/// The names that a reading asks for under words which a person judges.
fn named_in_words(text: &str) -> Vec<String> {
    names_of(text, |clause| {
        let condition = clause.condition.as_ref();
        condition.is_some_and(|own| matches!(own.expr, Expr::Words(_)))
            && clause.confidence == Confidence::WithDoubt
    })
}

fn names_of(text: &str, asks: impl Fn(&Clause) -> bool) -> Vec<String> {
    let reading = read_text("sample", text);
    let clauses = reading.clauses.iter().filter(|clause| asks(clause));
    let listed = clauses.filter_map(|clause| match &clause.requirement {
        Requirement::Named { names } => {
            let names: Vec<&str> = names
                .iter()
                .filter(|name| !name.maker.is_empty())
                .map(|name| name.product.as_str())
                .collect();
            (!names.is_empty()).then(|| format!("{} = {}", clause.property, names.join(" | ")))
        }
        _ => None,
    });
    listed.collect()
}

fn has_words(reading: &Reading, words: &str) -> bool {
    reading.clauses.iter().any(|clause| {
        let said = clause
            .words
            .split_whitespace()
            .collect::<Vec<_>>()
            .join(" ");
        matches!(clause.requirement, Requirement::Prose) && said.contains(words)
    })
}

/// Whether all clauses that name products are in doubt, and there is one.
fn is_in_doubt(text: &str) -> bool {
    let reading = read_text("sample", text);
    let mut named = reading
        .clauses
        .iter()
        .filter(|clause| matches!(clause.requirement, Requirement::Named { .. }))
        .peekable();
    named.peek().is_some() && named.all(|clause| clause.confidence == Confidence::WithDoubt)
}

fn sealant(behind: &str) -> String {
    format!("1. Wall - Min 6 in. concrete.\n2. Sealant - Min 1/2 in. deep.{behind}\n")
}

#[track_caller]
fn check(text: &str, expected: &[&str]) {
    assert_eq!(named(text), expected, "{text}");
}

#[test]
fn a_lead_that_denies_limits_or_opens_a_list_leaves_it_as_words() {
    for lead in [
        " Excluded products are as follows:",
        "\nNot accepted:",
        "\nThe following products shall not be used:",
        "\nThe following products shall not be used.",
        "\nThe following are no longer listed:",
        "\nPrimer is not required when the following are used:",
        " For exterior joints only:",
        "\nAny sealant may be used, except in walls:",
        "\nProducts other than the following may be used:",
        "\nSealants of the following makers may be used with written consent:",
        "\nSuitable sealants include:",
        "\nSealants such as:",
        "\nFor example:",
        "\nA known good one is:",
        "\nApplied by airless sprayer as follows:",
        "\nFor floors:",
        "\n3 hr rating:",
        "\nDiscontinued",
    ] {
        let text = sealant(&format!(
            "{lead}\nVORLTH SEALANTS LLC - Vorlflex 300\nQESTAM LTD - Qestop 9"
        ));
        check(&text, &[]);
        let reading = read_text("sample", &text);
        let whole = format!("{} VORLTH SEALANTS LLC - Vorlflex 300", lead.trim());
        assert!(has_words(&reading, &whole), "{text}");
        assert!(has_words(&reading, "Qestop 9"), "{text}");
    }
}

#[test]
fn a_lead_that_makes_a_case_of_a_list_is_its_condition() {
    for lead in [
        " For exterior joints only:",
        "\nFor floors:",
        "\n3 hr rating:",
        "\nWhere the wall is of block:",
        "\nAlternate for joints up to 25 mm (1 in.):",
    ] {
        let text = sealant(&format!(
            "{lead}\nVORLTH SEALANTS LLC - Vorlflex 300\nQESTAM LTD - Qestop 9"
        ));
        assert_eq!(
            named_in_words(&text),
            ["sealant.product = Vorlflex 300 | Qestop 9"],
            "{text}"
        );
    }
    for lead in [
        "\nNot accepted:",
        "\nFor walls the following products are not to be used:",
        "\nThe following shall never be used in 3 hr joints:",
        "\nWithdrawn for floors:",
        "\nAny sealant may be used where it is shown, except in walls:",
        "\nSealants such as these, where approved:",
        "\nOther makers, if equal:",
        "\nA known good one is:",
    ] {
        let text = sealant(&format!("{lead}\nVORLTH SEALANTS LLC - Vorlflex 300"));
        assert_eq!(named_in_words(&text), [""; 0], "{text}");
        check(&text, &[]);
    }
}

#[test]
fn a_list_behind_another_isn_t_known_to_be_of_the_item_s_part() {
    let text = sealant(
        "\nVORLTH SEALANTS LLC - Vorlflex 300\n\nB. Tape (alternate to Item 2A) - Min 2 in. wide.\n\nQESTAM LTD - Qestape 9",
    );
    assert!(
        named_in_words(&text)
            .iter()
            .all(|own| !own.starts_with("sealant.")),
        "{text}"
    );
}

#[test]
fn a_lead_that_only_calls_it_a_list_leaves_it_one() {
    for lead in [
        "\nApproved products:",
        " The sealant shall be one of the following:",
        "\nManufacturers",
        "\nSealants:",
        "",
    ] {
        check(
            &sealant(&format!(
                "{lead}\nVORLTH SEALANTS LLC - Vorlflex 300\nQESTAM LTD - Qestop 9"
            )),
            &["sealant.product = Vorlflex 300 | Qestop 9"],
        );
    }
}

#[test]
fn a_list_ends_at_the_heading_of_the_next() {
    for heading in [
        "Not approved:",
        "For walls:",
        "Discontinued",
        "3 hr rating:",
        "As an alternate, in joints of glass wool:",
        "Configuration B: min 1 in. deep.",
    ] {
        let text = sealant(&format!(
            "\nVORLTH SEALANTS LLC - Vorlflex 300\n{heading}\nQESTAM LTD - Qestop 9"
        ));
        check(&text, &["sealant.product = Vorlflex 300"]);
        assert!(has_words(&read_text("sample", &text), "Qestop 9"), "{text}");
        assert!(is_in_doubt(&text), "{text}");
    }
}

#[test]
fn a_heading_that_names_a_part_heads_its_list() {
    for heading in ["PRIMERS", "Primer:"] {
        check(
            &sealant(&format!(
                "\nVORLTH SEALANTS LLC - Vorlflex 300\n{heading}\nQESTAM LTD - Qesprime 9"
            )),
            &[
                "sealant.product = Vorlflex 300",
                "primer.product = Qesprime 9",
            ],
        );
    }
    check(
        "1. Packing - Min 4 in. deep.\n2. Sealant - Min 1/2 in. deep.\n\nLIST OF PRODUCTS\nPacking\nMIRRETH INSULATION - Mirrwool FS\nDRUSK INC - DRK 60\nSealant\nVORLTH SEALANTS LLC - Vorlflex 300\nTape\nQESTAM LTD - Qestape 2\n",
        &[
            "packing.product = Mirrwool FS | DRK 60",
            "sealant.product = Vorlflex 300",
            "tape.product = Qestape 2",
        ],
    );
}

#[test]
fn a_line_without_a_key_goes_on_with_the_key_before_it() {
    for (first, second) in [("Item 1:", "Item 2:"), ("Packing:", "Sealant:")] {
        check(
            &format!(
                "1. Packing - Min 4 in. deep.\n2. Sealant - Min 1/2 in. deep.\n\nPRODUCTS\n{first} MIRRETH INSULATION - Mirrwool FS\nDRUSK INC - DRK 60\n{second} VORLTH SEALANTS - Vorlflex 300\nQESTAM LTD - Qestop 9\n"
            ),
            &[
                "packing.product = Mirrwool FS | DRK 60",
                "sealant.product = Vorlflex 300 | Qestop 9",
            ],
        );
    }
}

#[test]
fn names_of_several_parts_are_no_list_of_one() {
    for words in [
        "Joint is packed with Mirrwool 40 (Mirreth Insulation) and faced with Qestop 9 (Qestam Ltd).",
        "MIRRETH INSULATION - Mirrwool FS packing; VORLTH SEALANTS - Vorlflex 300 sealant",
    ] {
        for title in ["Joint", "Packing", "Sealant"] {
            let text = format!("1. Wall - Min 6 in. concrete.\n2. {title} - {words}\n");
            check(&text, &[]);
            assert!(has_words(&read_text("sample", &text), "Mirrwool"), "{text}");
        }
    }
}

#[test]
fn a_name_ends_with_its_line() {
    for next in [
        "Effective 14 March 2021",
        "200 Quarry Road, Eastmere",
        "Tel. 555 0142",
        "Current",
        "Bond Breaker Tape -",
    ] {
        let text = sealant(&format!("\nVORLTH SEALANTS LLC - Vorlflex 300\n{next}"));
        check(&text, &["sealant.product = Vorlflex 300"]);
    }
    check(
        &sealant("\nVORLTH SEALANTS LLC - Vorlflex FS, Vorlflex\n80"),
        &["sealant.product = Vorlflex FS | Vorlflex 80"],
    );
}

#[test]
fn a_maker_between_signs_runs_over_a_line_s_end() {
    check(
        &sealant(" Vorlth Sealants, \"Vorlflex 300\"; Qestam\nFugen, \"Qestop 9\".\n"),
        &["sealant.product = Vorlflex 300 | Qestop 9"],
    );
    check(
        &sealant(" Seal all of it. Qestam\nSealants: Qestop 9, Qestop\n20 LT.\n"),
        &["sealant.product = Qestop 9 | Qestop 20 LT"],
    );
    // Where no sign says that the maker goes on, the second line may say another thing.
    check(
        &sealant("\nVorlth Sealants, \"Vorlflex 300\"; Qestam\nFugen \"Qestop 9\"\n"),
        &[],
    );
}

#[test]
fn a_list_behind_a_sentence_on_its_line_is_in_doubt() {
    for before in [
        "Not accepted for this system.",
        "For exterior joints only.",
        "In walls only.",
    ] {
        for list in ["Qestam Sealants: Qestop 9.", "Qestam\nSealants: Qestop 9."] {
            let text = sealant(&format!(" {before} {list}"));
            let reading = read_text("sample", &text);
            let mut named = reading
                .clauses
                .iter()
                .filter(|clause| clause.property == "sealant.product");
            assert!(
                named.all(|clause| clause.confidence == Confidence::WithDoubt),
                "{text}"
            );
        }
    }
}

#[test]
fn a_list_beside_words_on_its_products_is_in_doubt() {
    for beside in [
        "Equivalent products are accepted.",
        "QESTAM LTD - Qestop series",
        "QESTAM LTD - Qestop 9 or equal",
        "QESTAM LTD - Qestop 9, discontinued",
        "QESTAM LTD - Qestop 9 (USA)",
        "Vorlflex 300 is limited to joints max 2 in. wide.",
    ] {
        let text = sealant(&format!("\nVORLTH SEALANTS LLC - Vorlflex 300\n{beside}"));
        assert!(is_in_doubt(&text), "{text}");
        assert!(
            has_words(&read_text("sample", &text), beside.trim_end_matches('.')),
            "{text}"
        );
    }
    assert!(!is_in_doubt(&sealant(
        "\nVORLTH SEALANTS LLC - Vorlflex 300\nSmooth the surface."
    )));
}

#[test]
fn a_row_beside_one_that_is_set_aside_is_in_doubt() {
    let text = "1. Packing - Min 4 in. deep.\n2. Sealant - Min 1/2 in. deep.\n\nPRODUCTS\n2   VORLTH SEALANTS    Vorlflex 300\n2   QESTAM LTD         Qestop 9 or equal\n";
    assert!(is_in_doubt(text));
}

#[test]
fn two_lists_of_one_part_do_not_both_bind() {
    let text = "1. Sealant - Sealant is \"Vorlflex 2\" by Vorlth Sealants Ltd. The joint is dry and clean. Sealant is \"Qestop 4\" by Qestam Seals Ltd.\n";
    check(text, &["sealant.product = Vorlflex 2"]);
    assert!(is_in_doubt(text));
    assert!(has_words(&read_text("sample", text), "Qestop 4"));
}

#[test]
fn a_limit_beside_a_product_is_no_limit_of_every_joint() {
    for line in [
        "VORLTH SEALANTS LLC - Vorlflex 300 (max 1 in. joint)\nQESTAM LTD - Qestop 9",
        "QESTAM LTD - Qestop 9\nQestop 9 is limited to joints max 2 in. wide.",
    ] {
        let text = sealant(&format!("\n{line}"));
        let reading = read_text("sample", &text);
        let limits = |clause: &listing::Clause| {
            matches!(clause.requirement, Requirement::Bound(_))
                && clause.property.starts_with("joint.")
        };
        assert!(!reading.clauses.iter().any(limits), "{text}");
    }
}

#[test]
fn a_number_of_a_name_is_no_size() {
    let bounds = |text: &str| -> Vec<String> {
        let reading = read_text("sample", text);
        let bounds = reading
            .clauses
            .iter()
            .filter_map(|clause| match &clause.requirement {
                Requirement::Bound(bound) => Some(bound.at.of(text).to_owned()),
                _ => None,
            });
        bounds.collect()
    };
    assert_eq!(bounds("1. Packing - DRK 60 100 mm thick.\n"), [""; 0]);
    assert_eq!(bounds("1. Packing - Drusk SAF 60 100 mm thick.\n"), [""; 0]);
    assert_eq!(
        bounds("1. Sealant - Qestam QestopX 9, 12 mm deep.\n"),
        ["12 mm"]
    );
    assert_eq!(bounds("1. Sealant - Max 1 000 mm long.\n"), ["1 000 mm"]);
}

/// An item with a list, and a part of it behind that with another; the lists stand as far out as the parts' marks.
fn second_part(part: &str) -> String {
    format!(
        "1. Wall - Min 6 in. concrete.\n\n\
         3. Joint Treatment - The joint is treated as follows:\n\n\
         \x20  A. Packing* - Mineral wool, min 4 pcf, set flush with both faces\n\
         \x20      of the wall.\n\n\
         \x20  QUORRAL FIBRE CO - Quorwool 40\n\n\
         \x20  {part} It is to be protected from rain\n\
         \x20      until it is dry.\n\n\
         \x20  TENNIRE CHEMICAL CO - Tenniseal 20\n"
    )
}

#[test]
fn a_heading_inside_an_item_gives_the_list_behind_it_its_part() {
    for (part, property) in [
        (
            "B. Fill, Void or Cavity Material* - Sealant - Min 1/2 in. deep.",
            "sealant.product",
        ),
        (
            "B. Sealant* - Min 1/2 in. deep. Tool within 10 min.",
            "sealant.product",
        ),
        (
            "(b) Spray, both sides of the wall, min 1/8 in. wet.",
            "coating.product",
        ),
    ] {
        let text = second_part(part);
        check(
            &text,
            &[
                "3:product = Quorwool 40",
                &format!("{property} = Tenniseal 20"),
            ],
        );
    }
}

#[test]
fn a_heading_inside_an_item_that_is_another_s_place_or_for_some_joints_leaves_its_list() {
    for part in [
        "B. Fill Material* - Sealant - (Alternate to Item 3A) - Min 1/2 in. deep.",
        "B. Sealant* - (Optional) - Min 1/2 in. deep.",
        "B. Sealant* - For joints up to 1 in. wide - Min 1/2 in. deep.",
        "B. Sealant* (walls only) - Min 1/2 in. deep.",
        "B. Sealant* - Min 1/2 in. deep. May be used in place of Item 3A.",
        "B. Sealant* - Min 1/2 in. deep. Not required on concrete.",
        "Option 2 - Coating\n\n   B. Sealant* - Min 1/2 in. deep.",
        "or\n\n   B. Sealant* - Min 1/2 in. deep.",
        "B. Steel Angle - Min 20 ga.",
    ] {
        let text = second_part(part);
        assert!(!named(&text).concat().contains("Tenniseal"), "{text}");
    }
    let part = second_part("B. Sealant* - Min 1/2 in. deep.");
    for (words, other) in [
        ("as follows:", "with one of the following:"),
        (
            "until it is dry.",
            "and snow. The following products are not to be used.",
        ),
    ] {
        let text = part.replace(words, other);
        assert!(!named(&text).concat().contains("Tenniseal"), "{text}");
    }
}

#[test]
fn a_label_that_refuses_its_products_asks_for_none() {
    for label in [
        "Excluded products",
        "Withdrawn products",
        "Prohibited materials",
        "Rejected sealant",
        "Unacceptable makers",
    ] {
        let text = sealant(&format!("\n\n   {label}: QESTAM SEALS LTD - Qestop 9"));
        check(&text, &[]);
        assert!(has_words(&read_text("sample", &text), "Qestop 9"), "{text}");
    }
}

#[test]
fn a_maker_is_named_without_the_words_that_lead_to_it() {
    for lead in ["Made by ", "Manufactured by ", "SUPPLIED BY ", "By ", ""] {
        let text = format!(
            "1. Sealant. Min 1/2 in. deep.\n\n   {lead}Cotterwell Compounds Inc: CW Acrylic 20\n"
        );
        let reading = read_text("sample", &text);
        let makers: Vec<String> = reading
            .clauses
            .into_iter()
            .filter_map(|clause| match clause.requirement {
                Requirement::Named { names } => Some(names.into_iter().map(|name| name.maker)),
                _ => None,
            })
            .flatten()
            .collect();
        assert_eq!(makers, ["Cotterwell Compounds Inc"], "{text}");
    }
}
