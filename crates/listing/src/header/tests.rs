//! Heads of many layouts, and what is read of them.

use super::*;
use crate::layout::lines;
use crate::model::{LeakageRelation, LeakageTemperature, Relation};

/// A head of one paragraph.
fn head(text: &str) -> HeaderRead {
    let pieces = lines(text).into_iter().map(|line| line.span).collect();
    header(text, &[pieces])
}

pub(super) fn read(text: &str) -> Header {
    head(text).header
}

pub(super) fn rated(text: &str) -> String {
    let hours = read(text).ratings_hr;
    let hours: Vec<String> = hours.into_iter().map(|hours| hours.to_string()).collect();
    hours.join(" ")
}

pub(super) fn unread(text: &str) -> String {
    let spans = head(text).unread;
    let words: Vec<&str> = spans.into_iter().map(|span| span.of(text)).collect();
    words.join(" | ")
}

pub(super) fn warned(text: &str) -> String {
    let warnings = head(text).warnings.into_iter();
    let unread = warnings.filter(|(kind, _, _)| *kind == WarningKind::UnreadNumber);
    let words: Vec<&str> = unread.map(|(_, span, _)| span.of(text)).collect();
    words.join(" | ")
}

pub(super) fn leakages(text: &str) -> String {
    let each = read(text).leakage.into_iter().map(|own| {
        let at = match own.at {
            LeakageTemperature::Ambient => "ambient",
            LeakageTemperature::Elevated => "400",
        };
        let sign = match own.relation {
            LeakageRelation::LessThan => "<",
            LeakageRelation::AtMost => "<=",
            LeakageRelation::Equal => "",
        };
        format!("{at} {sign}{}", own.value)
    });
    each.collect::<Vec<_>>().join(", ")
}

#[track_caller]
fn movements(text: &str, expected: &[&str]) {
    let found: Vec<String> = read(text)
        .movement
        .iter()
        .map(|entry| {
            let direction = format!("{:?}", entry.direction).to_lowercase();
            let option = entry.option.clone().unwrap_or_default();
            format!("{} {direction} {option}", entry.percent)
                .trim()
                .to_owned()
        })
        .collect();
    assert_eq!(found, expected, "{text}");
}

#[test]
fn a_movement_keeps_to_the_directions_that_were_tested() {
    movements(
        "Movement: Class II, 25 % compression, no extension",
        &["25 compression"],
    );
    movements(
        "Movement: 25 % compression only; extension not tested",
        &["25 compression"],
    );
    movements(
        "Movement: compression 25 percent, extension 10 percent",
        &["25 compression", "10 extension"],
    );
    movements("Movement: Class II, 25 %", &[]);
    movements(
        "Movement: Configuration A: 25 % compression; Configuration B: 10 % compression",
        &[
            "25 compression Configuration A",
            "10 compression Configuration B",
        ],
    );
}

#[test]
fn a_sign_of_both_ways_is_a_direction() {
    movements("Movement: Class I, ± 20 %", &["20 compressionorextension"]);
    movements(
        "Movement: Class II: ±20 %; Class III: 12.5 % shear",
        &["20 compressionorextension", "25/2 shear"],
    );
    movements("Movement: Class III, ± 10 % shear", &["10 shear"]);
}

#[test]
fn a_width_keeps_the_limit_that_its_words_set() {
    for (text, expected) in [
        ("Max joint width 8 in.", Relation::AtMost),
        ("Nominal Joint Width - 4 in. max", Relation::AtMost),
        ("Width: to 6 in.", Relation::AtMost),
        ("Gap to 4 in.", Relation::AtMost),
        ("Maximum Width of Joint -- 2-1/2 in.", Relation::AtMost),
        ("MAX JT WIDTH 1-1/2 in.", Relation::AtMost),
        ("Joint: 50 mm (2 in.) max", Relation::AtMost),
        ("Joint 2 in. to 12 in.", Relation::Between),
        ("Min joint width 1 in.", Relation::AtLeast),
        ("Joint width 1 in.", Relation::Nominal),
    ] {
        let width = read(text).width.map(|width| width.relation);
        assert_eq!(width, Some(expected), "{text}");
    }
    assert_eq!(read("Steel joint 2 in. deep").width, None);
}

#[test]
fn a_column_may_say_for_what_the_joint_is_rated() {
    let rated = |text: &str| read(text).ratings_hr.len();
    assert_eq!(rated("Floor to Floor          Rated 1, 2 and 4 Hours"), 3);
    assert_eq!(rated("Between walls rated 2 hr"), 0);
}

#[test]
fn a_width_is_told_by_the_word_for_the_joint() {
    for text in [
        "Joint at rest: 2 in. max.",
        "JOINT 2\" MAX.  CLASS II",
        "Nominal joint: up to 2 in.",
        "Ratings 1-hr and 2-hr. Max joint: 2 in.",
        "Gap ........ 2 in. max",
        "Rated 2 hr, 2 in. maximum joint width",
        "UL 2079; joints to 2 in. wide",
    ] {
        let width = read(text).width;
        let relation = width.as_ref().map(|width| width.relation);
        let value = width.and_then(|width| width.hi).map(|hi| hi.to_string());
        assert_eq!(
            (relation, value.as_deref()),
            (Some(Relation::AtMost), Some("2")),
            "{text}"
        );
    }
    for text in [
        "Joint filler 2 in. deep",
        "Joints: 2 in. deep",
        "Base joint 2 in.",
        "Joint: +/- 1/2 in.",
    ] {
        assert_eq!(read(text).width, None, "{text}");
    }
}

