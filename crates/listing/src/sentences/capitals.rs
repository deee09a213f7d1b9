//! Sentences in capitals, where no small letter tells that one has begun.

use super::limits::goes_on_measuring;

/// Whether a number stands a few words before a limit, which then closes it: `EXTEND 8" BELOW SLAB MIN.`
pub(super) fn closes_number(before: &str) -> bool {
    const MOST_WORDS: usize = 5;
    let words = before.split_whitespace().rev().skip(1).take(MOST_WORDS);
    words
        .take_while(|word| {
            !word.ends_with(['.', ';', ':']) || word.contains(|c: char| c.is_ascii_digit())
        })
        .any(|word| word.contains(|c: char| c.is_ascii_digit()))
}

/// Whether words in capitals begin a statement of their own, with its verb: `BACKER MAY BE OMITTED`. Of `4 IN. DEEP MIN. CLEARANCE SHALL BE 2 IN.` nobody
/// can say whose the limit is.
pub(super) fn begins_statement(words: &str) -> bool {
    const MOST_WORDS: usize = 4;
    let verb = words
        .split_whitespace()
        .take(MOST_WORDS)
        .take_while(|word| word.chars().all(|c| c.is_uppercase() || c == '-'))
        .skip(1)
        .find(|word| matches!(*word, "MAY" | "SHALL" | "MUST" | "IS" | "ARE"));
    let end = words.find(['.', ';']).unwrap_or(words.len());
    let numbered = words
        .get(..end)
        .is_some_and(|words| words.contains(|c: char| c.is_ascii_digit()));
    verb.is_some_and(|verb| verb == "MAY" || !numbered)
}

/// Whether words in capitals begin with what is to be left out or done: `OMIT FOR 1 HR`, `NO FILL IS REQUIRED WHERE`. `NO LESS THAN` and `NO. 8` go on.
pub(super) fn begins_order(words: &str) -> bool {
    let mut each = words.split_whitespace();
    let first = each.next().unwrap_or_default();
    let second = each.next().unwrap_or_default();
    let names = second.len() > 1 && second.chars().all(|c| c.is_uppercase() || c == '-');
    match first {
        "OMIT" | "DELETE" | "WAIVE" => true,
        "NO" => names && !["LESS", "MORE", "GREATER", "CLOSER", "WIDER"].contains(&second),
        _ => false,
    }
}

/// Whether the words before a stop, in capitals, tell a case: `OMIT PACKING WHERE JOINT IS UNDER 1/4 IN.`
pub(super) fn stands_in_case(before: &str) -> bool {
    const MOST_WORDS: usize = 8;
    let mut back = before.split_whitespace().rev().take(MOST_WORDS);
    let opened = back.any(|word| matches!(word, "WHERE" | "WHEN" | "IF" | "UNLESS"));
    // `WHERE JOINT IS OVER 2 IN. PACKING 4 IN. DEEP`: a case that a sentence opens with is of what follows.
    opened
        && back
            .next()
            .is_some_and(|word| !word.ends_with(['.', ':', ';', '-']))
}

/// Whether words in capitals name a thing and its number: `COVER 16 GA.` Of `1/4 IN. DEEP 2 IN. WIDE` the word measures what stands before.
pub(super) fn names_another(words: &str) -> bool {
    const SHORTEST: usize = 4;
    let mut each = words.split_whitespace();
    let name = each.next().unwrap_or_default();
    let number = each.next().unwrap_or_default();
    let places = matches!(
        name,
        "OVER" | "UNDER" | "ABOVE" | "BELOW" | "PLUS" | "FROM" | "WITH" | "INTO" | "ONTO" | "EACH"
    );
    !places
        && name.len() >= SHORTEST
        && name.chars().all(char::is_uppercase)
        && number.starts_with(|c: char| c.is_ascii_digit())
        && !goes_on_measuring(&name.to_lowercase())
}

/// Whether words in capitals begin with a rating and say with a verb what it asks: `FOR 2 HR RATING THICKNESS SHALL BE 1 IN.` Without one, `1 IN. FOR 2 HR
/// RATING.` goes on.
pub(super) fn opens_with_rating(words: &str) -> bool {
    let end = words.find(". ").unwrap_or(words.len());
    let said: Vec<&str> = words
        .get(..end)
        .unwrap_or_default()
        .split_whitespace()
        .collect();
    let [
        "FOR",
        hours,
        "HR" | "HOUR",
        "RATING" | "RATINGS",
        next,
        rest @ ..,
    ] = said.as_slice()
    else {
        return false;
    };
    let verb = |word: &&str| matches!(*word, "MAY" | "SHALL" | "MUST" | "IS" | "ARE");
    let numbered = hours.starts_with(|c: char| c.is_ascii_digit());
    let joins = matches!(*next, "AND" | "OR" | "WHICH" | "ONLY") || verb(next);
    numbered && !joins && next.starts_with(char::is_alphabetic) && rest.iter().any(verb)
}
