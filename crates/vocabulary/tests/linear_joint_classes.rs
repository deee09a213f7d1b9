//! Classes of linear joint seals (EN 13501-2).

#![allow(
    clippy::panic,
    clippy::expect_used,
    clippy::string_slice,
    reason = "a failed expectation is the point of a test"
)]

use measure::Quantity;
use vocabulary::LinearJointClass;

fn read(text: &str) -> LinearJointClass {
    LinearJointClass::parse(text).unwrap_or_else(|error| panic!("{text}: {error}"))
}

fn check(text: &str, printed: &str) {
    assert_eq!(read(text).to_string(), printed, "{text}");
    assert_eq!(read(printed), read(text), "{printed}");
}

fn check_error(text: &str, field: &str, found: &str) {
    let error = LinearJointClass::parse(text).expect_err(text);
    assert_eq!(
        (error.field.to_string().as_str(), error.found.as_str()),
        (field, found),
        "{text}"
    );
    assert!(
        text.get(error.at..)
            .is_some_and(|rest| rest.starts_with(found)),
        "{text}"
    );
}

#[test]
fn the_published_example_says_what_it_is_published_to_say() {
    // EN 13501-2, published sample: 120 min, vertical in a wall, 30 % induced movement, both splices, 20-100 mm.
    assert_eq!(
        read("EI 120 – V – M30 – B – W 20 to 100").describe(),
        "integrity and insulation 120 minutes; vertical joint in a wall; induced movement 30 percent of the width; \
         splices made in the factory and on site; widths 20 mm to 100 mm"
    );
}

#[test]
fn spaces_dashes_and_commas_are_free() {
    check(
        "EI 120 – V – M30 – B – W 20 to 100",
        "EI 120 – V – M30 – B – W 20 to 100",
    );
    check(
        "EI 120 - V - M 30 - B - W 20 to 100",
        "EI 120 – V – M30 – B – W 20 to 100",
    );
    check(
        "EI120-V-M30-B-W20 to 100",
        "EI 120 – V – M30 – B – W 20 to 100",
    );
    check(
        "EI 90 — T — M 12,5 — F — W 10 to 50 mm",
        "EI 90 – T – M12.5 – F – W 10 to 50",
    );
    check(
        "E 120 - H - X - M - W 10 to 30",
        "E 120 – H – X – M – W 10 to 30",
    );
    check(
        "E 30-H-M012.50 %-F-W 00 to 99",
        "E 30 – H – M12.5 – F – W 0 to 99",
    );
    check(
        "E 120, EI 60 - H - M 12,5 - B - W 31 to 100",
        "E 120, EI 60 – H – M12.5 – B – W 31 to 100",
    );
}

#[test]
fn a_class_without_movement_says_what_it_still_allows() {
    let words = read("E 60 - T - X - F - W 10 to 30").describe();
    assert_eq!(
        words,
        "integrity 60 minutes; horizontal joint in a wall; no movement (up to 7.5 percent is allowed); \
         splices made on site; widths 10 mm to 30 mm"
    );
}

#[test]
fn integrity_alone_is_no_insulation() {
    let class = read("E 240 - V - X - F - W 10 to 30");
    assert_eq!(
        (class.integrity_minutes(), class.insulation_minutes()),
        (Some(240), None)
    );
}

#[test]
fn widths_include_both_ends() {
    let widths = read("EI 60 - V - X - F - W 10 to 30").widths;
    let contains = |text| widths.contains(Quantity::parse(text).unwrap());
    assert_eq!(contains("10 mm"), Some(true));
    assert_eq!(contains("30 mm"), Some(true));
    assert_eq!(contains("9.9 mm"), Some(false));
    assert_eq!(contains("1-3/16 in."), Some(false));
    assert_eq!(contains("1 h"), None);
}

#[test]
fn an_error_names_the_field_and_what_stands_there() {
    check_error("REI 120 - V - X - B - W 10 to 30", "rating", "REI 120");
    check_error("EI 125 - V - X - B - W 10 to 30", "rating", "EI 125");
    check_error("EI - V - X - B - W 10 to 30", "rating", "EI");
    check_error("", "rating", "");
    check_error("EI 120", "orientation", "");
    check_error("EI 120 - A - X - B - W 10 to 30", "orientation", "A");
    check_error("EI 120 - V - Y - B - W 10 to 30", "movement", "Y");
    check_error("EI 120 - V - M - B - W 10 to 30", "movement", "M");
    check_error("EI 120 - V - M000 - B - W 10 to 30", "movement", "M000");
    check_error("EI 120 - V - X - Q - W 10 to 30", "splices", "Q");
    check_error("EI 120 - V - X - B - 10 to 30", "width", "10 to 30");
    check_error("EI 120 - V - X - B - W 30 to 10", "width", "W 30 to 10");
    check_error("EI 120 - V - X - B - W 10", "width", "W 10");
    check_error("EI 120 - V - X - B - W 10 to 30 in", "width", "in");
}

#[test]
fn an_error_says_what_would_be_right() {
    let error = LinearJointClass::parse("EI 120 - V")
        .unwrap_err()
        .to_string();
    assert_eq!(
        error,
        "movement: found nothing; right would be X (none) or M and a percentage above 0, as in `M30`"
    );
}

#[test]
fn found_in_a_row_of_a_table() {
    let row = "A  vertical   10 to 50     EI 120 - V - M 25 - F - W 10 to 50  (1)";
    let (place, class) = LinearJointClass::find(row).unwrap();
    assert_eq!(&row[place], "EI 120 - V - M 25 - F - W 10 to 50");
    assert_eq!(class.insulation_minutes(), Some(120));
    assert_eq!(
        LinearJointClass::find("REI 120 - V - M 25 - F - W 10 to 50"),
        None
    );
    assert_eq!(LinearJointClass::find("EI 120 - V - M 25 - F"), None);
    assert_eq!(LinearJointClass::find("E – é"), None);
}