#[test]
fn hours_alone_and_classes_are_ratings() {
    for (text, expected) in [
        ("1 HR & 2 HR; JOINT 1\" MAX", "1 2"),
        ("ASTM E1966 / UL 2079.  2 hr.  Gap to 4 in.", "2"),
        ("Fire endurance ........ 3 hours", "3"),
        ("Tested: ASTM E2307, 2 hr F rating; 1 hr T rating", "2"),
        ("F Rating - 2 Hr     T Rating - 1/2 Hr", "2"),
        ("F RATING  2 HR         T RATING  1/2 HR", "2"),
        ("F: 2 HR   WIDTH: 6 in. MAX", "2"),
        ("Classification   EN 13501-2, EI 60 / EI 90", "1 3/2"),
        // Times and ratings of something else.
        ("Cure: 2 hr", ""),
        ("Floor rating 2 hr", ""),
        ("1-hour and 2-hour walls per UL 2079", ""),
        ("48 hr", ""),
        ("Rating - 2 hr\nHose stream - 30 min\nCure - 4 hr", "2"),
        ("Rating - 2 hr (tested with 4 Hr floor)", "2"),
        ("Rating 2 hr, cured 7 days", "2"),
        ("Rating - 2 hr\nTest duration - 4 hr", "2"),
        ("Rating - 2 hr\nWall assembly rating: 3 hr", "2"),
        ("Rating - 2 hr\nConstruction rating: 3 hr", "2"),
        ("Rating\n2 hr\nHose Stream\n1 hr", "2"),
        ("Duration:   2 hours", "2"),
        ("Rating - 2 hr\nTime for 1 hr", "2"),
        ("Result: 2 hours.", "2"),
        ("1 HOUR AND 2 HOURS (SAME AS THE WALL) -- ASTM E1966", "1 2"),
        ("1 HR (WALL) CURE", ""),
        (
            "Hourly rating 2 hours (concrete walls), 1 hour (framed walls)",
            "1 2",
        ),
        ("Rating 2 hr (one layer) cure 1 hr", "2"),
        ("Rating 5 min", ""),
        ("Rating 15 min", "1/4"),
        ("Hose stream result: 2 hours", ""),
        ("Integrity and insulation 60 or 120 minutes", "1 2"),
        ("Integrity/insulation:  120 or 240 minutes", "2 4"),
        ("Wall integrity and insulation 240 minutes", ""),
        ("Insulation 60 minutes", ""),
    ] {
        assert_eq!(rated(text), expected, "{text}");
    }
}

#[test]
fn what_a_head_does_not_state_is_not_silent() {
    assert_eq!(unread("Movement   10 mm downwards"), "10 mm");
    assert_eq!(
        unread("Joint width - 2 in. max\nSealant depth - 4 in.\nRating - 2 hr\nCure - 4 hr"),
        "4 in. | 4 hr"
    );
    assert_eq!(unread("Wool depth: 100 mm"), "100 mm");
    assert_eq!(
        unread("1-hour and 2-hour walls per UL 2079"),
        "1-hour | 2-hour"
    );
    assert_eq!(
        unread("Rating 2 hr   Joint width 2 in.   L at 400 F 1.2 cfm/ft"),
        ""
    );
    assert_eq!(unread("2 HR JOINT SYSTEM NO. 4417-H   Rating 2 hr"), "");
}

#[test]
fn a_time_too_short_for_a_rating_is_shown() {
    assert_eq!(unread("Rating 5 min"), "5 min");
}

#[test]
fn hours_and_minutes_are_one_rating() {
    assert_eq!(rated("Fire ratings: F, FT  1 h 30 min and 2 h"), "3/2 2");
    assert_eq!(rated("Rating 1 hr 30 min"), "3/2");
    // A sign between them leaves two.
    assert_eq!(rated("Ratings: 1 hr, 90 min"), "1 3/2");
}

#[test]
fn a_rating_of_the_wall_is_not_the_joints() {
    assert!(read("Wall Rating 2 Hr").ratings_hr.is_empty());
    assert_eq!(read("Assembly Rating 2 Hr").ratings_hr.len(), 1);
}

#[test]
fn widths_for_ratings_keep_the_strictest() {
    let head = read("Joint Width max 4 in. (1 Hr), max 2 in. (2 Hr)");
    assert_eq!(head.differs, [HeaderTopic::Width]);
    assert_eq!(
        head.width
            .and_then(|width| width.strictest_hi)
            .map(|hi| hi.to_string()),
        Some("2".to_owned())
    );
    let layers = read("Joint width: 1 in. (one layer) or 2 in. (two layers)");
    assert_eq!(layers.differs, [HeaderTopic::Width]);
    let ends = layers.width.map(|width| (width.hi, width.strictest_hi));
    assert_eq!(ends, Some((Some(Number::whole(2)), Some(Number::whole(1)))));
    let configured = read("MAX JOINT WIDTH:  CONFIG A AND B - 2 IN.; CONFIG C - 3 IN.");
    let limit = configured.width.map(|width| (width.relation, width.lo));
    assert_eq!(limit, Some((Relation::AtMost, None)));
    let seen = read("Joint width: 1 in. (see item 3), packing 2 in. (one layer)");
    assert_eq!(seen.width.and_then(|width| width.hi), None);
    let either = read("Joint Width 3/4 in. or 1-1/2 in.");
    assert!(either.differs.is_empty());
    // Nothing between the two is listed.
    let strictest = either.width.and_then(|width| width.strictest_hi);
    assert_eq!(strictest.map(|hi| hi.to_string()), Some("3/4".to_owned()));
}

#[test]
fn every_leakage_is_kept() {
    let head = read("L Rating at Ambient: 1 cfm/ft (Configuration A), 3 cfm/ft (Configuration B)");
    assert_eq!(
        (head.leakage.len(), head.differs),
        (2, vec![HeaderTopic::Leakage])
    );
}
