//! Places and grounds that not every joint has, where a sentence opens with one: "At corners, the strip is mitred at 45 degrees", "On aerated concrete the
//! overlap is 25 mm", "Over fluted deck, each flute is filled".
//!
//! Only what stands at the opening of a sentence, or behind a semicolon, is one, and only of a list of places that some joints have and others don't: at the
//! board, at the slab edge or on each side there is something of every joint. Whether a joint has such a place, only a person can say. What it would
//! misread: a joint that always has it, as "on masonry" where the listing knows no other wall; its numbers are then open where they would be not met.

use super::Found;
use crate::model::Expr;
use crate::rules::Sentence;

/// Words of grounds and places that not every joint has, as the last word of what stands behind the preposition.
const PLACES: &[&str] = &[
    "corner",
    "corners",
    "doorway",
    "doorways",
    "mullion",
    "mullions",
    "column",
    "columns",
    "crossing",
    "crossings",
    "intersection",
    "intersections",
    "tees",
    "curb",
    "curbs",
    "masonry",
    "blockwork",
    "block",
    "cmu",
    "brick",
    "brickwork",
    "jambs",
    "beams",
    "girders",
    "joists",
    "upstand",
    "upstands",
    "sleeves",
    "penetrations",
];

/// Words that make a ground of "concrete", "deck" or "wall" one of several.
const KINDS: &[(&str, &[&str])] = &[
    (
        "concrete",
        &["aerated", "lightweight", "precast", "cellular", "cut"],
    ),
    ("deck", &["metal", "steel", "fluted"]),
    ("exterior", &["building"]),
    ("end", &["wall"]),
    ("ends", &["wall"]),
    ("faces", &["porous"]),
    ("surfaces", &["porous"]),
    ("areas", &["wet"]),
    (
        "walls",
        &[
            "flexible",
            "stud",
            "framed",
            "shaft",
            "intersecting",
            "crossing",
            "abutting",
            "existing",
            "block",
            "masonry",
            "brick",
            "gypsum",
            "plasterboard",
            "board",
            "drywall",
            "timber",
            "precast",
        ],
    ),
    ("plank", &["hollow-core", "core"]),
    ("planks", &["hollow-core", "core"]),
    (
        "slabs",
        &["existing", "old", "hollow-core", "core", "precast"],
    ),
    (
        "floors",
        &["existing", "stone", "tiled", "hollow-core", "precast"],
    ),
    ("joints", &["curved", "crossing", "skewed"]),
    ("decks", &["parking"]),
    ("wall", &["flexible", "stud", "framed", "shaft"]),
];

pub(super) fn places(sentence: &Sentence<'_>) -> Vec<Found> {
    if let Some(own) = direction(sentence) {
        return vec![own];
    }
    let opening = (0..sentence.tokens.len())
        .filter(|at| {
            // "Required on cut concrete: one coat"
            let required = *at == 1 && sentence.is_any(0, &["required", "needed"]);
            *at == 0 || required || sentence.is_sign(*at - 1, ';')
        })
        .filter_map(|at| place(sentence, at));
    let opening: Vec<Found> = opening
        .chain(bracketed(sentence))
        .chain(in_own_brackets(sentence))
        .chain(case_spoken_of(sentence))
        .collect();
    if opening.is_empty() {
        return kind_only(sentence).into_iter().collect();
    }
    opening
}

/// `Contact not less than 12 mm in the latter case.`: the case of two that a sentence before told.
fn case_spoken_of(sentence: &Sentence<'_>) -> Option<Found> {
    let at = (0..sentence.tokens.len()).find(|at| {
        sentence.is_word(*at, "in")
            && sentence.is_word(at + 1, "the")
            && sentence.is_any(at + 2, &["latter", "former"])
            && sentence.is_any(at + 3, &["case", "cases"])
    })?;
    Some(found(sentence, at, at + 4))
}

/// `For stone panels only, the thickness may be reduced to 3 in.`: the sort of thing that a sentence opens by confining itself to.
fn kind_only(sentence: &Sentence<'_>) -> Option<Found> {
    const LONGEST: usize = 6;
    let only = (2..=LONGEST).find(|at| sentence.is_word(*at, "only"))?;
    let plain = (1..only).all(|at| {
        sentence.amount_at(at).is_none()
            && sentence.has_word(at)
            && !sentence.is_any(
                at,
                &[
                    "joint", "joints", "rating", "ratings", "item", "items", "option", "the",
                ],
            )
    });
    (plain && sentence.is_any(0, &["for", "with", "on", "in"]) && sentence.is_sign(only + 1, ','))
        .then(|| found(sentence, 0, only + 1))
}

