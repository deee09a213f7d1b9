//! Page heads, page feet and rules.
//!
//! A line is furniture when it is a rule, when it carries a page number, or when it stands beside a page boundary and
//! the same line stands beside another. Anything else is text: furniture is never read, so when in doubt it isn't one. A
//! line that begins as an item does, that requires something, or that stands in the middle of a paragraph is text
//! whatever else it looks like.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use aho_corasick::AhoCorasick;

use super::lines::Line;

/// How many visible lines on either side of a page boundary may be head or foot.
const REACH: usize = 3;

/// Which lines are furniture.
pub(crate) fn furniture(lines: &[Line<'_>]) -> Vec<bool> {
    let rules: Vec<bool> = lines.iter().map(|line| is_rule(line.text)).collect();
    let numbered = page_numbered(lines, &rules);
    let near = near_boundaries(lines, &rules, &numbered);
    let folded: Vec<Option<String>> = lines
        .iter()
        .zip(&near)
        .map(|(line, near)| near.then(|| masked(line.text)))
        .collect();
    let mut seen: BTreeMap<&str, usize> = BTreeMap::new();
    for mask in folded.iter().flatten() {
        *seen.entry(mask).or_default() += 1;
    }
    let marks = folded.iter().zip(rules.iter().zip(&numbered));
    lines
        .iter()
        .zip(marks)
        .map(|(line, (mask, (rule, numbered)))| {
            let again = |mask: &str| seen.get(mask).is_some_and(|count| *count > 1);
            let head_or_foot = mask
                .as_deref()
                .is_some_and(|mask| again(mask) || is_continuation(line.text));
            *rule || *numbered || (head_or_foot && !is_text(line.text))
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

/// Which lines carry a page number and are not text: they count the document's pages from the first to the last, or stand in a block
/// of few lines, as heads and feet do, none of them text.
fn page_numbered(lines: &[Line<'_>], rules: &[bool]) -> Vec<bool> {
    // A page may be counted in its head in words, and at the end of its foot: each is a count of its own.
    let worded: Vec<_> = lines.iter().map(|line| worded_count(line.text)).collect();
    let trailing: Vec<_> = lines
        .iter()
        .zip(&worded)
        .map(|(line, worded)| match worded {
            Some(_) => None,
            None => trailing_count(line.text),
        })
        .collect();
    let both: Vec<_> = worded
        .iter()
        .zip(&trailing)
        .map(|(worded, trailing)| worded.or(*trailing))
        .collect();
    let of_both = Counted::of(&both);
    let (of_worded, of_trailing) = (Counted::of(&worded), Counted::of(&trailing));
    lines
        .iter()
        .zip(worded.iter().zip(&trailing))
        .enumerate()
        .map(|(index, (line, (worded, trailing)))| {
            let complete = worded.is_some() && (of_worded.complete || of_both.complete)
                || trailing.is_some() && (of_trailing.complete || of_both.complete);
            let of_pages = complete && !is_text(line.text);
            let counted = worded.is_some() || trailing.is_some();
            let number = has_page_number(line.text) || counted && of_both.ascending;
            of_pages || (number && stands_apart(lines, rules, index))
        })
        .collect()
}

/// What the page counts of some lines make together.
struct Counted {
    /// Each page follows the one before, of as many.
    ascending: bool,
    /// And none of them is left out.
    complete: bool,
}

impl Counted {
    fn of(counted: &[Option<(u16, u16)>]) -> Self {
        let counts: Vec<(u16, u16)> = counted.iter().flatten().copied().collect();
        let ascending = counts
            .windows(2)
            .all(|pair| matches!(pair, [a, b] if a.0 < b.0 && a.1 == b.1))
            && counts.iter().all(|(page, of)| page <= of);
        let all = counts
            .last()
            .is_some_and(|(_, of)| usize::from(*of) == counts.len());
        Self {
            ascending,
            complete: ascending && counts.len() > 1 && all,
        }
    }
}

/// The words for a page, looked for all at once.
static PAGE_WORDS: LazyLock<Option<AhoCorasick>> = LazyLock::new(|| {
    AhoCorasick::builder()
        .ascii_case_insensitive(true)
        .build(["page", "pg", "sheet", "sht", "leaf", "folio"])
        .ok()
});

/// What stands before and after each word for a page.
fn page_words(text: &str) -> impl Iterator<Item = (&str, &str)> {
    let found = PAGE_WORDS
        .as_ref()
        .map(|words| words.find_iter(text))
        .into_iter()
        .flatten();
    found.filter_map(|hit| Some((text.get(..hit.start())?, text.get(hit.end()..)?)))
}

/// The page and of how many, as a line states them in words: "Page 1 of 3", "sheet 2/2".
fn worded_count(text: &str) -> Option<(u16, u16)> {
    if !text.bytes().any(|byte| byte.is_ascii_digit()) {
        return None;
    }
    page_words(text).find_map(|(_, after)| {
        let after = after.trim_start_matches(['.', ':', ' ']);
        let (page, rest) = after.split_once([' ', '/'])?;
        let of = rest
            .trim_start_matches("of")
            .trim_start_matches("OF")
            .trim_start_matches(['/', ' ']);
        let digits = of.bytes().take_while(u8::is_ascii_digit).count();
        Some((page.parse().ok()?, of.get(..digits)?.parse().ok()?))
    })
}

/// Whether the lines around one, up to the next blank line, rule or page boundary on either side, are few and none of them is text.
fn stands_apart(lines: &[Line<'_>], rules: &[bool], index: usize) -> bool {
    let edge = |at: usize| {
        let blank = lines.get(at).is_none_or(Line::is_blank);
        blank || rules.get(at).copied().unwrap_or(true)
    };
    let breaks = |at: usize| lines.get(at).is_some_and(|line| line.after_page_break);
    let mut first = index;
    while !breaks(first) && first > 0 && !edge(first - 1) && index - first <= REACH {
        first -= 1;
    }
    let mut last = index;
    while !edge(last + 1) && !breaks(last + 1) && last - index <= REACH {
        last += 1;
    }
    let texts = |range: core::ops::RangeInclusive<usize>| {
        lines
            .get(range)
            .unwrap_or_default()
            .iter()
            .any(|line| is_text(line.text))
    };
    last - first <= REACH && !texts(first..=last)
}

/// Whether a line is text whatever else it looks like: it begins as an item does, or it requires something.
fn is_text(text: &str) -> bool {
    begins_as_item(text) || requires(text)
}

/// `12.`, `3A)`, `(b)`, `a.`, `2.1` and words after it.
fn begins_as_item(text: &str) -> bool {
    let text = text.trim_start_matches(|c: char| c.is_whitespace() || c == '|');
    let Some((marker, rest)) = text.split_once(char::is_whitespace) else {
        return false;
    };
    let bare = marker.trim_matches(|c: char| "().".contains(c));
    let closed = marker.ends_with(['.', ')']);
    let short = (1..=4).contains(&bare.len())
        && bare.chars().all(|c| c.is_ascii_alphanumeric() || c == '.');
    let digits = bare.starts_with(|c: char| c.is_ascii_digit());
    let letter = bare.chars().count() == 1;
    closed && short && (digits || letter) && rest.contains(char::is_alphabetic)
}

/// Whether a line holds a word of requirement or a unit of size.
fn requires(text: &str) -> bool {
    const WORDS: &[&str] = &[
        "shall", "must", "min", "minimum", "max", "maximum", "nom", "nominal", "least", "exceed",
        "thick", "wide", "deep", "in", "inch", "inches", "mm", "pcf", "oc", "percent", "spaced",
    ];
    let lower = text.to_lowercase();
    let words: Vec<&str> = lower
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .collect();
    words.iter().enumerate().any(|(index, word)| {
        // "in" is a unit only after a number.
        let after_number = index
            .checked_sub(1)
            .and_then(|before| words.get(before))
            .is_some_and(|before| before.ends_with(|c: char| c.is_ascii_digit()));
        WORDS.contains(word) && (*word != "in" || after_number)
    })
}

/// Whether a line carries a page number: "Page 1 of 3", "sheet 2/2", "– 2 –".
fn has_page_number(text: &str) -> bool {
    if text.len() > 300 {
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
    page_words(&text).any(|(before, after)| {
        let bounded = !before.ends_with(char::is_alphabetic);
        let after = after.trim_start_matches(['.', ':', ' ']);
        bounded && (is_page_count(after) || is_spelled_count(after))
    })
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

/// "one of two" and nothing, or words behind a gap.
fn is_spelled_count(text: &str) -> bool {
    const NUMBERS: [&str; 10] = [
        "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
    ];
    let number = |text: &'_ str| {
        let number = NUMBERS.iter().find(|number| text.starts_with(**number))?;
        Some(number.len())
    };
    let Some(of) = number(text).and_then(|len| text.get(len..)?.strip_prefix(" of ")) else {
        return false;
    };
    let rest = number(of).and_then(|len| of.get(len..));
    rest.is_some_and(|rest| rest.trim_end().is_empty() || rest.starts_with("  "))
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

/// A count of pages alone at the end of a wide line, after a gap: `...  1 / 1`, `...   1 (2)`. The page, and of how many.
fn trailing_count(text: &str) -> Option<(u16, u16)> {
    let text = text.trim().trim_matches('|').trim();
    let tail = text.get(text.rfind("   ")?..)?.trim();
    let (page, of) = tail
        .split_once('/')
        .or_else(|| tail.strip_suffix(')')?.split_once('('))?;
    let number = |part: &str| {
        let part = part.trim();
        (1..=2).contains(&part.len()).then(|| part.parse().ok())?
    };
    Some((number(page)?, number(of)?))
}

fn is_continuation(text: &str) -> bool {
    let text = text.trim().to_lowercase();
    text.len() < 90
        && ["continued", "continued)", "(cont'd)", "(cont.)", "cont'd"]
            .iter()
            .filter_map(|word| text.strip_suffix(word))
            .any(|before| !before.ends_with(char::is_alphanumeric))
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
    for order in feet(lines, &visible) {
        mark(order..order + 1);
    }
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

/// Where among the visible lines those stand that are the document's last line once more, each spread over its width and alone between blank lines:
/// the feet of pages that bear no number.
fn feet(lines: &[Line<'_>], visible: &[usize]) -> Vec<usize> {
    const GAP: &str = "    ";
    let text = |index: usize| lines.get(index).map_or("", |line| line.text.trim());
    let alone = |index: usize| {
        let blank = |at: Option<usize>| at.is_none_or(|at| text(at).is_empty());
        blank(index.checked_sub(1)) && blank(Some(index + 1))
    };
    let last = visible.last().filter(|last| alone(**last));
    let Some(last) = last.filter(|last| text(**last).contains(GAP)) else {
        return Vec::new();
    };
    let again = |index: usize| text(index) == text(*last) && alone(index);
    let orders = visible.iter().enumerate();
    orders
        .filter(|(_, index)| again(**index))
        .map(|(order, _)| order)
        .collect()
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
            "Register 7 / leaf one of two                     supersedes the 6th",
        ] {
            assert!(
                has_page_number(text) || trailing_count(text).is_some(),
                "{text}"
            );
        }
        for text in [
            "1. Floor - min 4 in. thick",
            "| over 1 to 2 (25 to 51)   | 2    | 4 (102)   |",
            "fasteners spaced 24 in. (610 mm)",
            "the sheet 2 in. wide",
            "each leaf one of two layers",
        ] {
            assert!(
                !has_page_number(text) && trailing_count(text).is_none(),
                "{text}"
            );
        }
    }

    #[test]
    fn heads_and_feet_may_count_each_by_themselves() {
        let text = "1. Floor\nConcrete.\n\nLab of Nowhere - issued 2021-09       1 (2)\n\u{c}LNF       sheet 2/2\n\n2. Wall\n\
                    Brick.\n\nLab of Nowhere - issued 2021-09       2 (2)\n";
        let lines = lines(text);
        let feet = lines.iter().zip(furniture(&lines)).filter(|(_, f)| *f);
        assert_eq!(feet.count(), 3);
    }

    #[test]
    fn the_last_line_is_the_foot_of_other_pages_too() {
        let foot = "LM-61          LOXMERE          REISSUED 06-15-2019";
        let text = format!(
            "1. Floor\nConcrete.\nBlock.\nBrick.\n\n{foot}\n\n2. Wall\nBrick.\nBlock.\n3. Seal\nSpray.\nCaulk.\n\n{foot}\n"
        );
        let all = lines(&text);
        let feet = all.iter().zip(furniture(&all)).filter(|(_, f)| *f);
        assert_eq!(feet.count(), 2);
        let plain = text.replace("          ", " ");
        let all = lines(&plain);
        let feet = all.iter().zip(furniture(&all)).filter(|(_, f)| *f);
        assert_eq!(feet.count(), 0);
    }

    #[test]
    fn text_is_never_furniture() {
        for text in [
            "1. Floor - concrete.\n2. Wall - gypsum board on studs\nas drawn on sheet 2\n3. Board - any.\n",
            "1. Packing.\nMinimum 4 in. thick.\n\u{c}2. Coating.\nMinimum 4 in. thick.\n",
            "1. Clips - as the table:\n\nrating     laps\n1 h        13 (2)\n2 h        12 (4)\n3 h        11 (6)\n",
        ] {
            let lines = lines(text);
            let swallowed = lines.iter().zip(furniture(&lines)).filter(|(_, f)| *f);
            assert_eq!(
                swallowed.map(|(line, _)| line.text).collect::<Vec<_>>(),
                Vec::<&str>::new(),
                "{text}"
            );
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
