//! Paragraphs, boxes and tables as lines of text.

use super::places::shown;

/// A paragraph wrapped to a width, its first line behind a head, the others set in.
pub fn paragraph(head: &str, words: &str, set_in: usize, width: usize) -> Vec<String> {
    let mut lines = Vec::new();
    let mut line = head.to_owned();
    let mut is_bare = true;
    for word in words.split_whitespace() {
        if !is_bare && shown(&line) + 1 + shown(word) > width {
            lines.push(std::mem::replace(&mut line, " ".repeat(set_in)));
            is_bare = true;
        }
        if !is_bare {
            line.push(' ');
        }
        line.push_str(word);
        is_bare = false;
    }
    lines.push(line.trim_end().to_owned());
    lines
}

/// Words wrapped to a width.
pub fn wrapped(words: &str, width: usize) -> Vec<String> {
    paragraph("", words, 0, width)
}

/// A box of rows with rules, each column so wide; a row takes as many lines as its longest cell.
pub fn boxed(widths: &[usize], rows: &[Vec<String>], is_ruled: bool) -> Vec<String> {
    let dashes: Vec<String> = widths.iter().map(|width| "-".repeat(width + 2)).collect();
    let rule = format!("+{}+", dashes.join("+"));
    let mut lines = vec![rule.clone()];
    for (at, row) in rows.iter().enumerate() {
        let cells: Vec<Vec<String>> = row
            .iter()
            .zip(widths)
            .map(|(cell, width)| wrapped(cell, *width))
            .collect();
        let height = cells.iter().map(Vec::len).max().unwrap_or(0);
        for line in 0..height {
            let padded: Vec<String> = cells
                .iter()
                .zip(widths)
                .map(|(cell, width)| {
                    let words = cell.get(line).map_or("", String::as_str);
                    format!("{words}{}", " ".repeat(width.saturating_sub(shown(words))))
                })
                .collect();
            lines.push(format!("| {} |", padded.join(" | ")));
        }
        if is_ruled || at == 0 {
            lines.push(rule.clone());
        }
    }
    if !is_ruled {
        lines.push(rule);
    }
    lines
}

/// A list with commas, and its last word before the last.
pub fn listed(words: &[String], last: &str) -> String {
    match words {
        [] => String::new(),
        [one] => one.clone(),
        [rest @ .., end] => format!("{} {last} {end}", rest.join(", ")),
    }
}

/// The first letter large.
pub fn capital(words: &str) -> String {
    let mut letters = words.chars();
    // A mark may stand before the first letter.
    let head: String = letters
        .by_ref()
        .take_while(|letter| !letter.is_alphanumeric())
        .collect();
    let rest = words.strip_prefix(&head).unwrap_or(words);
    let mut rest = rest.chars();
    let first: String = rest
        .next()
        .into_iter()
        .flat_map(char::to_uppercase)
        .collect();
    format!("{head}{first}{}", rest.as_str())
}
