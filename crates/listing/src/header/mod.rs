//! The head of a listing: title, designation, standards, ratings, width, movement, leakage.
//!
//! A number of the head belongs to the nearest words before it that name what it states, whatever the layout: `ASSEMBLY RATINGS -- 1
//! and 2 Hr`, `Joint Width: 3/4 to 6 in.`, `MOVEMENT   Class I, 7.5% comp. or ext.` Two columns that say the same in two units are
//! one statement.

mod classes;
mod codes;
mod columns;
mod identity;
mod label_units;
mod leakage;
mod movement;
mod topic;
mod width;

use measure::{Dimension, Number, Quantity, Unit};

use crate::conditions::{Mentioned, configurations};
use crate::layout::{Flow, LIST_SIGNS};
use crate::model::{Header, HeaderTopic, Span, WarningKind};
use crate::phrase::Amount;
use crate::rules::Sentence;
use crate::sentences::stretches;
use identity::{check_designation, designation, edition, standards, title};
use topic::{Topic, topic};

/// The head as read, with what a person should look at.
pub(crate) struct HeaderRead {
    pub(crate) header: Header,
    pub(crate) warnings: Vec<(WarningKind, Span, String)>,
    /// The numbers with a unit that state nothing that a head is read for: whether a clause holds them, or nothing does, is told elsewhere.
    pub(crate) unread: Vec<Span>,
    /// The numbers without a unit that a label gives one: they are read, or else among the unread.
    pub(crate) bare: Vec<Span>,
}

/// Hours of a head that are its ratings only where nothing better is stated.
#[derive(Default)]
struct Found {
    /// Those that nothing names.
    unnamed: Vec<Number>,
    /// Those of fire and more: FT, FH, FTH.
    beyond_fire: Vec<Number>,
    /// Where those of heat or water alone stand, which are never the joint's.
    by_heat: Vec<Span>,
}

/// Reads the head from its paragraphs.
pub(crate) fn header(source: &str, paragraphs: &[Vec<Span>]) -> HeaderRead {
    let mut read = HeaderRead {
        header: Header::default(),
        warnings: Vec::new(),
        unread: Vec::new(),
        bare: Vec::new(),
    };
    let mut times = Vec::new();
    let mut found = Found::default();
    let mut of_classes = Vec::new();
    let mut coded = Vec::new();
    let columns = |pieces: &Vec<Span>| columns::columns(source, pieces);
    for pieces in paragraphs.iter().flat_map(columns) {
        let flow = Flow::of(source, pieces.iter().copied());
        // A paragraph of running sentences, or a line of a list, says things of its items, not of the head.
        if is_prose(flow.text()) || flow.text().starts_with(LIST_SIGNS) {
            continue;
        }
        of_classes.extend(classes::ratings(flow.text()));
        coded.extend(codes::codes(&flow));
        for range in stretches(flow.text()) {
            let mut sentence = Sentence::new(&flow, range);
            read.bare.extend(label_units::give(&mut sentence));
            read_paragraph(&sentence, &mut read, &mut found);
            times.extend(untold_times(&sentence));
        }
    }
    codes::take(&coded, &mut read);
    for other in [found.unnamed, of_classes, found.beyond_fire] {
        if read.header.ratings_hr.is_empty() {
            read.header.ratings_hr = other;
        }
    }
    // How long the heat is held back says nothing of how long the fire is.
    if read.header.ratings_hr.is_empty() {
        read.unread.extend(found.by_heat);
    }
    // "2 HR HEAD-OF-WALL JOINT" over "Rating - 2 Hr" says it again.
    let of_rating = |hours: &Number| read.header.ratings_hr.contains(hours);
    let untold = times.into_iter().filter(|(hours, _)| !of_rating(hours));
    read.unread.extend(untold.map(|(_, span)| span));
    // Nothing else looks for a number without a unit.
    let lost = |span: &&Span| read.unread.contains(span);
    let bare: Vec<Span> = read.bare.iter().filter(lost).copied().collect();
    read.warnings.extend(bare.into_iter().map(|span| {
        let message = "the head states nothing that this is of".to_owned();
        (WarningKind::UnreadNumber, span, message)
    }));
    read.unread
        .sort_unstable_by_key(|span| (span.start(), span.end()));
    read.header.ratings_hr.sort_unstable();
    read.header.ratings_hr.dedup();
    let whole: String = paragraphs
        .iter()
        .flatten()
        .map(|span| span.of(source))
        .collect::<Vec<_>>()
        .join("\n");
    read.header.standards = standards(&whole);
    read.header.title = title(source, paragraphs);
    // A running head may carry the designation, and nothing else of the document.
    read.header.designation = designation(&whole)
        .or_else(|| designation(first_lines(source)))
        .unwrap_or_default();
    read.header.edition = edition(source);
    check_designation(&mut read);
    read
}

