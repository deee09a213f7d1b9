//! What the head of an item says of it as an option: that it stands in the place of something, or that it may be left out.

use super::head::Head;

/// Words that offer the item in the place of what they are followed by.
const CUES: [&str; 21] = [
    "optional to ",
    "substitute for",
    "substitutes for",
    "alternate to",
    "alternative to",
    "alternates to",
    "alternatively to",
    "alt. to",
    "alt to",
    "in lieu of",
    "i.l.o.",
    "in place of",
    "in the place of",
    "instead of",
    "in exchange for",
    "as a substitute for",
    "as substitute for",
    "may stand in for",
    "may be substituted for",
    "may take the place of",
    "may replace",
];

/// How far behind the title a sentence may come to such words, in bytes.
const MID_SENTENCE: usize = 90;

/// Words that offer the item in the place of something.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Cue {
    pub(super) start: usize,
    /// Where what it replaces begins.
    pub(super) end: usize,
    /// Whether it stands in brackets.
    pub(super) bracketed: bool,
}

/// The words by which an item as a whole is offered in the place of something: in its title, in brackets behind it, at the beginning of its
/// text, or in a first sentence that says that it may be used so.
pub(super) fn cue(head: &Head) -> Option<Cue> {
    let words = head.words();
    let found = CUES.iter().filter_map(|cue| {
        let begins = |at: &usize| {
            let before = words.get(..*at).unwrap_or_default();
            let denied = before.ends_with("no ");
            let label = words.get(*at + cue.len()..).unwrap_or_default();
            // "optional to the owner" leaves it to somebody.
            let cites = label.starts_with(|c: char| c.is_ascii_digit() || c == '(')
                || label.starts_with("item");
            !before.ends_with(|c: char| c.is_alphanumeric())
                && !denied
                && (cites || !cue.starts_with("optional"))
        };
        let mut places = words.match_indices(cue).map(|(at, _)| at);
        places.find(begins).map(|at| (at, at + cue.len()))
    });
    let (start, end) = found.min()?;
    let bracket = head
        .bracket(start)
        .filter(|_| head.bracket(start) == head.bracket(end));
    let is_own = start < head.title_end
        || !head.sentence_ends(head.title_end, start)
            && (bracket.is_some()
                || opens(head, start)
                || follows_name(head, start)
                || is_used_so(head, start));
    let refused = ["not ", "never ", "nor "].iter().any(|word| {
        let from = start.saturating_sub(40);
        let from = (from..=start)
            .find(|at| words.is_char_boundary(*at))
            .unwrap_or(start);
        head.part(from, start).contains(word)
    });
    let another = bracket.is_none() && offers_another(head, end);
    (is_own && !refused && !another).then_some(Cue {
        start,
        end,
        bracketed: bracket.is_some(),
    })
}

/// Whether the sentence goes on to say that something else than the item may be used so: of the packing "In lieu of mineral wool, ceramic fiber may be used". Where
/// an item is cited that is replaced, the thing is the item itself.
fn offers_another(head: &Head, end: usize) -> bool {
    const MAY: [&str; 6] = [
        " may be used",
        " may be installed",
        " may be substituted",
        " may be employed",
        " is permitted",
        " are permitted",
    ];
    const LONGEST: usize = 120;
    let title = head.part(head.title_start, head.title_end);
    let rest = head.part(end, head.words().len());
    let mut stops = rest.match_indices(". ").map(|(at, _)| at);
    let stop = stops.find(|at| head.sentence_ends(end + at, end + at + 2));
    let said = rest.get(..stop.unwrap_or(rest.len())).unwrap_or_default();
    let Some(may) = MAY.iter().filter_map(|may| said.find(may)).min() else {
        return false;
    };
    let offered = said.get(..may).unwrap_or_default();
    let Some((replaced, offered)) = offered.split_once(", ") else {
        return false;
    };
    // `wood clips` are none of an item "Clips", which has others to begin with.
    let is_item = |words: &str| {
        let name = words.split(',').next().unwrap_or_default();
        let mut words = name
            .split(|c: char| !c.is_alphanumeric())
            .filter(|word| word.len() > 2 && *word != "the");
        words.all(|word| title.contains(word.strip_suffix('s').unwrap_or(word)))
    };
    let pronoun = ["it", "they", "this", "these", "this item"].contains(&offered.trim());
    let cites = replaced.contains("item") || replaced.chars().any(|c| c.is_ascii_digit());
    title.contains(char::is_alphabetic) && may <= LONGEST && !cites && !pronoun && !is_item(offered)
}