/// `at least 600 kg/m3 (walls) or at least 2300 kg/m3 (floors)`: brackets that hold nothing but the part of the building, where another holds another part.
fn bracketed(sentence: &Sentence<'_>) -> Vec<Found> {
    const PARTS: &[&str] = &[
        "wall", "walls", "floor", "floors", "roof", "roofs", "slab", "slabs",
    ];
    let named: Vec<usize> = (1..sentence.tokens.len())
        .filter(|at| {
            sentence.is_any(*at, PARTS)
                && sentence.is_sign(*at - 1, '(')
                && sentence.is_sign(*at + 1, ')')
        })
        .collect();
    let differ = named
        .windows(2)
        .any(|pair| matches!(pair, [one, other] if sentence.word(*one) != sentence.word(*other)));
    // "from the vertical (wall) or horizontal (floor)" shares its number.
    let mut from = 0;
    let own_numbers = named.iter().all(|at| {
        let stretch = core::mem::replace(&mut from, *at)..*at;
        let mut amounts = sentence.amounts.iter();
        amounts.any(|amount| stretch.contains(&amount.first))
    });
    let named = named.into_iter().filter(|_| differ && own_numbers);
    named.map(|at| found(sentence, at, at + 1)).collect()
}

/// `4-1/2 in. thick (2-1/2 in. over fluted deck)`: the places that say, each in brackets, where another number of the same measure holds.
fn in_own_brackets(sentence: &Sentence<'_>) -> Vec<Found> {
    const MOST_WORDS: usize = 3;
    let pairs = sentence.amounts.windows(2).filter_map(|pair| {
        let [before, own] = pair else { return None };
        let open = own.first.checked_sub(1)?;
        let close = sentence.closing(open)?;
        let near = before.last <= open && open - before.last <= MOST_WORDS;
        let last = behind_number(sentence, own.last).filter(|last| *last == close)?;
        (near && own.unit == before.unit).then(|| found(sentence, own.last, last))
    });
    pairs.collect()
}

/// What only words say, for a person to test.
pub(super) fn found(sentence: &Sentence<'_>, first: usize, last: usize) -> Found {
    Found {
        first,
        last,
        expr: Expr::Words(sentence.words(first, last).to_owned()),
        triggers: Vec::new(),
        parts: Vec::new(),
    }
}

fn place(sentence: &Sentence<'_>, first: usize) -> Option<Found> {
    const LONGEST: usize = 6;
    if !sentence.is_any(
        first,
        &["at", "on", "over", "against", "around", "in", "with"],
    ) {
        return None;
    }
    let plain = |at: &usize| {
        sentence.has_word(*at)
            && !sentence.is_any(
                *at,
                &[
                    "the", "each", "every", "all", "both", "this", "these", "no", "shall", "is",
                    "are",
                ],
            )
            && sentence.amount_at(*at).is_none()
    };
    let words = (first + 1..first + 1 + LONGEST).take_while(plain);
    let named = words.clone().filter(|at| names_place(sentence, *at)).last();
    let one_of_several =
        || some_place(sentence, words).filter(|last| !goes_on_anew(sentence, *last));
    let last = named.or_else(one_of_several)? + 1;
    let last = last + usize::from(sentence.is_word(last, "only"));
    // "With a backing of block walls": only a wall itself is a case.
    if sentence.is_word(first, "with") && sentence.has_any(first, last, &["of", "a", "an"]) {
        return None;
    }
    let ends = sentence.is_sign(last, ',')
        || sentence.is_sign(last, ':')
        || sentence.is_any(
            last,
            &[
                "the", "a", "an", "each", "every", "all", "use", "lap", "add", "provide", "no",
                "stop", "turn", "extend", "cut", "carry", "fold", "increase", "reduce", "go",
                "this", "it", "they",
            ],
        );
    ends.then(|| found(sentence, first, last))
}