/// Whether a paragraph is made of sentences.
pub(crate) fn is_prose(text: &str) -> bool {
    let words = text.split_whitespace().count();
    let lower = text.to_lowercase();
    let verb = [
        " shall ",
        " is ",
        " are ",
        " applies ",
        " apply ",
        " covers ",
        " may ",
        " must ",
    ]
    .iter()
    .any(|verb| lower.contains(verb));
    words >= 6 && verb && text.trim_end().ends_with(['.', ':', ';'])
}

fn read_paragraph(sentence: &Sentence<'_>, read: &mut HeaderRead, found: &mut Found) {
    let held = read.header.ratings_hr.clone();
    let named = configurations(sentence);
    for (index, amount) in sentence.amounts.iter().enumerate() {
        let topic = topic(sentence, amount);
        let whole = in_hours_and_minutes(sentence, index);
        let amount = whole.as_ref().unwrap_or(amount);
        match (amount.unit.dimension(), topic) {
            (Dimension::Time, _) if is_end_of_hours(sentence, index) => {}
            // `Rating 5 min` is of something else.
            (Dimension::Time, Some(_)) if is_short(amount) => {
                read.unread.push(sentence.source(amount.at));
            }
            (Dimension::Time, Some(Topic::Rating)) => rating(amount, &mut read.header.ratings_hr),
            (Dimension::Time, Some(Topic::OtherRating)) => rating(amount, &mut found.beyond_fire),
            (Dimension::Time, Some(Topic::Unnamed)) => rating(amount, &mut found.unnamed),
            (Dimension::Time, Some(Topic::HeatRating)) => {
                found.by_heat.push(sentence.source(amount.at));
            }
            (Dimension::Length, Some(Topic::Width)) => {
                width::width(sentence, index, amount, &named, &mut read.header);
            }
            (Dimension::Fraction, Some(Topic::Movement | Topic::Width)) => {
                movement::movement(sentence, index, amount, &named, read);
            }
            (Dimension::LeakagePerLength | Dimension::LeakagePerArea, _) => {
                leakage::leakage(sentence, index, amount, read);
            }
            (Dimension::Time, _) | (_, Some(Topic::Leakage)) => {}
            (Dimension::Temperature, _) if states_leakage(sentence) => {}
            _ if amount.unit == Unit::Count => {}
            _ => read.unread.push(sentence.source(amount.at)),
        }
    }
    // "1 hr (Configuration A), 2 hr (Configuration B)": neither holds for both.
    let by_configuration = sentence.amounts.iter().any(|amount| {
        amount.unit.dimension() == Dimension::Time && for_configuration(&named, amount)
    });
    if by_configuration && read.header.ratings_hr.len() > held.len().max(1) {
        differs(&mut read.header, HeaderTopic::Rating);
    }
}

/// Whether a paragraph states a leakage, for which a temperature is named.
fn states_leakage(sentence: &Sentence<'_>) -> bool {
    let mut dimensions = sentence
        .amounts
        .iter()
        .map(|amount| amount.unit.dimension());
    dimensions.any(|own| matches!(own, Dimension::LeakagePerLength | Dimension::LeakagePerArea))
}

/// The hours in a paragraph that nothing says what they are of.
fn untold_times(sentence: &Sentence<'_>) -> Vec<(Number, Span)> {
    // `FLAMROLL 3H`, `SYSTEM 4417-H`
    let names = |amount: &Amount| {
        let words = amount.at.of(sentence.text);
        words.ends_with('H') && !words.contains(' ')
    };
    let untold = sentence.amounts.iter().filter(|amount| {
        let of_time = amount.unit.dimension() == Dimension::Time;
        let untold = matches!(topic(sentence, amount), None | Some(Topic::Unnamed));
        of_time && !names(amount) && untold
    });
    let hours = |amount: &Amount| {
        let hours = Quantity::new(amount.lo, amount.unit).to(Unit::Hour)?;
        Some((hours.number, sentence.source(amount.at)))
    };
    untold.filter_map(hours).collect()
}

