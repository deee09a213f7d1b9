//! The lines of a paragraph that are entries of makers and products, parted from those that are sentences.

use super::entry::{Listed, Reader};
use super::keyed::{item_keys, says_case};
use super::limits::restricts;
use super::makers::ends_as_firm;
use super::name::is_coded;
use crate::layout::Flow;
use crate::model::Span;
use crate::naming::components_in;

/// What some lines of a paragraph are.
#[derive(Debug)]
pub(in crate::clauses) enum Run {
    /// Sentences.
    Text(Vec<Span>),
    /// Entries of makers and their products, with the lines that they stand on.
    Entries(Span, Vec<Listed>),
}

/// The most lines that an entry wraps over.
const MOST_LINES: usize = 4;

/// The runs of a paragraph; none where it holds no entry.
pub(super) fn runs(source: &str, pieces: &[Span], reader: Reader<'_>) -> Option<Vec<Run>> {
    let mut runs: Vec<Run> = Vec::new();
    let mut any = false;
    let mut at = 0;
    while let Some(piece) = pieces.get(at) {
        let begins = match runs.last() {
            Some(Run::Text(text)) => text.last().is_none_or(|last| {
                let last = last.of(source);
                closes(last) || is_heading(last) && is_entry(piece.of(source), reader)
            }),
            _ => true,
        };
        if begins && let Some((mut listed, count)) = entry_at(source, pieces, at, reader) {
            // A line without a label goes on with that of the line before.
            if let Some(Run::Entries(_, before)) = runs.last()
                && let Some(label) = before.last().and_then(|last| last.label.clone())
                && let Some(first) = listed.first_mut()
            {
                first.label.get_or_insert(label);
            }
            let span = pieces
                .get(at..at + count)
                .and_then(|lines| lines.iter().copied().reduce(Span::join))
                .unwrap_or(*piece);
            runs.push(Run::Entries(span, listed));
            any = true;
            at += count;
            continue;
        }
        match runs.last_mut() {
            Some(Run::Text(text)) => text.push(*piece),
            _ => runs.push(Run::Text(vec![*piece])),
        }
        at += 1;
    }
    any.then_some(runs)
}

/// Whether a line ends what it says, so that the next begins anew.
fn closes(line: &str) -> bool {
    line.trim_end().ends_with(['.', ':', ';', ')', '*'])
}

/// Whether a line is a heading by itself: a few words that begin big, without a stop.
fn is_heading(line: &str) -> bool {
    const MOST_WORDS: usize = 4;
    let line = line.trim();
    line.starts_with(char::is_uppercase)
        && line.split_whitespace().count() <= MOST_WORDS
        && !line.ends_with([',', '-', '–', '—'])
}

/// Whether no name of a list runs over the end of a line, but for a maker that signs part from what stands beside it on both lines, and for a code or a
/// number behind one: else what stands on the next line is another thing.
pub(in crate::clauses) fn stand_in_lines(raw: &str, listed: &[Listed]) -> bool {
    // Rules of a table stand round what a cell says.
    let within_rules = |line: &str| line.trim_matches(['|', ' ']).to_owned();
    let lines: Vec<String> = raw
        .lines()
        .map(|line| line.split_whitespace().collect::<Vec<_>>().join(" "))
        .map(|line| within_rules(&line))
        .collect();
    if lines.len() < 2 {
        return true;
    }
    let on_one = |name: &str| lines.iter().any(|line| line.contains(name));
    let holds_digit = |words: &str| words.contains(|c: char| c.is_ascii_digit());
    let is_code = |words: &str| {
        let mut each = words.split(' ');
        each.all(|word| {
            holds_digit(word) || word.len() <= 4 && word.chars().all(char::is_uppercase)
        })
    };
    let goes_on = |name: &str| {
        name.match_indices(' ').any(|(at, _)| {
            let head = name.get(..at).unwrap_or_default();
            let tail = name.get(at + 1..).unwrap_or_default();
            let begins = tail.split(' ').next().unwrap_or_default();
            let mut pairs = lines.iter().zip(lines.iter().skip(1));
            is_code(tail)
                && !(holds_digit(begins) && holds_digit(head))
                && pairs.any(|(line, next)| {
                    let behind = next.strip_prefix(tail);
                    line.ends_with(head)
                        && behind.is_some_and(|behind| {
                            behind.is_empty() || behind.starts_with([',', '.', ';', '"', ')'])
                        })
                })
        })
    };
    let mut names = listed.iter().flat_map(|entry| &entry.names);
    names.all(|name| {
        let maker = on_one(&name.maker) || stands_between_signs(&name.maker, &lines);
        maker && (on_one(&name.product) || goes_on(&name.product))
    })
}

