//! Cases in a text all in capitals, where the stop of a shortened unit doesn't tell whether a sentence ends: "MIN 1/4 IN. IF JOINT IS WIDER THAN 3/4 IN., MIN
//! 1/2 IN." The case may close the number before it or lead to what stands behind its comma.

use crate::phrase::count_word;
use crate::sentences::is_abbreviation;

/// What a case behind the stop of a shortened unit belongs to, where it isn't plainly what stands before it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Case {
    /// It leads to what stands behind it: a sentence begins with it.
    Leads,
    /// Nobody can say.
    Undecided,
}

/// What the case that `next` may begin with belongs to. `before` are the words to the stop before it.
pub(crate) fn case_behind(before: &str, next: &str) -> Option<Case> {
    if next.chars().take(2).any(|c| !c.is_uppercase()) || !opens_case(next) {
        return None;
    }
    let (said, tail) = next.split_at(end_of_statement(next));
    let Some((case, behind)) = parted(said) else {
        return ordered(said).map(|_| Case::Undecided);
    };
    let opener = first_word(case);
    if matches!(first_word(behind), "OTHERWISE" | "ELSEWHERE" | "ELSE") {
        return None;
    }
    let again = behind
        .split_whitespace()
        .skip(1)
        .any(|word| alike(opener, word));
    let tail = tail.trim_start_matches(['.', ';', ' ']);
    let closed_by_another = opens_case(tail) && case_behind(behind, tail).is_none();
    // "4 IN. FOR 2 HR, 6 IN. FOR 3 HR": each closes its own number.
    if again || closed_by_another && alike(opener, first_word(tail)) {
        return None;
    }
    let numbered = is_numbered(behind);
    if !numbered && first_word(behind).ends_with("ED") {
        return None;
    }
    let leads = says_with_verb(behind) || is_upward(case) && measures_the_same(before, behind);
    Some(if leads && !closed_by_another {
        Case::Leads
    } else {
        Case::Undecided
    })
}

/// Whether words begin with what may tell a case.
fn opens_case(words: &str) -> bool {
    const OF_WHAT: &[&str] = &[
        "HR",
        "HRS",
        "HOUR",
        "HOURS",
        "RATING",
        "RATINGS",
        "JOINTS",
        "GAPS",
        "WALLS",
        "FLOORS",
        "SYSTEMS",
        "ASSEMBLIES",
    ];
    let first = first_word(words);
    if supposes(first) {
        return true;
    }
    let end = words.find([',', ';']).unwrap_or(words.len());
    let case = words.get(..end).unwrap_or_default();
    matches!(first, "FOR" | "ON" | "IN" | "AT")
        && case
            .split([' ', '-'])
            .take(MOST_WORDS)
            .any(|word| OF_WHAT.contains(&word.trim_end_matches('.')))
}

/// How many words a case has at most.
const MOST_WORDS: usize = 10;

fn supposes(word: &str) -> bool {
    matches!(word, "IF" | "WHEN" | "WHERE" | "WHEREVER" | "UNLESS")
}

/// Whether two words open cases of one sort.
fn alike(one: &str, other: &str) -> bool {
    one == other || supposes(one) && supposes(other)
}

/// Where a statement ends: at a stop that shortens nothing, at a semicolon, or before another case.
fn end_of_statement(words: &str) -> usize {
    let ends = |(at, c): &(usize, char)| {
        let before = words.get(..*at).unwrap_or_default();
        let behind = words.get(at + 1..).unwrap_or_default();
        let word = before
            .rsplit(|c: char| !c.is_alphanumeric() && c != '.')
            .next()
            .unwrap_or_default();
        match c {
            ';' => true,
            '.' if behind.is_empty() => true,
            '.' if behind.starts_with(' ') => {
                !is_abbreviation(word) && word.len() > 1 || opens_case(behind.trim_start())
            }
            _ => false,
        }
    };
    words
        .char_indices()
        .find(ends)
        .map_or(words.len(), |(at, _)| at)
}

/// A case and what stands behind its comma; no comma of a list.
fn parted(said: &str) -> Option<(&str, &str)> {
    const LISTS: &[&str] = &["OR", "NOR", "AND", "EXCEPT", "BUT", "ONLY", "NOT"];
    let commas = said.match_indices(", ");
    let mut halves = commas.filter_map(|(at, _)| said.split_at_checked(at));
    let (case, behind) =
        halves.find(|(_, behind)| !LISTS.contains(&first_word(behind.trim_start_matches(','))))?;
    let behind = behind.trim_start_matches([',', ' ']);
    (!behind.is_empty()).then_some((case, behind))
}

/// What is ordered behind the stop of a shortened unit that closes a case: "IF JOINT EXCEEDS 2 IN. PROVIDE CLIPS".
fn ordered(said: &str) -> Option<&str> {
    const ORDERS: &[&str] = &["PROVIDE", "ADD", "INSTALL", "USE", "APPLY"];
    let mut stops = said.match_indices(". ");
    let behind = stops.find_map(|(at, stop)| {
        let behind = said.get(at + stop.len()..)?;
        ORDERS.contains(&first_word(behind)).then_some(behind)
    });
    behind.filter(|behind| is_numbered(behind))
}