/// How many words may stand between an amount and the case it is stated for.
const BESIDE: usize = 4;

/// Whether tokens `[first, last)` stand beside an amount.
fn beside(amount: &Amount, first: usize, last: usize) -> bool {
    let after = first >= amount.last && first - amount.last <= BESIDE;
    let before = last <= amount.first && amount.first - last <= BESIDE;
    after || before
}

/// Whether a configuration is named beside an amount.
fn for_configuration(named: &[Mentioned], amount: &Amount) -> bool {
    let after = named.partition_point(|mention| mention.last <= amount.first);
    let around = named.get(after.saturating_sub(1)..(after + 2).min(named.len()));
    let mut around = around.unwrap_or_default().iter();
    around.any(|mention| beside(amount, mention.first, mention.last))
}

/// Adds what may be a rating: no test of fire lasts for days.
fn rating(amount: &Amount, ratings: &mut Vec<Number>) {
    const LONGEST: i32 = 6;
    for number in core::iter::once(amount.lo).chain(amount.hi) {
        if let Some(hours) = Quantity::new(number, amount.unit).to(Unit::Hour)
            && !ratings.contains(&hours.number)
            && !hours.number.is_zero()
            && hours.number <= Number::from(LONGEST)
        {
            ratings.push(hours.number);
        }
    }
}

/// Whether an amount is the minutes of a time in hours and minutes: `1 h 30 min`.
fn is_end_of_hours(sentence: &Sentence<'_>, index: usize) -> bool {
    const HOUR: i32 = 60;
    let amounts = &sentence.amounts;
    let pair = index
        .checked_sub(1)
        .and_then(|before| Some((amounts.get(before)?, amounts.get(index)?)));
    pair.is_some_and(|(hours, minutes)| {
        let whole = hours.unit == Unit::Hour && hours.hi.is_none();
        let rest =
            minutes.unit == Unit::Minute && minutes.hi.is_none() && minutes.lo < Number::from(HOUR);
        let between = sentence.text.get(hours.at.end()..minutes.at.start());
        whole
            && rest
            && between.is_some_and(|between| !between.is_empty() && between.trim().is_empty())
    })
}

/// A time in hours with the minutes behind it.
fn in_hours_and_minutes(sentence: &Sentence<'_>, index: usize) -> Option<Amount> {
    let hours = sentence.amounts.get(index)?;
    let minutes = sentence
        .amounts
        .get(index + 1)
        .filter(|_| is_end_of_hours(sentence, index + 1))?;
    let part = Quantity::new(minutes.lo, Unit::Minute).to(Unit::Hour)?;
    Some(Amount {
        lo: hours.lo.plus(part.number)?,
        ..hours.clone()
    })
}

/// Whether no joint is rated for so short a time.
fn is_short(amount: &Amount) -> bool {
    const SHORTEST_MINUTES: i32 = 15;
    let minutes = Quantity::new(amount.lo, amount.unit).to(Unit::Minute);
    minutes.is_some_and(|minutes| minutes.number < Number::whole(SHORTEST_MINUTES))
}

/// Notes that the head states a topic differently for different cases.
fn differs(header: &mut Header, topic: HeaderTopic) {
    if !header.differs.contains(&topic) {
        header.differs.push(topic);
        header.differs.sort_unstable();
    }
}

/// Whether two numbers differ by no more than the one part in so many of the first.
fn near(value: Number, other: Number, parts: i128) -> bool {
    let allowed = Number::new(1, parts).and_then(|part| value.abs().times(part));
    value
        .minus(other)
        .zip(allowed)
        .is_some_and(|(apart, allowed)| apart.abs() <= allowed)
}

/// How many lines at a document's beginning may be a running head.
const HEAD_LINES: usize = 4;

fn first_lines(source: &str) -> &str {
    let end = source
        .match_indices('\n')
        .nth(HEAD_LINES - 1)
        .map_or(source.len(), |(end, _)| end);
    source.get(..end).unwrap_or_default()
}

#[cfg(test)]
mod tests {
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
        let head =
            read("L Rating at Ambient: 1 cfm/ft (Configuration A), 3 cfm/ft (Configuration B)");
        assert_eq!(
            (head.leakage.len(), head.differs),
            (2, vec![HeaderTopic::Leakage])
        );
    }
}
