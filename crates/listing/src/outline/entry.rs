//! Entries of a data sheet whose label gives the unit in brackets: `Depth [mm]      not below 90`.
//!
//! A value may go on over several lines: each is a stretch of its own where the line before was broken on purpose. A label without a value
//! may head lines of key and value: `Depth, minimum [mm]:` over `  60 minutes      10`.

use measure::{Dimension, Unit, notation};

use crate::layout::Line;
use crate::model::{Relation, Span};
use crate::phrase::measures;
use crate::rules::qualifier;

/// One stretch of a value, with its label.
#[derive(Debug, Clone)]
pub(crate) struct Entry {
    /// The label, and before it that of the entry which it stands under.
    pub(crate) label: Vec<Span>,
    /// The unit in its brackets.
    pub(crate) unit: Unit,
    /// What the value is for, where the label heads several.
    pub(crate) key: Option<Span>,
    pub(crate) value: Vec<Span>,
}

impl Entry {
    /// All of it.
    pub(crate) fn pieces(&self) -> impl Iterator<Item = Span> {
        self.label
            .iter()
            .chain(&self.key)
            .chain(&self.value)
            .copied()
    }
}

/// A line that holds a label with a unit.
struct Labelled {
    label: Span,
    unit: Unit,
    /// The value that stands beside it, and the place where it begins.
    value: Option<(usize, Span)>,
}

