//! European class codes in a text or cell: `EI 120 - V - M 25 - F - W 10 to 50` (EN 13501-2).
//!
//! Each number of the code is a clause: minutes of integrity or insulation, percent of movement, millimetres of width.

mod levels;
mod single;

use measure::{Number, Unit};
use vocabulary::vocabulary;

use self::levels::fire_resistance_levels;
pub(crate) use self::levels::level_parts;
use self::single::single;
use crate::model::{Bound, Relation};
use crate::naming::Name;
use crate::phrase::Token;
use crate::rules::Sentence;

/// A number of a class code.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct ClassNumber {
    pub(super) attribute: &'static str,
    /// The property of the vocabulary that it states, where there is one.
    pub(super) property: Option<&'static str>,
    pub(super) lo: Number,
    pub(super) hi: Option<Number>,
    pub(super) unit: Unit,
    /// At least or at most that, where it is said.
    pub(super) limit: Option<Relation>,
    /// Tokens `[first, last)`.
    pub(super) first: usize,
    pub(super) last: usize,
}

impl ClassNumber {
    /// The bound that the number states: a range of widths, else the value alone.
    pub(super) fn bound(&self, sentence: &Sentence<'_>) -> Bound {
        let relation = match (self.limit, self.hi) {
            (_, Some(_)) => Relation::Between,
            (Some(limit), None) => limit,
            (None, None) => Relation::Nominal,
        };
        let at_most = relation == Relation::AtMost;
        Bound {
            relation,
            lo: (!at_most).then_some(self.lo),
            hi: self.hi.or(at_most.then_some(self.lo)),
            unit: self.unit,
            lo_excluded: false,
            bare: relation == Relation::Nominal,
            at: sentence.source_of(self.first, self.last),
            second: None,
        }
    }

    /// What the number is of.
    pub(super) fn name(&self) -> Name {
        Name {
            property: self.property.and_then(|name| vocabulary().property(name)),
            also: None,
            component: "joint".to_owned(),
            attribute: self.attribute.to_owned(),
            doubtful: false,
        }
    }
}

/// The numbers of the class codes in a sentence or cell; none when it holds no code.
///
/// A code is read off the characters, as its parts are run together as often as set apart: `EI 90-V-M20-F-W 15 to 60`.
pub(super) fn class_numbers(sentence: &Sentence<'_>) -> Vec<ClassNumber> {
    let mut found = Vec::new();
    let mut at = 0;
    while let Some((start, class)) = next_class(sentence.text, at) {
        let mut scan = Scan::at(sentence.text, start);
        let parts = scan.code(class);
        at = scan.at.max(start + 1);
        found.extend(
            parts
                .into_iter()
                .filter_map(|part| part.of_tokens(sentence)),
        );
    }
    match found.as_slice() {
        [one] => single(sentence, one).into_iter().collect(),
        [] => fire_resistance_levels(sentence),
        _ => found,
    }
}

/// The numbers of a cell that is one class and nothing else, under a heading that says so: `EI 120`, `-/120/120`, `EI 90 - V - X - F`.
pub(super) fn class_alone(sentence: &Sentence<'_>) -> Vec<ClassNumber> {
    if let Some(levels) = levels::one_level(sentence) {
        return levels;
    }
    let Some((0, class)) = next_class(sentence.text, 0) else {
        return Vec::new();
    };
    let mut scan = Scan::at(sentence.text, 0);
    let parts = scan.code(class);
    if !scan.rest().trim().is_empty() {
        return Vec::new();
    }
    let numbers = parts.into_iter();
    numbers
        .filter_map(|part| part.of_tokens(sentence))
        .collect()
}

/// The letters that begin a code, with the attribute and the property that their minutes are of.
type Class = (&'static str, &'static str, Option<&'static str>);

const CLASSES: [Class; 3] = [
    ("EI", "EI class", Some("joint.rating")),
    ("EW", "EW class", None),
    ("E", "E class", Some("joint.integrity")),
];

/// Where the next code begins: its letters as a word of their own, and minutes after them.
fn next_class(text: &str, from: usize) -> Option<(usize, Class)> {
    let candidates = text.get(from..)?.match_indices('E');
    candidates
        .filter_map(|(at, _)| Some((from + at, text.get(from + at..)?)))
        .find_map(|(at, rest)| {
            let before = text.get(..at)?.chars().next_back();
            if before.is_some_and(char::is_alphanumeric) {
                return None;
            }
            let class = CLASSES
                .into_iter()
                .find(|(letters, ..)| rest.starts_with(letters))?;
            let after = rest
                .get(class.0.len()..)?
                .trim_start_matches([' ', '\u{a0}', '-', '–']);
            let digits = after.bytes().take_while(u8::is_ascii_digit).count();
            let minutes = after.get(..digits)?.parse::<i32>().ok()?;
            MINUTES.contains(&minutes).then_some((at, class))
        })
}

/// A number of a code, by the bytes that it and its letter stand on.
struct Part {
    attribute: &'static str,
    property: Option<&'static str>,
    lo: Number,
    hi: Option<Number>,
    unit: Unit,
    from: usize,
    to: usize,
}

impl Part {
    fn of_tokens(self, sentence: &Sentence<'_>) -> Option<ClassNumber> {
        let within =
            |token: &Token<'_>| token.span.start() < self.to && self.from < token.span.end();
        let first = sentence.tokens.iter().position(within)?;
        let last = first
            + sentence
                .tokens
                .iter()
                .skip(first)
                .take_while(|token| within(token))
                .count();
        Some(ClassNumber {
            attribute: self.attribute,
            property: self.property,
            lo: self.lo,
            hi: self.hi,
            unit: self.unit,
            limit: None,
            first,
            last,
        })
    }
}

/// What comes next in a code.
enum Next {
    /// Letters of an orientation, a kind of joint or its splices.
    Letters,
    Number(Part),
}

/// A place in a code.
struct Scan<'a> {
    text: &'a str,
    at: usize,
}

