//! Where a case, an option or a sentence ends, so that the limit behind it stands alone.

use listing::read_text;

use crate::common::check_item;

#[test]
fn a_condition_without_a_comma_ends_where_it_asks_for_something() {
    check_item(
        "Clips - When joint width exceeds 2 in. space clips max 12 in. OC.",
        &["clip.spacing: at most 12 in if joint.width > 2 in."],
    );
    check_item(
        "Packing - When used in floors packing is recessed max 1/2 in.",
        &["packing.recess: at most 1/2 in if \"When used in floors\""],
    );
    check_item(
        "Fill - Should have a depth of min 1/2 in.",
        &["2:fill_depth: at least 1/2 in"],
    );
    // With a comma the limit in it is the condition's own.
    check_item(
        "Packing - Where it is laid over boards min 1 in. thick, depth 4 in. min.",
        &["packing.depth: at least 4 in if \"Where it is laid over boards min 1 in. thick\""],
    );
    // Where it can't be told the numbers are unread, and the words stand without the condition.
    let swallowed = "Clips - When the joint opens use clips 12 in. wide.";
    let reading = read_text(
        "turned.txt",
        &format!("1. Floor - 5 in. thick min.\n\n2. {swallowed}\n"),
    );
    let itself = reading.clauses.iter().any(|clause| {
        clause.bound().is_none()
            && clause
                .condition
                .as_ref()
                .is_some_and(|condition| condition.span == clause.span)
    });
    assert!(!itself);
}

#[test]
fn what_lifts_a_condition_is_not_under_it() {
    check_item(
        "Packing - In 2 hr walls, min 4 in. deep, and in every wall min 4 pcf.",
        &[
            "packing.depth: at least 4 in if joint.rating = 2 hr",
            "packing.density: at least 4 pcf",
        ],
    );
    check_item(
        "Packing - When two layers are used, min 4 in. deep, and all wool min 4 pcf.",
        &[
            "packing.depth: at least 4 in if board.layers = 2",
            "packing.density: at least 4 pcf",
        ],
    );
    check_item(
        "Packing - When two layers are used, min 4 in. deep and min 4 pcf.",
        &[
            "packing.depth: at least 4 in if board.layers = 2",
            "packing.density: at least 4 pcf if board.layers = 2",
        ],
    );
}

#[test]
fn only_what_is_called_optional_is() {
    check_item(
        "Fill - Optional primer max 5 mils. Sealant min 1/2 in. depth.",
        &[
            "2:primer_optional_primer: at most 5 mil",
            "sealant.depth: at least 1/2 in",
        ],
    );
    check_item(
        "Sealant - (Optional primer) Sealant min 1/2 in. deep.",
        &["sealant.depth: at least 1/2 in"],
    );
    check_item(
        "Cover Plate - Optional. Min 6 in. wide.",
        &["strip.width: at least 6 in in 2"],
    );
}

#[test]
fn a_sentence_ends_behind_a_degree() {
    check_item(
        "Sealant - Sealant shall not be poured when the temperature of the concrete is less than 45 deg F. Sealant shall be protected for not less than 72 hr.",
        &[
            "2:concrete_temperature: at least 45 degF",
            "2:sealant_duration: at least 72 hr",
        ],
    );
}

#[test]
fn a_sentence_in_capitals_goes_on_behind_a_unit() {
    check_item(
        "SEALANT - DO NOT APPLY BELOW 35° F. OR ABOVE 100° F.",
        &[
            "2:sealant_not_apply_below: at least 35 degF",
            "2:sealant_or_above: at most 100 degF",
        ],
    );
}
