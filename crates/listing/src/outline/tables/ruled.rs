//! Tables of white space under a rule.

use crate::layout::{Line, is_rule};

use super::grid::{InnerRule, columns, filled, gaps};
use super::unruled::{is_data, names_units};
use super::{Table, around, begins_upper_end, speaks};
use crate::outline::schedule::names_property;

/// Rows in columns of white space, headed by a rule: `rule, headings, rule, rows` or `headings, rule, rows`.
pub(super) fn ruled_table(lines: &[Line<'_>], start: usize) -> Option<(Table, usize)> {
    const MOST_HEADING_LINES: usize = 5;
    let region = lines.get(start..)?;
    let mut at = 0;
    let ruled_above = region.first().is_some_and(|line| is_rule(line.text));
    if ruled_above {
        if let Some((table, len)) = framed_table(region) {
            return Some((table, start + len));
        }
        at += 1;
    }
    let heading_start = at;
    // A rule over some of the columns only stands within the heading.
    let outer = region.first().filter(|_| ruled_above);
    let is_inner = |line: &Line<'_>| {
        const ASIDE: usize = 4;
        is_rule(line.text) && outer.is_some_and(|outer| line.indent >= outer.indent + ASIDE)
    };
    while region
        .get(at)
        .is_some_and(|line| !line.is_blank() && (!is_rule(line.text) || is_inner(line)))
        && at - heading_start <= MOST_HEADING_LINES
    {
        at += 1;
    }
    let mut headings: Vec<Line<'_>> = Vec::new();
    let mut inner: Vec<InnerRule> = Vec::new();
    for line in region.get(heading_start..at)? {
        if is_rule(line.text) {
            inner.push((headings.len(), places(line)));
        } else {
            headings.push(*line);
        }
    }
    let headings = headings.as_slice();
    let rule = region.get(at).filter(|line| is_rule(line.text))?;
    let split_rule = rule.text.trim().contains("  ");
    if headings.is_empty()
        || headings.len() > MOST_HEADING_LINES
        || !headings.iter().any(|line| gaps(line.text) >= 1)
        || headings.iter().any(|line| speaks(line.text))
    {
        return None;
    }
    let rows_start = at + 1;
    let body = region.get(rows_start..)?;
    let rows_len = if ruled_above {
        framed_rows(body, rule)
    } else {
        None
    }
    .unwrap_or_else(|| {
        body.iter()
            .take_while(|line| !line.is_blank() && !is_rule(line.text) && !is_remark(line))
            .count()
    });
    let rows: Vec<Line<'_>> = body
        .iter()
        .take(rows_len)
        .filter(|line| !line.is_blank())
        .copied()
        .collect();
    let rows = rows.as_slice();
    let closed = body
        .get(rows_len)
        .is_some_and(|line| line.text.trim_end() == rule.text.trim_end());
    if !keeps_columns(headings, rows, ruled_above || split_rule, closed) {
        return None;
    }
    let columns = columns(headings, rows);
    if columns.len() < 2 {
        return None;
    }
    let mut table = filled(headings, rows, &columns, &inner);
    let mut end = rows_start + rows_len;
    if region.get(end).is_some_and(|line| is_rule(line.text)) {
        end += 1;
    }
    table.span = around(region.get(..end)?)?;
    Some((table, start + end))
}

/// Whether rows stand in columns. Where one column is of units, one row is enough; where the rule stands again below the rows, two rows of values
/// are. `drawn` says that rules show a table.
fn keeps_columns(headings: &[Line<'_>], rows: &[Line<'_>], drawn: bool, closed: bool) -> bool {
    let count = rows.len();
    let heads = |at: &usize| {
        rows.get(*at)
            .is_some_and(|line| heads_rows(line, rows.get(at + 1)))
    };
    let in_columns = |at: &usize| {
        rows.get(*at).is_some_and(|line| {
            gaps(line.text) >= 1 || goes_on(line, rows) || is_lower_end(line, rows.get(at + 1))
        })
    };
    let columnar = (0..count).filter(|at| in_columns(at) || heads(at)).count();
    // Lines that only head rows have no columns: `1 Hr`.
    let heading_rows = (0..count).filter(heads).count();
    // Two rows of as many cells as there are headings say it as plainly as a closing rule.
    let heads = |line: &Line<'_>| {
        headings
            .last()
            .is_some_and(|last| gaps(last.text) == gaps(line.text))
    };
    let matched = rows.iter().all(|line| gaps(line.text) >= 2 && heads(line));
    let plainly = (closed || matched) && rows.iter().all(is_data);
    let (fewest, plain) = match (names_units(headings), plainly) {
        (true, _) => (1, 1),
        (false, true) => (2, 2),
        (false, false) => (2, 3),
    };
    // `(16 ga.)` alone under a cell is no row.
    let more = |line: &&Line<'_>| gaps(line.text) == 0 && goes_on(line, rows);
    let going_on = rows.iter().filter(more).count();
    let wide = rows
        .iter()
        .chain(headings)
        .filter(|line| gaps(line.text) >= 2)
        .count();
    let named = headings
        .first()
        .is_some_and(|line| names_property(line.text) && gaps(line.text) >= 2);
    let plainly_columnar = count - going_on >= heading_rows + plain
        && wide + going_on >= count - heading_rows
        || count >= plain && named;
    count >= fewest && columnar * 2 + 1 >= count * 2 && (drawn || plainly_columnar)
}

