//! The notes of a text, "* Minimum.", "[a] Max.", and the marks that lead to them.

use crate::clauses::limit_alone;
use crate::model::Relation;
use crate::sentences::sentences;

/// What a note says of the values that its mark stands behind.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Says {
    /// That they are limits, and nothing else.
    Limit(Relation),
    /// Something about a limit that a person must read.
    Unsure,
    /// Something else.
    Other,
}

/// A note.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Note {
    pub(super) mark: String,
    /// Where it begins in the text.
    pub(super) at: usize,
    pub(super) says: Says,
    /// What one of its sentences says of the value that its mark stands behind, beside others: "Spray. Wet thickness shown is minimum."
    pub(super) shown: Option<Shown>,
}

/// What a note says of a value that it names: "Wet thickness shown is minimum."
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Shown {
    /// The words that name it, in small letters.
    names: Vec<String>,
    pub(super) relation: Relation,
}

impl Shown {
    /// Whether a value of this name is meant.
    pub(super) fn is_of(&self, attribute: &str) -> bool {
        const SHORTEST: usize = 3;
        const ANY: &[&str] = &["the", "value", "values", "figure", "figures", "all"];
        let attribute = attribute.to_lowercase();
        let mut telling = self
            .names
            .iter()
            .filter(|name| name.len() >= SHORTEST && !ANY.contains(&name.as_str()))
            .peekable();
        let of_any = telling.peek().is_none();
        let words = || attribute.split(|c: char| !c.is_alphabetic());
        of_any || telling.any(|name| words().any(|word| word == name))
    }
}

/// The one sentence of a note that says how the value shown is limited.
fn shown(words: &str) -> Option<Shown> {
    let mut found = sentences(words)
        .into_iter()
        .filter_map(|range| shown_by(words.get(range)?));
    found.next().filter(|_| found.next().is_none())
}

fn shown_by(sentence: &str) -> Option<Shown> {
    const MOST_NAMES: usize = 3;
    let lower = sentence.to_lowercase();
    let words: Vec<&str> = lower
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .collect();
    let at = words
        .iter()
        .position(|word| ["shown", "given", "stated", "listed"].contains(word))?;
    let (names, behind) = words.split_at_checked(at)?;
    let [
        "shown" | "given" | "stated" | "listed",
        "is" | "are",
        said @ ..,
    ] = behind
    else {
        return None;
    };
    let relation = limit_alone(&said.join(" "))?;
    let reads = names.len() <= MOST_NAMES && !names.contains(&"not");
    reads.then(|| Shown {
        names: names.iter().map(|name| (*name).to_owned()).collect(),
        relation,
    })
}

/// Every note of a text, in order.
pub(super) fn notes(text: &str) -> Vec<Note> {
    let mut notes = Vec::new();
    let mut start = 0;
    for line in text.split_inclusive('\n') {
        let rest = text.get(start + line.len()..).unwrap_or_default();
        of_line(line, start, goes_on(line, rest), &mut notes);
        start += line.len();
    }
    notes
}

/// The notes that a line holds: "* Minimum. † Maximum."
fn of_line(line: &str, start: usize, goes_on: bool, notes: &mut Vec<Note>) {
    let mut at = line.len() - line.trim_start().len();
    for heading in ["notes:", "note:"] {
        let head = line.get(at..at + heading.len());
        if head.is_some_and(|head| head.eq_ignore_ascii_case(heading)) {
            at += heading.len();
            at += line
                .get(at..)
                .map_or(0, |rest| rest.len() - rest.trim_start().len());
        }
    }
    while let Some((mark, len)) = line.get(at..).and_then(leading_mark) {
        let words = line.get(at + len..).unwrap_or_default();
        let end = next_note(words);
        let own = words.get(..end.unwrap_or(words.len())).unwrap_or_default();
        let wrapped = goes_on && end.is_none();
        notes.push(Note {
            mark,
            at: start + at,
            says: says(own, wrapped),
            shown: shown(own).filter(|_| !wrapped),
        });
        let Some(end) = end else { return };
        at += len + end;
    }
}

