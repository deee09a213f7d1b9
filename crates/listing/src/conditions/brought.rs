//! A thing that an item brings in only for some joints, in a sentence that goes on to describe it: "Retaining plates. In joints exceeding 75 mm, Z-clips
//! of 1.2 mm steel carry the packing. Spacing 450 mm max.", "Stiffener - 20 ga angle ... Required only where mullions stand more than 60 in. apart."
//!
//! What the paragraph goes on to measure without a name of its own, "Spacing 450 mm", is then about that thing; and all of an item is where it says of itself
//! that it is required somewhere only. How far it goes is a guess, and so the condition is one in words: it is for a person to say whether it holds, and
//! nothing falls away by itself. "The packing is 4 in. deep" and "Pack 4 in. deep" speak of something else, and hold always. No item is meant whose title names what every joint has, as its packing or its wall; nor one whose sentence says
//! how large something is ("in joints over 3 in., spacing 12 in.") or speaks of what is there anyway ("the clips").
//!
//! What it would misread: an item with a title of its own that has two things in it, one of them for all joints.

use super::heading::sets_apart;
use super::{Found, conditions};
use crate::model::{Condition, Expr};
use crate::naming::components_in;
use crate::phrase::Token;
use crate::rules::Sentence;

/// Components of every joint, or of the construction beside it.
const EVERYWHERE: &[&str] = &[
    "joint", "packing", "sealant", "coating", "seal", "fill", "floor", "wall", "deck", "board",
    "stud", "runner", "strip", "system", "topping", "product", "blanket", "foam",
];

/// Verbs by which something is needed for the joint, and not only measured.
const CARRIES: &[&str] = &[
    "carry",
    "carries",
    "support",
    "supports",
    "hold",
    "holds",
    "retain",
    "retains",
    "required",
    "needed",
    "provided",
    "fitted",
    "placed",
    "installed",
    "added",
    "embedded",
];

/// Whether a title may name a thing that only some joints have.
pub(crate) fn may_be_absent(title: &str) -> bool {
    components_in(title)
        .iter()
        .all(|(component, ..)| !EVERYWHERE.contains(&component.name.as_str()))
}

/// The condition under which the first sentence of an item brings in what the item is about.
pub(crate) fn brings(sentence: &Sentence<'_>, title: &str) -> Option<Condition> {
    let found = conditions(sentence).found;
    let (first, rest) = found.split_first()?;
    let alone = rest.is_empty() && narrows(first);
    let brought = if first.first == 0 {
        opens(sentence, first, title)
    } else {
        closes(sentence, first)
    };
    (alone && brought && may_be_absent(title)).then(|| in_words(sentence, first.first, first.last))
}

/// Whether a sentence measures what was spoken of before it, without naming it: "Spacing 450 mm max.", "Bearing on the floor 40 mm".
pub(crate) fn only_measures(sentence: &Sentence<'_>) -> bool {
    const FILLING: &[&str] = &["packing", "sealant", "coating", "seal", "strip", "joint"];
    const MEASURES: &[&str] = &[
        "spacing", "centres", "centers", "bearing", "fixing", "fixings", "distance",
    ];
    let measures = sentence.is_any(0, MEASURES);
    measures
        && components_in(sentence.words(0, sentence.tokens.len()))
            .iter()
            .all(|(component, ..)| !FILLING.contains(&component.name.as_str()))
}

/// Whether a sentence goes on about the thing that its item has brought in: "The clips are held by two pins each", "The lower leg reaches 3 in. into the packing",
/// "They are 2 in. wide". One that begins with a part of every joint, or that speaks of joints, begins a new subject.
pub(crate) fn goes_on_about(sentence: &Sentence<'_>, thing: &str) -> bool {
    const SUBJECT: usize = 4;
    const PARTS: &[&str] = &[
        "leg",
        "legs",
        "flange",
        "flanges",
        "embedment",
        "pair",
        "pins",
        "pin",
        "anchor",
        "anchors",
        "screw",
        "screws",
        "fixing",
        "fixings",
    ];
    const OTHERS: &[&str] = &[
        "all",
        "every",
        "any",
        "slab",
        "beam",
        "panel",
        "insulation",
        "wool",
        "safing",
        "fireproofing",
        "packing",
        "board",
        "track",
        "runner",
        "stud",
        "studs",
    ];
    const JOINTS: &[&str] = &["joint", "joints", "gap", "gaps", "opening", "openings"];
    let other =
        sentence.has_any(0, SUBJECT, OTHERS) || sentence.has_any(0, sentence.tokens.len(), JOINTS);
    let of_thing = |at: usize| {
        let word = sentence.word(at).trim_end_matches('s');
        let word = word.rsplit('-').next().unwrap_or(word);
        word.len() > 3 && thing.contains(word)
    };
    let pronoun = sentence.is_any(0, &["they", "it", "these", "their", "its"]);
    let definite = sentence.is_any(0, &["each", "the", "such"]);
    let of_part = definite && (1..SUBJECT).any(|at| sentence.is_any(at, PARTS));
    let named = of_thing(0) || definite && (1..SUBJECT - 1).any(of_thing);
    let subject = sentence.words(0, SUBJECT.min(sentence.tokens.len()));
    !other && (of_part || (pronoun || named) && may_be_absent(subject))
}

