//! Numbers that were read across the gap between two columns: `up to 1            1/4 in.` is no inch and a quarter. They are left unread.

use measure::{Number, notation};

use crate::clauses::Draft;
use crate::model::{Bound, Relation, Requirement, Span, WarningKind};

/// Leaves the values unread whose whole number and fraction stand in two columns.
pub(super) fn leave_parted(
    text: &str,
    drafts: &mut [(String, Draft)],
) -> Vec<(WarningKind, Span, String)> {
    let mut doubts = Vec::new();
    for (item, draft) in drafts {
        let Requirement::Bound(bound) = &draft.requirement else {
            continue;
        };
        let at = bound.at;
        let words = at.of(text);
        let across =
            spans_a_gap(words) || holds_an_empty_column(words) || glues_numbers(bound, words);
        if across && !are_two_limits(bound, words) {
            draft.leave_as_words(item);
            let message = "it may be two numbers that stand in two columns".to_owned();
            doubts.push((WarningKind::UnreadNumber, at, message));
        }
    }
    doubts
}

/// Whether words are the two ends of a range with nothing but columns between them: `1/16      1/8` under "Min" and "Max", `110    -    153` around "Nom".
fn are_two_limits(bound: &Bound, words: &str) -> bool {
    let is_dash = |word: &&str| matches!(*word, "-" | "--" | "–" | "—");
    let mut ends = words.split_whitespace().filter(|word| !is_dash(word));
    let (low, high) = (ends.next(), ends.next());
    let is_end = |word: Option<&str>, end: Option<Number>| {
        let number = word.and_then(|word| notation::numeral_at(word, 0));
        number.is_some_and(|(numeral, _)| Some(numeral.value) == end)
    };
    bound.relation == Relation::Between
        && ends.next().is_none()
        && is_end(low, bound.lo)
        && is_end(high, bound.hi)
}

/// Whether digits stand on both sides of a gap or a line's end and were taken for one number, `3  150 mm`, or feet and inches for one length.
fn glues_numbers(bound: &Bound, words: &str) -> bool {
    const FAR: usize = 3;
    let one = bound.relation != Relation::Between;
    let mut from = 0;
    while let Some(at) = words
        .get(from..)
        .and_then(|rest| rest.find(char::is_whitespace))
    {
        let (before, behind) = words.split_at(from + at);
        let rest = behind.trim_start();
        let gap = behind.len() - rest.len();
        let blanks = behind.get(..gap).unwrap_or_default();
        let parted = gap >= 2 || blanks.contains('\n');
        let digits = before.ends_with(|c: char| c.is_ascii_digit())
            && rest.starts_with(|c: char| c.is_ascii_digit());
        let number = rest.starts_with(|c: char| c.is_ascii_digit());
        let far = gap >= FAR && !blanks.contains('\n');
        if parted && digits || one && far && number {
            return true;
        }
        from = words.len() - rest.len();
        if rest.is_empty() {
            break;
        }
    }
    false
}

/// Whether a dash stands alone between two gaps: it leaves a column empty, and is no sign of a number.
fn holds_an_empty_column(words: &str) -> bool {
    words.contains("  -  ")
}

/// Whether a fraction stands far behind a number on one line.
fn spans_a_gap(words: &str) -> bool {
    const GAP: &str = "   ";
    words.match_indices(GAP).any(|(at, _)| {
        let (before, behind) = words.split_at(at);
        let behind = behind.trim_start_matches(' ');
        let figures = behind.len()
            - behind
                .trim_start_matches(|c: char| c.is_ascii_digit())
                .len();
        let fraction = figures > 0
            && behind
                .get(figures..)
                .is_some_and(|rest| rest.starts_with('/'));
        before.ends_with(|c: char| c.is_ascii_digit()) && fraction
    })
}