impl<'a> Scan<'a> {
    const fn at(text: &'a str, at: usize) -> Self {
        Self { text, at }
    }

    fn rest(&self) -> &'a str {
        self.text.get(self.at..).unwrap_or_default()
    }

    /// Goes on over spaces and dashes.
    fn skip(&mut self) {
        let rest = self.rest();
        let kept = rest.trim_start_matches([' ', '\u{a0}', '-', '–', '—', '/']);
        self.at += rest.len() - kept.len();
    }

    /// A number, with a comma or a stop before its decimals.
    fn number(&mut self) -> Option<Number> {
        let rest = self.rest();
        let is_digit = |c: char| c.is_ascii_digit();
        let whole = rest.len() - rest.trim_start_matches(is_digit).len();
        let tail = rest.get(whole..)?;
        let decimals = tail.strip_prefix([',', '.']).map_or(0, |tail| {
            tail.len() - tail.trim_start_matches(is_digit).len()
        });
        let end = if decimals > 0 {
            whole + 1 + decimals
        } else {
            whole
        };
        let number = rest.get(..end)?.replace(',', ".").parse().ok()?;
        self.at += end;
        Some(number)
    }

    /// Reads a code from its first letters on.
    fn code(&mut self, (letters, attribute, property): Class) -> Vec<Part> {
        let mut parts = Vec::new();
        let from = self.at;
        self.at += letters.len();
        self.skip();
        let Some(minutes) = self.number() else {
            return parts;
        };
        parts.push(Part {
            attribute,
            property,
            lo: minutes,
            hi: None,
            unit: Unit::Minute,
            from,
            to: self.at,
        });
        while let Some(part) = self.part() {
            if let Next::Number(part) = part {
                parts.push(part);
            }
        }
        parts
    }

    /// The next part of a code: letters of orientation and splices, `M 25`, `W 10 to 50`; none where the code ends.
    fn part(&mut self) -> Option<Next> {
        let before = self.at;
        self.skip();
        let from = self.at;
        let rest = self.rest();
        let letters = rest.len()
            - rest
                .trim_start_matches(|c: char| c.is_ascii_uppercase())
                .len();
        let word = rest
            .get(..letters)
            .filter(|word| (1..=2).contains(&word.len()) && !word.starts_with('E'));
        let Some(word) = word else {
            self.at = before;
            return None;
        };
        self.at += letters;
        let after_word = self.at;
        self.skip();
        let number = self.number().filter(|_| matches!(word, "M" | "W"));
        let Some(lo) = number else {
            self.at = after_word;
            let ends = self.rest().starts_with(char::is_alphanumeric);
            if ends {
                self.at = before;
            }
            return (!ends).then_some(Next::Letters);
        };
        let hi = (word == "W").then(|| self.upper()).flatten();
        let (attribute, property, unit) = if word == "M" {
            (
                "movement class",
                Some("joint.classified_movement"),
                Unit::Percent,
            )
        } else {
            ("class width", Some("joint.width"), Unit::Millimetre)
        };
        Some(Next::Number(Part {
            attribute,
            property,
            lo,
            hi,
            unit,
            from,
            to: self.at,
        }))
    }

    /// The upper end of a range of widths: `to 50`, `- 50`.
    fn upper(&mut self) -> Option<Number> {
        let before = self.at;
        let rest = self.rest();
        let trimmed = rest.trim_start();
        let joined = trimmed
            .strip_prefix("to")
            .or_else(|| trimmed.strip_prefix(['-', '–']))?
            .trim_start();
        self.at += rest.len() - joined.len();
        let number = self.number();
        if number.is_none() {
            self.at = before;
        }
        number
    }
}

/// The minutes that fire resistance is classified for (EN 13501-2, AS 1530.4).
pub(crate) const MINUTES: [i32; 9] = [15, 20, 30, 45, 60, 90, 120, 180, 240];

/// Whether a sentence says nothing besides its class codes and a label before each: `Seal P: EI 120 - H - M 12,5 - F - W 20 to 60.`
pub(super) fn is_all_code(sentence: &Sentence<'_>, classes: &[ClassNumber]) -> bool {
    const LABEL: usize = 4;
    let in_number = |at: usize| {
        classes
            .iter()
            .any(|class| class.first <= at && at < class.last)
    };
    let first = classes.first().map_or(0, |class| class.first);
    let labelled = first <= LABEL && (first == 0 || sentence.is_stop(first - 1) || first <= 2);
    // The letters between the numbers of a code: orientation, kind of joint, its splices.
    let letter = |at: usize| {
        let word = sentence.token(at).and_then(Token::word);
        word.is_none_or(|word| word.len() <= 2 && word.chars().all(|c| c.is_ascii_uppercase()))
    };
    labelled && (first..sentence.tokens.len()).all(|at| in_number(at) || letter(at))
}
