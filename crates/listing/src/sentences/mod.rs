//! Step 3: sentences. Abbreviations of the trade don't end one.

mod capitals;
mod heads;
mod limits;
mod words;

use core::ops::Range;

use self::capitals::{
    begins_order, begins_statement, closes_number, names_another, opens_with_rating, stands_in_case,
};
use self::heads::{begins_listed, heads_alternative, heads_case};
use self::limits::{
    begins_a_label, closes_about, is_limit, is_qualifier_alone, limits_nothing_behind,
    names_a_number, stands_behind_a_unit,
};
use self::words::{ABBREVIATIONS, FIRMS, GO_ON, MAY_END, last_word};
pub(crate) use self::words::{ends_in_abbreviation, is_abbreviation};
use crate::capitals::{Case, case_behind};

/// The sentences of a running text, without the space between them.
pub(crate) fn sentences(text: &str) -> Vec<Range<usize>> {
    let mut sentences = Vec::new();
    let mut start = 0;
    for (at, c) in text.char_indices() {
        if matches!(c, '.' | '!' | '?') && ends_sentence(text, at) {
            let mut end = at + 1;
            while let Some(mark) = text
                .get(end..)
                .and_then(|rest| rest.chars().next())
                .filter(|c| matches!(c, ')' | '"' | '”' | '*'))
            {
                end += mark.len_utf8();
            }
            push(&mut sentences, text, start..end, LONGEST);
            start = end;
        }
    }
    push(&mut sentences, text, start..text.len(), LONGEST);
    sentences
}

/// A running text whole, or one beyond all measure in pieces: what is looked for in all of a paragraph.
pub(crate) fn stretches(text: &str) -> Vec<Range<usize>> {
    let mut stretches = Vec::new();
    push(&mut stretches, text, 0..text.len(), 4 * LONGEST);
    stretches
}

/// The longest stretch that is read as one sentence, in bytes. The rules look at every number beside every other, so that a sentence without
/// end would take for ever; none that anybody has written is a third as long.
const LONGEST: usize = 2000;

/// Adds a sentence; one beyond all measure in pieces, each cut behind a stop of any kind or else between words.
fn push(sentences: &mut Vec<Range<usize>>, text: &str, range: Range<usize>, longest: usize) {
    let mut start = range.start;
    while range.end - start > longest {
        let most = (start..=start + longest)
            .rev()
            .find(|at| text.is_char_boundary(*at))
            .unwrap_or(range.end);
        let piece = text.get(start..most).unwrap_or_default();
        let cut = piece
            .rfind([';', ','])
            .map(|at| at + 1)
            .or_else(|| piece.rfind(' '))
            .filter(|at| *at > 0)
            .unwrap_or(piece.len().max(1));
        push_whole(sentences, text, start..start + cut);
        start += cut;
    }
    push_whole(sentences, text, start..range.end);
}

fn push_whole(sentences: &mut Vec<Range<usize>>, text: &str, range: Range<usize>) {
    let words = text.get(range.clone()).unwrap_or_default();
    let from = range.start + (words.len() - words.trim_start().len());
    let to = from + words.trim().len();
    if from < to {
        sentences.push(from..to);
    }
}

