//! Paragraphs and headings that offer something: what stands under them is asked for where the offer is taken, which a person says. The wordings are invented; what they
//! mean is common practice.

mod common;

use common::{check, clauses};

fn sealant(offer: &str) -> String {
    format!("1. SEALANT\n\n    Applied over the packing, min 1/2 in. deep.\n\n    {offer}\n")
}

#[test]
fn a_paragraph_headed_as_an_offer_is_asked_for_where_it_is_taken() {
    for (offer, words) in [
        (
            "Spray option -- in lieu of the sealant, a coating",
            "Spray option",
        ),
        ("Coating (Alternate A). A coating", "Coating (Alternate A)"),
        ("Coating (optional): A coating", "Coating (optional)"),
    ] {
        check(
            &sealant(&format!(
                "{offer} may be used. Wet thickness min 1/8 in. Dry thickness min 1/16 in."
            )),
            &[
                "sealant.depth: at least 1/2 in",
                &format!("coating.wet_thickness: at least 1/8 in if \"{words}\""),
                &format!("coating.dry_thickness: at least 1/16 in if \"{words}\""),
            ],
        );
    }
}

#[test]
fn an_offer_that_is_asked_for_in_some_joints_stays_required() {
    for asked in [
        "Coating (optional): Required where the joint is outdoors. Wet thickness min 1/8 in.",
        "Coating is an option. Wet thickness min 1/8 in.",
        // No offer: the thing is an option of nothing.
        "Coating: Wet thickness min 1/8 in.",
    ] {
        let found = clauses(&sealant(asked));
        assert!(
            found.contains(&"coating.wet_thickness: at least 1/8 in".to_owned()),
            "{asked} {found:?}"
        );
    }
}

#[test]
fn a_heading_to_which_some_joints_are_sent_is_a_case() {
    let sheet = |sent: &str| {
        format!(
            "1. Beam: flange min 5 in. wide. {sent}\n2. Packing: min 4 in. deep.\n\nDETAIL B - NARROW FLANGE\n  B1. Box the flange out with angle, max 12 in. o.c.\n"
        )
    };
    let spaced = |text: &str| {
        let found = clauses(text);
        let spacing = found.iter().find(|clause| clause.contains("at most 12 in"));
        spacing.cloned().unwrap_or_default()
    };
    let sent = spaced(&sheet("If it is narrower, use Detail B."));
    assert!(sent.ends_with(" if \"DETAIL B\""), "{sent}");
    let not_sent = spaced(&sheet("See Detail B."));
    assert!(
        !not_sent.is_empty() && !not_sent.contains(" if "),
        "{not_sent}"
    );
}
