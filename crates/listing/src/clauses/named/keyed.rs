//! Rows of a list of products at the end of a document, each with the item or the part that it is for in front.

use super::entry::{Listed, Reader};
use super::limits::restricts;
use super::lines::{cells, either, in_cells};
use super::ordinary::Ordinary;
use crate::layout::{Line, is_rule};
use crate::model::Span;
use crate::naming::components_in;

/// A row of a list of products.
#[derive(Debug, Clone)]
pub(crate) struct KeyedRow {
    /// Its visible characters, and those of the lines that it goes on over.
    pub(crate) span: Span,
    /// The lines that it stands on.
    pub(crate) lines: core::ops::Range<usize>,
    pub(crate) key: Key,
    pub(in crate::clauses) listed: Vec<Listed>,
    /// Whether the row beside it says more than names do: it is left as words, and may open the list or limit it.
    pub(crate) in_doubt: bool,
}

/// What a row is for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Key {
    /// The items with these numbers.
    Items(Vec<String>),
    /// The part that these words name.
    Part(String),
}

/// The rows of the lists of products among some lines.
pub(crate) fn keyed_rows(lines: &[Line<'_>], ordinary: &Ordinary) -> Vec<KeyedRow> {
    let reader = Reader { ordinary };
    let mut rows: Vec<KeyedRow> = Vec::new();
    let mut at = 0;
    while let Some(line) = lines.get(at) {
        if line.is_blank() || line.text.contains('|') || is_rule(line.text) {
            at += 1;
            continue;
        }
        if let Some(mut row) = row(lines, at, reader).filter(|_| !below_columns(lines, at)) {
            let above = at.checked_sub(1).and_then(|above| lines.get(above));
            row.in_doubt = above.is_some_and(|above| is_set_aside(above.text, reader));
            at = row.lines.end;
            rows.push(row);
            continue;
        }
        // A row without a key goes on with that of the row above.
        let last = rows.last_mut().filter(|row| row.lines.end == at);
        if let Some(last) = last
            && let Some(listed) = unkeyed(line.text.trim(), reader)
            && listed.iter().all(|entry| entry.label.is_none())
            && !restricts(line.text)
        {
            last.listed.extend(listed);
            last.span = last.span.join(line.content());
            last.lines.end = at + 1;
        } else if let Some(last) = rows.last_mut().filter(|row| row.lines.end == at) {
            last.in_doubt |= is_set_aside(line.text, reader);
        }
        at += 1;
    }
    rows
}

/// Whether a line is a row that says more than names do.
fn is_set_aside(line: &str, reader: Reader<'_>) -> bool {
    let behind = splits(line.trim()).into_iter().any(|(key, behind)| {
        item_keys(key).is_some() && (reader.begins_entry(behind) || cells(behind).len() > 1)
    });
    restricts(line) && (behind || reader.begins_entry(line) || cells(line.trim()).len() > 1)
}

/// What a row without a key lists.
fn unkeyed(line: &str, reader: Reader<'_>) -> Option<Vec<Listed>> {
    let cells = cells(line);
    in_cells(&cells, reader).or_else(|| match cells.as_slice() {
        [one] => reader.all(one),
        _ => None,
    })
}

/// Whether the line stands in a table whose columns are headed as makers and products: that is read as a table.
fn below_columns(lines: &[Line<'_>], at: usize) -> bool {
    /// No table of products is longer.
    const MOST_ROWS: usize = 60;
    let above = lines.get(..at).unwrap_or_default().iter().rev();
    let mut above = above
        .take(MOST_ROWS)
        .take_while(|line| !line.is_blank())
        .map(|line| line.text.to_lowercase());
    let row = lines
        .get(at)
        .map_or(0, |line| cells(line.text.trim()).len());
    above.any(|words| {
        // Rows of no more than a number, a maker and products say all that there is to read where they stand.
        let heads = cells(words.trim());
        let numbered = heads
            .first()
            .is_some_and(|head| ["item", "items", "no.", "ref", "note"].contains(&head.trim()));
        if numbered && heads.len() == 3 && row == 3 {
            return false;
        }
        [
            "maker",
            "manufacturer",
            "company",
            "supplier",
            "producer",
            "firm",
        ]
        .iter()
        .any(|maker| words.contains(maker))
            && ["product", "designation", "brand", "trade name"]
                .iter()
                .any(|product| words.contains(product))
            && cells(words.trim()).len() > 1
    })
}

/// The row that begins with a line, with those that it wraps over.
fn row(lines: &[Line<'_>], at: usize, reader: Reader<'_>) -> Option<KeyedRow> {
    const MOST_LINES: usize = 3;
    let first = lines.get(at)?;
    let mut words = first.text.trim_end().to_owned();
    let mut span = first.content();
    for count in 1..=MOST_LINES {
        let open = words.ends_with(',')
            || [" or", " and", " OR", " AND"]
                .iter()
                .any(|end| words.ends_with(end));
        if !open {
            let (key, listed) = keyed(&words, reader)?;
            return Some(KeyedRow {
                span,
                lines: at..at + count,
                key,
                listed,
                in_doubt: false,
            });
        }
        let next = lines
            .get(at + count)
            .filter(|next| next.indent > first.indent)?;
        words.push(' ');
        words.push_str(next.text.trim());
        span = span.join(next.content());
    }
    None
}

/// The key of a row and what it lists.
fn keyed(line: &str, reader: Reader<'_>) -> Option<(Key, Vec<Listed>)> {
    let line = line.trim().trim_start_matches(['*', '†', '•']).trim_start();
    let cells = cells(line);
    let (first, rest) = without_title(&cells)?;
    let is_part = || !rest.is_empty() && is_part(first, reader);
    let splits = splits(line);
    let begins = item_keys(first).is_some()
        || splits.iter().any(|(key, _)| item_keys(key).is_some())
        || part_with_number(first).is_some()
        || is_part();
    // A row that limits what it names is left to be read as words.
    if !begins || restricts(line) {
        return None;
    }
    if let Some(keys) = item_keys(first)
        && let Some(listed) = of_rest(rest, reader)
    {
        return Some((Key::Items(keys), listed));
    }
    // `2.1   Backing   Maker   Product`
    if item_keys(first).is_some()
        && let [label, one, other] = rest
        && self::is_part(label, reader)
        && let Some(listed) = either(one, other, reader)
    {
        return Some((Key::Part(part_of_label(label).to_owned()), vec![listed]));
    }
    // `Batts (3.)   Maker   Product`
    if let Some((label, keys)) = part_with_number(first)
        && self::is_part(label, reader)
        && let Some(listed) = of_rest(rest, reader)
    {
        return Some((Key::Items(keys), listed));
    }
    if is_part() {
        let own = part_of_label(first);
        let mut listed = of_rest(rest, reader)?;
        for entry in &mut listed {
            entry.label = None;
            if says_case(first) {
                entry.limits.push(first.trim().to_owned());
            }
        }
        return Some((Key::Part(own.to_owned()), listed));
    }
    splits.into_iter().find_map(|(key, behind)| {
        let keys = item_keys(key)?;
        let listed = of_rest(&self::cells(behind), reader).or_else(|| reader.all(behind))?;
        Some((Key::Items(keys), listed))
    })
}

/// The cells of a row, without one that only calls all rows products: `PRODUCTS   Item 4   Maker   Product`.
fn without_title<'c, 'l>(cells: &'c [&'l str]) -> Option<(&'c &'l str, &'c [&'l str])> {
    const TITLES: [&str; 4] = ["products", "product", "materials", "makers"];
    let (first, rest) = cells.split_first()?;
    let title = first.trim().trim_end_matches(':').trim_end().to_lowercase();
    let keyed = rest.len() > 1 && rest.first().is_some_and(|key| item_keys(key).is_some());
    if keyed && TITLES.contains(&title.as_str()) {
        rest.split_first()
    } else {
        Some((first, rest))
    }
}

/// A label with the numbers of its items in brackets: `Batts (3.)`. A note that it cites is another thing.
fn part_with_number(cell: &str) -> Option<(&str, Vec<String>)> {
    let (label, number) = cell.trim_end().split_once(" (")?;
    let keys = number.strip_suffix(')').and_then(item_keys)?;
    (!number.to_lowercase().starts_with("note")).then_some((label, keys))
}

/// Whether a cell names a part.
fn is_part(cell: &str, reader: Reader<'_>) -> bool {
    !components_in(cell).is_empty() && reader.is_label(cell)
}

/// Whether the brackets of a label give it to some joints only: `Foam (Option F)`.
pub(super) fn says_case(label: &str) -> bool {
    const SAYING: [&str; 12] = [
        "option",
        "optional",
        "alternate",
        "alternative",
        "variant",
        "configuration",
        "only",
        "where",
        "when",
        "if",
        "for",
        "alt",
    ];
    label.split_once('(').is_some_and(|(_, inside)| {
        let mut words = inside.split(|c: char| !c.is_alphanumeric());
        words.any(|word| SAYING.contains(&word.to_lowercase().as_str()))
    })
}

/// A label without the notes that it cites and the colon behind it: `WOOL (NOTES 9, 10)`.
fn part_of_label(label: &str) -> &str {
    let label = label.split(" (").next().unwrap_or(label);
    label.trim().trim_end_matches(':').trim_end()
}

/// What the cells behind the key list: `Maker   Products`, or entries in one cell each.
fn of_rest(cells: &[&str], reader: Reader<'_>) -> Option<Vec<Listed>> {
    if let [one, other] = cells
        && let Some(listed) = either(one, other, reader)
    {
        return Some(vec![listed]);
    }
    if cells.is_empty() {
        return None;
    }
    let mut all = Vec::new();
    for cell in cells {
        all.extend(reader.all(cell)?);
    }
    Some(all)
}

/// Where a number in front of a row may end, and what follows: `3A: MAKER - Product`, `4.1 Maker - Product`, `Items 2A, 3 - Maker - Product`.
pub(super) fn splits(line: &str) -> Vec<(&str, &str)> {
    const JOINTS: [&str; 6] = [": ", " -- ", " — ", " – ", " - ", " "];
    let from = lead_len(line);
    let rest = line.get(from..).unwrap_or_default();
    JOINTS
        .iter()
        .filter_map(|joint| {
            let at = rest.find(joint)?;
            Some((line.get(..from + at)?, rest.get(at + joint.len()..)?.trim()))
        })
        .collect()
}

/// How long the word is that says that a number is an item's.
fn lead_len(words: &str) -> usize {
    const LEADS: [&str; 8] = [
        "items ",
        "item ",
        "notes ",
        "note ",
        "component ",
        "part ",
        "detail ",
        "art. ",
    ];
    let lower = words.to_ascii_lowercase();
    LEADS
        .iter()
        .find(|lead| lower.starts_with(**lead))
        .map_or(0, |lead| lead.len())
}

/// Whether a key says of what it is the number: `Note 4`.
pub(super) fn leads_key(key: &str) -> bool {
    lead_len(key) > 0
}

/// The numbers of items that words are: `3A`, `Items 2A, 2A1`, `S1,S2`.
pub(super) fn item_keys(words: &str) -> Option<Vec<String>> {
    const LONGEST: usize = 9;
    let led = lead_len(words);
    let list = words
        .get(led..)?
        .trim()
        .trim_end_matches([':', '.'])
        .trim_end();
    let is_key = |key: &str| {
        let letters = key.chars().filter(|c| c.is_alphabetic()).count();
        let tidy = key
            .chars()
            .all(|c| c.is_ascii_alphanumeric() || matches!(c, '.' | '(' | ')' | '-'));
        let numbered = key.contains(|c: char| c.is_ascii_digit()) && letters <= 3;
        let lettered =
            letters == 1 && key.len() <= 3 && key.starts_with(|c: char| c.is_uppercase());
        key.len() <= LONGEST
            && tidy
            && key.starts_with(|c: char| c.is_ascii_alphanumeric())
            && (numbered || lettered)
    };
    let keys: Vec<String> = list
        .split([',', ' '])
        .filter(|key| !key.is_empty() && *key != "and" && *key != "&")
        .map(|key| key.trim_end_matches('.').to_owned())
        .collect();
    (!keys.is_empty() && keys.iter().all(|key| is_key(key))).then_some(keys)
}
