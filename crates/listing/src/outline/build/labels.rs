//! Labels and values in two columns, with nothing between them but blanks.

use super::super::open_end::ends_open;
use crate::conditions::is_small_word;
use crate::layout::{LIST_SIGNS, Line};

/// The fewest blanks between a label and its value.
const APART: &str = "  ";

/// The most words of a label.
const MOST_WORDS: usize = 5;

/// Whether a line of text begins an entry of a list of labels: `Depth          min 4 in. (102 mm)`. A line alone may only be set wide, so the
/// values of the line before or after must stand in the same column. So must a line before or after have a label where a colon parts it from
/// its value: `Leg length: 75 mm`.
pub(super) fn begins(lines: &[Line<'_>], at: usize) -> bool {
    let column = |at: usize| lines.get(at).and_then(value_column);
    if let Some(own) = column(at) {
        let before = at.checked_sub(1).and_then(column);
        let aligned = [before, column(at + 1)].contains(&Some(own));
        // `Top course    : Solid units`: the colon may stand in a column of its own.
        if aligned || lines.get(at).and_then(colon_indent).is_none() {
            return aligned;
        }
    }
    if stands_under(lines, at) || lines.get(at).is_some_and(has_leader) {
        return true;
    }
    let set_apart = |at: usize| lines.get(at).is_some_and(is_set_apart);
    if set_apart(at) || (set_apart(at + 1) && lines.get(at).is_some_and(heads_labels)) {
        return true;
    }
    let labelled = |at: usize| lines.get(at).and_then(colon_indent);
    labelled(at).is_some_and(|own| {
        let before = at.checked_sub(1).and_then(labelled);
        [before, labelled(at + 1)].contains(&Some(own))
    })
}

/// Whether a line begins by naming a variant that the rest is about: `Option A. The flange is clamped ...`, `Method 2: sprayed`, `SYSTEM B` alone.
pub(super) fn heads_variant(words: &str) -> bool {
    variant_named(words).is_some_and(|rest| {
        let rest = rest
            .strip_prefix('.')
            .filter(|rest| rest.is_empty())
            .unwrap_or(rest);
        rest.is_empty()
            || [". ", ": ", " - ", " -- ", " – ", " — "]
                .iter()
                .any(|sign| rest.starts_with(sign))
    })
}

/// Whether a line is the name of a variant and nothing more: `Type HW`, `FLUTED DECK - OPTION P (PLUGS)`.
pub(super) fn is_variant(words: &str) -> bool {
    variant_named(words).is_some_and(|rest| matches!(rest.trim(), "" | ":" | "."))
        || is_variant_of_thing(words)
}

/// Whether a line is the name of a thing in capitals, and behind a dash that of one of its variants.
fn is_variant_of_thing(words: &str) -> bool {
    const MOST_WORDS: usize = 4;
    let mut dashes = [" - ", " – ", " — "].into_iter();
    let Some((thing, variant)) = dashes.find_map(|dash| words.split_once(dash)) else {
        return false;
    };
    let plain = thing.chars().all(|c| c.is_uppercase() || c == ' ')
        && (1..=MOST_WORDS).contains(&thing.split_whitespace().count());
    let whole = |rest: &str| {
        let rest = rest.trim();
        let bracket = rest
            .strip_prefix('(')
            .and_then(|rest| rest.strip_suffix(')'));
        rest.is_empty()
            || bracket.is_some_and(|said| !said.contains(['(', ')']) && !holds_number(said))
    };
    plain && variant_named(variant.trim()).is_some_and(whole)
}

/// The name of a part of the document that a line heads: `SYSTEM B`, `CONFIGURATION A - FLOOR TO FLOOR`.
pub(super) fn part_named(words: &str) -> Option<&str> {
    const MOST_WORDS: usize = 9;
    let words = words.trim();
    let rest = variant_named(words)?;
    let name = words.get(..words.len() - rest.len())?;
    let short = rest.split_whitespace().count() <= MOST_WORDS
        && !rest.trim_end_matches(':').contains([';', ':', ','])
        && !rest.trim_end_matches('.').contains('.')
        && (!holds_number(rest) || is_rating(rest));
    (heads_variant(words) && short).then_some(name)
}

/// Whether words behind a name state a rating and nothing more: ` - 2 HR`, ` - 1 AND 2 HR RATING`.
pub(crate) fn is_rating(words: &str) -> bool {
    const WORDS: &[&str] = &[
        "and", "or", "to", "f", "t", "fire", "h", "hr", "hrs", "hour", "hours", "min", "minutes",
        "rating", "ratings", "rated",
    ];
    const HOURS: &[&str] = &["h", "hr", "hrs", "hour", "hours", "min", "minutes"];
    let words = words.to_lowercase();
    let mut parts = words
        .split(|c: char| c.is_whitespace() || matches!(c, '-' | '–' | '—' | '.' | ':' | '(' | ')'))
        .filter(|word| !word.is_empty());
    let counts = |word: &str| word.chars().all(|c| c.is_ascii_digit() || c == '/');
    words
        .split_whitespace()
        .any(|word| HOURS.contains(&word.trim_end_matches(['.', ':', ')'])))
        && parts.all(|word| counts(word) || WORDS.contains(&word))
}

/// Whether a line heads what is said of several kinds or all: `Both configurations:`, `Configurations A and B`.
pub(crate) fn heads_all(line: &str) -> bool {
    const KINDS: &[&str] = &[
        "configurations",
        "systems",
        "details",
        "options",
        "types",
        "variants",
        "assemblies",
        "methods",
    ];
    const ALL: &[&str] = &["all", "both", "either"];
    let line = line.trim().trim_end_matches([':', '.']);
    let words: Vec<String> = line
        .split([' ', ','])
        .filter(|word| !word.is_empty())
        .map(str::to_lowercase)
        .collect();
    let is_kinds = |word: &String| KINDS.contains(&word.as_str());
    let is_label = |word: &String| word.len() <= 2 || word == "and";
    let capital = line.starts_with(char::is_uppercase);
    match words.as_slice() {
        [all, kinds] => capital && ALL.contains(&all.as_str()) && is_kinds(kinds),
        [kinds, labels @ ..] if labels.len() > 2 => {
            capital
                && is_kinds(kinds)
                && labels.iter().all(is_label)
                && labels.iter().any(|word| word == "and")
        }
        _ => false,
    }
}

/// How much of a title, `PACKING - CONFIGURATION A: `, is the name of a configuration beside which the item has another, so that the item is of neither.
pub(super) fn configuration_at_end(text: &str, title: usize, beside: Vec<&str>) -> usize {
    const NAME: &str = "configuration ";
    let lower = text.to_ascii_lowercase();
    let Some(at) = lower
        .get(..title)
        .and_then(|title| title.rfind(NAME))
        .filter(|at| *at > 0)
    else {
        return 0;
    };
    let label = |from: usize| {
        text.get(from..)?
            .split(|c: char| !c.is_alphanumeric())
            .next()
    };
    let own = label(at + NAME.len());
    let alone = text
        .get(at..title)
        .is_some_and(|name| is_variant(name.trim_end_matches([' ', '-', '–', '—'])));
    let later = lower
        .match_indices(NAME)
        .filter(|(place, _)| *place >= title && text.get(*place..).is_some_and(heads_variant));
    let mut others = later.map(|(place, _)| label(place + NAME.len()));
    let other = others.any(|other| other != own)
        || beside.into_iter().any(|line| {
            let name = line.to_ascii_lowercase().starts_with(NAME);
            let other = line.get(NAME.len()..).and_then(|rest| rest.chars().next());
            name && heads_variant(line) && other != own.and_then(|own| own.chars().next())
        });
    if alone && other { title - at } else { 0 }
}

/// Whether a line is a limit that heads what stands below it: `Maximum:`, `Minimum values:`.
pub(super) fn heads_limit(line: &str) -> bool {
    const LIMITS: &[&str] = &["minimum", "maximum", "min", "max", "min.", "max."];
    const MOST_WORDS: usize = 4;
    let Some(words) = line.trim().strip_suffix(':') else {
        return false;
    };
    let first = words.split(' ').next().unwrap_or_default().to_lowercase();
    LIMITS.contains(&first.as_str())
        && words.starts_with(char::is_uppercase)
        && words.split_whitespace().count() <= MOST_WORDS
        && !holds_number(words)
}

/// What stands behind the name of a variant that a line begins with.
pub(super) fn variant_named(words: &str) -> Option<&str> {
    const OF_WHAT: [&str; 7] = [
        "wall",
        "joint",
        "seal",
        "floor",
        "assembly",
        "alternate",
        "system",
    ];
    const VARIANTS: [&str; 13] = [
        "configuration",
        "option",
        "variant",
        "method",
        "type",
        "alternate",
        "alternative",
        "system",
        "detail",
        "variation",
        "version",
        "execution",
        "assembly",
    ];
    const LONGEST: usize = 2;
    let (first, rest) = words.split_once(' ')?;
    let is = |list: &[&str], word: &str| {
        list.iter().any(|own| own.eq_ignore_ascii_case(word))
            && word.starts_with(char::is_uppercase)
    };
    let further = rest
        .split_once(' ')
        .filter(|(noun, _)| is(&OF_WHAT, first) && is(&VARIANTS, noun));
    let rest = match further {
        Some((_, rest)) => rest,
        None if is(&VARIANTS, first) => rest,
        None => return None,
    };
    let end = rest
        .find(|c: char| !c.is_ascii_alphanumeric())
        .unwrap_or(rest.len());
    let (label, after) = rest.split_at(end);
    let short = (1..=LONGEST).contains(&label.len())
        && label
            .chars()
            .all(|c| c.is_ascii_uppercase() || c.is_ascii_digit());
    (short && !is_small_word(label)).then_some(after)
}

/// Whether dots lead from a short label to its value: `Unit weight ..... 110 pcf`.
fn has_leader(line: &Line<'_>) -> bool {
    const LEADER: &str = " ....";
    const MOST_WORDS: usize = 7;
    line.text
        .trim()
        .split_once(LEADER)
        .is_some_and(|(label, _)| {
            label.starts_with(char::is_alphabetic) && label.split_whitespace().count() <= MOST_WORDS
        })
}

/// Whether a line holds a label and a value that stand right under those of the line before, which may be marked: `width     2-1/2 in. min` under
/// `B.1     depth     5 in. min`. Words that go on begin in one of the columns alone.
fn stands_under(lines: &[Line<'_>], at: usize) -> bool {
    let (Some(own), Some(before)) = (
        lines.get(at),
        at.checked_sub(1).and_then(|at| lines.get(at)),
    ) else {
        return false;
    };
    let [(label_at, label), (value_at, value)] = runs(own)[..] else {
        return false;
    };
    let plain = label.starts_with(char::is_lowercase)
        && label.split_whitespace().count() <= MOST_WORDS
        && label
            .chars()
            .all(|c| c.is_alphabetic() || matches!(c, ' ' | '-' | ','));
    // `seals     whichever is greater` goes on with the label and the value above.
    let words = before.text.trim_end();
    let limit = words.ends_with("min") || words.ends_with("max");
    let open = words.ends_with([',', '-']) || !limit && ends_open(words);
    let above = runs(before);
    let under = |column: usize| above.iter().any(|(start, _)| *start == column);
    plain && !open && !value.is_empty() && under(label_at) && under(value_at)
}

/// The stretches of a line that two blanks or more part, each with the place where it begins.
fn runs<'l>(line: &'l Line<'_>) -> Vec<(usize, &'l str)> {
    let mut found = Vec::new();
    let mut at = 0;
    while let Some(rest) = line.text.get(at..) {
        let start = at + rest.len() - rest.trim_start().len();
        let Some(words) = line.text.get(start..).filter(|words| !words.is_empty()) else {
            break;
        };
        let len = words.find(APART).unwrap_or_else(|| words.trim_end().len());
        found.push((start, words.get(..len).unwrap_or_default()));
        at = start + len;
    }
    found
}

/// Whether a line holds a short label, a colon, and a value set apart from it: `width:        140 mm`.
fn is_set_apart(line: &Line<'_>) -> bool {
    const MOST_WORDS: usize = 4;
    line.text
        .trim()
        .split_once(':')
        .is_some_and(|(label, value)| {
            let words = label.split_whitespace().count();
            let plain = label.starts_with(char::is_alphabetic) && !label.contains(['.', ';']);
            plain
                && words <= MOST_WORDS
                && !label.contains("  ")
                && value.starts_with(APART)
                && !value.trim().is_empty()
        })
}

/// Whether a line is a few words that head the labels below it, or begin the first of them: `type A, blockwork`, `anchors in`.
fn heads_labels(line: &Line<'_>) -> bool {
    const MOST_WORDS: usize = 6;
    let words = line.text.trim();
    !words.is_empty()
        && words.split_whitespace().count() <= MOST_WORDS
        && !words.contains(|c: char| c.is_ascii_digit())
        && !words.contains(APART)
        && !words.ends_with(['.', ',', ';'])
}

/// Where a line begins that holds a short label, a colon and a value.
fn colon_indent(line: &Line<'_>) -> Option<usize> {
    let (label, value) = line.text.trim().split_once(": ")?;
    // `Min depth, in.: 3`, `Joint width (in.): 2`
    let label = label.strip_suffix(')').unwrap_or(label);
    let label = label.strip_suffix("in.").unwrap_or(label);
    // `lap on board: 1/2" min`: in small letters it might be running text, unless a number follows.
    let begins = label.starts_with(char::is_uppercase)
        || label.starts_with(char::is_lowercase) && holds_number(value);
    let plain =
        begins && label.split_whitespace().count() <= MOST_WORDS && !label.contains(['.', ';']);
    (plain && !value.trim().is_empty()).then_some(line.indent)
}

fn holds_number(words: &str) -> bool {
    words.contains(|c: char| c.is_ascii_digit())
}

/// The labels and values that stand side by side in a line: `wet: 1/8 in. min    dry: 70 mils min`. Read on, each value would be taken for that of
/// the label behind it.
pub(super) fn side_by_side(words: &str) -> Option<Vec<(usize, usize)>> {
    const MOST_WORDS: usize = 4;
    let is_entry = |entry: &str| {
        entry.split_once(": ").is_some_and(|(label, value)| {
            label.split_whitespace().count() <= MOST_WORDS
                && label.starts_with(char::is_alphabetic)
                && label.chars().all(|c| c.is_alphabetic() || c == ' ')
                && holds_number(value)
        })
    };
    let mut entries = Vec::new();
    let mut at = 0;
    for entry in words.split(APART) {
        let lead = entry.len() - entry.trim_start().len();
        if !entry.trim().is_empty() {
            entries.push((at + lead, at + entry.trim_end().len()));
        }
        at += entry.len() + APART.len();
    }
    let all = entries
        .iter()
        .all(|(from, to)| words.get(*from..*to).is_some_and(is_entry));
    (entries.len() > 1 && all).then_some(entries)
}

/// Where the value stands in a line that holds a label and a value; none when it is no such line.
fn value_column(line: &Line<'_>) -> Option<usize> {
    let words = line.text.trim();
    let (label, rest) = words.split_once(APART)?;
    let value = rest.trim_start();
    let numbers = label.strip_prefix("No. ");
    let is_label = (numbers.is_some() || label.starts_with(char::is_uppercase))
        && label.split_whitespace().count() <= MOST_WORDS
        && numbers
            .unwrap_or(label)
            .chars()
            .zip(core::iter::once(' ').chain(label.chars()))
            .all(|(c, before)| {
                // `kg/m3`
                let in_unit = c.is_ascii_digit() && before.is_alphabetic();
                c.is_alphabetic()
                    || in_unit
                    || matches!(c, ' ' | '-' | '/' | '*' | '(' | ')' | ',' | '%' | '°')
            });
    // A third column would make it a row of a table.
    let is_value = !value.is_empty() && !value.contains("   ");
    let blanks = line.text.len() - line.text.trim_start().len();
    (is_label && is_value).then(|| blanks + words.len() - value.len())
}

/// `Joint width:      12 mm to 120 mm`, `Depth ......... 4 in.`: a line of a list of labels.
pub(super) fn is_labelled(words: &str) -> bool {
    if words.starts_with(char::is_uppercase)
        && (words.contains(" ....") || words.contains(" . . ."))
    {
        return true;
    }
    let Some((label, value)) = words.split_once(':') else {
        return false;
    };
    let short = label.split_whitespace().count() <= 5 && label.starts_with(char::is_uppercase);
    short && value.starts_with("  ") && !label.contains('.')
}

/// Whether the dash that a line begins with goes on with a range that the line above begins: `density 1600` over `- 2400 kg/m3`. The lower value stands
/// behind a word in small letters, so that it is no "Table 3", and the higher one has a unit.
pub(super) fn goes_on_a_range(lines: &[Line<'_>], at: usize) -> bool {
    let above = at.checked_sub(1).and_then(|above| lines.get(above));
    let (Some(above), Some(line)) = (above, lines.get(at)) else {
        return false;
    };
    let behind = line.text.trim_start().strip_prefix(['-', '–']);
    let Some(behind) = behind.map(str::trim_start) else {
        return false;
    };
    let plain = |word: &str| word.parse::<f64>().ok();
    let mut before = above.text.split_whitespace().rev();
    let low = before.next().and_then(plain);
    let small = before
        .next()
        .is_some_and(|word| word.starts_with(char::is_lowercase));
    let end = behind
        .find(|c: char| !(c.is_ascii_digit() || c == '.'))
        .unwrap_or(behind.len());
    let high = behind.get(..end).and_then(plain);
    let ascending = low.zip(high).is_some_and(|(low, high)| low < high);
    let followed = lines
        .get(at + 1)
        .is_some_and(|next| is_bullet(next.text.trim_start()));
    ascending && small && !followed && measure::notation::unit_at(behind, end).is_some()
}

/// Whether a line begins with the sign of a list.
pub(super) fn is_bullet(words: &str) -> bool {
    const MARKS: &[&str] = &["*B", "** ", "† ", "‡ "];
    const BOXES: &[&str] = &["[ ]", "[  ]", "[_]", "( )", "(  )", "☐", "□"];
    let behind = words.strip_prefix(LIST_SIGNS);
    // In text taken from a page the sign may have a line to itself.
    behind.is_some_and(|behind| behind.is_empty() || behind.starts_with(' '))
        || MARKS
            .iter()
            .chain(BOXES)
            .any(|mark| words.starts_with(mark))
}
