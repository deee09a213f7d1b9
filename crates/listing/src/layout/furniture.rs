//! Page heads, page feet and rules.
//!
//! A line is furniture when it is a rule, when it carries a page number, or when it stands beside a page boundary and
//! the same line stands beside another. Anything else is text: furniture is never read, so when in doubt it isn't one.

use std::collections::BTreeMap;

use super::lines::Line;

/// How many visible lines on either side of a page boundary may be head or foot.
const REACH: usize = 3;

/// Which lines are furniture.
pub(crate) fn furniture(lines: &[Line<'_>]) -> Vec<bool> {
    let rules: Vec<bool> = lines.iter().map(|line| is_rule(line.text)).collect();
    let numbered: Vec<bool> = lines
        .iter()
        .map(|line| has_page_number(line.text))
        .collect();
    let near = near_boundaries(lines, &rules, &numbered);
    let mut seen: BTreeMap<String, usize> = BTreeMap::new();
    for (line, near) in lines.iter().zip(&near) {
        if *near {
            *seen.entry(masked(line.text)).or_default() += 1;
        }
    }
    let marks = near.iter().zip(rules.iter().zip(&numbered));
    lines
        .iter()
        .zip(marks)
        .map(|(line, (near, (rule, numbered)))| {
            let repeated = *near && seen.get(&masked(line.text)).is_some_and(|count| *count > 1);
            *rule || *numbered || repeated || (*near && is_continuation(line.text))
        })
        .collect()
}

/// Whether a line is drawn, not written: dashes, equals signs, dots, box corners.
pub(crate) fn is_rule(text: &str) -> bool {
    let text = text.trim();
    let drawn = |c: char| {
        matches!(
            c,
            '-' | '='
                | '_'
                | '.'
                | '*'
                | '~'
                | '+'
                | '|'
                | '–'
                | '—'
                | '─'
                | '═'
                | '│'
                | '┼'
                | '├'
                | '┤'
                | '┌'
                | '┐'
                | '└'
                | '┘'
                | '┬'
                | '┴'
                | ' '
        )
    };
    text.chars().count() >= 4
        && text.chars().all(drawn)
        && !text.chars().all(|c| c == ' ' || c == '|')
}

/// Whether a line carries a page number: "Page 1 of 3", "sheet 2/2", "– 2 –", "1 (2)" or "2/2" at its end.
fn has_page_number(text: &str) -> bool {
    if text.len() > 300 || !text.bytes().any(|byte| byte.is_ascii_digit()) {
        return false;
    }
    let text = text.trim().trim_matches('|').trim().to_lowercase();
    if text.len() > 140 {
        return false;
    }
    let alone = text.trim_matches(|c: char| "-–—. ".contains(c));
    if alone != text && alone.parse::<u16>().is_ok() && text.chars().count() > 2 {
        return true;
    }
    if dashed_number(&text) {
        return true;
    }
    ["page", "pg", "sheet", "sht"].iter().any(|word| {
        text.split_once(word).is_some_and(|(before, after)| {
            let bounded = !before.ends_with(char::is_alphabetic);
            let after = after.trim_start_matches(['.', ':', ' ']);
            bounded && is_page_count(after)
        })
    }) || trailing_count(&text)
}

/// "1 of 3", "1/3", "1 / 3", "1" and nothing, or "2 of 2 pages".
fn is_page_count(text: &str) -> bool {
    let digits = text.bytes().take_while(u8::is_ascii_digit).count();
    let rest = text.get(digits..).unwrap_or_default().trim_start();
    let ends = |rest: &str| {
        let rest = rest.trim_start_matches(|c: char| c.is_ascii_digit()).trim();
        rest.is_empty() || rest == "pages" || rest.starts_with("  ") || rest.starts_with(')')
    };
    (1..=3).contains(&digits)
        && (rest.is_empty()
            || ["of ", "/ ", "/", "("].iter().any(|join| {
                rest.strip_prefix(join)
                    .is_some_and(|r| ends(r.trim_start()))
            }))
}

/// A number between dashes at the end of a short line: `Leaf 9                 - 2 -`.
fn dashed_number(text: &str) -> bool {
    let Some(inner) = text.strip_suffix(['-', '–', '—']) else {
        return false;
    };
    let inner = inner.trim_end();
    let digits = inner.len() - inner.trim_end_matches(|c: char| c.is_ascii_digit()).len();
    let before = inner
        .get(..inner.len() - digits)
        .unwrap_or_default()
        .trim_end();
    (1..=3).contains(&digits)
        && before.ends_with(['-', '–', '—'])
        && text.split_whitespace().count() <= 8
}

/// A count of pages alone at the end of a wide line, after a gap: `...  1 / 1`, `...   2 (2)`.
fn trailing_count(text: &str) -> bool {
    let Some(gap) = text.rfind("   ") else {
        return false;
    };
    let tail = text.get(gap..).unwrap_or_default().trim();
    let parts: Vec<&str> = tail
        .split(['/', '(', ')'])
        .map(str::trim)
        .filter(|part| !part.is_empty())
        .collect();
    let joined = tail.contains('/') || tail.contains('(');
    let page = |part: &&str| part.len() <= 2 && part.bytes().all(|b| b.is_ascii_digit());
    joined && parts.len() == 2 && parts.iter().all(page)
}

fn is_continuation(text: &str) -> bool {
    let text = text.trim().to_lowercase();
    text.len() < 90
        && ["continued", "continued)", "(cont'd)", "(cont.)", "cont'd"]
            .iter()
            .any(|word| text.ends_with(word))
}

/// Which lines stand within reach of a page boundary: a form feed, a page-numbered line, or the document's ends.
fn near_boundaries(lines: &[Line<'_>], rules: &[bool], numbered: &[bool]) -> Vec<bool> {
    let visible: Vec<usize> = (0..lines.len())
        .filter(|i| {
            let drawn = rules.get(*i).copied().unwrap_or_default();
            !drawn && lines.get(*i).is_some_and(|line| !line.is_blank())
        })
        .collect();
    let mut near = vec![false; lines.len()];
    let mut mark = |range: core::ops::Range<usize>| {
        for index in visible.get(range).unwrap_or_default() {
            if let Some(slot) = near.get_mut(*index) {
                *slot = true;
            }
        }
    };
    mark(0..REACH.min(visible.len()));
    mark(visible.len().saturating_sub(REACH)..visible.len());
    for (order, index) in visible.iter().enumerate() {
        let previous = order
            .checked_sub(1)
            .and_then(|before| visible.get(before))
            .copied();
        let breaks = previous.is_some_and(|previous| {
            lines
                .get(previous + 1..=*index)
                .unwrap_or_default()
                .iter()
                .any(|line| line.after_page_break)
        });
        if breaks || numbered.get(*index).copied().unwrap_or_default() {
            mark(order.saturating_sub(REACH)..(order + REACH + 1).min(visible.len()));
        }
    }
    near
}

/// A line with its spacing evened out, so that a running head is the same on every page.
fn masked(text: &str) -> String {
    text.split_whitespace()
        .collect::<Vec<_>>()
        .join(" ")
        .to_lowercase()
}

#[cfg(test)]
mod tests {
    use super::super::lines::lines;
    use super::*;

    #[test]
    fn page_numbers() {
        for text in [
            "Tested to ASTM E1966 / Head-of-Wall Joints       Page 1 of 3",
            "OVL / LJR-F             FF-M 0488-C              sheet 2/2",
            "                      – 1 –",
            "Laboratories — issued 2021-09 — supersedes B                     1 (2)",
            "QUARTER BUREAU -- JOINTS -- SHEET QL-9                          1 / 1",
            "VI-K 22/0916-E2                       Page 2 of 2 pages",
        ] {
            assert!(has_page_number(text), "{text}");
        }
        for text in [
            "1. Floor - min 4 in. thick",
            "| over 1 to 2 (25 to 51)   | 2    | 4 (102)   |",
            "fasteners spaced 24 in. (610 mm)",
            "    50 (2)            1       1          2       2          1",
            "the sheet 2 in. wide",
        ] {
            assert!(!has_page_number(text), "{text}");
        }
    }

    #[test]
    fn running_heads_are_furniture_and_makers_are_not() {
        let text = "LAB OF NOWHERE\nSystem 7\n1. Item\nMAKER -- Product\n2. Item\nfoot   Page 1 of 2\n\
                    LAB OF NOWHERE\n3. Item a\n4. Item b\n5. Item c\nMAKER -- Product\n6. Item d\n7. Item e\n8. Item f\nfoot   Page 2 of 2\n";
        let lines = lines(text);
        let found: Vec<_> = lines
            .iter()
            .zip(furniture(&lines))
            .filter(|(_, f)| *f)
            .map(|(l, _)| l.text)
            .collect();
        assert_eq!(
            found,
            [
                "LAB OF NOWHERE",
                "foot   Page 1 of 2",
                "LAB OF NOWHERE",
                "foot   Page 2 of 2"
            ]
        );
    }
}