/// The condition of a sentence that only says where the thing of its item is required, or may be left out: "Required only where ...", "Not required where
/// ...", "May be omitted when ...".
pub(crate) fn only_says_where(sentence: &Sentence<'_>) -> Option<Condition> {
    const LEADING: &[&str] = &["where", "when", "if", "in", "for"];
    const PLACE: usize = 7;
    const SAID: &[&[&str]] = &[
        &["required"],
        &["needed"],
        &["not", "required"],
        &["not", "req'd"],
        &["not", "needed"],
        &["may", "be", "omitted"],
        &["may", "be", "left", "out"],
    ];
    let said = SAID.iter().find(|words| {
        words
            .iter()
            .enumerate()
            .all(|(at, word)| sentence.is_word(at, word))
    })?;
    let at = said.len() + usize::from(sentence.is_word(said.len(), "only"));
    // "Required on one side of the wall for joints over 2 in."
    let placed = sentence.is_any(at, &["on", "at"])
        && (at + 1..at + 1 + PLACE)
            .find(|at| sentence.is_any(*at, LEADING))
            .is_some_and(|at| {
                conditions(sentence)
                    .found
                    .iter()
                    .any(|found| found.first == at && narrows(found))
            });
    // "Required over 3 in. only."
    let off = sentence.is_word(0, "not") && sentence.is_any(at, &["under", "below"]);
    let measured = (off || sentence.is_any(at, &["over", "above", "exceeding"]))
        && sentence.amount_at(at + 1).is_some();
    let led = placed || measured || sentence.is_any(at, LEADING);
    let whole = (0..sentence.tokens.len())
        .rev()
        .find(|at| !sentence.is_sign(*at, '.'))?;
    let ends = end_of_only(sentence, at).unwrap_or(whole);
    let more = (at..ends).any(|at| sentence.is_sign(at, ';'));
    (led && !more).then(|| {
        let said = in_words(sentence, 0, ends + 1);
        // "Not needed where the mullions are 30 in. or less apart": needed wherever they aren't.
        let let_off = sentence.is_any(0, &["not", "may"]);
        let case = || Expr::Words(sentence.words(at, ends + 1).to_owned());
        if let_off {
            let expr = Expr::Not(Box::new(case()));
            return Condition { expr, ..said };
        }
        said
    })
}

/// The last token of the words that say where alone a thing is required, where a semicolon follows and then only more of the thing: "Required only in joints over 4
/// in.*; maximum spacing 24 in.*" What speaks of another case, "; otherwise two rows", says more than that.
fn end_of_only(sentence: &Sentence<'_>, from: usize) -> Option<usize> {
    const ANOTHER: &[&str] = &[
        "otherwise",
        "else",
        "elsewhere",
        "in",
        "where",
        "when",
        "if",
        "for",
        "at",
        "except",
        "unless",
        "but",
        "other",
        "others",
        "not",
        "no",
        "all",
        "every",
        "each",
        "both",
        "any",
        "may",
        "or",
        "optional",
        "also",
        "the",
    ];
    let only = from > 0 && sentence.is_word(from - 1, "only");
    let semicolon = (from..sentence.tokens.len()).find(|at| sentence.is_sign(*at, ';'))?;
    let spoilt = sentence.has_any(semicolon, sentence.tokens.len(), ANOTHER);
    let narrows = conditions(sentence)
        .found
        .iter()
        .any(|found| from <= found.first && found.last <= semicolon && narrows(found));
    (only && narrows && !spoilt).then(|| semicolon - 1)
}