/// The entries that begin at a line, and the line after them; none when no label with a unit stands there.
pub(crate) fn entries_at(lines: &[Line<'_>], at: usize) -> Option<(Vec<Entry>, usize)> {
    let (mut label, found, next) = if let Some(found) = labelled(lines.get(at)?) {
        (under(lines, at), found, at + 1)
    } else {
        let (first, found) = wrapped(lines, at)?;
        (vec![first], found, at + 2)
    };
    label.push(found.label);
    let Some((column, value)) = found.value else {
        return keyed(lines, next, &label, found.unit);
    };
    let widest = lines.iter().map(|line| line.text.len()).max()?;
    let mut stretches = vec![vec![value]];
    let mut end = next;
    while let Some(line) = lines.get(end).filter(|line| goes_on(line, column)) {
        let before = lines.get(end - 1)?;
        let first = line.text.split_whitespace().next().unwrap_or_default();
        let on_purpose = before.text.trim_end().len() + 1 + first.len() <= widest.saturating_sub(2);
        match stretches.last_mut().filter(|_| !on_purpose) {
            Some(stretch) => stretch.push(line.content()),
            None => stretches.push(vec![line.content()]),
        }
        end += 1;
    }
    let entries = stretches.into_iter().map(|value| Entry {
        label: label.clone(),
        unit: found.unit,
        key: None,
        value,
    });
    Some((entries.collect(), end))
}

/// Whether a line goes on with the value that began at a place.
fn goes_on(line: &Line<'_>, column: usize) -> bool {
    const ASIDE: usize = 1;
    !line.is_blank() && !line.after_page_break && line.indent + ASIDE >= column
}

/// Reads a line as a label with a unit, and its value.
fn labelled(line: &Line<'_>) -> Option<Labelled> {
    bracketed(line).or_else(|| unit_at_end(line))
}

/// `Density, kg/m3     64 or more`, `Depth (mm)    100`, `Depth in mm ..... 100`: the label ends in its unit, and the value stands apart.
fn unit_at_end(line: &Line<'_>) -> Option<Labelled> {
    const MOST_WORDS: usize = 8;
    let words = line.text.trim();
    let apart = words
        .find("  ")
        .into_iter()
        .chain(words.find(" .."))
        .min()?;
    let label = words.get(..apart)?;
    let value = words.get(apart..)?.trim_start_matches([' ', '.']);
    let (name, unit) =
        split_limit(label).map_or_else(|| split_unit(label), |(name, _)| split_unit(name))?;
    let plain = name.starts_with(char::is_alphabetic)
        && label.split_whitespace().count() <= MOST_WORDS
        && !name.contains(['.', ';', ':', '('])
        && !name.contains(|c: char| c.is_ascii_digit());
    let is_value = value.contains(|c: char| c.is_ascii_digit()) && !value.contains("  ");
    if !plain || !is_value || limits(name, unit, value) {
        return None;
    }
    let start = line.content().start();
    let from = words.len() - value.len();
    let indent = line.text.len() - line.text.trim_start().len();
    let column = line.text.get(..indent + from)?.chars().count();
    Some(Labelled {
        label: Span::new(start, start + label.len()),
        unit,
        value: Some((column, Span::new(start + from, start + words.len()))),
    })
}

/// A label without the unit that it ends in, or that stands before its limit: `Depth (min)` of `Depth, in. (min)`.
pub(crate) fn name_of_label(label: &str) -> String {
    let end = label.find('[').unwrap_or(label.len());
    let name = label.get(..end).unwrap_or(label).trim();
    let without_unit = |name| split_unit(name).map_or(name, |(name, _)| name);
    match split_limit(name) {
        Some((name, limit)) => format!("{} {limit}", without_unit(name)),
        None => without_unit(name).to_owned(),
    }
}

/// A label that ends in its unit, and the limit behind it: `Depth, in.` and `(min)`. Behind a time `min` may be its unit.
fn split_limit(label: &str) -> Option<(&str, &str)> {
    let (name, limit) = label.rsplit_once(' ')?;
    let word = limit.trim_matches(['(', ')', '.']).to_lowercase();
    let relation = qualifier(&word)?;
    let name = name.trim_end_matches([' ', ',']);
    let (_, unit) = split_unit(name)?;
    let limits = matches!(relation, Relation::AtLeast | Relation::AtMost)
        && unit.dimension() != Dimension::Time;
    limits.then_some((name, limit))
}

/// A label's name and the unit that it ends in: in parentheses, behind a comma or behind "in".
fn split_unit(label: &str) -> Option<(&str, Unit)> {
    if let Some(inner) = label.strip_suffix(')') {
        let (name, unit) = inner.rsplit_once('(')?;
        let unit = unit_in(unit)?;
        // `Temperature, °F (°C)` states the first, and the second beside it.
        return Some(split_unit(name.trim_end()).unwrap_or((name.trim_end(), unit)));
    }
    let (name, unit) = label
        .rsplit_once(", ")
        .or_else(|| label.rsplit_once(" in "))?;
    Some((name.trim_end(), unit_in(unit)?))
}

/// `Depth [mm]     not below 90`.
fn bracketed(line: &Line<'_>) -> Option<Labelled> {
    const MOST_WORDS: usize = 8;
    let open = line.text.find('[')?;
    let close = open + line.text.get(open..)?.find(']')?;
    let unit = unit_in(line.text.get(open + 1..close)?)?;
    let after = line.text.get(close + 1..)?;
    let after_colon = after.strip_prefix(':').unwrap_or(after);
    let label_end = line.text.len() - after_colon.len();
    let label = line.text.get(..open)?.trim();
    let plain = !label.is_empty()
        && label.split_whitespace().count() <= MOST_WORDS
        && !label.contains("  ")
        && !label.contains(['.', ';', ':'])
        && label.starts_with(char::is_alphabetic);
    if !plain || !(after_colon.starts_with("  ") || after_colon.trim().is_empty()) {
        return None;
    }
    let start = line.span.start();
    let words = after_colon.trim();
    if limits(label, unit, words) {
        return None;
    }
    let lead = after_colon.len() - after_colon.trim_start().len();
    let from = label_end + lead;
    let column = line.text.get(..from)?.chars().count();
    let indent = line.text.len() - line.text.trim_start().len();
    Some(Labelled {
        label: Span::new(start + indent, start + label_end),
        unit,
        value: (!words.is_empty())
            .then(|| (column, Span::new(start + from, start + from + words.len()))),
    })
}

/// Whether what looks like a unit of time is a limit, since a size is labelled or the value has another unit: `Depth (min)   3 in.`
fn limits(label: &str, unit: Unit, value: &str) -> bool {
    let number = value.find(|c: char| c.is_ascii_digit());
    let stated = number.and_then(|at| notation::quantity_at(value, at));
    let other = stated.is_some_and(|own| own.unit.dimension() != unit.dimension());
    let mut words = label.split(|c: char| !c.is_alphabetic());
    unit == Unit::Minute && (other || words.any(measures))
}

/// The unit that brackets hold, and nothing besides.
fn unit_in(words: &str) -> Option<Unit> {
    let text = format!("1 {}", words.trim());
    let (unit, end) = notation::unit_at(&text, 1)?;
    (end == text.len()).then_some(unit)
}

/// A label on two lines: `Spread of grinding, from` over `  joint edge [mm]       not less than 50`.
fn wrapped(lines: &[Line<'_>], at: usize) -> Option<(Span, Labelled)> {
    const MOST_WORDS: usize = 6;
    let (first, second) = (lines.get(at)?, lines.get(at + 1)?);
    let words = first.text.trim();
    let opens = !words.is_empty()
        && words.split_whitespace().count() <= MOST_WORDS
        && !words.contains("  ")
        && !words.ends_with(['.', ':', ';'])
        && words.starts_with(char::is_uppercase);
    let found = labelled(second).filter(|found| found.value.is_some())?;
    let goes_on = second.indent > first.indent
        && second
            .text
            .trim_start()
            .starts_with(|c: char| c.is_lowercase() || c.is_ascii_digit());
    (opens && goes_on).then(|| (first.content(), found))
}

/// The label of the entry that a line stands under: "Bond breaker tape" of `  thickness [mm]`.
fn under(lines: &[Line<'_>], at: usize) -> Vec<Span> {
    let own = lines.get(at).map_or(0, |line| line.indent);
    let small = lines
        .get(at)
        .is_some_and(|line| line.text.trim_start().starts_with(char::is_lowercase));
    let above = (0..at)
        .rev()
        .filter_map(|at| lines.get(at))
        .take_while(|line| !line.is_blank())
        .find(|line| line.indent < own);
    let Some(above) = above.filter(|_| small) else {
        return Vec::new();
    };
    let words = above.text.trim_start();
    let end = words
        .find([':', '['])
        .into_iter()
        .chain(words.find("  "))
        .min()
        .unwrap_or(words.len());
    let start = above.span.start() + above.text.len() - words.len();
    let label = words.get(..end).unwrap_or_default().trim_end();
    vec![Span::new(start, start + label.len())]
}

/// Lines of key and value below a label that has no value of its own.
fn keyed(
    lines: &[Line<'_>],
    from: usize,
    label: &[Span],
    unit: Unit,
) -> Option<(Vec<Entry>, usize)> {
    let indent = lines.get(from.checked_sub(1)?)?.indent;
    let mut entries = Vec::new();
    let mut end = from;
    while let Some(line) = lines.get(end).filter(|line| line.indent > indent) {
        let content = line.content();
        let words = line.text.trim();
        let Some((key, rest)) = words.split_once("  ") else {
            break;
        };
        let value = rest.trim_start();
        if value.is_empty() || value.contains("  ") {
            break;
        }
        entries.push(Entry {
            label: label.to_vec(),
            unit,
            key: Some(Span::new(content.start(), content.start() + key.len())),
            value: vec![Span::new(content.end() - value.len(), content.end())],
        });
        end += 1;
    }
    (!entries.is_empty()).then_some((entries, end))
}