/// Whether a head has words that offer something in the place of something, wherever.
pub(super) fn speaks_of_alternative(head: &Head) -> Option<(usize, usize)> {
    const WORDS: [&str; 8] = [
        "alternate",
        "alternates",
        "alternative",
        "alternatively",
        "alternately",
        "variant",
        "in lieu of",
        "instead of",
    ];
    let words = head.words();
    let last = (head.title_end..words.len()).find(|at| head.sentence_ends(*at, at + 3));
    let first = words.get(..last.unwrap_or(words.len()))?;
    let found = WORDS.iter().chain(CUES.iter()).filter_map(|word| {
        let at = first.find(word)?;
        let after = first.get(at + word.len()..)?;
        let whole = !after.starts_with(char::is_alphanumeric)
            && !first.get(..at)?.ends_with(char::is_alphanumeric);
        whole.then_some((at, at + word.len()))
    });
    // "on alternate sides" offers nothing.
    found
        .filter(|(at, end)| {
            let after = first.get(*end..).unwrap_or_default().trim_start();
            let sides = [
                "side", "stud", "flute", "face", "course", "row", "layer", "rib", "clip",
            ];
            !(first.get(*at..*end) == Some("alternate")
                && sides.iter().any(|word| after.starts_with(word)))
        })
        .min()
}

/// Whether nothing but small words stands before the cue in the item's text.
fn opens(head: &Head, start: usize) -> bool {
    const SMALL: [&str; 8] = ["as", "an", "a", "the", "used", "option", "or", "and"];
    let from = head.title_end.min(start);
    head.part(from, start)
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .all(|word| SMALL.contains(&word))
}

/// Whether only the name of an item without a title stands before the cue, "Shaft wall, in place of (a)", or a further name between dashes:
/// "Fill Material - Spray - As an alternate to Item 2C", or the name behind a title that only offers it, "Variant: strip in place of 2C". What such a dash
/// would misread: a thing of the item, "Fill Material - Primer - In place of Item 2C".
fn follows_name(head: &Head, start: usize) -> bool {
    const LONGEST: usize = 5;
    const VERBS: [&str; 14] = [
        "shall",
        "must",
        "is",
        "are",
        "be",
        "may",
        "can",
        "has",
        "have",
        "installed",
        "fastened",
        "used",
        "placed",
        "with",
    ];
    let untitled = head.title_end <= head.title_start + 1;
    let name = head.part(head.title_end.min(start), start).trim();
    let name = name.strip_suffix("as an").map_or(name, str::trim);
    let title = head.part(head.title_start, head.title_end);
    let offers = ["variant", "alternate", "alternative"];
    let offered = offers.contains(&title.trim_matches(|c: char| !c.is_alphabetic()));
    let dashed = name.ends_with(['-', '–', '—']);
    let name = name.trim_end_matches([',', ' ', '-', '–', '—']);
    (untitled || dashed || offered)
        && name.split(' ').count() <= LONGEST
        && !name.contains([',', ';', ':', '.'])
        && !name.split(' ').any(|word| VERBS.contains(&word))
}