/// The condition by which the sentence that an item begins with says, behind a comma, where the thing of the item is needed: "Z-clips. 1 in. wide, 20 gauge, *used in
/// joints over 4 in.* at 24 in. centers", "Brackets of 1.2 mm steel, *required where the joint is wider than 100 mm*."
pub(crate) fn is_needed_in(sentence: &Sentence<'_>) -> Option<Condition> {
    const NEEDED: &[&str] = &["used", "required", "needed"];
    const REACH: usize = 4;
    let found = conditions(sentence).found;
    let [only] = found.as_slice() else {
        return None;
    };
    let before = only.first.saturating_sub(REACH)..only.first;
    // "used with a. when the width is more than 2 in."
    let needed = before.rev().find(|at| sentence.is_any(*at, NEEDED))?;
    let comma = needed.checked_sub(1)?;
    let plain = (needed..only.first).all(|at| sentence.amount_at(at).is_none());
    let set_off = plain && sentence.is_sign(comma, ',');
    let spoilt = sentence.has_any(0, comma, &["or", "optional", "alternate", "may"])
        || sentence.has_any(0, sentence.tokens.len(), crate::rules::NEGATIONS);
    (set_off && narrows(only) && !spoilt).then(|| in_words(sentence, needed, only.last))
}

/// The condition of a sentence that only says for which rating all of its item is: "(Required for the FTH Rating only.)", "2 hr systems only."
pub(crate) fn only_says_for_which(sentence: &Sentence<'_>) -> Option<Condition> {
    only_of_a_rating(sentence).or_else(|| required_only(sentence))
}

/// `(Required for the FTH Rating only.)`
fn required_only(sentence: &Sentence<'_>) -> Option<Condition> {
    const LONGEST: usize = 9;
    let open = usize::from(sentence.is_sign(0, '('));
    let end = (open..open + LONGEST)
        .find(|at| sentence.is_sign(*at, '.') || sentence.is_sign(*at, ')'))
        .unwrap_or(sentence.tokens.len());
    let closes = (end..sentence.tokens.len())
        .all(|at| sentence.is_sign(at, '.') || sentence.is_sign(at, ')'));
    let plain = (open..end).all(|at| sentence.has_word(at));
    let only = sentence.is_word(open + 1, "only") || end > 0 && sentence.is_word(end - 1, "only");
    let lead = open + 1 + usize::from(sentence.is_word(open + 1, "only"));
    let reads = sentence.is_any(open, &["required", "needed", "necessary"])
        && sentence.is_any(lead, &["for", "with", "to"])
        && sentence.has_any(lead, end, &["rating", "ratings", "rated"]);
    (reads && plain && only && closes).then(|| in_words(sentence, open, end))
}

/// `2 hr systems only.`: a sentence that is nothing but a rating, for a person to say of which joints all of its item is.
fn only_of_a_rating(sentence: &Sentence<'_>) -> Option<Condition> {
    let open = usize::from(sentence.is_sign(0, '('));
    let [rating] = sentence.amounts.as_slice() else {
        return None;
    };
    let things = rating.last + usize::from(sentence.is_any(rating.last, &["rated", "fire"]));
    let only = things + 1;
    let reads = rating.first == open
        && rating.unit == measure::Unit::Hour
        && sentence.is_any(
            things,
            &[
                "systems",
                "assemblies",
                "walls",
                "joints",
                "ratings",
                "rating",
            ],
        )
        && sentence.is_word(only, "only")
        && (only + 1..sentence.tokens.len())
            .all(|at| sentence.is_sign(at, '.') || sentence.is_sign(at, ')'));
    reads.then(|| in_words(sentence, open, only + 1))
}

/// What a sentence asks for an item with.
const ASKS: &[&str] = &[
    "require", "requires", "need", "needs", "provide", "install", "add", "fit",
];

/// What is said of an item that is asked for.
const ASKED: &[&str] = &[
    "required",
    "needed",
    "provided",
    "installed",
    "added",
    "fitted",
];

/// Whether words, in small letters, may ask for an item: what has none of the words need not be read for it.
pub(crate) fn may_ask_for_item(lower: &str) -> bool {
    ASKS.iter().any(|word| lower.contains(word))
}