/// The token behind a place that closes what is said of it: `1 in. onto the wall, 2 in. at mullions`, `20 mm, or 25 mm on masonry`.
pub(super) fn behind_number(sentence: &Sentence<'_>, at: usize) -> Option<usize> {
    const LONGEST: usize = 3;
    // "12 in. wide, centered on mullions" says where every one of them is.
    let laid = at > 0 && sentence.word(at - 1).ends_with("ed");
    if laid || !sentence.is_any(at, &["at", "on", "over", "around"]) {
        return None;
    }
    let plain = |at: &usize| {
        sentence.amount_at(*at).is_none()
            && sentence.has_word(*at)
            && !sentence.is_any(
                *at,
                &["the", "each", "every", "all", "both", "no", "and", "or"],
            )
    };
    let words = (at + 1..at + 1 + LONGEST).take_while(plain);
    let last = words.filter(|at| names_place(sentence, *at)).last()? + 1;
    (!sentence.is_any(last, &["and", "or"])).then_some(last)
}

/// Whether a sentence may end behind the stop of a shortened word, and go on of another thing: `At a butt the ends lap 1/4 in. Clips of 20 gauge steel hold the wool`.
fn goes_on_anew(sentence: &Sentence<'_>, from: usize) -> bool {
    let text = |at: usize| {
        sentence
            .token(at)
            .map_or("", |token| token.span.of(sentence.text))
    };
    let begins = |at: usize| {
        let word = text(at);
        let capital = word.starts_with(char::is_uppercase);
        capital && (word.contains(char::is_lowercase) || sentence.is_sign(at + 1, '-'))
    };
    (from + 1..sentence.tokens.len()).any(|at| text(at - 1).ends_with('.') && begins(at))
}

/// The last word of a place that is one of several wherever there is one: `At a wall,`, `At an inside corner`, and `At walls,` which not every joint comes to. `At
/// a spacing of` says how far apart something is, and `at the wall` speaks of what every joint has.
fn some_place(sentence: &Sentence<'_>, words: impl Iterator<Item = usize>) -> Option<usize> {
    const NOT_PLACES: &[&str] = &[
        "minimum",
        "maximum",
        "min",
        "max",
        "least",
        "most",
        "time",
        "later",
        "rate",
        "right",
        "slight",
        "slope",
        "temperature",
        "level",
        "joint",
        "joints",
        "given",
        "uniform",
        "constant",
        "regular",
        "no",
        "not",
        "all",
        "both",
        "point",
        "stage",
        "pressure",
        "pitch",
        "distance",
        "sufficient",
        "single",
        "suitable",
        "convenient",
        "intervals",
        "installation",
        "test",
    ];
    let words: Vec<usize> = words.collect();
    let (first, last) = (*words.first()?, *words.last()?);
    let article = sentence.is_any(first, &["a", "an"]);
    let bare = last == first && sentence.is_any(first, &["walls"]);
    let at = sentence.is_word(first - 1, "at");
    let measures = |at: &usize| {
        let word = sentence.word(*at).trim_end_matches('s');
        word != "angle" && vocabulary::vocabulary().attribute(word).is_some()
    };
    let refused = words
        .iter()
        .any(|at| sentence.is_any(*at, NOT_PLACES) || measures(at));
    (at && !refused && (article && last > first || bare)).then_some(last)
}

/// `TRACK PARALLEL TO FLUTES: provide plates`: how a wall lies to the flutes, as the label of what follows.
fn direction(sentence: &Sentence<'_>) -> Option<Found> {
    const LONGEST: usize = 9;
    let colon = (0..LONGEST).find(|at| sentence.is_sign(*at, ':'))?;
    let lies = sentence.has_any(0, colon, &["parallel", "perpendicular", "crossing"])
        && sentence.has_any(0, colon, &["flute", "flutes", "ribs", "rib"]);
    let plain = (0..colon).all(|at| {
        sentence.amount_at(at).is_none()
            && !sentence.is_any(at, &["shall", "is", "are", "not", "or", "must"])
    });
    (lies && plain).then(|| found(sentence, 0, colon))
}

fn names_place(sentence: &Sentence<'_>, at: usize) -> bool {
    let kind = KINDS
        .iter()
        .any(|(ground, kinds)| sentence.is_word(at, ground) && sentence.is_any(at - 1, kinds));
    let direction = sentence.is_word(at, "direction") && sentence.is_word(at - 1, "of");
    sentence.is_any(at, PLACES) || kind || direction
}