/// Whether the stop at an offset ends a sentence.
fn ends_sentence(text: &str, at: usize) -> bool {
    let rest = text.get(at + 1..).unwrap_or_default();
    let rest = rest.trim_start_matches([')', '"', '”', '*']);
    if rest.is_empty() {
        return true;
    }
    let Some(next) = rest.strip_prefix(' ') else {
        return false;
    };
    // Leaders: `Depth of packing .......... 4 in.`
    if next.starts_with('.')
        || text
            .get(..at)
            .is_some_and(|before| before.ends_with("..") || before.ends_with(". "))
    {
        return false;
    }
    let begins = next.chars().next();
    if is_qualifier_alone(next) {
        return false;
    }
    if heads_alternative(next) {
        return true;
    }
    let capital = begins.is_some_and(|c| c.is_uppercase() || matches!(c, '"' | '“' | '§'));
    let digit = begins.is_some_and(|c| c.is_ascii_digit());
    let before = text.get(..at).unwrap_or_default();
    let word = last_word(before).to_lowercase();
    // `BELOW 35° F. OR ABOVE 100° F.`: in capitals nothing else tells that a sentence goes on.
    let shortened = word.len() == 1 || ABBREVIATIONS.contains(&word.as_str());
    if shortened
        && ["OR ", "NOR ", "AND "]
            .iter()
            .any(|join| next.starts_with(join))
    {
        return false;
    }
    if word.len() == 1 && word.chars().all(char::is_alphabetic) {
        let named = before
            .get(..before.len() - word.len())
            .unwrap_or_default()
            .trim_end();
        // `at 2 h. The`, `at 5 °C. The` and `at 45 deg F. The` end with a unit; `A. The` is a label.
        let degrees = ["deg", "degree", "degrees"].contains(
            &last_word(named.trim_end_matches('.'))
                .to_lowercase()
                .as_str(),
        );
        let unit =
            degrees || named.ends_with(|c: char| c.is_ascii_digit() || matches!(c, '°' | 'º'));
        // `for Configuration B. The joint` names a configuration.
        let naming = ["configuration", "config", "type", "option", "item"]
            .contains(&last_word(named).to_lowercase().as_str());
        return (unit || naming) && capital;
    }
    if FIRMS.contains(&word.as_str()) {
        return false;
    }
    if closes_about(before, &word, next) {
        return true;
    }
    if MAY_END.contains(&word.as_str()) && (begins_listed(next) || heads_case(next)) {
        return true;
    }
    if MAY_END.contains(&word.as_str()) && limits_nothing_behind(next) {
        return false;
    }
    // Of `Depth 4 in. Min. Recess 1/2 in.` nobody can say whose the limit is: the rules see both numbers.
    let printed = last_word(before).starts_with(char::is_uppercase);
    let may_open = printed && is_limit(&word) && names_a_number(next) && !begins_a_label(next);
    if may_open && stands_behind_a_unit(before, &word) {
        return false;
    }
    if !ABBREVIATIONS.contains(&word.as_str()) {
        return capital || digit || begins == Some('(') || begins == Some('[');
    }
    let following: String = next
        .chars()
        .take_while(|c| c.is_alphabetic() || *c == '.')
        .collect();
    let goes_on = GO_ON.contains(&following.trim_end_matches('.'))
        || following.chars().all(|c| c.is_uppercase() || c == '.') && !begins_with_article(next);
    // In a text all in capitals a capital says nothing.
    let in_capitals = following.len() > 1
        && following.chars().all(|c| c.is_uppercase() || c == '.')
        && last_word(before).chars().all(|c| !c.is_lowercase());
    if in_capitals
        && matches!(word.as_str(), "min" | "max")
        && closes_number(before)
        && begins_statement(next)
    {
        return true;
    }
    if in_capitals
        && MAY_END.contains(&word.as_str())
        && (opens_with_rating(next)
            || case_behind(before, next) == Some(Case::Leads)
            || begins_order(next)
            || stands_in_case(before) && names_another(next))
    {
        return true;
    }
    capital && !in_capitals && MAY_END.contains(&word.as_str()) && (!goes_on || following.len() > 4)
}

