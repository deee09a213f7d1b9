//! Designations of joint systems and their bands of width.

#![allow(
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::string_slice,
    reason = "a failed expectation is the point of a test"
)]

use measure::Quantity;
use vocabulary::{Designation, JointKind, Motion, vocabulary};

fn band(text: &str) -> Option<String> {
    Designation::parse(text)
        .expect(text)
        .width_band()
        .map(|band| band.to_string())
}

fn contains(designation: &str, width: &str) -> Option<bool> {
    let band = Designation::parse(designation)
        .unwrap()
        .width_band()
        .unwrap();
    band.contains(Quantity::parse(width).unwrap())
}

#[test]
fn each_band_begins_and_ends_where_the_convention_says() {
    // Joint numbering convention; the two in the middle are the worked example HW-D-1999 and HW-D-2000.
    for (text, expected) in [
        ("HW-D-0000", "2 in. or less"),
        ("HW-D-0999", "2 in. or less"),
        ("HW-D-1000", "over 2 in. to 6 in."),
        ("HW-D-1999", "over 2 in. to 6 in."),
        ("HW-D-2000", "over 6 in. to 12 in."),
        ("HW-D-2999", "over 6 in. to 12 in."),
        ("HW-D-3000", "over 12 in. to 24 in."),
        ("HW-D-3999", "over 12 in. to 24 in."),
        ("HW-D-4000", "over 24 in."),
        ("HW-D-4999", "over 24 in."),
    ] {
        assert_eq!(band(text).as_deref(), Some(expected), "{text}");
    }
}

#[test]
fn no_band_is_guessed() {
    assert_eq!(band("HW-D-5000"), None);
    assert_eq!(band("HW-D-9999"), None);
    // Perimeter: the bands are confirmed to 2999 only.
    assert_eq!(band("CW-S-2999").as_deref(), Some("over 6 in. to 12 in."));
    assert_eq!(band("CW-S-3000"), None);
}

#[test]
fn a_band_has_its_upper_edge_and_not_its_lower() {
    assert_eq!(contains("WW-S-0001", "2 in."), Some(true));
    assert_eq!(contains("WW-S-1001", "2 in."), Some(false));
    assert_eq!(contains("WW-S-1001", "50.8 mm"), Some(false));
    assert_eq!(contains("WW-S-1001", "51 mm"), Some(true));
    assert_eq!(contains("WW-S-2001", "12 in."), Some(true));
    assert_eq!(contains("WW-S-3001", "24 in."), Some(true));
    assert_eq!(contains("WW-S-4001", "24 in."), Some(false));
    assert_eq!(contains("WW-S-4001", "2 ft 1/16 in."), Some(true));
}

#[test]
fn every_kind_reads_and_prints() {
    for kind in JointKind::ALL {
        for motion in [Motion::Static, Motion::Dynamic] {
            let text = format!("{}-{}-0042", kind.code(), motion.code());
            let read = Designation::parse(&text).unwrap();
            assert_eq!((read.kind, read.motion, read.number), (*kind, motion, 42));
            assert_eq!(read.to_string(), text);
        }
    }
}

#[test]
fn kinds_and_motions_are_words_of_the_vocabulary() {
    let kind = vocabulary().property("joint.kind").unwrap();
    for joint in JointKind::ALL {
        let by_name = kind.text_value(joint.value_name()).unwrap();
        assert_eq!(kind.text_value(joint.code()), Some(by_name));
    }
    let motion = vocabulary().property("joint.static_or_dynamic").unwrap();
    assert!(motion.text_value(Motion::Static.title()).is_some());
    assert!(motion.text_value(Motion::Dynamic.title()).is_some());
}

#[test]
fn what_is_not_a_designation_says_which_part_is_wrong() {
    let error = |text: &str| Designation::parse(text).unwrap_err().to_string();
    assert_eq!(
        error("HX-D-0123"),
        "`HX` is no kind of joint; the kinds are FF, WW, FW, HW, BW, CG and CW"
    );
    assert_eq!(
        error("HW-M-0123"),
        "`M` says neither static nor dynamic; it would be S or D"
    );
    assert_eq!(
        error("HW-D-123"),
        "`123` is no number of four digits, such as 0123"
    );
    assert_eq!(
        error("HW-D-+123"),
        "`+123` is no number of four digits, such as 0123"
    );
    assert_eq!(
        error("HW-D"),
        "`HW-D` is not of the form TT-M-NNNN, such as HW-D-0123"
    );
    assert_eq!(
        error(""),
        "`` is not of the form TT-M-NNNN, such as HW-D-0123"
    );
    assert!(Designation::parse("hw-d-0123").is_err());
    assert!(Designation::parse("HW-D-0123 ").is_err());
}

#[test]
fn letters_before_the_kind_are_read_only_when_asked_for() {
    assert!(Designation::parse("XHW-D-2173").is_err());
    assert_eq!(Designation::find("XHW-D-2173"), None);
    let (prefix, read) = Designation::parse_decorated("QRSHW-D-2173").unwrap();
    assert_eq!(
        (prefix, read.kind, read.number),
        ("QRS", JointKind::HeadOfWall, 2173)
    );
    assert_eq!(Designation::parse_decorated("HW-D-2173").unwrap().0, "");
    assert!(Designation::parse_decorated("QRSTHW-D-2173").is_err());
    assert!(Designation::parse_decorated("X-HW-D-2173").is_err());
    assert!(Designation::parse_decorated("é-D-2173").is_err());
    assert!(Designation::parse_decorated("").is_err());
}

#[test]
fn found_only_where_it_stands_apart() {
    let found = |text: &str| Designation::find(text).map(|(place, _)| text[place].to_owned());
    assert_eq!(found("HW-D-0123").as_deref(), Some("HW-D-0123"));
    assert_eq!(found("(WW-S-1042)").as_deref(), Some("WW-S-1042"));
    assert_eq!(
        found("½ in.: FF-D-1001, FF-D-1002").as_deref(),
        Some("FF-D-1001")
    );
    assert_eq!(
        found("XHW-D-0123 or HW-D-0124").as_deref(),
        Some("HW-D-0124")
    );
    assert_eq!(found("HW-D-01234"), None);
    assert_eq!(found("HW-D-0123-A"), None);
    assert_eq!(found("AB-HW-D-0123"), None);
    assert_eq!(found("HW-D-012"), None);
    assert_eq!(found("HW-D-012½"), None);
    assert_eq!(found(""), None);
}
