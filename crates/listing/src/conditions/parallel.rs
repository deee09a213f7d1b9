//! Cases that a sentence sets side by side, each with a number of its own: "100 mm in floors and 50 mm in walls", "Depth in walls 50 mm, in floors 100 mm",
//! "100 mm in framed walls and 125 mm in concrete walls", "33 percent at the head, 25 percent at vertical joints",
//! "25 gauge for one or two layers, 20 gauge for three layers". And a case of layers that a sentence opens with: "For three or more layers: 20 gauge".
//!
//! Of walls and floors it counts only where both are named, in the same way, and each has a number that measures what the other's does. What the case is,
//! the words say, and a person: whether the joint is in a wall may be known, but a joint between both lies in neither alone. It would misread a seal that
//! goes on from the floor into the wall, and has both depths.

use measure::{Dimension, Unit};

use super::width::is_statement_end;
use super::{Found, places, side_cases};
use crate::model::Expr;
use crate::rules::Sentence;

/// What is set against each other.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Kind {
    /// Walls and floors.
    Construction,
    /// How many layers of board there are.
    Layers,
    /// Which way a joint runs: at the head of a wall, or at its sides.
    Orientation,
    /// Whether a joint moves.
    Movement,
    /// Which layer of several.
    Order,
    /// A place that not every joint has.
    Place,
}

/// A case with what it governs.
struct Case {
    kind: Kind,
    first: usize,
    last: usize,
    triggers: Vec<usize>,
}

/// The cases of a sentence that are set side by side.
pub(super) fn parallels(sentence: &Sentence<'_>) -> Vec<Found> {
    let own: Vec<Found> = counted(sentence)
        .into_iter()
        .map(|(case, _)| found(sentence, &case))
        .collect();
    own
}

/// The amounts that a case governs; none where the condition isn't one.
pub(super) fn governed(sentence: &Sentence<'_>, condition: &Found) -> Option<Vec<usize>> {
    counted(sentence)
        .into_iter()
        .find(|(case, _)| case.first == condition.first && case.last == condition.last)
        .map(|(_, own)| own)
}

fn found(sentence: &Sentence<'_>, case: &Case) -> Found {
    Found {
        first: case.first,
        last: case.last,
        expr: Expr::Words(sentence.words(case.first, case.last).to_owned()),
        triggers: case.triggers.clone(),
        parts: Vec::new(),
    }
}

/// The cases that count, each with its amounts.
fn counted(sentence: &Sentence<'_>) -> Vec<(Case, Vec<usize>)> {
    let mut cases = cases(sentence);
    let alike = |cases: &[Case]| {
        cases
            .windows(2)
            .all(|pair| matches!(pair, [one, other] if one.kind == other.kind))
    };
    if !alike(&cases) {
        cases.retain(|case| !matches!(case.kind, Kind::Movement | Kind::Order | Kind::Place));
    }
    // Kinds of concrete that are set against each other are told by their own words.
    let told = super::kinds::kinds(sentence);
    let is_kind = |case: &Case| {
        told.iter()
            .any(|kind| case.first <= kind.first && kind.last <= case.last)
    };
    if cases.iter().any(is_kind) {
        return Vec::new();
    }
    if let [case] = cases.as_slice()
        && case.kind == Kind::Layers
        && case.first == 0
        && ([',', ':']
            .iter()
            .any(|sign| sentence.is_sign(case.last, *sign))
            || sentence.is_any(case.last, HAS)
            || sentence.is_any(case.last, &["the", "each", "all", "it", "they"]))
    {
        let after = amounts(sentence, case.last, sentence.tokens.len());
        return cases
            .into_iter()
            .map(|case| (case, after.clone()))
            .collect();
    }
    if let [case] = cases.as_slice() {
        let own = set_off(sentence, case);
        return cases
            .into_iter()
            .zip(own)
            .map(|(case, own)| (case, vec![own]))
            .collect();
    }
    let [first, second, ..] = cases.as_slice() else {
        return Vec::new();
    };
    let alike = cases.iter().all(|case| case.kind == first.kind);
    let same_words =
        sentence.words(first.first, first.last) == sentence.words(second.first, second.last);
    if !alike || same_words {
        return Vec::new();
    }
    let leads = amounts(sentence, 0, first.first).is_empty();
    let bounds: Vec<(usize, usize)> = if leads {
        let ends = cases.iter().skip(1).map(|case| case.first);
        let ends = ends.chain([sentence.tokens.len()]);
        cases.iter().map(|case| case.last).zip(ends).collect()
    } else {
        let starts = [0].into_iter().chain(cases.iter().map(|case| case.last));
        starts.zip(cases.iter().map(|case| case.first)).collect()
    };
    let groups: Vec<Vec<usize>> = bounds
        .into_iter()
        .map(|(from, to)| amounts(sentence, from, to))
        .collect();
    let dimension = |index: &usize| Some(sentence.amount(*index)?.unit.dimension());
    let shared: Vec<Dimension> = groups
        .first()
        .into_iter()
        .flatten()
        .filter_map(dimension)
        .filter(|own| {
            groups
                .iter()
                .all(|group| group.iter().any(|index| dimension(index) == Some(*own)))
        })
        .collect();
    let own = |group: Vec<usize>| -> Vec<usize> {
        let mut fitting = group
            .into_iter()
            .filter(|index| dimension(index).is_some_and(|own| shared.contains(&own)));
        // What is said before the number of the first case may be said of both.
        let nearest = if leads {
            fitting.next()
        } else {
            fitting.next_back()
        };
        nearest.into_iter().collect()
    };
    if shared.is_empty() {
        return Vec::new();
    }
    cases
        .into_iter()
        .zip(groups)
        .map(|(case, group)| (case, own(group)))
        .collect()
}