/// The item that a sentence asks for only in some joints, and in which: "Joints wider than 6 in. require the support bars of Item 4A", "Where the joint exceeds 125 mm
/// provide the supports of 3.4."
pub(crate) fn asks_for_item(sentence: &Sentence<'_>) -> Option<(String, Condition)> {
    let found = conditions(sentence).found;
    let [only] = found.as_slice() else {
        return None;
    };
    let begun = (0..only.first).all(|at| {
        sentence
            .token(at)
            .is_some_and(|token| token.word().is_none())
    });
    let asks = only.last + usize::from(sentence.is_sign(only.last, ','));
    let (label, end) = cited(sentence, asks)?;
    // "the clips of section 3.4 are fitted"
    let passive = sentence.is_any(end, &["is", "are"]) && sentence.is_any(end + 1, ASKED);
    let end = end + if passive { 2 } else { 0 };
    let ends = sentence.token(end).is_none() || sentence.is_sign(end, '.');
    let plain = !sentence.has_any(0, sentence.tokens.len(), crate::rules::NEGATIONS);
    let asked = passive || sentence.is_any(asks, ASKS);
    (begun && narrows(only) && asked && ends && plain)
        .then(|| (label, in_words(sentence, only.first, only.last)))
}

/// The label of the one item that a sentence cites behind a token, "of Item 4A", "(Item 4A)", "of 3.4", and the token behind it.
fn cited(sentence: &Sentence<'_>, from: usize) -> Option<(String, usize)> {
    let mut items =
        (from..sentence.tokens.len()).filter(|at| sentence.is_any(*at, &["item", "items"]));
    let at = match (items.next(), items.next()) {
        (Some(item), None) => item + 1,
        (None, _) => (from..sentence.tokens.len())
            .find(|at| sentence.is_any(*at, &["of", "in", "per"]))
            .map(|of| of + 1 + usize::from(sentence.is_any(of + 1, &["section", "clause"])))
            .filter(|label| sentence.token(*label).is_some_and(Token::is_numeric))?,
        _ => return None,
    };
    let text = sentence.token(at)?.span.of(sentence.text);
    let end = at + 1 + usize::from(sentence.is_sign(at + 1, ')'));
    Some((text.trim_end_matches('.').to_owned(), end))
}

/// Whether a condition tells wide or high cases from the rest.
fn narrows(condition: &Found) -> bool {
    sets_apart(&condition.expr) && !condition.triggers.is_empty()
}

/// `In joints over 3 in., Z-clips ...`: something new follows, and no measure.
fn opens(sentence: &Sentence<'_>, condition: &Found, title: &str) -> bool {
    const SUBJECT: usize = 5;
    const SPOKEN_OF: &[&str] = &[
        "the", "each", "every", "all", "both", "it", "they", "its", "their", "this", "these", "no",
        "not", "use", "where",
    ];
    let mut at = condition.last;
    while [',', ':'].iter().any(|sign| sentence.is_sign(at, *sign))
        || at == condition.last && sentence.is_word(at, "only")
    {
        at += 1;
    }
    let measured = (at..at + SUBJECT)
        .filter(|at| sentence.amount_at(*at).is_none())
        .any(|at| {
            let word = sentence.word(at).trim_end_matches('s');
            !word.is_empty()
                && word != "angle"
                && vocabulary::vocabulary().attribute(word).is_some()
        });
    let end = sentence.tokens.len();
    let subject = sentence.words(at, (at + 2 * SUBJECT).min(end));
    let of_title = (at..at + SUBJECT).any(|at| {
        let word = sentence.word(at).trim_end_matches('s');
        word.len() > 3 && title.to_lowercase().contains(word)
    });
    let carried = sentence.has_any(at, end, CARRIES);
    let spoilt = sentence.has_any(
        at,
        end,
        &["may", "omitted", "reduced", "increased", "otherwise"],
    );
    sentence.token(at).is_some()
        && !sentence.is_any(at, SPOKEN_OF)
        && !measured
        && !spoilt
        && (carried || !of_title && may_be_absent(subject))
}

/// `Carriers of steel, 1.2 mm by 30 mm, hold the packing in joints of 60 mm and above`.
fn closes(sentence: &Sentence<'_>, condition: &Found) -> bool {
    let ends = (condition.last..sentence.tokens.len()).all(|at| {
        sentence.is_sign(at, '.')
            || sentence.is_any(at, &["only", "and", "above", "over", "more", "upwards"])
    });
    let indefinite = !sentence.is_any(
        0,
        &["the", "each", "every", "all", "both", "it", "they", "no"],
    );
    let spoilt = sentence.has_any(
        0,
        condition.first,
        &["may", "not", "omitted", "depth", "spacing", "shall"],
    );
    ends && indefinite && !spoilt && sentence.has_any(0, condition.first, CARRIES)
}

fn in_words(sentence: &Sentence<'_>, first: usize, last: usize) -> Condition {
    let words = sentence.words(first, last).to_owned();
    Condition {
        also: Vec::new(),
        expr: Expr::Words(words.clone()),
        words,
        span: sentence.source_of(first, last),
    }
}