/// Whether a maker begins in the middle of a line, behind a sign that ends what was before, and ends on the next before such a sign:
/// `Wool 40; Maddoran`, `Gypsum, "Board 58"`. Two things on two lines would have a sign at the line's end.
fn stands_between_signs(maker: &str, lines: &[String]) -> bool {
    const SIGNS: [char; 5] = [';', ':', ',', '.', '"'];
    let opens = |before: &str| before.trim_end().ends_with(SIGNS);
    let closes = |behind: &str| behind.trim_start().starts_with([',', ':']);
    maker.match_indices(' ').any(|(at, _)| {
        let (head, tail) = (maker.get(..at), maker.get(at + 1..));
        let (Some(head), Some(tail)) = (head, tail) else {
            return false;
        };
        let mut pairs = lines.iter().zip(lines.iter().skip(1));
        pairs.any(|(line, next)| {
            line.strip_suffix(head).is_some_and(opens)
                && next.strip_prefix(tail).is_some_and(closes)
        })
    })
}

/// The entry that begins with a line, with the count of its lines.
fn entry_at(
    source: &str,
    pieces: &[Span],
    at: usize,
    reader: Reader<'_>,
) -> Option<(Vec<Listed>, usize)> {
    let line = |index: usize| pieces.get(index).map(|piece| piece.of(source));
    if let Some(listed) = line(at)
        .zip(line(at + 1))
        .and_then(|(one, next)| of_fields(one, next, reader))
    {
        return Some((vec![listed], 2));
    }
    let joined = |count: usize| {
        let lines = pieces.get(at..at + count)?;
        Some(Flow::of(source, lines.iter().copied()).text().to_owned())
    };
    let read = |count: usize| {
        if count == 1
            && let Some(listed) = of_cells(line(at)?, reader)
        {
            return Some(listed);
        }
        let raw = pieces
            .get(at..at + count)?
            .iter()
            .map(|line| line.of(source));
        let raw = raw.collect::<Vec<_>>().join("\n");
        of_words(&joined(count)?, reader).filter(|listed| stand_in_lines(&raw, listed))
    };
    let open = |words: &str| {
        let words = words.trim_end();
        words.ends_with([',', '-', '–', '—', ':'])
            || ["or", "and", "OR", "AND"]
                .iter()
                .any(|word| words.rsplit(' ').next() == Some(*word))
            || words.matches('"').count() % 2 == 1
            || words.matches('(').count() > words.matches(')').count()
    };
    let mut best = None;
    for count in 1..=MOST_LINES {
        let Some(last) = line(at + count - 1) else {
            break;
        };
        // A line that is an entry by itself goes on with none before it.
        if count > 1 && is_entry(last, reader) {
            break;
        }
        let read = read(count);
        if best.is_some() && read.is_none() {
            break;
        }
        best = read.map(|listed| (listed, count)).or(best);
        if best.is_some() && !open(last) && !wraps(line(at + count), reader) {
            break;
        }
    }
    // What is left open at its end goes on, perhaps in words that are no names.
    let (listed, count) = best?;
    let last = line(at + count - 1)?;
    let goes_on = line(at + count)
        .is_some_and(|next| !closes(last) && begins_late(next) && !is_entry(next, reader));
    if !open(last) && !goes_on {
        return Some((listed, count));
    }
    let more = read(count + 1).filter(|_| goes_on)?;
    Some((more, count + 1))
}

/// `Trade name: Product` and `Manufacturer: Maker`, one below the other.
pub(super) fn of_fields(one: &str, next: &str, reader: Reader<'_>) -> Option<Listed> {
    const MAKERS: [&str; 6] = [
        "manufacturer",
        "maker",
        "producer",
        "supplier",
        "made by",
        "manufactured by",
    ];
    const PRODUCTS: [&str; 7] = [
        "product",
        "products",
        "product name",
        "trade name",
        "brand name",
        "designation",
        "product designation",
    ];
    if restricts(one) || restricts(next) || one.contains('\n') || next.contains('\n') {
        return None;
    }
    let (one, next) = (field(one)?, field(next)?);
    let of = |(label, value): (&str, _), own: &[&str]| {
        own.contains(&label.to_lowercase().as_str())
            .then_some(value)
    };
    let (maker, list) = match (of(one, &MAKERS), of(next, &MAKERS)) {
        (Some(maker), None) => (maker, of(next, &PRODUCTS)?),
        (None, Some(maker)) => (maker, of(one, &PRODUCTS)?),
        _ => return None,
    };
    let maker = maker.trim_end_matches(',').trim_end();
    let maker = if ends_as_firm(maker) {
        maker
    } else {
        maker.trim_end_matches('.')
    };
    reader
        .is_named(maker)
        .then(|| reader.products(list.trim_end_matches('.'), maker))?
}