/// Headings and rows of values between two rules, with none between them. Blank lines may part groups of rows, and short lines of words head them.
fn framed_table(region: &[Line<'_>]) -> Option<(Table, usize)> {
    const MOST_HEADING_LINES: usize = 3;
    const MOST_LINES: usize = 60;
    let closing = 1 + region
        .iter()
        .skip(1)
        .take(MOST_LINES)
        .position(|line| is_rule(line.text))?;
    let inside = region.get(1..closing)?;
    let headed = inside
        .iter()
        .take_while(|line| !line.is_blank() && !is_data(line))
        .count();
    let (headings, body) = inside.split_at_checked(headed)?;
    let plain = headings.iter().all(|line| !speaks(line.text))
        && headings.iter().any(|line| gaps(line.text) >= 1);
    let rows: Vec<Line<'_>> = body
        .iter()
        .filter(|line| !line.is_blank())
        .copied()
        .collect();
    let of_values = rows.iter().filter(|line| is_data(line)).count();
    let heads = |at: usize| {
        let line = rows.get(at);
        line.is_some_and(|line| heads_rows(line, rows.get(at + 1)))
    };
    let all = (0..rows.len()).all(|at| rows.get(at).is_some_and(is_data) || heads(at));
    let turned = body.iter().any(|line| line.after_page_break);
    if !(1..=MOST_HEADING_LINES).contains(&headed) || !plain || of_values < 2 || !all || turned {
        return None;
    }
    let data: Vec<Line<'_>> = rows.iter().filter(|line| is_data(line)).copied().collect();
    let columns = columns(headings, &data);
    if columns.len() < 3 {
        return None;
    }
    let mut table = filled(headings, &rows, &columns, &[]);
    table.span = around(region.get(..=closing)?)?;
    Some((table, closing + 1))
}

/// How many lines the rows take that stand between this rule and the next one like it, blank lines between them; none when text stands there that
/// is no row, or nothing closes them.
fn framed_rows(body: &[Line<'_>], rule: &Line<'_>) -> Option<usize> {
    const MOST_LINES: usize = 60;
    let closing = body
        .iter()
        .take(MOST_LINES)
        .position(|line| is_rule(line.text))?;
    let same = body.get(closing)?.text.trim_end() == rule.text.trim_end();
    let rows = body.get(..closing)?;
    let blanks = rows.iter().any(Line::is_blank);
    let turned = rows.iter().any(|line| line.after_page_break);
    (same && blanks && !turned && !rows.iter().any(is_remark)).then_some(closing)
}

/// Where a line begins and ends, as places of characters.
fn places(line: &Line<'_>) -> (usize, usize) {
    let text = line.text.trim_end();
    let end = text.chars().count();
    (end - text.trim_start().chars().count(), end)
}

/// Whether a line only heads the rows below it, which stand further in: `FRL -/60/60` over `  Packing depth    50    60`.
pub(super) fn heads_rows(line: &Line<'_>, next: Option<&Line<'_>>) -> bool {
    const MOST_WORDS: usize = 5;
    let short = line.text.split_whitespace().count() <= MOST_WORDS && gaps(line.text) == 0;
    short && next.is_some_and(|next| next.indent > line.indent && gaps(next.text) >= 1)
}

/// Whether a line only goes on with a cell of the row above: a few words that stand under no first cell.
fn goes_on(line: &Line<'_>, rows: &[Line<'_>]) -> bool {
    const MOST_WORDS: usize = 4;
    const FAR: usize = 8;
    let first = rows.iter().map(|row| row.indent).min().unwrap_or_default();
    let text = line.text.trim_start();
    let aside =
        line.indent > first || text.starts_with('(') || text.starts_with(char::is_lowercase);
    let most = if line.indent >= first + FAR {
        2 * MOST_WORDS
    } else {
        MOST_WORDS
    };
    aside && line.text.split_whitespace().count() <= most
}

/// Whether a line is the lower end of a range that goes on in the next row's first cell: `Over 2 in.,` over `to 4 in.      25 percent`.
fn is_lower_end(line: &Line<'_>, next: Option<&Line<'_>>) -> bool {
    const MOST_WORDS: usize = 4;
    let short = line.text.split_whitespace().count() <= MOST_WORDS;
    let goes_on = next.is_some_and(|next| {
        next.indent == line.indent
            && gaps(next.text) >= 1
            && begins_upper_end(next.text.trim_start())
    });
    short && goes_on
}

/// Whether a line is a sentence across the columns: a remark below the rows, and no row.
fn is_remark(line: &Line<'_>) -> bool {
    const MOST_WORDS: usize = 8;
    let long = line.text.split_whitespace().count() > MOST_WORDS;
    gaps(line.text) == 0 && (speaks(line.text) || long)
}
