//! Flutes and fireproofing against published figures.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop where it fails"
)]

mod common;

use common::{decimals, float, known, n, q, readings};
use engineering::fireproofing::{FieldAsked, Member, Rule, at_joint, field_test, minimum_reading};
use engineering::flutes::profile::named;
use engineering::flutes::{CrossingAsked, PlugAsked, Profile, crossing, plug, profiles};
use engineering::{Error, Standing};

fn across(angle: &str) -> CrossingAsked {
    CrossingAsked {
        profile: named("B").unwrap().clone(),
        angle: known(angle),
        length: known("20 ft"),
        depth: known("4-7/8 in."),
    }
}

/// By arithmetic from the published profile: 1.5 × (3.5 + 4.25) / 2 = 5.81 sq in.
#[test]
fn the_void_of_a_wide_rib_deck() {
    let found = crossing(&across("90°")).unwrap().value;
    assert_eq!(found.area.number, n("5.8125"));
    assert_eq!(found.area_in_wall.unwrap().high, n("5.8125"));
    // The nominal width of a head-of-wall joint leaves out the voids under the crests (numbering convention for joints).
    let note = &crossing(&across("90°")).unwrap().worked.findings[0].words;
    assert!(
        note.contains("nominal width of the joint leaves these voids out"),
        "{note}"
    );
    // 240 in. at 6 in. are 40, and 41 at most where a void begins at either end.
    assert_eq!((found.fewest, found.most), (40, 41));
}

#[test]
fn a_wall_at_an_angle_cuts_longer_voids_and_fewer() {
    let found = crossing(&across("30°")).unwrap().value;
    assert_eq!(found.area_in_wall.unwrap().high, n("11.625"));
    assert_eq!((found.fewest, found.most), (20, 21));
    let found = crossing(&across("45°")).unwrap().value;
    let area = found.area_in_wall.unwrap();
    let reference = 5.8125 * 2.0_f64.sqrt();
    assert!(float(area.low) <= reference && reference <= float(area.high));
    assert!(float(area.high) - float(area.low) < 1e-7);
}

#[test]
fn a_wall_beside_the_ribs() {
    // 4-7/8 in. can touch two voids of 4-1/4 in. at 6 in.; the volume is theirs for the length of the wall.
    let found = crossing(&across("0°")).unwrap().value;
    assert_eq!((found.fewest, found.most), (0, 2));
    assert_eq!(found.area_in_wall, None);
    assert_eq!(found.most_volume.high, n("2790"));
    // 1 in. can stand under one.
    let mut thin = across("0°");
    thin.depth = known("1 in.");
    assert_eq!(crossing(&thin).unwrap().value.most, 1);
}

#[test]
fn profiles_have_sources_and_hold_together() {
    for profile in profiles().unwrap() {
        assert!(!profile.source.is_empty(), "{}", profile.name);
        let ask = CrossingAsked {
            profile: profile.clone(),
            ..across("90°")
        };
        assert!(crossing(&ask).is_ok(), "{}", profile.name);
    }
    let refused = named("Q").unwrap_err();
    assert_eq!(
        refused.to_string(),
        "there is no deck profile `Q`; known are B, F, A, N, composite-2, composite-3"
    );
}

#[test]
fn a_measured_profile() {
    let own = Profile {
        name: "site".to_owned(),
        title: "as measured".to_owned(),
        depth: q("38 mm"),
        pitch: q("150 mm"),
        rib_top: q("60 mm"),
        rib_bottom: q("40 mm"),
        source: "measured".to_owned(),
    };
    let ask = CrossingAsked {
        profile: own.clone(),
        angle: known("90°"),
        length: known("6 m"),
        depth: known("124 mm"),
    };
    assert_eq!(crossing(&ask).unwrap().value.area, q("3800 mm2"));
    let wide = Profile {
        rib_top: q("150 mm"),
        ..own
    };
    let refused = crossing(&CrossingAsked {
        profile: wide,
        ..ask
    })
    .unwrap_err();
    assert!(matches!(refused, Error::OutOfRange { .. }), "{refused}");
}