/// `Min 4-1/2 in. thick concrete, 150 mm for hollow-core`: the number of the one case that is set off behind a number of the same measure.
fn set_off(sentence: &Sentence<'_>, case: &Case) -> Option<usize> {
    const REACH: usize = 2;
    let comma = (0..case.first).rev().find(|at| sentence.is_stop(*at))?;
    let parted = [',', ';'].iter().any(|sign| sentence.is_sign(comma, *sign));
    let within = amounts(sentence, comma, case.first);
    let [own] = within.as_slice() else {
        return None;
    };
    let amount = sentence.amount(*own)?;
    let before = amounts(sentence, 0, comma)
        .into_iter()
        .filter_map(|index| sentence.amount(index))
        .any(|other| other.unit.dimension() == amount.unit.dimension());
    let bare = (comma + 1..amount.first).all(|at| {
        sentence.is_any(
            at,
            &["min", "minimum", "max", "maximum", "but", "and", "or"],
        )
    });
    let right_behind = case.first <= sentence.skip_parentheses(amount.last) + REACH;
    let ends = is_statement_end(sentence, case.last);
    let of_ground = matches!(case.kind, Kind::Construction | Kind::Place) && case.first > 0;
    (parted && before && bare && right_behind && ends && of_ground).then_some(*own)
}

/// The amounts between two tokens that no case is made of.
fn amounts(sentence: &Sentence<'_>, from: usize, to: usize) -> Vec<usize> {
    (0..sentence.amounts.len())
        .filter(|index| {
            sentence
                .amount(*index)
                .is_some_and(|amount| from <= amount.first && amount.last <= to)
        })
        .collect()
}

fn cases(sentence: &Sentence<'_>) -> Vec<Case> {
    let mut found: Vec<Case> = walls_of_layers(sentence).into_iter().collect();
    for at in 0..sentence.tokens.len() {
        if found.last().is_none_or(|case| case.last <= at) {
            let case = construction(sentence, at)
                .or_else(|| layers(sentence, at))
                .or_else(|| layers_named(sentence, at))
                .or_else(|| layers_again(sentence, at, found.last()?))
                .or_else(|| orientation(sentence, at))
                .or_else(|| beside(at, Kind::Movement, side_cases::of_movement(sentence, at)))
                .or_else(|| beside(at, Kind::Order, side_cases::of_layer(sentence, at)))
                .or_else(|| beside(at, Kind::Place, places::behind_number(sentence, at)));
            found.extend(case);
        }
    }
    found
}

/// A case that no number makes.
fn beside(first: usize, kind: Kind, last: Option<usize>) -> Option<Case> {
    let last = last?;
    Some(Case {
        kind,
        first,
        last,
        triggers: Vec::new(),
    })
}