/// Whether the first sentence says that the item may be used in the place of something.
fn is_used_so(head: &Head, start: usize) -> bool {
    let before = head.part(head.title_end.min(start), start);
    let may = [
        "may be used",
        "may be installed",
        "may be built",
        "is permitted",
        "are permitted",
        "may stand",
        "may replace",
    ];
    before.len() <= MID_SENTENCE && may.iter().any(|words| before.trim_end().ends_with(words))
}

/// Where a head says that the item may be left out, with the bracket that it stands in.
pub(super) fn optional(head: &Head) -> Option<Cue> {
    let words = head.words();
    let found = ["optional", "opt.", "opt", "option"]
        .iter()
        .find_map(|word| {
            let mut places = words
                .match_indices(word)
                .map(|(at, _)| (at, at + word.len()));
            places.find(|(start, end)| says_optional(head, *start, *end))
        });
    let (start, end) = found?;
    Some(Cue {
        start,
        end,
        bracketed: head.bracket(start).is_some(),
    })
}

fn says_optional(head: &Head, start: usize, end: usize) -> bool {
    let words = head.words();
    let before = words.get(..start).unwrap_or_default();
    let after = words.get(end..).unwrap_or_default();
    let whole = !before.ends_with(|c: char| c.is_alphanumeric())
        && !after.starts_with(|c: char| c.is_alphanumeric());
    let word = words.get(start..end).unwrap_or_default();
    let bracket = head.bracket(start);
    let phrase = head.part(start, head.end_of_phrase(start, bracket.is_some()));
    let required = phrase.contains("required") && !phrase.contains("not required");
    let in_one_place = [
        "optional on ",
        "optional at the ",
        "optional (top",
        "optional (bottom",
    ]
    .iter()
    .any(|words| phrase.starts_with(words));
    let excepted = [
        "except",
        "unless",
        "other than",
        "but required",
        "mandatory",
    ]
    .iter()
    .any(|word| phrase.contains(word))
        || required
        || in_one_place;
    // "Clip, optional coating": what is optional is of the thing, and not the thing.
    let of_the_thing = before.contains(|c: char| c.is_alphanumeric())
        && [
            " coating", " colour", " color", " finish", " paint", " primer", " texture", " pigment",
        ]
        .iter()
        .any(|noun| after.starts_with(noun));
    if !whole
        || of_the_thing
        || excepted
        || is_asked_for_elsewhere(head, start, end)
        || before.ends_with("not ")
        || before.ends_with("nor ")
    {
        return false;
    }
    let in_title = start < head.title_end;
    // In the text it must be the first thing said: "(Optional) - ...", "Optional. Fix one side only".
    let first_said = || {
        let said = head.part(head.title_end.min(start), start);
        match bracket {
            Some(open) => !head.sentence_ends(head.title_end, start) && start - open < 24,
            None => !said.contains(|c: char| c.is_alphanumeric()),
        }
    };
    match word {
        "optional" => {
            // In a title without brackets the thing is the item: "Optional cover".
            let titled = in_title && bracket.is_none();
            let alone = bracket.is_none() && !head.sentence_ends(end, words.len());
            let of_item = titled || alone || !names_another(after);
            of_item && (in_title || first_said() && is_said_of_the_item(head, start, end))
                || closes_the_sentence_of_a_name(head, start, after)
        }
        "opt." | "opt" => {
            bracket.is_some() && first_said()
                || first_said() && !in_title && after.starts_with([',', ';', ' ', '.'])
        }
        _ => {
            let at_start = before.len() <= head.title_start + 1
                && after.trim_start().starts_with([':', '-', '–', '—']);
            let at_end = in_title
                && head
                    .part(end, head.title_end)
                    .trim_matches(['.', ':', '-', ' ', ')', '*'])
                    .is_empty();
            // "Flute plugs (option)", "Gypsum board (Option G)"; "(Options D and G)" tells two whole joints apart.
            let opens = bracket.is_some_and(|open| start - open <= 1);
            let labelled = in_title && opens;
            // "Gypsum shaft wall (option, F rating 2 h only). Steel studs ..."
            let untitled = head.title_end <= head.title_start + 1
                && opens
                && first_said()
                && after.starts_with([',', ';', ')']);
            at_start || at_end || labelled || untitled
        }
    }
}

