//! The head of a listing: title, designation, standards, ratings, width, movement, leakage.
//!
//! A number of the head belongs to the nearest words before it that name what it states, whatever the layout: `ASSEMBLY RATINGS -- 1
//! and 2 Hr`, `Joint Width: 3/4 to 6 in.`, `MOVEMENT   Class I, 7.5% comp. or ext.` Two columns that say the same in two units are
//! one statement.

use measure::{Dimension, Number, Quantity, Unit};

use crate::layout::Flow;
use crate::model::{
    Header, Leakage, LeakageRelation, LeakageTemperature, Movement, MovementDirection, Relation,
    Span, WarningKind, WidthLimit,
};
use crate::phrase::{Amount, Token};
use crate::rules::{Sentence, bounded};

/// What the words before a number name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Topic {
    Rating,
    OtherRating,
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
        let sentence = Sentence::new(&flow, 0..flow.text().len());
        read_paragraph(&sentence, &mut read, &mut heat_ratings);
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
    read.header.designation = designation(&whole).unwrap_or_default();
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
    for (index, amount) in sentence.amounts.iter().enumerate() {
        let topic = topic(sentence, amount);
        match (amount.unit.dimension(), topic) {
            (Dimension::Time, Some(Topic::Rating)) => rating(amount, &mut read.header.ratings_hr),
            (Dimension::Time, Some(Topic::OtherRating)) => rating(amount, heat_ratings),
            (Dimension::Length, Some(Topic::Width)) => {
                width(sentence, index, amount, &mut read.header);
            }
            (Dimension::Fraction, Some(Topic::Movement | Topic::Width)) => {
                movement(sentence, index, amount, &mut read.header);
            }
            (Dimension::LeakagePerLength | Dimension::LeakagePerArea, _) => {
                leakage(sentence, index, amount, read);
            }
            _ => {}
        }
    }
}