/// `in walls`, `for floor joints`.
fn construction(sentence: &Sentence<'_>, at: usize) -> Option<Case> {
    const GROUNDS: &[&str] = &["walls", "floors", "partitions", "roofs"];
    if !sentence.is_any(at, &["in", "for"]) {
        return None;
    }
    let joints = sentence.is_any(at + 1, &["wall", "floor"]) && sentence.is_word(at + 2, "joints");
    let goes_on = sentence.is_any(
        at + 2,
        &[
            "of", "with", "up", "over", "not", "less", "thicker", "thinner",
        ],
    );
    // "in floors and walls" is said of both.
    let of_both = sentence.is_any(at + 2, &["and", "or"]) && sentence.is_any(at + 3, GROUNDS);
    let ground = sentence.is_any(at + 1, GROUNDS) && !goes_on && !of_both;
    let length = if joints { 3 } else { 2 };
    let last = if joints || ground {
        at + length
    } else {
        sort(sentence, at + 1)?
    };
    Some(Case {
        kind: Kind::Construction,
        first: at,
        last,
        triggers: Vec::new(),
    })
}

/// `at the head`, `at vertical joints`.
fn orientation(sentence: &Sentence<'_>, at: usize) -> Option<Case> {
    const EDGES: &[&str] = &["head", "base", "sides", "jambs"];
    if !sentence.is_any(at, &["at", "in"]) {
        return None;
    }
    let first = at + 1 + usize::from(sentence.is_word(at + 1, "the"));
    let joints = sentence.is_any(first, &["vertical", "horizontal", "head"])
        && sentence.is_any(first + 1, &["joint", "joints"]);
    let edge = sentence.is_word(at, "at")
        && sentence.is_any(first, EDGES)
        && !sentence.is_word(first + 1, "of")
        && !(sentence.is_any(first + 1, &["and", "or"])
            && (sentence.is_word(first + 2, "the") || sentence.is_any(first + 2, EDGES)));
    (joints || edge).then(|| Case {
        kind: Kind::Orientation,
        first: at,
        last: first + if joints { 2 } else { 1 },
        triggers: Vec::new(),
    })
}

/// The token behind a sort of construction: `framed walls`, `normal weight concrete`, `hollow-core`, `drywall`.
fn sort(sentence: &Sentence<'_>, first: usize) -> Option<usize> {
    const LONGEST: usize = 4;
    const SORTS: &[&str] = &[
        "framed",
        "stud",
        "concrete",
        "masonry",
        "gypsum",
        "board",
        "block",
        "blockwork",
        "brick",
        "solid",
        "hollow",
        "hollow-core",
        "core",
        "normal",
        "normal-weight",
        "normalweight",
        "weight",
        "light",
        "lightweight",
        "light-weight",
        "precast",
        "aerated",
        "cellular",
        "flexible",
        "rigid",
        "shaft",
        "timber",
        "wood",
        "plank",
    ];
    const ALONE: &[&str] = &[
        "concrete",
        "masonry",
        "drywall",
        "brickwork",
        "blockwork",
        "cmu",
        "hollow-core",
    ];
    const GROUNDS: &[&str] = &[
        "wall",
        "walls",
        "floor",
        "floors",
        "partitions",
        "slabs",
        "planks",
    ];
    let sorts = (first..first + LONGEST)
        .take_while(|at| sentence.is_any(*at, SORTS))
        .count();
    let behind = first + sorts;
    let last = if sorts > 0 && sentence.is_any(behind, GROUNDS) || sentence.is_any(behind, ALONE) {
        behind + 1
    } else {
        behind
    };
    let named = last > behind || sorts > 0 && sentence.is_any(behind.saturating_sub(1), ALONE);
    // "in concrete and masonry walls" is said of both; "in concrete blocks" is of something else.
    let ends = is_statement_end(sentence, last)
        && !(sentence.is_any(last, &["and", "or"])
            && (sentence.is_any(last + 1, SORTS) || sentence.is_any(last + 1, ALONE)))
        || sentence.is_sign(last, ')')
        || sentence.amount_at(last).is_some()
        || sentence.is_any(last, &["min", "minimum", "max", "maximum"]);
    (named && ends).then_some(last)
}

/// Walls of so many layers, in one word.
const HYPHENED: &[&str] = &[
    "one-layer",
    "two-layer",
    "three-layer",
    "four-layer",
    "single-layer",
    "double-layer",
];