/// `Corner trim, 32 x 32 mm metal, is optional.`: the first sentence of an item without a title, about what it begins with.
fn closes_the_sentence_of_a_name(head: &Head, start: usize, after: &str) -> bool {
    const MOST_WORDS: usize = 4;
    const PLACING: [&str; 16] = [
        "at", "on", "in", "for", "over", "under", "of", "to", "between", "with", "along", "above",
        "below", "behind", "around", "second",
    ];
    let untitled = head.title_end <= head.title_start + 1;
    let said = head.part(head.title_end.min(start), start).trim();
    let Some(said) = said.strip_suffix(" is").or(said.strip_suffix(" are")) else {
        return false;
    };
    let name = said.split(',').next().unwrap_or_default();
    let plain = name
        .chars()
        .all(|c| c.is_alphabetic() || matches!(c, ' ' | '-'));
    // "Sealant at walls is optional" lets it be left out there alone.
    let placed = name.split_whitespace().any(|word| PLACING.contains(&word));
    let named = plain && !placed && (1..=MOST_WORDS).contains(&name.split_whitespace().count());
    let whole = said == name || said.ends_with(',');
    untitled
        && named
        && whole
        && !said.contains([';', ':'])
        && !head.sentence_ends(head.title_end, start)
        && after.starts_with('.')
}

/// Whether "optional" in a text is said of what its title names: "Primer - Optional. Two coats", and not "Sealant - Optional primer, with sealant
/// min 1/2 in.", where only the primer may be left out.
fn is_said_of_the_item(head: &Head, start: usize, end: usize) -> bool {
    const NAMES_NOTHING: &[&str] = &[
        "for",
        "in",
        "when",
        "where",
        "at",
        "if",
        "on",
        "and",
        "or",
        "to",
        "only",
        "but",
        "under",
        "over",
        "with",
        "by",
        "as",
        "item",
        "items",
        "part",
        "parts",
        "component",
        "components",
        "accessory",
        "feature",
        "this",
        "these",
        "may",
        "is",
        "are",
    ];
    const MOST_WORDS: usize = 4;
    let title = head.part(head.title_start, head.title_end);
    if !title.contains(char::is_alphabetic) {
        return true;
    }
    let is_titled = |words: &str| {
        let mut words = words
            .split(|c: char| !c.is_alphanumeric())
            .filter(|word| word.len() > 2);
        words.any(|word| title.contains(word.strip_suffix('s').unwrap_or(word)))
    };
    // "Primer (optional), sealant min 1/2 in."
    let before = head.part(
        head.title_end.min(start),
        head.bracket(start).unwrap_or(start),
    );
    let named_before = before.contains(char::is_alphabetic) && !is_titled(before);
    let after = head.part(end, head.words().len());
    let phrase_end = after
        .find(['.', ',', ';', ':', ')', '-', '–', '—', '('])
        .unwrap_or(after.len());
    let phrase = after.get(..phrase_end).unwrap_or_default();
    let mut words = phrase.split_whitespace();
    let named_after = words
        .next()
        .is_some_and(|first| !NAMES_NOTHING.contains(&first))
        && {
            let near: Vec<&str> = phrase.split_whitespace().take(MOST_WORDS).collect();
            !is_titled(&near.join(" "))
        };
    !named_before && !named_after
}

