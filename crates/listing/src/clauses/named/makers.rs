//! Makers, and the list of products after one.

/// Ways in which firms' names end.
const FIRM_ENDS: &[&str] = &[
    "inc",
    "co",
    "corp",
    "corporation",
    "company",
    "ltd",
    "limited",
    "llc",
    "gmbh",
    "ag",
    "s.a",
    "sa",
    "plc",
    "bv",
    "b.v",
    "s.p.a",
    "spa",
    "kg",
    "as",
    "oy",
    "works",
    "products",
    "industries",
    "industrial",
    "coatings",
    "chemical",
    "chemicals",
    "sealants",
    "materials",
    "mfg",
    "manufacturing",
    "group",
    "supply",
    "systems",
    "technologies",
    "goods",
    "wools",
    "fibre",
    "fiber",
    "minerals",
    "steel",
    "metals",
    "partners",
    "bros",
    "sons",
    "polymers",
    "laboratories",
    "insulation",
    "gypsum",
    "board",
    "framing",
    "foams",
    "seals",
    "tapes",
    "mills",
    "foundry",
    "trading",
    "international",
    "a/s",
    "bhd",
    "b.v",
    "n.v",
    "s.r.o",
    "ltée",
    "adhesives",
    "compounds",
    "elastomers",
    "extrusions",
    "forming",
    "insulants",
    "insulations",
    "mastics",
    "plasters",
    "profiles",
    "refractories",
    "rockfibre",
    "rockworks",
    "rollforming",
    "silicones",
    "specialties",
    "ab",
    "asa",
    "barriers",
    "bauchemie",
    "bausysteme",
    "baustoffe",
    "chemie",
    "chimie",
    "dämmstoffe",
    "dämmwerke",
    "dichtstoffe",
    "dichttechnik",
    "fasern",
    "fasteners",
    "fugensysteme",
    "fugentechnik",
    "isolasjon",
    "isolering",
    "kemi",
    "p/l",
    "paints",
    "polymer",
    "protection",
    "sarl",
    "sas",
    "sealing",
    "sealworks",
    "srl",
    "steinull",
    "stenull",
    "thermal",
    "werke",
];

/// How many words a maker's name has at most.
const MOST_WORDS: usize = 7;

/// Splits `A, B and C (note, note) or D` at its commas and conjunctions, parentheses left whole and then dropped.
pub(in crate::clauses) fn split_list(list: &str) -> Vec<String> {
    let mut parts = vec![String::new()];
    let mut depth = 0_u32;
    for c in list.chars() {
        match c {
            '(' => depth += 1,
            ')' => depth = depth.saturating_sub(1),
            ',' | ';' if depth == 0 => parts.push(String::new()),
            _ if depth == 0 => {
                if let Some(part) = parts.last_mut() {
                    part.push(c);
                }
            }
            _ => {}
        }
    }
    parts
        .iter()
        .flat_map(|part| part.split(" and "))
        .flat_map(|part| part.split(" or "))
        .map(|part| {
            part.trim()
                .trim_start_matches("and ")
                .trim_start_matches("or ")
                .to_owned()
        })
        .filter(|part| !part.is_empty())
        .collect()
}

pub(super) fn is_maker(words: &str) -> bool {
    let count = words.split_whitespace().count();
    let letters = || words.chars().filter(|c| c.is_alphabetic());
    let capitals = letters().all(char::is_uppercase) && letters().count() >= 4;
    let numberless = !words.chars().any(|c| c.is_ascii_digit());
    let tidy = !words.contains(['(', ')', ':']);
    // `CONFIGURATION A - Floor to floor` names no maker.
    let heads = [
        "configuration ",
        "config ",
        "config. ",
        "detail ",
        "table ",
        "note ",
    ]
    .iter()
    .any(|word| {
        words
            .get(..word.len())
            .is_some_and(|head| head.eq_ignore_ascii_case(word))
    });
    (1..=MOST_WORDS).contains(&count)
        && tidy
        && !heads
        && ((capitals && numberless && count >= 2) || ends_as_firm(words))
}

pub(super) fn ends_as_firm(words: &str) -> bool {
    let last = words.split_whitespace().next_back().unwrap_or_default();
    // "made by Orrindale Ltd as Orrinfill" goes on behind the firm's name, which "Orrindale AS" doesn't.
    if last == "as" || !is_firm_end(last.trim_end_matches(['.', ',', ':'])) {
        return false;
    }
    let titled = words
        .split_whitespace()
        .filter(|word| word.len() > 3 && !["inc.", "ltée"].contains(word))
        .all(|word| word.starts_with(char::is_uppercase));
    titled && words.split_whitespace().count() >= 2
}

/// Where a maker's name may end that text begins with: behind each of its first words.
pub(super) fn ends_of_makers(words: &str) -> impl Iterator<Item = usize> {
    let gaps = words.match_indices(' ').map(|(at, _)| at);
    gaps.filter(|at| {
        words
            .get(..*at)
            .is_some_and(|before| !before.ends_with(' '))
    })
    .take(MOST_WORDS)
}

/// Whether firms' names end in a word.
pub(super) fn is_firm_end(word: &str) -> bool {
    let word = word.to_lowercase();
    FIRM_ENDS
        .iter()
        .any(|end| word == *end || word.strip_suffix('s') == Some(end))
}

/// Splits a list at its commas and conjunctions, but for those in brackets and quotes; each part keeps its own.
pub(super) fn split_outside(list: &str) -> Vec<String> {
    let mut parts = vec![String::new()];
    let mut depth = 0_u32;
    let mut in_quotes = false;
    let mut words = list.split(' ').peekable();
    while let Some(word) = words.next() {
        let joins = ["and", "or", "AND", "OR", "&", "·", "/"].contains(&word);
        if joins && depth == 0 && !in_quotes {
            parts.push(String::new());
            continue;
        }
        for c in word.chars() {
            match c {
                '"' => in_quotes = !in_quotes,
                '“' | '„' => in_quotes = true,
                '”' => in_quotes = false,
                '(' => depth += 1,
                ')' => depth = depth.saturating_sub(1),
                _ => {}
            }
            if matches!(c, ',' | ';') && depth == 0 && (!in_quotes || c == ';') {
                parts.push(String::new());
            } else if let Some(part) = parts.last_mut() {
                part.push(c);
            }
        }
        if words.peek().is_some()
            && let Some(part) = parts.last_mut()
        {
            part.push(' ');
        }
    }
    parts.retain(|part| !part.trim().is_empty());
    parts
}

/// Where a run of capital words at the end of a text begins, when there is one that can be a maker.
pub(super) fn capitals_tail(text: &str) -> Option<usize> {
    let mut start = None;
    let mut at = text.len();
    for word in text.rsplit(' ') {
        at = at.checked_sub(word.len())?;
        let letters = word.chars().filter(|c| c.is_alphabetic());
        let capital = letters.clone().count() > 0
            && letters.clone().all(char::is_uppercase)
            && !word.ends_with([',', ';'])
            || word == "&";
        if capital {
            start = Some(at);
        } else {
            break;
        }
        at = at.saturating_sub(1);
    }
    let start = start?;
    is_maker(text.get(start..)?.trim()).then_some(start)
}
