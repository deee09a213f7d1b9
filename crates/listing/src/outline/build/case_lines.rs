//! Lines of an item that open with the joints or the rating they are for, before a colon, a dash or blanks: `Joints to 2 in. wide: one layer`, `over 2 to 4 in.   2
//! layers`, `1 Hr - 4 pcf`; or that end with them behind a value, `3 in. for 1 hr`, `3 in. or more   1 hr rating`. One counts where the line above or below it, as far in, has others: one alone may limit what the joint may be. Hours beside
//! words of curing or heat are times.
//!
//! What it would misread: a list by the width of something else, where the widths are all that its lines open with. Such a width stays words, and a person
//! is asked whether it is the joint's.

use core::ops::Range;
use std::collections::BTreeMap;

use super::super::Paragraph;
use super::Builder;
use super::case_words::{
    is_rating, is_rating_and_layers, may_open, sets_joints_apart, speaks_of_time,
};
use super::closing::Setting;
use super::labels::is_bullet;
use crate::layout::{Line, beginning};
use crate::model::Span;
use crate::outline::marker::marker;
use crate::phrase::count_word;

/// The lines that say what is asked in a case.
pub(super) type CaseLines = BTreeMap<usize, CaseParts>;

/// Where the case and what is asked there stand in the content of a line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct CaseParts {
    case: Range<usize>,
    asked: Range<usize>,
}

impl CaseParts {
    /// The parts of a line that opens with its case, or ends with it.
    fn of(line: &str) -> Option<Self> {
        let beside = value_beside(line);
        if let Some(case) = bracketed(line)
            .or_else(|| case_of(line))
            .filter(|_| beside.is_none())
        {
            return Some(Self {
                case: 0..case.len(),
                asked: case.len()..line.len(),
            });
        }
        let asked = beside.or_else(|| value_for(line))?;
        Some(Self {
            case: asked.len()..without_and(line).len(),
            asked: 0..asked.len(),
        })
    }

    /// The case without the words and signs beside it.
    fn words<'l>(&self, line: &'l str) -> &'l str {
        let case = line.get(self.case.clone()).unwrap_or_default();
        let case = case.trim().trim_start_matches("for ");
        bare(case).trim_start_matches('(').trim_end_matches(')')
    }
}

/// A line of a list without what leads to the next: `for 1 hr, and`
fn without_and(line: &str) -> &str {
    let own = line.strip_suffix(" and").or(line.strip_suffix(" or"));
    own.unwrap_or(line).trim_end_matches([',', ';'])
}

/// A case without the signs behind it.
pub(super) fn bare(case: &str) -> &str {
    case.trim_end_matches([':', '=', '-', '–', '—', ',', ';', ' '])
}

/// The lines of a document that open with a case, beside others that open with another.
pub(super) fn begin(lines: &[Line<'_>], setting: Setting) -> CaseLines {
    let cases: BTreeMap<usize, CaseParts> = lines
        .iter()
        .enumerate()
        .filter_map(|(at, line)| Some((at, CaseParts::of(line.text.trim())?)))
        .collect();
    let words = |at: usize| {
        let line = lines.get(at).map_or("", |line| line.text.trim());
        cases.get(&at).map(|own| own.words(line))
    };
    let mut found = CaseLines::new();
    for (at, own) in &cases {
        let is_another =
            |other: &usize| words(*other).is_some_and(|other| Some(other) != words(*at));
        let above = as_far_in(lines, *at, (0..*at).rev()).filter(is_another);
        let goes_on = above.is_some_and(|above| found.contains_key(&above));
        let below = || as_far_in(lines, *at, at + 1..lines.len()).filter(is_another);
        if goes_on || below().is_some() && begins_list(lines, *at, setting) {
            found.insert(*at, own.clone());
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
    let limited = ["min", "max", "minimum", "maximum"]
        .iter()
        .any(|limit| words.ends_with(limit));
    let bracketed = own.text.trim_start().starts_with('(');
    let apart = words.ends_with([':', '-', '–', '—'])
        || ended
        || is_title(words)
        || limited && has_room
        || bracketed && !words.ends_with(',');
    let nearby = lines.get(at.saturating_sub(ABOVE)..at).unwrap_or_default();
    let of_time = nearby.iter().any(|line| speaks_of_time(line.text));
    apart
        && (!of_time
            || CaseParts::of(own.text.trim())
                .is_some_and(|own_parts| !is_rating(own_parts.words(own.text.trim()))))
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
                    && CaseParts::of(line.text.trim()).is_none();
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
                ", " => (begins || opens_with_limit(rest)) && is_rating(case),
                ". " => begins && line.contains(char::is_lowercase),
                _ => true,
            };
            let columns = case.contains("  ") || rest.trim().contains("  ");
            let told = sets_joints_apart(case)
                || (is_rating(case) || is_rating_and_layers(case))
                    && !speaks_of_time(rest)
                    && !is_code(rest);
            // `EI 90, EI 120   100 mm`: a comma is the last of the signs.
            (parted && !columns && told && asks(rest))
                .then(|| (sign == ", ", line.len() - rest.trim_start().len()))
        })
        .min();
    line.get(..end?.1)
}

