//! European class codes in a text or cell: `EI 120 - V - M 25 - F - W 10 to 50` (EN 13501-2).
//!
//! Each number of the code is a clause: minutes of integrity or insulation, percent of movement, millimetres of width.

use measure::{Number, Unit};
use vocabulary::vocabulary;

use crate::model::{Bound, Relation};
use crate::naming::Name;
use crate::phrase::{Token, TokenKind};
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
    /// Whether no more than that is reached.
    pub(super) at_most: bool,
    /// Tokens `[first, last)`.
    pub(super) first: usize,
    pub(super) last: usize,
}

impl ClassNumber {
    /// The bound that the number states: a range of widths, else the value alone.
    pub(super) fn bound(&self, sentence: &Sentence<'_>) -> Bound {
        let relation = if self.at_most {
            Relation::AtMost
        } else if self.hi.is_some() {
            Relation::Between
        } else {
            Relation::Nominal
        };
        Bound {
            relation,
            lo: (!self.at_most).then_some(self.lo),
            hi: self.hi.or(self.at_most.then_some(self.lo)),
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
pub(super) fn class_numbers(sentence: &Sentence<'_>) -> Vec<ClassNumber> {
    let number = |at: usize| match &sentence.token(at)?.kind {
        TokenKind::Number(numeral) => Some(numeral.value),
        // `M 25` may have been read with a stray unit letter after it; only plain minutes and millimetres are.
        TokenKind::Quantity(stated)
            if matches!(stated.unit, Unit::Minute | Unit::Millimetre | Unit::Percent) =>
        {
            Some(stated.number)
        }
        _ => None,
    };
    let mut found = Vec::new();
    let mut in_code = false;
    for at in 0..sentence.tokens.len() {
        let word = sentence.token(at).and_then(Token::word).unwrap_or_default();
        let after = number(at + 1);
        // A code goes no further than its own stretch.
        in_code &= !(sentence.is_stop(at) || word.len() > 3);
        match (word, after) {
            ("E" | "EI" | "EW", Some(value)) => {
                in_code = true;
                let attribute = if word == "E" {
                    "E class"
                } else if word == "EI" {
                    "EI class"
                } else {
                    "EW class"
                };
                found.push(ClassNumber {
                    attribute,
                    property: match word {
                        "EI" => Some("joint.rating"),
                        "E" => Some("joint.integrity"),
                        _ => None,
                    },
                    lo: value,
                    hi: None,
                    unit: Unit::Minute,
                    at_most: false,
                    first: at,
                    last: at + 2,
                });
            }
            ("M", Some(value)) if in_code => {
                found.push(ClassNumber {
                    attribute: "movement class",
                    property: None,
                    lo: value,
                    hi: None,
                    unit: Unit::Percent,
                    at_most: false,
                    first: at,
                    last: at + 2,
                });
            }
            ("W", Some(value)) if in_code => {
                let to = sentence.is_word(at + 2, "to")
                    || sentence.is_sign(at + 2, '-')
                    || sentence.is_sign(at + 2, '–');
                let hi = to.then(|| number(at + 3)).flatten();
                let last = if hi.is_some() { at + 4 } else { at + 2 };
                found.push(ClassNumber {
                    attribute: "class width",
                    property: Some("joint.width"),
                    lo: value,
                    hi,
                    unit: Unit::Millimetre,
                    at_most: false,
                    first: at,
                    last,
                });
            }
            _ => {}
        }
    }
    match found.as_slice() {
        [one] => single(sentence, one).into_iter().collect(),
        [] => fire_resistance_levels(sentence),
        _ => found,
    }
}

/// One code in a sentence, where its words say that it is a class and hold for everything: `the class of the joint is EI 90`, `EI 60 at the
/// most`. What the class of a wall is, or for what it holds, isn't in the code.
fn single(sentence: &Sentence<'_>, code: &ClassNumber) -> Option<ClassNumber> {
    const OF_CLASSES: &[&str] = &["class", "classes", "classified", "classification"];
    const CONFINES: &[&str] = &[
        "for",
        "where",
        "when",
        "if",
        "unless",
        "with",
        "also",
        "line",
        "row",
        "then",
        "not",
        "other",
        "wall",
        "walls",
        "floor",
        "floors",
        "door",
        "doors",
        "partition",
        "slab",
    ];
    let all = sentence.tokens.len();
    let timed =
        code.property == Some("joint.rating") && MINUTES.iter().any(|minutes| code.lo == *minutes);
    let at_most = sentence.is_word(code.last, "at")
        && (sentence.is_word(code.last + 1, "most")
            || sentence.is_word(code.last + 1, "the") && sentence.is_word(code.last + 2, "most"));
    let alone = !sentence.has_any(0, all, CONFINES)
        && !sentence.has_any(code.last, all, &["to", "or", "and"]);
    let spoken_of = at_most || sentence.has_any(0, code.first, OF_CLASSES);
    (timed && alone && spoken_of).then(|| ClassNumber {
        at_most,
        ..code.clone()
    })
}

/// `FRL -/90/90`, `fire resistance level shall be 120/120/90`: minutes of structural adequacy, integrity and insulation (AS 1530.4).
fn fire_resistance_levels(sentence: &Sentence<'_>) -> Vec<ClassNumber> {
    let named = (0..sentence.tokens.len()).any(|at| {
        sentence.is_any(at, &["frl", "frls"])
            || sentence.is_word(at, "resistance") && sentence.is_any(at + 1, &["level", "levels"])
    });
    if !named {
        return Vec::new();
    }
    // `90/90` reads as a fraction, so the words are looked at, not the tokens.
    let mut levels = sentence
        .text
        .split_whitespace()
        .map(|word| word.trim_matches(|c: char| matches!(c, '.' | ',' | ';' | '(' | ')')))
        .filter_map(|word| Some((word, level_parts(word)?)));
    // Of several levels, which holds for what is for a person to say.
    let (Some((word, minutes)), None) = (levels.next(), levels.next()) else {
        return Vec::new();
    };
    let start = sentence.text.find(word).unwrap_or_default();
    let within =
        |token: &Token<'_>| start <= token.span.start() && token.span.end() <= start + word.len();
    let first = sentence.tokens.iter().position(within).unwrap_or_default();
    let last = first + sentence.tokens.iter().filter(|token| within(token)).count();
    let parts = [
        ("structural adequacy", None),
        ("integrity", Some("joint.integrity")),
        ("insulation", Some("joint.rating")),
    ];
    parts
        .into_iter()
        .zip(minutes)
        .filter_map(|((attribute, property), minutes)| {
            Some(ClassNumber {
                attribute,
                property,
                lo: Number::whole(minutes?),
                hi: None,
                unit: Unit::Minute,
                at_most: false,
                first,
                last,
            })
        })
        .collect()
}

/// The minutes that fire resistance is classified for (EN 13501-2, AS 1530.4).
const MINUTES: [i32; 9] = [15, 20, 30, 45, 60, 90, 120, 180, 240];

/// The three parts of a fire resistance level, a dash where it has none.
fn level_parts(word: &str) -> Option<[Option<i32>; 3]> {
    let part = |part: &str| match part {
        "-" | "–" | "—" => Some(None),
        digits => digits
            .parse::<i32>()
            .ok()
            .filter(|minutes| MINUTES.contains(minutes))
            .map(Some),
    };
    let mut parts = word.split('/');
    let level = [
        part(parts.next()?)?,
        part(parts.next()?)?,
        part(parts.next()?)?,
    ];
    (parts.next().is_none() && level.iter().any(Option::is_some)).then_some(level)
}

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
