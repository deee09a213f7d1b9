//! Lines that say for which joints the text under them is: `Band C – joint width over 50 mm`, `Group 2: walls 2 h`, `Case B — one side`. One counts where
//! another of its sort has another label.

use crate::layout::Line;

/// What such a line names.
const KINDS: &[&str] = &["band", "group", "range", "case"];

/// More of them are rows of a list, in which nothing is looked for.
const MOST: usize = 200;

/// The lines of a document that head bands.
pub(super) fn begin(lines: &[Line<'_>]) -> Vec<usize> {
    let named = lines
        .iter()
        .enumerate()
        .filter_map(|(at, line)| Some((at, named(line.text)?)));
    let named: Vec<(usize, (&str, &str))> = named.take(MOST).collect();
    let has_like = |(kind, label): &(&str, &str)| {
        let mut others = named.iter();
        others.any(|(_, (other, own))| other.eq_ignore_ascii_case(kind) && own != label)
    };
    let headings = named.iter().filter(|(_, own)| has_like(own));
    headings.map(|(at, _)| *at).collect()
}

/// The name that a line which heads a band begins with: `Band C`.
pub(super) fn name_of(line: &str) -> Option<&str> {
    let line = line.trim();
    let (kind, label) = named(line)?;
    line.get(..kind.len() + 1 + label.len())
}

/// The kind and the label of a line that heads a band.
fn named(line: &str) -> Option<(&str, &str)> {
    const SIGNS: [char; 5] = [':', '-', '–', '—', '('];
    let (kind, rest) = line.trim().split_once(' ')?;
    let known = KINDS.iter().any(|own| own.eq_ignore_ascii_case(kind));
    let end = rest
        .find(|c: char| !c.is_ascii_alphanumeric())
        .unwrap_or(rest.len());
    let (label, rest) = rest.split_at(end);
    let short = (1..=2).contains(&label.len())
        && label
            .chars()
            .all(|c| c.is_ascii_uppercase() || c.is_ascii_digit());
    let said = rest.trim_start().strip_prefix(SIGNS)?;
    let begins = kind.starts_with(char::is_uppercase);
    (known && begins && short && tells_joints(said)).then_some((kind, label))
}

/// Whether words say for what a band is, and demand nothing: `joint width over 50 mm`, `walls 2 h`, `floor to wall`.
fn tells_joints(said: &str) -> bool {
    const MOST_WORDS: usize = 10;
    const OF: &[&str] = &[
        "joint", "joints", "gap", "gaps", "opening", "openings", "width", "widths", "wall",
        "walls", "floor", "floors", "rating", "ratings", "hr", "h", "hour", "hours", "wide",
    ];
    const DEMANDS: &[&str] = &[
        "min", "minimum", "max", "maximum", "shall", "must", "is", "are", "be", "use", "nom",
        "nominal", "thick", "deep", "depth", "spaced", "one", "two", "three", "four", "both",
    ];
    // `walls 6 in.` says what they are.
    const COMPARED: &[&str] = &[
        "over",
        "up",
        "under",
        "below",
        "above",
        "more",
        "less",
        "greater",
        "wider",
        "narrower",
        "exceeding",
        "between",
        "to",
        "hr",
        "h",
        "hour",
        "hours",
    ];
    let said = said.trim().trim_end_matches([':', ')', '-', ' ']);
    // `over 50 mm, up to 100 mm` goes on with the joints meant.
    let lower = said.to_lowercase().replace(", up to ", " up to ");
    let words = || {
        lower
            .split(|c: char| !c.is_alphabetic())
            .filter(|word| !word.is_empty())
    };
    let has = |list: &[&str]| words().any(|word| list.contains(&word));
    let numbered = lower.contains(|c: char| c.is_ascii_digit());
    // `over 2 in.` ends in a unit, and no sentence ends there.
    let stopped = lower.ends_with('.') && !["in.", "ft.", "hr."].iter().any(|u| lower.ends_with(u));
    words().next().is_some()
        && lower.split_whitespace().count() <= MOST_WORDS
        && !lower.contains([';', ','])
        && !stopped
        && !has(DEMANDS)
        && has(OF)
        && (!numbered || has(COMPARED) || lower.contains(['>', '<', '≤', '≥']))
}