/// Whether a line's words go on in the next.
fn goes_on(line: &str, rest: &str) -> bool {
    let ended = line.trim_end().ends_with(['.', ';']);
    !ended
        && rest
            .trim_start_matches([' ', '\t'])
            .starts_with(char::is_lowercase)
}

fn says(words: &str, wrapped: bool) -> Says {
    const LIMITS: &[&str] = &[
        "min", "minimum", "minimums", "minima", "max", "maximum", "maximums", "maxima", "least",
        "most", "less", "more", "exceed",
    ];
    let words = words.trim().trim_matches(['.', ':', '-', '–', '=', ' ']);
    // `(mm)      (mm, minimum)` is a row of units.
    let columns = words.contains("  ") || words.contains(['(', '|', '\t']);
    // `* Minimum. Clips 12 in. OC.`
    let goes_on = words
        .split_once(". ")
        .is_some_and(|(first, _)| limit_alone(first).is_some());
    if goes_on && !columns {
        return Says::Unsure;
    }
    if columns || words.contains(|c: char| c.is_ascii_digit()) {
        return Says::Other;
    }
    if let Some(relation) = limit_alone(words).filter(|_| !wrapped) {
        return Says::Limit(relation);
    }
    let lower = words.to_lowercase();
    let mut parts = lower.split(|c: char| !c.is_alphabetic());
    if parts.any(|part| LIMITS.contains(&part)) {
        Says::Unsure
    } else {
        Says::Other
    }
}

/// Where in the words of a note the next one begins: behind a stop.
fn next_note(words: &str) -> Option<usize> {
    let stops = words.match_indices(['.', ';']);
    stops.into_iter().find_map(|(stop, _)| {
        let rest = words.get(stop + 1..)?;
        let begins = rest.len() - rest.trim_start().len();
        let next = rest.get(begins..)?;
        (begins > 0 && leading_mark(next).is_some()).then_some(stop + 1 + begins)
    })
}

/// The mark that a note begins with, and its length: `*`, `††`, `[a]`, `(1)`, `a)`, `Note a:`.
fn leading_mark(words: &str) -> Option<(String, usize)> {
    mark(words).or_else(|| note_name(words))
}

/// The mark that words begin with, behind a value or before a note.
pub(super) fn mark(words: &str) -> Option<(String, usize)> {
    // A mark has two characters at most: farther on a bracket closes something else.
    const NEAR: usize = 4;
    const SIGNS: &[char] = &['*', '†', '‡', '§'];
    const RAISED: &[char] = &[
        '⁰', '¹', '²', '³', '⁴', '⁵', '⁶', '⁷', '⁸', '⁹', 'ᵃ', 'ᵇ', 'ᶜ',
    ];
    for kind in [SIGNS, RAISED] {
        let len = words.len() - words.trim_start_matches(kind).len();
        if len > 0 {
            return Some((words.get(..len)?.to_owned(), len));
        }
    }
    // `4 in. (*)`
    if let Some(inside) = words.strip_prefix('(') {
        let len = inside.len() - inside.trim_start_matches(SIGNS).len();
        if len > 0 && inside.get(len..)?.starts_with(')') {
            return Some((inside.get(..len)?.to_owned(), len + 2));
        }
    }
    let open = words.chars().next()?;
    let (inner, close) = match open {
        '[' => (1, ']'),
        '(' => (1, ')'),
        c if c.is_alphanumeric() => (0, ')'),
        _ => return None,
    };
    let (end, _) = words.char_indices().take(NEAR).find(|(_, c)| *c == close)?;
    let name = words.get(inner..end)?;
    let letters = name.chars().filter(char::is_ascii_alphabetic).count();
    let short = (1..=2).contains(&name.len())
        && letters < 2
        && name.chars().all(|c| c.is_ascii_alphanumeric());
    short.then(|| Some((words.get(..=end)?.to_lowercase(), end + 1)))?
}

