//! Lines of an item that open with the joints or the rating they are for, before a colon, a dash or blanks: `Joints to 2 in. wide: one layer`, `over 2 to 4 in.   2
//! layers`, `1 Hr - 4 pcf`. One counts where the line above or below it, as far in, opens with others: one alone may limit what the joint may be. Hours beside
//! words of curing or heat are times.
//!
//! What it would misread: a list by the width of something else, where the widths are all that its lines open with. Such a width stays words, and a person
//! is asked whether it is the joint's.

use std::collections::BTreeMap;

use super::super::Paragraph;
use super::Builder;
use super::closing::Setting;
use super::labels::is_bullet;
use crate::layout::{Line, beginning};
use crate::model::Span;
use crate::outline::marker::marker;
use crate::phrase::count_word;

/// The lines that open with a case, and how many bytes of their content are the case with the sign behind it.
pub(super) type CaseLines = BTreeMap<usize, usize>;

/// The lines of a document that open with a case, beside others that open with another.
pub(super) fn begin(lines: &[Line<'_>], setting: Setting) -> CaseLines {
    let cases: BTreeMap<usize, &str> = lines
        .iter()
        .enumerate()
        .filter_map(|(at, line)| Some((at, case_of(line.text.trim())?)))
        .collect();
    let mut found = CaseLines::new();
    for (at, own) in &cases {
        let above = as_far_in(lines, *at, (0..*at).rev())
            .and_then(|above| Some((above, cases.get(&above)?)));
        let goes_on =
            above.is_some_and(|(above, other)| other != own && found.contains_key(&above));
        let below = || as_far_in(lines, *at, at + 1..lines.len());
        let begins = || {
            below()
                .and_then(|below| cases.get(&below))
                .is_some_and(|other| other != own)
                && begins_list(lines, *at, setting)
        };
        if goes_on || begins() {
            found.insert(*at, own.len());
        }
    }
    found
}

/// Whether a line may begin a list of cases: it goes on with no sentence, and none of the lines above says that the hours of such a list are times.
fn begins_list(lines: &[Line<'_>], at: usize, setting: Setting) -> bool {
    const ABOVE: usize = 3;
    let Some(own) = lines.get(at) else {
        return false;
    };
    let Some(above) = at
        .checked_sub(1)
        .and_then(|above| lines.get(above))
        .filter(|above| !above.is_blank())
    else {
        return true;
    };
    let words = above.text.trim_end();
    let first = own.text.split_whitespace().next().unwrap_or_default();
    let has_room = words.len() + 1 + first.len() < setting.widest;
    let ended = words.ends_with('.') && has_room;
    let apart = words.ends_with(':') || ended || is_title(words);
    let nearby = lines.get(at.saturating_sub(ABOVE)..at).unwrap_or_default();
    let of_time = nearby.iter().any(|line| speaks_of_time(line.text));
    apart
        && (!of_time
            || case_of(own.text.trim()).is_some_and(|case| {
                !is_rating(case.trim_end_matches([':', '=', '-', '–', '—', ',', ' ']))
            }))
}

/// Whether a line is a few words without a number, behind that of an item if it has one.
fn is_title(line: &str) -> bool {
    const LONGEST: usize = 6;
    let line = line.trim();
    let words = line
        .get(marker(line).map_or(0, |marker| marker.len)..)
        .unwrap_or_default();
    let few = words.split_whitespace().count() <= LONGEST;
    few && !words.contains(|c: char| c.is_ascii_digit()) && !words.ends_with(',')
}

/// The next line that stands as far in as one, where those between are farther in or go on in small letters.
fn as_far_in(
    lines: &[Line<'_>],
    at: usize,
    mut others: impl Iterator<Item = usize>,
) -> Option<usize> {
    const FARTHEST: usize = 6;
    let own = lines.get(at)?;
    let mut others = others.by_ref().take(FARTHEST);
    let next = others.find(|other| {
        lines.get(*other).is_some_and(|line| {
            let goes_on = line.indent > own.indent
                || line.text.trim_start().starts_with(char::is_lowercase)
                    && case_of(line.text.trim()).is_none();
            !line.is_blank() && !goes_on
        })
    })?;
    lines
        .get(next)
        .filter(|line| line.indent == own.indent)
        .map(|_| next)
}

/// The joints or ratings that a line in two columns at most opens with, up to what is asked of them, with the sign between: `Joints over 2 in.: `.
fn case_of(line: &str) -> Option<&str> {
    const LONGEST: usize = 90;
    if is_bullet(line) || !may_open(line) {
        return None;
    }
    // What stands farther in is no sign behind a case.
    let near = beginning(line, LONGEST);
    if let Some((case, behind)) = line
        .split_once(" ..")
        .filter(|(case, _)| case.len() <= LONGEST)
    {
        let rest = behind.trim_start_matches(['.', ' ']);
        let told = is_rating(case) && !speaks_of_time(rest);
        return line
            .get(..line.len() - rest.len())
            .filter(|_| told && asks(rest));
    }
    let end = SIGNS
        .iter()
        .flat_map(|sign| near.match_indices(sign))
        .filter_map(|(at, sign)| {
            let (case, rest) = (line.get(..at)?, line.get(at + sign.len()..)?);
            let begins = rest
                .trim_start()
                .starts_with(|c: char| c.is_uppercase() || c.is_ascii_digit());
            let parted = match sign {
                ", " => begins && is_rating(case),
                ". " => begins && line.contains(char::is_lowercase),
                _ => true,
            };
            let columns = case.contains("  ") || rest.trim().contains("  ");
            let told = sets_joints_apart(case)
                || is_rating(case) && !speaks_of_time(rest) && !is_code(rest);
            // `EI 90, EI 120   100 mm`: a comma is the last of the signs.
            (parted && !columns && told && asks(rest))
                .then(|| (sign == ", ", line.len() - rest.trim_start().len()))
        })
        .min();
    line.get(..end?.1)
}

/// The classes that a rating may be of.
const CLASSES: &[&str] = &["e", "ei", "rei", "ew"];

/// Words beside a rating.
const BESIDE: &[&str] = &[
    "for",
    "f",
    "t",
    "fire",
    "rating",
    "ratings",
    "rated",
    "wall",
    "walls",
    "system",
    "systems",
    "joint",
    "joints",
    "assembly",
    "assemblies",
    "and",
    "or",
    "&",
    "only",
    "the",
    "resistance",
    "class",
    "over",
    "to",
    "up",
];

/// Several joints, which their width sets apart.
const JOINTS: &[&str] = &["joints", "gaps", "openings", "widths"];

/// What a width is of.
const NOUNS: &[&str] = &["joint", "gap", "opening", "width", "wide", "nominal", "nom"];

/// Words and signs that set joints apart.
const COMPARE: &[&str] = &[
    "over",
    "under",
    "above",
    "below",
    "exceeding",
    "up",
    "to",
    "than",
    "less",
    "more",
    "greater",
    "wider",
    "narrower",
    "larger",
    "smaller",
    "between",
    "thru",
    "through",
    "beyond",
    "<",
    ">",
    "≤",
    "≥",
];

/// Words that may stand in a case besides.
const SMALL: &[&str] = &[
    "for",
    "in",
    "with",
    "of",
    "and",
    "or",
    "not",
    "but",
    "including",
    "incl",
    "inclusive",
    "from",
    "no",
    "the",
    "&",
    "-",
    "–",
    "=",
    "w",
];

/// Whether the first word of a line may be one of a case: most lines need no more than that.
fn may_open(line: &str) -> bool {
    let first = line
        .split([' ', '-', '.', ':', ',', '('])
        .next()
        .unwrap_or_default();
    let known = |list: &[&str]| list.iter().any(|word| first.eq_ignore_ascii_case(word));
    first.starts_with(|c: char| c.is_ascii_digit() || matches!(c, '<' | '>' | '≤' | '≥'))
        || first.chars().any(|c| c.is_ascii_digit())
        || [JOINTS, NOUNS, COMPARE, SMALL, CLASSES, BESIDE]
            .iter()
            .any(|list| known(list))
}

/// What may stand between a case and what is asked there.
const SIGNS: [&str; 8] = [": ", " = ", " - ", " – ", " — ", "  ", ". ", ", "];

/// Whether words ask for something in numbers.
fn asks(words: &str) -> bool {
    words.contains(|c: char| c.is_ascii_digit())
        || words
            .split(|c: char| !c.is_alphabetic())
            .any(|word| count_word(word).is_some())
}

/// Whether words speak of hours that pass, or of heat: hours beside them are no rating.
fn speaks_of_time(words: &str) -> bool {
    const OF_TIME: &[&str] = &[
        "cure",
        "cured",
        "curing",
        "cures",
        "dry",
        "drying",
        "dries",
        "tack",
        "recoat",
        "set",
        "setting",
        "wait",
        "life",
        "old",
        "age",
        "rain",
        "interval",
        "intervals",
        "elapsed",
        "furnace",
        "temperature",
        "hose",
        "exposure",
        "test",
    ];
    let lower = words.to_lowercase();
    let mut each = lower.split(|c: char| !c.is_alphabetic());
    words.contains('°') || each.any(|word| OF_TIME.contains(&word))
}

/// Whether words go on with the code of a class: `EI 120 - V - X - F - W 15 to 40`.
fn is_code(words: &str) -> bool {
    let mut each = words.split_whitespace();
    let letter = each
        .next()
        .is_some_and(|word| word.len() == 1 && word.starts_with(char::is_uppercase));
    letter && each.next().is_some_and(|word| word == "-" || word == "–")
}

/// Whether words are nothing but one rating or several: `1 and 2 Hr`, `F Rating 2 hr`, `EI 90, EI 120`, `3-hour walls`.
fn is_rating(words: &str) -> bool {
    const HOURS: &[&str] = &["h", "hr", "hrs", "hour", "hours"];
    const MINUTES: &[&str] = &["min", "mins", "minute", "minutes"];
    const LONGEST_HOURS: f64 = 4.0;
    const SHORTEST_MINUTES: f64 = 15.0;
    let lower = words.to_lowercase();
    let mut parts = lower
        .split(|c: char| c.is_whitespace() || matches!(c, ',' | '(' | ')' | '-' | '/'))
        .map(|word| word.trim_end_matches('.'))
        .filter(|word| !word.is_empty());
    let (mut named, mut highest, mut numbered) = (None, 0_f64, false);
    let known = parts.all(|word| {
        let letters = word.trim_start_matches(|c: char| c.is_ascii_digit() || c == '.');
        let digits = word.trim_start_matches(|c: char| c.is_ascii_alphabetic());
        let (number, unit) = if digits.len() < word.len() && !digits.is_empty() {
            (
                digits,
                word.get(..word.len() - digits.len()).unwrap_or_default(),
            )
        } else {
            (
                word.get(..word.len() - letters.len()).unwrap_or_default(),
                letters,
            )
        };
        highest = highest.max(number.parse().unwrap_or_default());
        // `2.1 1 h` is a number of an item, and hours.
        let runs_on = numbered && !number.is_empty() && !lower.contains([',', '-', '/']);
        numbered = !number.is_empty();
        let hours = HOURS.contains(&unit);
        let other = MINUTES.contains(&unit) || CLASSES.contains(&unit);
        if hours || other {
            named = Some(hours);
        }
        !runs_on
            && (number.is_empty() || number.parse::<f64>().is_ok())
            && (unit.is_empty() || hours || other || number.is_empty() && BESIDE.contains(&unit))
    });
    let plausible = named.is_some_and(|hours| {
        if hours {
            highest <= LONGEST_HOURS
        } else {
            highest >= SHORTEST_MINUTES
        }
    });
    known && plausible && highest > 0.0
}

/// Whether words are nothing but joints, or a width, and what sets them apart from others.
fn sets_joints_apart(words: &str) -> bool {
    const UNITS: &[&str] = &["in", "inch", "inches", "mm", "cm", "ft", "\""];
    let lower = words.to_lowercase();
    let mut told = Told::default();
    let known = lower
        .split(|c: char| c.is_whitespace() || matches!(c, '(' | ')'))
        .filter(|word| !word.is_empty())
        .all(|word| {
            let signed = word.trim_start_matches(['<', '>', '≤', '≥', '=']);
            let bare = signed.trim_end_matches('.');
            let unit = bare.trim_start_matches(|c: char| {
                c.is_ascii_digit() || matches!(c, '-' | '–' | '/' | '.')
            });
            let is_number =
                unit.len() < bare.len() && bare.starts_with(|c: char| c.is_ascii_digit());
            told.numbers += usize::from(is_number);
            told.measured |= UNITS.contains(&unit);
            told.compared |= signed.len() < word.len() || COMPARE.contains(&word);
            told.joints |= JOINTS.contains(&bare);
            bare.is_empty()
                || is_number && unit.is_empty()
                || UNITS.contains(&unit)
                || [JOINTS, NOUNS, COMPARE, SMALL]
                    .iter()
                    .any(|list| list.contains(&bare))
        });
    known && told.sets_apart()
}

/// What the words of a case tell.
#[derive(Default)]
struct Told {
    numbers: usize,
    measured: bool,
    compared: bool,
    joints: bool,
}

impl Told {
    /// Several joints of one width are as much a case as those over one: `2 in. joints`.
    fn sets_apart(&self) -> bool {
        const MOST: usize = 8;
        (1..=MOST).contains(&self.numbers) && self.measured && (self.compared || self.joints)
    }
}

impl Builder<'_> {
    /// Takes a line that opens with a case: what is asked there, as far as it goes on, is under it.
    pub(super) fn add_case(&mut self, content: Span, length: usize) {
        let case = Span::new(content.start(), content.start() + length);
        let text = Span::new(case.end(), content.end());
        let item = self
            .current
            .and_then(|index| self.outline.items.get_mut(index));
        if let Some(item) = item {
            item.paragraphs.push(Paragraph::Case {
                case: vec![case],
                text: vec![text],
            });
        }
    }

    /// Whether a line begins anew below one that opens with a case, no farther in.
    pub(super) fn leaves_case(&self, line: &Line<'_>, words: &str) -> bool {
        let item = self.current.and_then(|index| self.outline.items.get(index));
        let Some(Paragraph::Case { case, .. }) = item.and_then(|item| item.paragraphs.last())
        else {
            return false;
        };
        let column = case.first().map_or(0, |case| {
            let before = self.source.get(..case.start()).unwrap_or_default();
            before.len() - before.rfind('\n').map_or(0, |line| line + 1)
        });
        let in_columns = case
            .last()
            .is_some_and(|case| case.of(self.source).ends_with("  "));
        line.indent <= column && (in_columns || !words.starts_with(char::is_lowercase))
    }
}