/// The case in brackets that a line opens with: `(2 hr) min depth 4 in.`
fn bracketed(line: &str) -> Option<&str> {
    const LONGEST: usize = 90;
    let (case, asked) = line.strip_prefix('(')?.split_once(") ")?;
    let told = is_rating(case) && !speaks_of_time(asked) || sets_joints_apart(case);
    let plain = case.len() <= LONGEST && !asked.contains("  ") && asks(asked);
    (told && plain).then(|| line.get(..line.len() - asked.len()))?
}

/// The value that a line begins with before the case that it ends with: `3 in. ` of `3 in. for joints over 2 in. wide`.
fn value_for(line: &str) -> Option<&str> {
    const FOR: &str = " for ";
    const LONGEST: usize = 90;
    let opens = line.starts_with(|c: char| c.is_ascii_digit()) && line.len() <= LONGEST;
    let (value, case) = line.rsplit_once(FOR).filter(|_| opens)?;
    let case = bare(without_and(case));
    let told =
        is_rating(case.trim_end_matches('.')) && !speaks_of_time(value) || sets_joints_apart(case);
    let plain = !line.contains("  ") && !value.contains([':', ';']);
    (told && plain).then(|| line.get(..=value.len()))?
}

/// The value that stands in a column before that of its rating: `4-1/2 in. or greater     2 h rating`.
fn value_beside(line: &str) -> Option<&str> {
    const MOST_WORDS: usize = 8;
    let opens = line.starts_with(|c: char| c.is_ascii_digit());
    let (value, rest) = line.split_once("  ").filter(|_| opens)?;
    let case = rest.trim();
    // Hours alone may be a wait: `1/8 in. wet     2 hr`.
    let lower = case.to_lowercase();
    let called = ["rating", "rated", "ei ", "frl "]
        .iter()
        .any(|word| lower.contains(word));
    let told = called && is_rating(case.trim_end_matches('.')) && !speaks_of_time(value);
    let plain = !case.contains("  ") && value.split_whitespace().count() <= MOST_WORDS;
    let is_value = asks(value) && !is_rating(value);
    (told && plain && is_value).then(|| line.get(..line.len() - rest.trim_start().len()))?
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

/// Whether words begin with a limit: `min depth 3 in.`
fn opens_with_limit(words: &str) -> bool {
    let first = words.split_whitespace().next().unwrap_or_default();
    ["min", "min.", "max", "max.", "minimum", "maximum"].contains(&first)
}

/// Whether words go on with the code of a class: `EI 120 - V - X - F - W 15 to 40`.
fn is_code(words: &str) -> bool {
    let mut each = words.split_whitespace();
    let letter = each
        .next()
        .is_some_and(|word| word.len() == 1 && word.starts_with(char::is_uppercase));
    letter && each.next().is_some_and(|word| word == "-" || word == "–")
}

impl Builder<'_> {
    /// Takes a line that opens with a case, or ends with it: what is asked there, as far as it goes on, is under it.
    pub(super) fn add_case(&mut self, content: Span, parts: &CaseParts) {
        let part = |part: &Range<usize>| {
            Span::new(content.start() + part.start, content.start() + part.end)
        };
        let (case, text) = (part(&parts.case), part(&parts.asked));
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
        let Some(Paragraph::Case { case, text }) = item.and_then(|item| item.paragraphs.last())
        else {
            return false;
        };
        let starts = case.iter().chain(text).map(|piece| piece.start());
        let column = starts.min().map_or(0, |start| {
            let before = self.source.get(..start).unwrap_or_default();
            before.len() - before.rfind('\n').map_or(0, |line| line + 1)
        });
        let in_columns = case
            .last()
            .is_some_and(|case| case.of(self.source).ends_with("  "));
        // A line that ends with its case is complete.
        let complete = case.first().map(|case| case.start())
            > text.first().map(|text| text.start())
            && matches!(text.as_slice(), [_]);
        line.indent <= column && (in_columns || complete || !words.starts_with(char::is_lowercase))
    }
}