/// A line's label and its value.
fn field(line: &str) -> Option<(&str, &str)> {
    let line = without_marks(line);
    let (label, value) = match cells(line).as_slice() {
        [label, value] => (*label, *value),
        _ => line.split_once(": ")?,
    };
    let value = value.trim_start_matches([':', ' ']);
    Some((label.trim().trim_end_matches(':').trim_end(), value.trim()))
}

/// Whether a line can only be the rest of the one before it: it begins small, or is a product's name by itself.
fn wraps(line: Option<&str>, reader: Reader<'_>) -> bool {
    line.is_some_and(|line| {
        let line = line.trim();
        let is_number = !line.contains(' ') && line.ends_with(|c: char| c.is_ascii_digit());
        is_number
            || line.starts_with(|c: char| c.is_lowercase() || c == '"' || c == '(')
            || reader.products(line.trim_end_matches('.'), "").is_some()
    })
}

/// Whether a line begins with what ends the words before it: small letters, or a letter with a stop behind it.
fn begins_late(line: &str) -> bool {
    let line = line.trim();
    let word = line.split(' ').next().unwrap_or_default();
    // `Selmakote` over `F2, Selmakote F3`
    let is_code = word.ends_with([',', ';'])
        && is_coded(word.trim_end_matches([',', ';']))
        && word.starts_with(char::is_uppercase);
    line.starts_with(char::is_lowercase) || word.len() == 2 && word.ends_with('.') || is_code
}

fn is_entry(line: &str, reader: Reader<'_>) -> bool {
    of_cells(line, reader).is_some() || of_words(line.trim(), reader).is_some()
}

fn of_words(words: &str, reader: Reader<'_>) -> Option<Vec<Listed>> {
    let body = without_marks(words);
    (!restricts(body)).then(|| reader.all(body)).flatten()
}

/// Drops a footnote's mark: `[1]`, `(ii)`, `*`.
pub(super) fn without_marks(words: &str) -> &str {
    const LONGEST: usize = 5;
    let words = words
        .trim()
        .trim_start_matches(['*', '†', '•', '–', '-', '■'])
        .trim_start();
    for (open, close) in [('[', ']'), ('(', ')')] {
        let inside = words
            .strip_prefix(open)
            .and_then(|rest| rest.split_once(close));
        if let Some((mark, rest)) = inside
            && mark.len() <= LONGEST
        {
            return rest.trim_start();
        }
    }
    words
}

/// The cells of a line: what wide gaps or leaders part.
pub(super) fn cells(line: &str) -> Vec<&str> {
    let mut cells = Vec::new();
    let mut start = 0;
    let bytes = line.as_bytes();
    let mut at = 0;
    while at < bytes.len() {
        let rest = line.get(at..).unwrap_or_default();
        let gap = rest.len() - rest.trim_start_matches([' ', '\t']).len();
        let wide = gap >= 2 || rest.starts_with('\t');
        let dotted = rest.trim_start_matches(' ');
        let dots = dotted.len() - dotted.trim_start_matches('.').len();
        let length = if dots >= 3 {
            let behind = dotted.get(dots..).unwrap_or_default();
            gap + dots + (behind.len() - behind.trim_start().len())
        } else if wide {
            gap
        } else {
            0
        };
        if length > 0 {
            cells.extend(line.get(start..at));
            at += length;
            start = at;
        } else {
            at += 1;
            while !line.is_char_boundary(at) {
                at += 1;
            }
        }
    }
    cells.extend(line.get(start..));
    cells.retain(|cell| !cell.trim().is_empty());
    cells
}