/// Whether what is optional is a thing that the word stands with, and not the item: "Optional primer max 5 mils. Sealant min 1/2 in.", "(Optional primer)".
/// "Optional in walls", "Optional, not shown" speak of the item.
fn names_another(after: &str) -> bool {
    const OF_THE_ITEM: &[&str] = &[
        "in",
        "for",
        "at",
        "on",
        "under",
        "over",
        "where",
        "when",
        "if",
        "only",
        "one",
        "both",
        "and",
        "or",
        "as",
        "with",
        "per",
        "by",
        "to",
        "unless",
        "not",
        "either",
        "each",
        "except",
        "item",
        "items",
        "part",
        "component",
        "but",
    ];
    let word: String = after
        .strip_prefix(' ')
        .unwrap_or_default()
        .chars()
        .take_while(|c| c.is_alphanumeric())
        .collect();
    word.starts_with(char::is_alphabetic) && !OF_THE_ITEM.contains(&word.as_str())
}

/// Whether the words go on to ask for the item in all other cases: "Optional in joints under 1 in. Required in all others".
fn is_required_elsewhere(after: &str) -> bool {
    const ELSEWHERE: &[&str] = &[
        "otherwise",
        "required in all other",
        "required for all other",
        "required in other",
        "required for other",
        "required elsewhere",
        "required in joints",
    ];
    const ASKING: &[&str] = &["for ", "where ", "when ", "if ", "in ", "over "];
    // "(Optional, required for joints over 3 in.)"
    let at_once = after
        .trim_start_matches([',', ';', '.', ' ', '-', '–', '—'])
        .trim_start_matches("but ")
        .strip_prefix("required ")
        .is_some_and(|rest| ASKING.iter().any(|word| rest.starts_with(word)));
    at_once || ELSEWHERE.iter().any(|words| after.contains(words))
}

/// Whether an item may be left out in some joints, and is asked for in the rest: "Optional for 1 hr", "optional where the joint is under 1 in."
fn is_only_in_some_joints(after: &str) -> bool {
    const CASES: &[&str] = &["where", "when", "if"];
    const LIMITS: &[&str] = &[
        "for", "in", "at", "under", "over", "up", "below", "above", "to", "with",
    ];
    const RATED: &[&str] = &["hr", "hour", "hours", "rating", "rated"];
    const REACH: usize = 10;
    let phrase_end = after
        .find([',', ';', ':', ')', '(', '–', '—'])
        .unwrap_or(after.len());
    let phrase = after.get(..phrase_end).unwrap_or_default();
    let Some(phrase) = phrase.strip_prefix(' ') else {
        return false;
    };
    let mut words = phrase.split(' ');
    let first = words.find(|word| *word != "only").unwrap_or_default();
    let measures = || {
        phrase.split(' ').take(REACH).any(|word| {
            word.starts_with(|c: char| c.is_ascii_digit())
                || RATED.contains(&word.trim_end_matches('.'))
        })
    };
    CASES.contains(&first) || LIMITS.contains(&first) && measures()
}

/// Whether words that let an item be left out ask for it in some joints.
fn is_asked_for_elsewhere(head: &Head, start: usize, end: usize) -> bool {
    let behind = behind(head, start, end);
    let words = head.words().get(end..).unwrap_or_default();
    is_required_elsewhere(words)
        || head.part(start, end) != "option" && is_only_in_some_joints(behind)
}

/// What the sentence of a head goes on with behind a word: what is said in a title ends with it.
fn behind(head: &Head, start: usize, end: usize) -> &str {
    let last = if start < head.title_end {
        head.title_end.max(end)
    } else {
        head.words().len()
    };
    let ends = (end..last).find(|at| head.sentence_ends(*at, at + 3));
    head.part(end, ends.unwrap_or(last))
}

/// Words at the head of an item that let it be left out, and ask for it in some joints.
pub(super) fn optional_in_some(head: &Head) -> Option<(usize, usize)> {
    let words = head.words();
    let (start, end) = ["optional", "opt."].iter().find_map(|word| {
        let start = words.find(word)?;
        Some((start, start + word.len()))
    })?;
    let named = start < head.title_end || !head.sentence_ends(head.title_end, start);
    let bracketed = head.bracket(start).is_some();
    (named && is_asked_for_elsewhere(head, start, end))
        .then(|| (start, head.end_of_phrase(start, bracketed)))
}