/// The nearest words before an amount that name a topic.
fn topic(sentence: &Sentence<'_>, amount: &Amount) -> Option<Topic> {
    (0..amount.first).rev().take(40).find_map(|at| {
        let word = sentence.word(at);
        let before = at
            .checked_sub(1)
            .map(|at| sentence.word(at))
            .unwrap_or_default();
        match word.as_ref() {
            "rating" | "ratings" | "f-rating" | "f-ratings" | "resistance" | "fire-rating" => {
                Some(match before.as_ref() {
                    "t" | "ft" | "fth" | "fh" | "w" => Topic::OtherRating,
                    "l" => Topic::Leakage,
                    _ => Topic::Rating,
                })
            }
            "t-rating" | "t-ratings" | "ft-rating" | "fth-rating" | "fh-rating" | "w-rating" => {
                Some(Topic::OtherRating)
            }
            "l-rating" | "l-ratings" | "leakage" => Some(Topic::Leakage),
            "width" | "widths" | "opening" => Some(Topic::Width),
            "movement" | "movements" | "cyclic" | "cycling" | "compression" | "extension"
            | "shear" => Some(Topic::Movement),
            _ => None,
        }
    })
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

fn width(sentence: &Sentence<'_>, index: usize, amount: &Amount, header: &mut Header) {
    let relation =
        bounded(sentence, index).map_or(Relation::Nominal, |(finding, _)| finding.relation);
    let span = sentence.source(amount.at);
    let Some(held) = &mut header.width else {
        let upper = matches!(relation, Relation::AtMost | Relation::LessThan);
        let lo = (!upper).then_some(amount.lo);
        let hi = if upper { Some(amount.lo) } else { amount.hi };
        header.width = Some(WidthLimit {
            relation,
            lo,
            hi,
            unit: amount.unit,
            strictest_hi: None,
            span,
        });
        return;
    };
    // `3/4 in. or 1-1/2 in.`: from the least to the greatest of them. Another unit says the same again.
    if held.unit == amount.unit && held.relation == relation {
        let greatest = amount.hi.unwrap_or(amount.lo);
        let least = held.lo.map_or(amount.lo, |lo| lo.min(amount.lo));
        if held.lo.is_some() {
            held.lo = Some(least);
        }
        held.hi = Some(
            held.hi
                .map_or(greatest, |hi| hi.max(greatest))
                .max(held.lo.unwrap_or(greatest)),
        );
        held.span = held.span.join(span);
    }
}

fn movement(sentence: &Sentence<'_>, index: usize, amount: &Amount, header: &mut Header) {
    let previous = index
        .checked_sub(1)
        .and_then(|before| sentence.amounts.get(before))
        .filter(|before| before.unit.dimension() == Dimension::Fraction)
        .map_or(0, |before| before.last);
    let next = sentence
        .amounts
        .get(index + 1)
        .map_or(sentence.tokens.len(), |next| next.first);
    let mut classes = classes(sentence, previous, amount.first);
    // `Class II; max 30 % compression, max 20 % extension`: the classes hold for what follows, too.
    if classes.is_empty() && previous > 0 {
        classes = header
            .movement
            .last()
            .map(|last| last.classes.clone())
            .unwrap_or_default();
    }
    let after = directions(sentence, amount.last, next.min(amount.last + 10));
    let mut directions = if after.is_empty() {
        directions(sentence, previous, amount.first)
    } else {
        after
    };
    if directions.is_empty() {
        directions.push(MovementDirection::CompressionOrExtension);
    }
    let option = crate::conditions::configurations(sentence)
        .into_iter()
        .find(|mention| mention.first >= amount.last && mention.first < next)
        .map(|mention| mention.names.join(" or "));
    for direction in directions {
        let entry = Movement {
            classes: classes.clone(),
            direction,
            percent: amount.hi.unwrap_or(amount.lo),
            option: option.clone(),
            span: sentence.source(amount.at),
        };
        let again = header.movement.iter().any(|held| {
            held.classes == entry.classes
                && held.direction == entry.direction
                && held.percent == entry.percent
                && held.option == entry.option
        });
        if !again {
            header.movement.push(entry);
        }
    }
}

/// The Roman numerals after "Class" among tokens.
fn classes(sentence: &Sentence<'_>, first: usize, last: usize) -> Vec<String> {
    let start = (first..last)
        .rev()
        .find(|at| sentence.is_any(*at, &["class", "classes"]));
    let Some(start) = start else {
        return Vec::new();
    };
    let mut classes = Vec::new();
    for at in start + 1..last {
        let word = sentence.token(at).and_then(Token::word).unwrap_or_default();
        match word {
            "I" | "II" | "III" | "IV" => classes.push(word.to_owned()),
            "and" | "or" | "AND" | "OR" | "Class" | "CLASS" | "class" => {}
            _ if sentence.is_sign(at, ',')
                || sentence.is_sign(at, '&')
                || sentence.is_sign(at, '/') => {}
            _ => break,
        }
    }
    classes
}

/// The directions that tokens name.
fn directions(sentence: &Sentence<'_>, first: usize, last: usize) -> Vec<MovementDirection> {
    let says = |starts: &[&str]| {
        (first..last).any(|at| {
            let word = sentence.word(at);
            starts.iter().any(|start| word.starts_with(start))
        })
    };
    let compression = says(&["comp", "clos"]);
    let extension = says(&["ext", "open"]);
    let shear = says(&["shear", "lateral"]);
    let mut directions = Vec::new();
    match (compression, extension) {
        (true, true) => directions.push(MovementDirection::CompressionOrExtension),
        (true, false) => directions.push(MovementDirection::Compression),
        (false, true) => directions.push(MovementDirection::Extension),
        (false, false) => {}
    }
    if shear {
        directions.push(MovementDirection::Shear);
    }
    directions
}

fn leakage(sentence: &Sentence<'_>, index: usize, amount: &Amount, read: &mut HeaderRead) {
    let at = (0..amount.first).rev().find_map(|at| {
        if sentence.is_word(at, "ambient") {
            return Some(LeakageTemperature::Ambient);
        }
        let hot = sentence
            .amount_at(at)
            .and_then(|other| sentence.amount(other))
            .is_some_and(|other| other.unit.dimension() == Dimension::Temperature);
        (hot || sentence.is_word(at, "elevated")).then_some(LeakageTemperature::Elevated)
    });
    let Some(at) = at else { return };
    let relation = match bounded(sentence, index).map(|(finding, _)| finding.relation) {
        Some(Relation::LessThan) => LeakageRelation::LessThan,
        Some(Relation::AtMost) => LeakageRelation::AtMost,
        _ if amount
            .first
            .checked_sub(1)
            .is_some_and(|before| sentence.is_sign(before, '<')) =>
        {
            LeakageRelation::LessThan
        }
        _ => LeakageRelation::Equal,
    };
    let span = sentence.source(amount.at);
    if amount.unit.dimension() == Dimension::LeakagePerArea {
        read.warnings.push((
            WarningKind::LeakageUnit,
            span,
            "a joint's leakage is stated per length (cfm/lin ft); this one is per area".to_owned(),
        ));
    }
    let entry = Leakage {
        at,
        relation,
        value: amount.lo,
        unit: amount.unit,
        span,
    };
    let same = read.header.leakage.iter().any(|held| held.at == at);
    if !same {
        read.header.leakage.push(entry);
    }
}

/// Standards by number, in the order they stand.
fn standards(text: &str) -> Vec<String> {
    let mut found: Vec<String> = Vec::new();
    let words: Vec<&str> = text.split_whitespace().collect();
    for (index, word) in words.iter().enumerate() {
        let bare = word.trim_matches(|c: char| !(c.is_alphanumeric() || c == '/' || c == '-'));
        let next = words
            .get(index + 1)
            .map(|next| next.trim_matches(|c: char| !c.is_alphanumeric() && c != '-'))
            .unwrap_or_default();
        let numbered = next.chars().any(|c| c.is_ascii_digit()) && next.len() <= 12;
        let number = match bare {
            "ASTM" | "UL" | "EN" | "ISO" | "ANSI" | "ULC" | "NFPA" if numbered => {
                format!("{bare} {next}")
            }
            _ if bare.starts_with("CAN/ULC-S") => bare.to_owned(),
            _ => continue,
        };
        if !found.contains(&number) {
            found.push(number);
        }
    }
    found
}

fn title(source: &str, paragraphs: &[Vec<Span>]) -> String {
    let lines = paragraphs
        .iter()
        .flatten()
        .map(|span| span.of(source).trim());
    let fitting = lines.filter(|line| line.chars().filter(|c| c.is_alphabetic()).count() >= 6);
    fitting
        .map(|line| line.split_whitespace().collect::<Vec<_>>().join(" "))
        .next()
        .unwrap_or_default()
}

/// The designation: what follows "Design No.", "System" and the like, or the first code of letters, digits and strokes.
fn designation(text: &str) -> Option<String> {
    if let Some((range, _)) = vocabulary::Designation::find(text) {
        return text.get(range).map(str::to_owned);
    }
    let codes = text
        .split_whitespace()
        .map(|word| word.trim_matches(|c: char| !c.is_alphanumeric()));
    codes
        .filter(|code| {
            let digits = code.chars().filter(char::is_ascii_digit).count();
            let capitals = code.chars().filter(char::is_ascii_uppercase).count();
            digits >= 2
                && capitals >= 1
                && code.contains(['-', '/', '.'])
                && !code.starts_with("CAN/")
                && code.len() >= 5
        })
        .find(|code| !code.contains("cfm") && !code.starts_with("EN") && !code.contains("in."))
        .map(str::to_owned)
}

/// How many lines at either end of a document may state its edition.
const EDITION_LINES: usize = 80;

/// The words that follow "Edition", "Revision", "Issued" and the like near the ends of the document.
fn edition(source: &str) -> String {
    const WORDS: [&str; 7] = [
        "edition", "revision", "issue ", "issued", "reissued", "rev.", "rev ",
    ];
    let ends = source
        .lines()
        .take(EDITION_LINES)
        .chain(source.lines().rev().take(EDITION_LINES));
    for line in ends {
        let lower = line.to_lowercase();
        if lower.len() == line.len()
            && let Some(at) = WORDS.iter().filter_map(|word| lower.find(word)).min()
        {
            let tail = line.get(at..).unwrap_or_default();
            let end = tail.find("   ").unwrap_or(tail.len());
            let words = tail.get(..end).unwrap_or_default().trim();
            if words
                .chars()
                .any(|c| c.is_ascii_digit() || c.is_ascii_uppercase())
                && words.len() <= 60
            {
                return words.split_whitespace().collect::<Vec<_>>().join(" ");
            }
        }
    }
    String::new()
}

/// A designation by the North American convention states a band of widths; the head's own width should lie in it.
fn check_designation(read: &mut HeaderRead) {
    let header = &read.header;
    let Ok((_, designation)) = vocabulary::Designation::parse_decorated(&header.designation) else {
        return;
    };
    let Some((band, width)) = designation.width_band().zip(header.width.as_ref()) else {
        return;
    };
    let Some(widest) = width.hi.or(width.lo) else {
        return;
    };
    // A width in whole millimetres may be the band's inches rounded up: 51 mm is 2 in.
    let slack = if width.unit == Unit::Millimetre {
        Number::new(1, 2).unwrap_or(Number::ZERO)
    } else {
        Number::ZERO
    };
    let Some(least) = widest.minus(slack) else {
        return;
    };
    if band.contains(Quantity::new(least, width.unit)) == Some(false) {
        let message = format!(
            "`{}` is numbered for joints {band}, but the head gives a width of {}; the listed width governs",
            header.designation,
            Quantity::new(widest, width.unit)
        );
        read.warnings
            .push((WarningKind::DesignationDisagrees, width.span, message));
    }
}