fn is_numbered(words: &str) -> bool {
    let counts = |word: &str| count_word(&word.to_lowercase()).is_some();
    words.contains(|c: char| c.is_ascii_digit()) || words.split_whitespace().any(counts)
}

/// Whether words say with a verb what holds: "CLIPS ARE MIN 18 GA."
fn says_with_verb(words: &str) -> bool {
    const MOST_WORDS: usize = 5;
    let mut soon = words.split_whitespace().take(MOST_WORDS);
    let named = soon
        .next()
        .is_some_and(|word| word.chars().all(|c| c.is_uppercase() || c == '-') && word != "WHICH");
    named && soon.any(|word| matches!(word, "MAY" | "SHALL" | "MUST" | "IS" | "ARE"))
}

/// Whether a case is of the wide joints or the high walls, which nobody asks less of than of the others.
fn is_upward(case: &str) -> bool {
    const UP: &[&str] = &[
        "OVER",
        "WIDER",
        "EXCEEDS",
        "EXCEED",
        "EXCEEDING",
        "GREATER",
        "MORE",
        "ABOVE",
        "HIGHER",
        "TALLER",
    ];
    let mut words = case.split_whitespace();
    let denied = words.clone().any(|word| matches!(word, "NOT" | "NO")) || case.starts_with("UN");
    !denied && words.any(|word| UP.contains(&word))
}

/// Whether the words behind a case limit what those before it do: "MIN 1/4 IN. ..., MIN 1/2 IN."
fn measures_the_same(before: &str, behind: &str) -> bool {
    let is_digit = |c: char| c.is_ascii_digit();
    let of_number = |c: char| c.is_ascii_digit() || matches!(c, '/' | '-' | '.' | ' ');
    let (Some(own), Some(other)) = (before.rfind(is_digit), behind.find(is_digit)) else {
        return false;
    };
    let unit = before.get(own + 1..).unwrap_or_default();
    let stem = before
        .get(..=own)
        .unwrap_or_default()
        .trim_end_matches(of_number);
    let limit = behind.get(..other).unwrap_or_default().trim();
    let number = behind.get(other..).unwrap_or_default();
    let same = number
        .trim_start_matches(of_number)
        .split([',', ';'])
        .next()
        .unwrap_or_default();
    let bare = |words: &str| words.trim_matches(['.', ' ']).to_owned();
    ["MIN", "MIN.", "MAX", "MAX.", "MINIMUM", "MAXIMUM"].contains(&limit)
        && stem
            .trim_end_matches('.')
            .ends_with(limit.trim_end_matches('.'))
        && bare(unit) == bare(same)
}

fn first_word(words: &str) -> &str {
    words
        .trim_start_matches([',', ' '])
        .split([' ', ','])
        .next()
        .unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_case_leads_where_it_can_do_nothing_else() {
        for next in [
            "IF JOINT IS WIDER THAN 3/4 IN., MIN 1/2 IN.",
            "IF WALL EXCEEDS 12 FT. HIGH, CLIPS ARE MIN 18 GA.",
        ] {
            assert_eq!(case_behind("SEALANT - MIN 1/4 IN", next), Some(Case::Leads));
        }
    }

    #[test]
    fn a_case_that_may_close_or_lead_is_undecided() {
        for next in [
            "IF JOINT IS 3/4 IN. OR LESS, MIN 1/2 IN.",
            "FOR 2 HR WALLS, BOARD MIN 2 LAYERS. RUNNERS MIN 25 GA.",
            "WHERE 2 HR RATING IS REQUIRED, TWO LAYERS.",
            "UNLESS WALL IS BLOCK, BOTH SIDES.",
            "IF JOINT EXCEEDS 2 IN. PROVIDE CLIPS MAX 18 IN. OC.",
        ] {
            let found = case_behind("SEALANT - MIN 1/4 IN", next);
            assert_eq!(found, Some(Case::Undecided), "{next}");
        }
    }

    #[test]
    fn a_case_that_nothing_follows_closes() {
        for next in [
            "WHERE THE WALL IS BLOCK.",
            "FOR 2 HR RATING, 1 IN. FOR 1 HR RATING.",
            "FOR 2 HR, MIN 6 IN. FOR 3 HR.",
            "IF JOINT IS OVER 2 IN., OR IF WALL IS BLOCK.",
            "ON EACH SIDE, MIN 2 LAYERS.",
            "FOR 2 HR RATING, TOOLED SMOOTH.",
            "WHERE GAP IS OVER 2 IN., OTHERWISE 24 IN.",
            "MIN 2 IN. WIDE",
        ] {
            assert_eq!(case_behind("SEALANT - MIN 1/4 IN", next), None, "{next}");
        }
    }
}
