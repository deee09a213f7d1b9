//! What is said of a list or a name besides naming it: what refuses it, leaves some out, or limits it.

use measure::Unit;

use super::super::Around;
use super::super::draft::{Draft, local_property};
use super::name;
use crate::model::{Confidence, Requirement, Span};
use crate::phrase::{TokenKind, lex};

/// Whether words hold a number with a unit, as no product's name does: `6 PCF`, `30%`.
pub(super) fn holds_measure(words: &str) -> bool {
    // `Compound No. 4` numbers a kind, and `No. 25 MSG` is a thickness.
    let names = ["MSG", "ga", "GA", "gauge", "GSG", "in"];
    let behind = |sign: &str| words.split_once(sign).map(|(_, behind)| behind);
    let numbers = behind("No. ")
        .or_else(|| behind("NO. "))
        .is_some_and(|behind| {
            !behind
                .split(|c: char| !c.is_alphanumeric())
                .any(|word| names.contains(&word))
        });
    let bare = words.replace("No. ", "").replace("NO. ", "");
    let words = if numbers { bare.as_str() } else { words };
    let lower = words.to_ascii_lowercase();
    lex(words, &lower).iter().any(|token| {
        matches!(&token.kind, TokenKind::Quantity(stated) if !matches!(stated.unit, Unit::Minute | Unit::Hour | Unit::Celsius | Unit::Fahrenheit))
            || token.is_sign('%')
    })
}

/// Words that refuse what they stand beside: `Excluded products: ...`
pub(super) const REFUSING: &[&str] = &[
    "excluded",
    "withdrawn",
    "rejected",
    "refused",
    "prohibited",
    "forbidden",
    "banned",
    "delisted",
    "superseded",
    "obsolete",
    "unacceptable",
    "unsuitable",
    "unapproved",
    "unlisted",
    "disallowed",
    "failed",
    "never",
];

/// Whether words say more of a list than its names: what is left out, what else may stand for it. A list taken without them would
/// name a product that isn't listed.
pub(super) fn restricts(words: &str) -> bool {
    const RESTRICTIONS: &[&str] = &[
        "except",
        "excepting",
        "excluding",
        "other",
        "not",
        "no",
        "all",
        "any",
        "equal",
        "equivalent",
        "similar",
        "only",
        "without",
        "unless",
        "discontinued",
        "series",
        "min",
        "minimum",
        "max",
        "maximum",
        "deep",
        "thick",
        "wide",
        "flush",
    ];
    // What stands in brackets limits the name before it alone, unless it takes it from the list.
    let (words, notes) = name::without_brackets(words);
    // A limit with a number is read where it stands.
    if notes.iter().any(|note| denies_in_brackets(note))
        || notes.iter().any(|note| holds_measure(note))
    {
        return true;
    }
    let numbered = words.replace("No. ", "").replace("NO. ", "");
    let mut single = numbered.split(|c: char| !c.is_alphanumeric()).peekable();
    while let Some(word) = single.next() {
        // `Series SR` is a name, and all of a series is more than one.
        let is_code =
            |next: &&str| (1..=3).contains(&next.len()) && next.chars().all(char::is_uppercase);
        if word == "Series" && single.peek().is_some_and(is_code) {
            continue;
        }
        if RESTRICTIONS
            .iter()
            .chain(REFUSING)
            .any(|own| own.eq_ignore_ascii_case(word))
        {
            return true;
        }
    }
    false
}

/// Whether what stands in brackets behind a name takes it from its list.
pub(super) fn denies_in_brackets(note: &str) -> bool {
    const DENYING: &[&str] = &[
        "not",
        "no",
        "none",
        "except",
        "excepting",
        "excluding",
        "discontinued",
        "withdrawn",
        "never",
        "other",
    ];
    note.split(|c: char| !c.is_alphanumeric())
        .any(|word| DENYING.contains(&word.to_lowercase().as_str()))
}

/// Whether what stands in brackets behind a name says more than its colour or how it is put on.
pub(super) fn says_limit(words: &str) -> bool {
    const HARMLESS: &[&str] = &[
        "white",
        "grey",
        "gray",
        "red",
        "black",
        "green",
        "blue",
        "spray",
        "sprayed",
        "brush",
        "brushed",
        "trowel",
        "gun",
        "grade",
        "kind",
        "pail",
        "pails",
        "tub",
        "tubs",
        "cartridge",
        "cartridges",
        "sausage",
        "sausages",
        "sealant",
        "coating",
        "wool",
        "batt",
        "slab",
        "adhesive",
        "or",
        "and",
        "the",
        "mark",
    ];
    words
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .any(|word| !HARMLESS.contains(&word.to_lowercase().as_str()))
}

/// What is said of a product besides its name, for a person to judge: a name that is limited is never met by itself.
pub(super) fn limited(span: Span, limit: &str, around: &Around) -> Draft {
    Draft {
        span,
        property: local_property(&around.item, limit),
        component: "product".to_owned(),
        attribute: limit.to_lowercase(),
        requirement: Requirement::Prose,
        condition: None,
        options: around.options.clone(),
        read_by: vec!["left as words".to_owned()],
        confidence: Confidence::Prose,
    }
}

/// Whether a clause only says more of a product that the clause before it names.
pub(super) fn is_limit(draft: &Draft) -> bool {
    draft.component == "product" && draft.requirement == Requirement::Prose
}