/// The entries of a line set in cells: `Maker   Products`, `Part   Maker   Products`, `Part   Products   Maker`, `Part   Maker: Products`.
fn of_cells(line: &str, reader: Reader<'_>) -> Option<Vec<Listed>> {
    let line = without_marks(line);
    if restricts(line) {
        return None;
    }
    let cells = cells(line);
    in_cells(&cells, reader)
        .or_else(|| of_keyed_cells(&cells, reader))
        .or_else(|| of_entries_in_cells(&cells, reader))
}

/// `Makers   [A] Maker - Product   [B] Maker - Product`: entries with their keys, one a cell.
fn of_entries_in_cells(cells: &[&str], reader: Reader<'_>) -> Option<Vec<Listed>> {
    let (first, rest) = cells.split_first()?;
    let is_title = reader.is_label(first) && components_in(first).is_empty();
    let entries = if is_title { rest } else { cells };
    let mut all = Vec::new();
    for cell in entries {
        let listed = reader.all(cell)?;
        if entries.len() < 2 || !listed.iter().all(|entry| entry.by_key) {
            return None;
        }
        all.extend(listed);
    }
    (!all.is_empty()).then_some(all)
}

/// `4   Maker   Product`: the entries of cells behind one that is a number of an item.
fn of_keyed_cells(cells: &[&str], reader: Reader<'_>) -> Option<Vec<Listed>> {
    let (key, rest) = cells.split_first()?;
    let key = key.trim().trim_matches(['<', '>']);
    if !is_circled(key) {
        item_keys(key)?;
    }
    let mut all = match rest {
        [entry] => reader.all(entry)?,
        [label, one, other] if is_part(label, reader) => vec![either(one, other, reader)?],
        _ => in_cells(rest, reader)?,
    };
    for listed in &mut all {
        listed.label = Some(key.to_owned());
        listed.by_key = true;
    }
    Some(all)
}

/// Whether words are one number in a circle: `②`.
pub(super) fn is_circled(words: &str) -> bool {
    let mut signs = words.chars();
    signs.next().is_some_and(|sign| ('①'..='⓿').contains(&sign)) && signs.next().is_none()
}

/// The entries of some cells.
pub(super) fn in_cells(cells: &[&str], reader: Reader<'_>) -> Option<Vec<Listed>> {
    match cells {
        // Of two cells that may both be makers nothing tells which is one: `Orrigat Brush   Chemiewerk Orrin`.
        [maker, list]
            if reader.is_maker(maker)
                && (ends_as_firm(maker) || is_coded(list) || !reader.is_maker(list)) =>
        {
            reader.of_maker(maker, list).map(|listed| vec![listed])
        }
        [list, maker]
            if is_coded(list)
                && reader.is_maker(maker)
                && (!is_coded(maker) || ends_as_firm(maker) && !ends_as_firm(list)) =>
        {
            reader.products(list, maker).map(|listed| vec![listed])
        }
        [label, entry] if is_part(label, reader) => {
            let mut all = reader.all(entry)?;
            for listed in &mut all {
                listed.label.get_or_insert_with(|| part_words(label));
            }
            Some(all)
        }
        [label, one, other] if is_part(label, reader) => {
            let mut listed = either(one, other, reader)?;
            listed.label = Some(part_words(label));
            // `Foam (Option F)   Maker   Product`
            if says_case(label) {
                listed.limits.push(part_words(label));
            }
            Some(vec![listed])
        }
        // `Makers   Maker: Product`
        [label, entries] if reader.is_label(part_words(label).as_str()) => reader.all(entries),
        _ => None,
    }
}

/// Whether a cell names a part, with a letter or number that tells it from its like.
fn is_part(words: &str, reader: Reader<'_>) -> bool {
    reader.is_label(words.trim_end_matches(':').trim_end()) && !components_in(words).is_empty()
}

fn part_words(cell: &str) -> String {
    cell.trim().trim_end_matches(':').trim_end().to_owned()
}

/// A maker and its products in two cells, whichever stands first.
pub(super) fn either(one: &str, other: &str, reader: Reader<'_>) -> Option<Listed> {
    if is_coded(other) && !is_coded(one) && reader.is_named(one) {
        let listed = reader.products(other, one);
        return listed.filter(|_| !ends_as_firm(other));
    }
    let first = match (reader.is_maker(one), reader.is_maker(other)) {
        (true, true) => ends_as_firm(one) || !ends_as_firm(other),
        (first, _) => first,
    };
    if first {
        reader.of_maker(one, other)
    } else {
        reader.of_maker(other, one)
    }
}
