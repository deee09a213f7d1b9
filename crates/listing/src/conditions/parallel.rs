//! Cases that a sentence sets side by side, each with a number of its own: "100 mm in floors and 50 mm in walls", "Depth in walls 50 mm, in floors 100 mm",
//! "25 gauge for one or two layers, 20 gauge for three layers". And a case of layers that a sentence opens with: "For three or more layers: 20 gauge".
//!
//! Of walls and floors it counts only where both are named, in the same way, and each has a number that measures what the other's does. What the case is,
//! the words say, and a person: whether the joint is in a wall may be known, but a joint between both lies in neither alone. It would misread a seal that
//! goes on from the floor into the wall, and has both depths.

use measure::{Dimension, Unit};

use super::Found;
use crate::model::Expr;
use crate::rules::Sentence;

/// What is set against each other.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Kind {
    /// Walls and floors.
    Construction,
    /// How many layers of board there are.
    Layers,
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
    let cases = cases(sentence);
    if let [case] = cases.as_slice()
        && case.kind == Kind::Layers
        && case.first == 0
        && [',', ':']
            .iter()
            .any(|sign| sentence.is_sign(case.last, *sign))
    {
        let after = amounts(sentence, case.last, sentence.tokens.len());
        return cases
            .into_iter()
            .map(|case| (case, after.clone()))
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
    let mut found: Vec<Case> = Vec::new();
    for at in 0..sentence.tokens.len() {
        if found.last().is_none_or(|case| case.last <= at) {
            found.extend(construction(sentence, at).or_else(|| layers(sentence, at)));
        }
    }
    found
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
    (joints || ground).then_some(Case {
        kind: Kind::Construction,
        first: at,
        last: at + length,
        triggers: Vec::new(),
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
    let article = usize::from(sentence.is_any(at + 1, &["a", "the"]));
    let compound = at + 1 + article;
    let hyphened = [
        "one-layer",
        "two-layer",
        "three-layer",
        "four-layer",
        "single-layer",
    ];
    if sentence.is_any(compound, &hyphened)
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
    let cased = sentence.is_word(at, "with") && !(0..at).any(|at| sentence.is_any(at, CLAD));
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
    (plain && next < noun && !triggers.is_empty()).then_some(Case {
        kind: Kind::Layers,
        first: at,
        last: noun + 1 + if board { 2 } else { 0 },
        triggers,
    })
}