#[test]
fn a_plug_is_larger_in_one_direction() {
    let ask = |of_height| PlugAsked {
        profile: named("B").unwrap().clone(),
        depth: known("4 in."),
        compression: known("25 %"),
        of_height,
        board_gap: Some(known("1/8 in.")),
    };
    let found = plug(&ask(true)).unwrap().value;
    assert_eq!((found.height, found.top), (q("2 in."), q("3-1/2 in.")));
    assert_eq!(found.volume.number, n("31"));
    let found = plug(&ask(false)).unwrap().value;
    assert_eq!(
        (found.height, found.bottom.number),
        (q("1-1/2 in."), n("17/3"))
    );
    assert_eq!(found.volume.number, n("31"));
    // Gap 1/8 in.: 1-3/8 in. high, at the gap 3.5625 - 0.25 wide, 4 wide below.
    assert_eq!(decimals(found.board, 4), "5.0273");
    let mut closed = ask(true);
    closed.board_gap = Some(known("2 in."));
    assert!(
        plug(&closed)
            .unwrap_err()
            .to_string()
            .contains("the gap at the board")
    );
}

/// UFGS 07 81 00 and IBC 2018, 1705.14.4.1.
#[test]
fn the_least_reading() {
    for (design, least) in [
        ("1-1/2 in.", "1.25"),
        ("3/4 in.", "0.5625"),
        ("1 in.", "0.75"),
    ] {
        assert_eq!(
            minimum_reading(&known(design)).unwrap().number,
            n(least),
            "{design}"
        );
    }
}

fn field(values: &str, rule: Rule) -> Standing {
    let ask = FieldAsked {
        readings: readings(values, None),
        design: known("1 in."),
        rule,
        member: Member::Beam,
    };
    field_test(&ask).unwrap().value.standing
}

fn twenty(low: &[&str]) -> String {
    let mut all: Vec<&str> = low.to_vec();
    all.resize(20, "1 in.");
    all.join(";")
}

/// IBC 2009 and later: at most 10 % of readings below design, none below the least.
#[test]
fn ten_percent_may_be_low() {
    assert_eq!(
        field(&twenty(&["0.9 in."; 2]), Rule::TenPercent),
        Standing::Met
    );
    assert_eq!(
        field(&twenty(&["0.9 in."; 3]), Rule::TenPercent),
        Standing::NotMet
    );
    assert_eq!(
        field(&twenty(&["0.7 in."]), Rule::TenPercent),
        Standing::NotMet
    );
}

/// Before 2009 the average decided, no reading counting more than design + 1/4 in.: the edition turns the verdict.
#[test]
fn the_edition_turns_the_verdict() {
    let mut values = vec!["0.9 in."; 3];
    values.resize(20, "1.1 in.");
    let values = values.join(";");
    assert_eq!(field(&values, Rule::Average), Standing::Met);
    assert_eq!(field(&values, Rule::TenPercent), Standing::NotMet);
    // One thick place doesn't make up for the rest: 2 in. counts as 1.25 in.
    let mut values = vec!["2 in."];
    values.resize(10, "0.95 in.");
    assert_eq!(field(&values.join(";"), Rule::Average), Standing::NotMet);
    // One reading below three quarters fails under either.
    assert_eq!(
        field(&twenty(&["0.7 in."]), Rule::Average),
        Standing::NotMet
    );
}

#[test]
fn readings_too_near_or_too_few_are_open() {
    let ask = |values: &str, resolution| FieldAsked {
        readings: readings(values, resolution),
        design: known("1 in."),
        rule: Rule::TenPercent,
        member: Member::Beam,
    };
    let standing = |ask: &FieldAsked| field_test(ask).unwrap().value.standing;
    assert_eq!(
        standing(&ask(&twenty(&[]), Some("1/16 in."))),
        Standing::Open
    );
    assert_eq!(standing(&ask(&twenty(&[]), None)), Standing::Met);
    assert_eq!(standing(&ask("1-1/8 in.; 1-1/8 in.", None)), Standing::Open);
}

#[test]
fn the_joint_is_asked_apart_from_the_member() {
    // 5/8 in. keeps the listing's 1/2 in. at the joint, whatever the member's design.
    let found = at_joint(
        &readings("5/8 in.; 3/4 in.", Some("1/16 in.")),
        &known("1/2 in."),
        Some((&readings("2 in.", Some("1/16 in.")), &known("2 in."))),
    )
    .unwrap();
    assert_eq!(found.value.thickness, Standing::Met);
    // A tape that shows 2 in. can't tell 1-31/32 in.
    assert_eq!(found.value.overlap, Standing::Open);
    assert!(
        found
            .worked
            .cautions
            .iter()
            .any(|caution| caution.contains("asbestos"))
    );
}