/// `Note a:`, `note 1 -`
fn note_name(words: &str) -> Option<(String, usize)> {
    let lower = words.get(..words.len().min(12))?.to_lowercase();
    let rest = lower.strip_prefix("note ")?;
    let name: String = rest
        .chars()
        .take_while(char::is_ascii_alphanumeric)
        .collect();
    let ended = rest
        .get(name.len()..)
        .is_some_and(|rest| rest.trim_start().starts_with([':', '.', '-', '–']));
    let short = (1..=2).contains(&name.len());
    (short && ended).then(|| (format!("note {name}"), 5 + name.len()))
}

/// The mark behind a value: directly, or past its second value and a word of what it measures; with where it ends.
pub(super) fn mark_behind(text: &str, value: usize) -> Option<(String, usize)> {
    const MEASURING: &[&str] = &[
        "deep",
        "thick",
        "thk",
        "wide",
        "long",
        "high",
        "oc",
        "o.c.",
        "on center",
        "min",
        "min.",
    ];
    let rest = text.get(value..)?;
    let mut at = value + second_value(rest);
    let rest = text.get(at..)?;
    let words = rest.trim_start_matches(' ');
    let lower = words
        .get(..words.len().min(10))
        .unwrap_or_default()
        .to_lowercase();
    let measuring = MEASURING.iter().find(|word| {
        lower
            .strip_prefix(**word)
            .is_some_and(|rest| !rest.starts_with(char::is_alphanumeric))
    });
    at += measuring.map_or(0, |word| rest.len() - words.len() + word.len());
    let rest = text.get(at..)?;
    let near = rest.trim_start_matches([' ', '.']);
    let skipped = rest.len() - near.len();
    if skipped > 2 {
        return None;
    }
    if let Some((mark, len)) = mark(near) {
        return Some((mark, at + skipped + len));
    }
    let inside = near.strip_prefix('(')?;
    let end = inside.find(')')?;
    let cited = inside.get(..end)?.to_lowercase();
    let cited = cited.trim().trim_start_matches("see ");
    (cited.starts_with("note ") && cited.len() <= 7)
        .then(|| (cited.to_owned(), at + skipped + end + 2))
}

/// The figure of a note that stands right behind a unit: `4 in.1 deep`.
pub(super) fn figure_behind(text: &str, value: usize) -> Option<&str> {
    let rest = text.get(value..)?;
    let rest = rest.strip_prefix('.').unwrap_or(rest);
    let len = rest.len() - rest.trim_start_matches(|c: char| c.is_ascii_digit()).len();
    let ends = !rest
        .get(len..)?
        .starts_with(|c: char| c.is_alphanumeric() || matches!(c, '/' | '-' | '"' | '\''));
    ((1..=2).contains(&len) && ends).then(|| rest.get(..len))?
}

/// Whether a line that begins with a figure says something of a limit: `1 Minimum.`, `1) Not less than shown.`
pub(super) fn numbered_note_limits(text: &str, figure: &str) -> bool {
    text.lines().any(|line| {
        let words = line.trim_start().strip_prefix(figure);
        let words = words.filter(|words| words.starts_with([' ', ')', '.']));
        words.is_some_and(|words| says(words.trim_start_matches([')', '.']), false) != Says::Other)
    })
}

/// The length of the second value in brackets that words begin with: ` (102 mm)`.
fn second_value(rest: &str) -> usize {
    const SHORTEST: usize = 3;
    let words = rest.trim_start_matches(' ');
    let end = words.strip_prefix('(').and_then(|inside| inside.find(')'));
    let Some(end) = end else { return 0 };
    let inside = words.get(1..=end).unwrap_or_default();
    let valued = end >= SHORTEST && inside.starts_with(|c: char| c.is_ascii_digit());
    if valued {
        rest.len() - words.len() + end + 2
    } else {
        0
    }
}
