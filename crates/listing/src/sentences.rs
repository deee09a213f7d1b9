//! Step 3: sentences. Abbreviations of the trade don't end one.

use core::ops::Range;

use crate::capitals::{Case, case_behind};
use crate::phrase::count_word;

/// Words that a stop shortens without ending the sentence, unless a capital follows one of [`MAY_END`].
const ABBREVIATIONS: &[&str] = &[
    "in", "ft", "max", "min", "nom", "tol", "n.t.e", "n.m.t", "n.l.t", "approx", "dia", "diam",
    "no", "nos", "o.c", "oc", "e.g", "i.e", "vs", "incl", "fig", "figs", "ref", "refs", "ga", "sq",
    "cu", "lb", "lbs", "hr", "hrs", "avg", "ind", "galv", "alum", "comp", "ext", "thk", "typ",
    "conc", "horiz", "vert", "sect", "alt", "art", "lin", "temp", "wt", "spec", "specs", "cont",
    "equiv", "resp", "mfr", "mfg", "assy", "ea", "sim", "reqd", "cl", "ctr", "ctrs", "lg", "st",
    "int", "exp", "appr", "int'l", "dept", "cf", "viz", "w.g", "o.d", "i.d", "od", "id", "per",
    "p", "pp", "vol", "ed", "rev", "sched", "gyp", "bd", "fl", "flr", "jt", "jts", "thru", "adj",
    "perp", "par", "ht", "wd", "lgth", "oz", "gal", "pcs", "deg", "mtl", "i.l.o", "ilo", "u.n.o",
    "uno", "n.i.c", "bldg", "sht", "dwg", "dwgs", "btm", "flg", "flgs", "stl", "bds", "clr", "dim",
    "dims", "compr", "mvmt", "defl", "reinf", "chan", "susp", "attn", "pt", "pts", "mins", "secs",
    "sec", "config", "configs", "embed", "opng", "gage", "rtg", "std", "ltwt", "lt", "nwc", "e.s",
    "n.s", "f.s", "b.o", "t.o", "amb", "rtgs", "recd", "supp", "mech", "fastnr", "intermed",
    "longit", "transv", "contin", "matl", "dp", "mo", "mos", "yr", "yrs", "wk", "wks", "pen",
    "hvr", "abt", "qty",
];

/// Abbreviations that also end sentences: a capital after one begins the next.
const MAY_END: &[&str] = &[
    "in", "ft", "max", "min", "hr", "hrs", "o.c", "oc", "lb", "lbs", "gal", "ga", "o.d", "i.d",
    "ea", "ctrs", "pcs", "dia", "diam", "thk", "lg", "dp", "mo", "mos", "yr", "yrs", "wk", "wks",
    "hvr",
];

/// Firms' names that end in a stop.
const FIRMS: &[&str] = &[
    "inc", "co", "corp", "ltd", "s.a", "a.g", "b.v", "s.p.a", "llc", "bros", "mfg", "intl",
];

/// Capitalised words that go on after an abbreviation rather than begin a sentence.
const GO_ON: &[&str] = &[
    "OC", "O.C", "MSG", "GSG", "SWG", "AWG", "CFM", "LF", "X", "C",
];

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
        || following.chars().all(|c| c.is_uppercase() || c == '.');
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