/// Whether words begin with an article: `A compression of 25 percent is required`.
fn begins_with_article(words: &str) -> bool {
    let behind = words.strip_prefix("A ");
    behind.is_some_and(|behind| behind.starts_with(char::is_lowercase))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(text: &str, expected: &[&str]) {
        let found: Vec<_> = sentences(text)
            .into_iter()
            .map(|range| text.get(range).unwrap())
            .collect();
        assert_eq!(found, expected);
    }

    #[test]
    fn abbreviations_do_not_end_sentences() {
        check(
            "Max 3 in. (76 mm) deep galv. steel. Studs cut 1/2 in. less.",
            &[
                "Max 3 in. (76 mm) deep galv. steel.",
                "Studs cut 1/2 in. less.",
            ],
        );
        check(
            "spaced 12 in. OC. Fasteners",
            &["spaced 12 in. OC.", "Fasteners"],
        );
        check(
            "is at least 2 in. The lap",
            &["is at least 2 in.", "The lap"],
        );
        check(
            "No. 25 MSG steel. 2 in. wide",
            &["No. 25 MSG steel.", "2 in. wide"],
        );
        check(
            "density ≥ 2.5 kg/m³ (wall). Flexible",
            &["density ≥ 2.5 kg/m³ (wall).", "Flexible"],
        );
        check(
            "SOMEWHERE CO. INC. -- Product 4",
            &["SOMEWHERE CO. INC. -- Product 4"],
        );
        check("widths up to 2 in.) The", &["widths up to 2 in.)", "The"]);
        check(
            "Tack-free 45 min. approx. Wait 14 days. Depth approx. 4 in. Use approx. Type 2 pins.",
            &[
                "Tack-free 45 min. approx.",
                "Wait 14 days.",
                "Depth approx. 4 in.",
                "Use approx. Type 2 pins.",
            ],
        );
    }

    #[test]
    fn a_limit_without_a_number_of_its_own_closes_the_one_before() {
        check(
            "two anchors, 2-1/2 In. Min embedment. Angles 48 In. OC Max. Pipe 2 In. Max nominal diameter, steel",
            &[
                "two anchors, 2-1/2 In. Min embedment.",
                "Angles 48 In. OC Max.",
                "Pipe 2 In. Max nominal diameter, steel",
            ],
        );
        check(
            "sealed with 1/2 In. Min of 3B",
            &["sealed with 1/2 In. Min of 3B"],
        );
        check(
            "Board 5/8 in. Min 40 pcf. Runner 2 in. Min leg length 3 in. Studs 6 in. Min two screws each.",
            &[
                "Board 5/8 in.",
                "Min 40 pcf.",
                "Runner 2 in.",
                "Min leg length 3 in.",
                "Studs 6 in.",
                "Min two screws each.",
            ],
        );
    }

    #[test]
    fn the_name_of_a_case_and_its_number_begin_a_sentence_in_capitals() {
        check(
            "DETAIL A, 1/2 IN. DEEP MIN. DETAIL B, 5/8 IN. DEEP MAX. CASE 3 1 IN. DEEP.",
            &[
                "DETAIL A, 1/2 IN. DEEP MIN.",
                "DETAIL B, 5/8 IN. DEEP MAX.",
                "CASE 3 1 IN. DEEP.",
            ],
        );
        for whole in [
            "1/2 IN. DEEP, SEE DWG. DETAIL B, 5/8 IN. DEEP.",
            "1/2 IN. DEEP MIN. DETAIL B SIMILAR.",
        ] {
            check(whole, &[whole]);
        }
    }

    #[test]
    fn a_rating_with_a_statement_begins_a_sentence_in_capitals() {
        check(
            "PROTECTED FOR 24 HR. FOR 2 HR RATING THICKNESS SHALL BE 1-3/8 IN.",
            &[
                "PROTECTED FOR 24 HR.",
                "FOR 2 HR RATING THICKNESS SHALL BE 1-3/8 IN.",
            ],
        );
        for whole in [
            "THICKNESS 1-3/8 IN. FOR 2 HR RATING.",
            "THICKNESS 1-3/8 IN. FOR 2 HR RATING AND SHALL BE EVEN.",
            "THICKNESS 1-3/8 IN. FOR 2 HR RATING, 1 IN. FOR 1 HR RATING.",
        ] {
            check(whole, &[whole]);
        }
    }

    #[test]
    fn a_sentence_beyond_all_measure_is_cut_and_keeps_its_words() {
        for unit in ["two layers of board and ", "4 mm, ", "4mm/", "ä"] {
            let text = unit.repeat(3000);
            let found = sentences(&text);
            assert!(found.iter().all(|range| range.len() <= LONGEST), "{unit}");
            let kept: String = found
                .iter()
                .filter_map(|range| text.get(range.clone()))
                .flat_map(|words| words.chars().filter(|c| !c.is_whitespace()))
                .collect();
            let all: String = text.chars().filter(|c| !c.is_whitespace()).collect();
            assert_eq!(kept, all, "{unit}");
        }
    }
}