/// What says of walls what they have.
const HAS: &[&str] = &[
    "has", "have", "shall", "must", "needs", "need", "requires", "require",
];

/// `A two-layer wall has`, `Walls with one layer:`: walls of so many layers, of which a sentence says something.
fn walls_of_layers(sentence: &Sentence<'_>) -> Option<Case> {
    const WALLS: &[&str] = &["wall", "walls", "partition", "partitions"];
    let article = usize::from(sentence.is_any(0, &["a", "the"]));
    let hyphened = sentence.is_any(article, HYPHENED) && sentence.is_any(article + 1, WALLS);
    let last = article + 2;
    if hyphened {
        let told = sentence.is_any(last, HAS) || sentence.is_sign(last, ':');
        return told.then_some(Case {
            kind: Kind::Layers,
            first: 0,
            last,
            triggers: Vec::new(),
        });
    }
    let walls = sentence.is_any(article, WALLS) && sentence.is_any(article + 1, &["with", "of"]);
    let noun = article + 3;
    let layers = sentence.is_any(noun, &["layer", "layers"]);
    let triggers = amounts(sentence, article + 2, noun + 1);
    // "Walls with two layers shall be used" asks for them.
    let told = sentence.is_sign(noun + 1, ':');
    (walls && layers && told && !triggers.is_empty()).then_some(Case {
        kind: Kind::Layers,
        first: 0,
        last: noun + 1,
        triggers,
    })
}

/// `12 in. with one layer, 9 in. with two, 6 in. with three`: behind a case of layers the number alone names another.
fn layers_again(sentence: &Sentence<'_>, at: usize, before: &Case) -> Option<Case> {
    let again = before.kind == Kind::Layers
        && sentence.is_any(at, &["for", "with"])
        && sentence.word(at) == sentence.word(before.first);
    let last = at + 2;
    let counts = crate::phrase::count_word(sentence.word(at + 1)).is_some();
    let ends = is_statement_end(sentence, last) && !sentence.is_any(last, &["and", "or"]);
    (again && counts && ends).then(|| Case {
        kind: Kind::Layers,
        first: at,
        last,
        triggers: amounts(sentence, at + 1, last),
    })
}

/// `for one or two layers of board`, `in walls with three or more layers`, `in two-layer walls`.
fn layers(sentence: &Sentence<'_>, at: usize) -> Option<Case> {
    const CLAD: &[&str] = &[
        "clad", "faced", "lined", "covered", "sheathed", "built", "boarded", "finished", "made",
        "board", "consist", "consists", "encased", "side",
    ];
    if !sentence.is_any(at, &["in", "for", "with"]) {
        return None;
    }
    if let Some(case) = so_many_or_more(sentence, at) {
        return Some(case);
    }
    let article = usize::from(sentence.is_any(at + 1, &["a", "the"]));
    let compound = at + 1 + article;
    if sentence.is_any(compound, HYPHENED)
        && sentence.is_any(compound + 1, &["wall", "walls", "partition", "partitions"])
    {
        return Some(Case {
            kind: Kind::Layers,
            first: at,
            last: compound + 2,
            triggers: Vec::new(),
        });
    }
    let mut next = at + 1;
    let of_walls = sentence.is_any(next, &["walls", "partitions"])
        && sentence.is_any(next + 1, &["with", "of"]);
    // "clad on each side with two layers" and "laid in two layers" require them.
    let clad = (0..at).any(|at| sentence.is_any(at, CLAD));
    let cased = sentence.is_word(at, "with") && (!clad || follows_limit(sentence, at));
    if !(sentence.is_word(at, "for") || cased || of_walls) {
        return None;
    }
    if of_walls {
        next += 2;
    }
    let noun = (next..next + 6).find(|at| sentence.is_any(*at, &["layer", "layers"]))?;
    let plain = (next..noun).all(|at| {
        sentence.is_any(at, &["or", "more", "and", "to"])
            || sentence.amount_at(at).is_some_and(|index| {
                sentence
                    .amount(index)
                    .is_some_and(|amount| amount.unit == Unit::Count)
            })
    });
    let triggers = amounts(sentence, next, noun + 1);
    let board = sentence.is_word(noun + 1, "of") && sentence.is_word(noun + 2, "board");
    let more = sentence.is_word(noun + 1, "or") && sentence.is_any(noun + 2, &["more", "fewer"]);
    (plain && next < noun && !triggers.is_empty()).then_some(Case {
        kind: Kind::Layers,
        first: at,
        last: noun + 1 + if board || more { 2 } else { 0 },
        triggers,
    })
}