/// Whether a number stands a few words before a limit, which then closes it: `EXTEND 8" BELOW SLAB MIN.`
fn closes_number(before: &str) -> bool {
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
fn begins_statement(words: &str) -> bool {
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

/// Whether words begin with the mark of a list and a capital: `(e) Covers may be omitted`.
fn begins_listed(words: &str) -> bool {
    let listed = words
        .strip_prefix('(')
        .and_then(|rest| rest.split_once(") "))
        .filter(|(mark, _)| mark.len() == 1 && mark.chars().all(|c| c.is_ascii_lowercase()));
    listed.is_some_and(|(_, rest)| rest.starts_with(char::is_uppercase))
}

/// Whether words in capitals begin with what is to be left out or done: `OMIT FOR 1 HR`, `NO FILL IS REQUIRED WHERE`. `NO LESS THAN` and `NO. 8` go on.
fn begins_order(words: &str) -> bool {
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
fn stands_in_case(before: &str) -> bool {
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
fn names_another(words: &str) -> bool {
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
fn opens_with_rating(words: &str) -> bool {
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

/// Whether nothing but a qualifier is left, which closes what stands before: `SHELF LIFE 12 MO. MAX.`
fn is_qualifier_alone(rest: &str) -> bool {
    ["min", "max", "minimum", "maximum"]
        .iter()
        .any(|qualifier| {
            rest.trim_end()
                .trim_end_matches('.')
                .eq_ignore_ascii_case(qualifier)
        })
}

/// Whether words begin with a limit that no number follows: behind `2-1/2 In.` the `Min embedment` says how that is meant. What a comma, a colon or a stop
/// parts from the words behind it stays with the number, too: `2 In. Max, Depth: 4 In.`, `1 in. Max. wide`.
fn limits_nothing_behind(rest: &str) -> bool {
    let word = rest
        .split(|c: char| !c.is_alphabetic())
        .next()
        .unwrap_or_default();
    if !is_limit(word) {
        return false;
    }
    let behind = rest.get(word.len()..).unwrap_or_default();
    if behind.starts_with([',', ';', ':', ')']) || closes_throughout(rest) {
        return true;
    }
    if let Some(behind) = behind.strip_prefix('.') {
        let next = behind.trim_start();
        let word = next.split([' ', '.']).next().unwrap_or_default();
        return next.starts_with(|c: char| c.is_lowercase())
            || GO_ON.contains(&word)
            || begins_a_label(next)
            || names_a_number(next);
    }
    // `Max Class II Movement Capabilities - 20 Percent`: a label ends at its dash, too.
    let dash = [" - ", " – ", " -- "]
        .iter()
        .filter_map(|dash| behind.find(dash))
        .min();
    let end = behind
        .find(['.', ';', ',', ':', '('])
        .unwrap_or(behind.len());
    let end = dash.map_or(end, |dash| dash.min(end));
    let mut words = behind.get(..end).unwrap_or_default().split_whitespace();
    let small = words.clone().next().is_some_and(goes_on_measuring);
    let named = words.clone().next().is_some();
    small || named && !words.any(is_number)
}

/// Whether words begin with a capital that a limit in front of them would have taken: `Edge distance` of `12 in. Max. Edge distance 2 in.` In a title every
/// word has one, so that the first small word tells, if it is none of those that titles leave small.
fn begins_a_label(words: &str) -> bool {
    const LEFT_SMALL: &[&str] = &[
        "of", "and", "or", "the", "a", "an", "in", "on", "for", "to", "at", "between", "per", "by",
        "from", "with",
    ];
    const MOST_WORDS: usize = 5;
    let mut each = words.split_whitespace();
    let Some(first) = each
        .next()
        .filter(|first| first.starts_with(char::is_uppercase))
    else {
        return false;
    };
    let cites = ["Item", "Items", "Option", "Table", "Note", "See", "Fig"].contains(&first);
    if cites || goes_on_measuring(&first.to_lowercase()) {
        return true;
    }
    each.take(MOST_WORDS)
        .take_while(|word| word.chars().all(|c| c.is_alphabetic() || c == '-'))
        .find(|word| !LEFT_SMALL.contains(word))
        .is_some_and(|word| word.starts_with(char::is_lowercase))
}

/// Whether words begin with the name of one of several, and say something of it: `CONFIGURATION B: 6 IN. DEEP`.
fn heads_alternative(words: &str) -> bool {
    const ALTERNATIVES: &[&str] = &[
        "configuration",
        "config",
        "option",
        "alternate",
        "alternative",
        "variant",
    ];
    let mut parts = words.splitn(3, ' ');
    let (Some(name), Some(label)) = (parts.next(), parts.next()) else {
        return false;
    };
    let rest = parts.next().unwrap_or_default();
    let bare = label.strip_suffix(':').unwrap_or(label);
    let is_label = bare.len() == 1
        && bare
            .chars()
            .all(|c| c.is_ascii_uppercase() || c.is_ascii_digit());
    let parted = bare.len() < label.len() || rest.starts_with(['-', '–', '—', ':']);
    let is_name = ALTERNATIVES
        .iter()
        .any(|own| own.eq_ignore_ascii_case(name));
    is_name && name.starts_with(char::is_uppercase) && is_label && parted
}

/// Whether words begin with the name of a case, and its number: `DETAIL B, 5/8 IN. DEEP`.
fn heads_case(words: &str) -> bool {
    const CASES: &[&str] = &[
        "DETAIL",
        "CONDITION",
        "CASE",
        "SCHEME",
        "CONFIGURATION",
        "CONFIG",
        "OPTION",
        "VARIANT",
        "ARRANGEMENT",
    ];
    let mut parts = words.split(' ');
    let name = parts.next().unwrap_or_default();
    let label = parts.next().unwrap_or_default();
    let label = label.strip_suffix([',', ':']).unwrap_or(label);
    let number = parts.next().is_some_and(is_number);
    let lettered = |label: &str| {
        label.len() == 1
            && label
                .chars()
                .all(|c| c.is_ascii_uppercase() || c.is_ascii_digit())
    };
    CASES.contains(&name.to_uppercase().as_str())
        && name.starts_with(char::is_uppercase)
        && lettered(label)
        && number
}

/// Whether words are a name that begins with a capital, and its number: `Recess 1/2 in.`
fn names_a_number(words: &str) -> bool {
    const MOST_WORDS: usize = 4;
    let is_name = |word: &&str| word.chars().all(|c| c.is_alphabetic() || c == '-');
    let named = words.split_whitespace().take_while(is_name).count();
    let number = words.split_whitespace().nth(named);
    words.starts_with(|c: char| c.is_uppercase())
        && words.contains(char::is_lowercase)
        && (1..=MOST_WORDS).contains(&named)
        && number.is_some_and(is_number)
}

/// Whether a limit stands right behind a shortened unit and its number: the `Min` of `4 in. Min`.
fn stands_behind_a_unit(before: &str, limit: &str) -> bool {
    let head = before.get(..before.len().saturating_sub(limit.len()));
    let mut words = head.unwrap_or_default().split_whitespace().rev();
    let unit = words.next().and_then(|word| word.strip_suffix('.'));
    unit.is_some_and(|unit| MAY_END.contains(&unit.to_lowercase().as_str()))
        && words.next().is_some_and(is_number)
}

fn is_limit(word: &str) -> bool {
    ["min", "max", "minimum", "maximum"]
        .iter()
        .any(|limit| word.eq_ignore_ascii_case(limit))
}

fn is_number(word: &str) -> bool {
    let digits = word.contains(|c: char| c.is_ascii_digit());
    digits && !word.ends_with(char::is_alphabetic) || count_word(word).is_some()
}

/// Whether a word goes on with the measure of the number before it: `3 in. Min spaced 12 in. OC`.
fn goes_on_measuring(word: &str) -> bool {
    [
        "spaced", "wide", "deep", "thick", "long", "high", "apart", "dense", "centres", "centers",
    ]
    .contains(&word)
}

/// Whether words that begin with a limit go on with numbers each of which a limit closes: `Max Depth: 4 In. Min Lap: 1 In. Min`. Then the first closes what
/// stands before it.
fn closes_throughout(rest: &str) -> bool {
    const MOST_WORDS: usize = 24;
    let end = rest.find([';', '\n']).unwrap_or(rest.len());
    let mut words = rest
        .get(..end)
        .unwrap_or_default()
        .split_whitespace()
        .skip(1)
        .take(MOST_WORDS);
    let mut closed = false;
    while let Some(word) = words.next() {
        if !word.starts_with(|c: char| c.is_ascii_digit()) {
            closed = false;
            continue;
        }
        let mut next = words.next().unwrap_or_default();
        if !is_limit(next.trim_end_matches(['.', ',', ':'])) {
            next = words.next().unwrap_or_default();
        }
        closed = is_limit(next.trim_end_matches(['.', ',', ':']));
        if !closed {
            return false;
        }
    }
    closed
}

/// Whether a word is one that a stop shortens.
pub(crate) fn is_abbreviation(word: &str) -> bool {
    ABBREVIATIONS
        .iter()
        .any(|own| own.eq_ignore_ascii_case(word))
}

/// Whether a text ends in a word that a stop shortens.
pub(crate) fn ends_in_abbreviation(text: &str) -> bool {
    let word = last_word(text).to_lowercase();
    ABBREVIATIONS.contains(&word.as_str()) || FIRMS.contains(&word.as_str()) || word.len() == 1
}

fn last_word(text: &str) -> &str {
    let start = text
        .rfind(|c: char| !(c.is_alphanumeric() || matches!(c, '.' | '\'')))
        .map_or(0, |at| {
            at + text
                .get(at..)
                .and_then(|rest| rest.chars().next())
                .map_or(1, char::len_utf8)
        });
    text.get(start..).unwrap_or_default()
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
