//! The head of a listing: title, designation, standards, ratings, width, movement, leakage.
//!
//! A number of the head belongs to the nearest words before it that name what it states, whatever the layout: `ASSEMBLY RATINGS -- 1
//! and 2 Hr`, `Joint Width: 3/4 to 6 in.`, `MOVEMENT   Class I, 7.5% comp. or ext.` Two columns that say the same in two units are
//! one statement.

mod identity;
mod leakage;
mod movement;
mod width;

use measure::{Dimension, Number, Quantity, Unit};

use crate::conditions::{Mentioned, configurations};
use crate::layout::Flow;
use crate::model::{Header, HeaderTopic, Span, WarningKind};
use crate::phrase::Amount;
use crate::rules::Sentence;
use crate::sentences::stretches;
use identity::{check_designation, designation, edition, standards, title};

/// What the words before a number name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Topic {
    Rating,
    /// A rating of the joint by heat: T, FT, FH, W.
    OtherRating,
    /// A rating that isn't the joint's: the wall's, the barrier's, a thermal barrier's.
    ForeignRating,
    Width,
    Movement,
    Leakage,
}

/// The head as read, with what a person should look at.
pub(crate) struct HeaderRead {
    pub(crate) header: Header,
    pub(crate) warnings: Vec<(WarningKind, Span, String)>,
}

/// Reads the head from its paragraphs.
pub(crate) fn header(source: &str, paragraphs: &[Vec<Span>]) -> HeaderRead {
    let mut read = HeaderRead {
        header: Header::default(),
        warnings: Vec::new(),
    };
    let mut heat_ratings = Vec::new();
    for pieces in paragraphs {
        let flow = Flow::of(source, pieces.iter().copied());
        // A paragraph of running sentences says things of its items, not of the head.
        if is_prose(flow.text()) {
            continue;
        }
        for range in stretches(flow.text()) {
            let sentence = Sentence::new(&flow, range);
            read_paragraph(&sentence, &mut read, &mut heat_ratings);
        }
    }
    if read.header.ratings_hr.is_empty() {
        read.header.ratings_hr = heat_ratings;
    }
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

fn read_paragraph(sentence: &Sentence<'_>, read: &mut HeaderRead, heat_ratings: &mut Vec<Number>) {
    let held = read.header.ratings_hr.clone();
    let named = configurations(sentence);
    for (index, amount) in sentence.amounts.iter().enumerate() {
        let topic = topic(sentence, amount);
        match (amount.unit.dimension(), topic) {
            (Dimension::Time, Some(Topic::Rating)) => rating(amount, &mut read.header.ratings_hr),
            (Dimension::Time, Some(Topic::OtherRating)) => rating(amount, heat_ratings),
            (Dimension::Length, Some(Topic::Width)) => {
                width::width(sentence, index, amount, &named, &mut read.header);
            }
            (Dimension::Fraction, Some(Topic::Movement | Topic::Width)) => {
                movement::movement(sentence, index, amount, &named, read);
            }
            (Dimension::LeakagePerLength | Dimension::LeakagePerArea, _) => {
                leakage::leakage(sentence, index, amount, read);
            }
            _ => {}
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

/// What a rating may be of that isn't the joint.
const FOREIGN: &[&str] = &[
    "wall",
    "barrier",
    "floor",
    "roof",
    "deck",
    "beam",
    "column",
    "partition",
    "ceiling",
    "thermal",
    "hose",
    "stream",
    "temperature",
    "acoustic",
    "sound",
    "impact",
    "class",
    "c",
    "stc",
    "noise",
];

/// The nearest words before an amount that name a topic.
fn topic(sentence: &Sentence<'_>, amount: &Amount) -> Option<Topic> {
    (0..amount.first).rev().take(40).find_map(|at| {
        let word = sentence.word(at);
        let before = at
            .checked_sub(1)
            .map(|at| sentence.word(at))
            .unwrap_or_default();
        match word {
            "rating" | "ratings" | "rtg" | "rtgs" | "f-rating" | "f-ratings" | "resistance"
            | "fire-rating" => Some(match before {
                "t" | "ft" | "fth" | "fh" | "w" => Topic::OtherRating,
                "l" => Topic::Leakage,
                word if FOREIGN.contains(&word) => Topic::ForeignRating,
                _ => Topic::Rating,
            }),
            "t-rating" | "t-ratings" | "ft-rating" | "fth-rating" | "fh-rating" | "w-rating" => {
                Some(Topic::OtherRating)
            }
            "rated" if opens_column(sentence, at) => Some(Topic::Rating),
            "rated" => Some(Topic::ForeignRating),
            "joint" if names_width(sentence, at, amount) => Some(Topic::Width),
            "l-rating" | "l-ratings" | "leakage" => Some(Topic::Leakage),
            "width" | "widths" | "opening" | "opng" => Some(Topic::Width),
            "movement" | "movements" | "mvmt" | "cyclic" | "cycling" | "compression"
            | "extension" | "shear" => Some(Topic::Movement),
            _ => None,
        }
    })
}

/// Whether a word is the first of a paragraph, a line or a column: `Floor to Floor          Rated 2, 3 or 4 h`.
fn opens_column(sentence: &Sentence<'_>, at: usize) -> bool {
    const GAP: usize = 3;
    let Some(before) = at.checked_sub(1) else {
        return true;
    };
    let end = |at: usize| Some(sentence.source(sentence.token(at)?.span));
    let parted = end(before)
        .zip(end(at))
        .is_some_and(|(before, own)| own.start().saturating_sub(before.end()) >= GAP);
    parted && !sentence.is_any(before, &["and", "or", "walls", "wall"])
}

/// Whether "joint" stands right before the size of it: `Joint: 2 in. or less`, `JOINT 1/2" TO 6"`.
fn names_width(sentence: &Sentence<'_>, at: usize, amount: &Amount) -> bool {
    let behind = at + 1 + usize::from(sentence.is_sign(at + 1, ':'));
    behind == amount.first && opens_column(sentence, at)
}

fn rating(amount: &Amount, ratings: &mut Vec<Number>) {
    for number in core::iter::once(amount.lo).chain(amount.hi) {
        if let Some(hours) = Quantity::new(number, amount.unit).to(Unit::Hour)
            && !ratings.contains(&hours.number)
            && !hours.number.is_zero()
        {
            ratings.push(hours.number);
        }
    }
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
    use crate::model::Relation;

    fn read(text: &str) -> Header {
        header(text, &[vec![Span::new(0, text.len())]]).header
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