/// `Overlap on board: min 1/2 in. with one layer and min 1 in. with two`: whether what has so many layers closes a limit, and another limit of the sentence is
/// closed so, too.
fn follows_limit(sentence: &Sentence<'_>, at: usize) -> bool {
    let closes = |at: usize| {
        let amount = sentence
            .amounts
            .iter()
            .find(|amount| sentence.skip_parentheses(amount.last) == at);
        let limited = |first: usize| {
            first > 0 && sentence.is_any(first - 1, &["min", "minimum", "max", "maximum"])
        };
        sentence.is_word(at, "with") && amount.is_some_and(|amount| limited(amount.first))
    };
    closes(at) && (0..sentence.tokens.len()).any(|other| other != at && closes(other))
}

/// `one layer: 5/8 in.; two layers: 1-1/4 in.`, `1 in. (one layer), 2 in. (two layers)`: layers by their number alone, where others are named so too. In brackets
/// behind the size of a board they say how many there are.
fn layers_named(sentence: &Sentence<'_>, at: usize) -> Option<Case> {
    const BOARDS: &[&str] = &["board", "boards", "wallboard", "plasterboard", "sheets"];
    let named = |at: usize| {
        let amount = sentence.amount(sentence.amount_at(at)?)?;
        let layers = sentence.is_any(amount.last, &["layer", "layers"]);
        let begins = at.checked_sub(1).is_none_or(|before| {
            ['(', ';', ',']
                .iter()
                .any(|sign| sentence.is_sign(before, *sign))
        });
        let last = amount.last + 1;
        let bracketed = at > 0 && sentence.is_sign(at - 1, '(') && sentence.is_sign(last, ')');
        let boards = sentence.has_any(0, sentence.tokens.len(), BOARDS);
        let told = sentence.is_sign(last, ':') || bracketed && !boards;
        (amount.unit == Unit::Count && layers && begins && told).then_some(last)
    };
    let last = named(at)?;
    let mut others = (0..sentence.tokens.len()).filter(|other| *other != at);
    let another =
        others.any(|other| named(other).is_some() && sentence.word(other) != sentence.word(at));
    another.then(|| Case {
        kind: Kind::Layers,
        first: at,
        last,
        triggers: amounts(sentence, at, last),
    })
}

/// `In two or more layers, splices may be butted`: how a sentence opens that says something of another thing then. What says how the layers themselves are
/// laid, "In two or more layers, each 2 in. thick", asks for them.
fn so_many_or_more(sentence: &Sentence<'_>, at: usize) -> Option<Case> {
    const OF_LAYERS: &[&str] = &[
        "each",
        "all",
        "both",
        "every",
        "with",
        "to",
        "of",
        "min",
        "minimum",
        "max",
        "maximum",
        "laid",
        "staggered",
        "glued",
        "fastened",
        "attached",
        "compressed",
        "installed",
        "applied",
        "cut",
        "tightly",
        "the",
        "for",
        "in",
        "on",
        "at",
        "and",
        "not",
        "total",
        "totaling",
        "totalling",
    ];
    let opens = at == 0 && sentence.is_word(at, "in");
    let amount = sentence
        .amounts
        .first()
        .filter(|amount| opens && amount.first == 1)?;
    let comma = (amount.first..amount.first + 5).find(|at| sentence.is_sign(*at, ','))?;
    let more = (amount.first..comma)
        .any(|at| sentence.is_word(at, "or") && sentence.is_any(at + 1, &["more", "fewer"]));
    let layers = sentence.has_any(amount.first, comma, &["layers", "plies"]);
    let thing = sentence.has_word(comma + 1)
        && sentence.amount_at(comma + 1).is_none()
        && !sentence.is_any(comma + 1, OF_LAYERS);
    (amount.unit == Unit::Count && more && layers && thing).then(|| Case {
        kind: Kind::Layers,
        first: at,
        last: comma,
        triggers: amounts(sentence, at, comma),
    })
}
