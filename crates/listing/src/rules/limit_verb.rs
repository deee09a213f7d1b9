use super::changes::ends_a_change;
use super::comparison_before::negation;
use super::counted_back::is_counted_back;
use super::{Finding, Sentence};
use crate::model::Relation;

#[expect(
    clippy::too_many_lines,
    reason = "the wordings are asked for one after the other, each in a few lines"
)]
pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let first = sentence.amount(index)?.first;
    let floor = sentence.floor(index);
    if let Some(limited) = limited_to_a(sentence, first) {
        return Some(Finding::sure(Relation::AtMost, limited));
    }
    if let Some(only) = only_allowed(sentence, index) {
        return Some(Finding::sure(Relation::AtMost, only));
    }
    let at = skip_articles(sentence, first, floor)?;
    let finding = |relation, from| Some(Finding::sure(relation, from));
    let word = |back: usize| {
        at.checked_sub(back)
            .map(|at| sentence.word(at))
            .unwrap_or_default()
    };
    match (word(1), word(0)) {
        // `shall be raised to 1 in.`, `goes up to 3-1/4 in. for lightweight`
        (_, "to") if demanded_change(sentence, at, floor).is_some() => {
            finding(demanded_change(sentence, at, floor)?, at)
        }
        ("up", "to")
            if matches!(
                word(2),
                "goes"
                    | "go"
                    | "rises"
                    | "rise"
                    | "increases"
                    | "brought"
                    | "built"
                    | "raised"
                    | "taken"
                    | "increased"
                    | "thickened"
                    | "topped"
            ) =>
        {
            None
        }
        // `at the latest 14 days before the work`
        ("the", "latest" | "earliest") if is_counted_back(sentence, sentence.amount(index)?) => {
            finding(
                if word(0) == "latest" {
                    Relation::AtLeast
                } else {
                    Relation::AtMost
                },
                at.checked_sub(1)?,
            )
        }
        // `the certificate lapses in any event after 60 months`
        (_, "after") if ends_by_then(sentence, index, at, floor) => finding(Relation::AtMost, at),
        ("limited" | "restricted" | "confined" | "up", "to")
        | ("upto", _)
        | ("at", "most")
        | ("the", "latest")
        | ("latest", "after") => finding(Relation::AtMost, at.checked_sub(1)?),
        // `the joint is held to 3/4 in. and movement to 25 %`
        ("held" | "kept", "to") if is_of_an_opening(sentence, at, floor) => {
            finding(Relation::AtMost, at.checked_sub(1)?)
        }
        (_, "to") if goes_on_from_a_limit(sentence, index, at) => finding(Relation::AtMost, at),
        // `the spray must reach 13 pcf`; how far something reaches is a place.
        (modal, "reach" | "attain")
            if matches!(modal, "must" | "shall" | "should" | "to")
                && sentence.amount(index)?.unit.dimension() != measure::Dimension::Length =>
        {
            finding(Relation::AtLeast, at)
        }
        (_, "to") if limiting_verb(sentence, at, floor).is_some() => {
            finding(Relation::AtMost, limiting_verb(sentence, at, floor)?)
        }
        // `the joint is limited to 1 in. and the rating to 2 hr`
        ("rating" | "ratings", "to") if sentence.has_any(0, at, &["limited", "restricted"]) => {
            finding(Relation::AtMost, at)
        }
        // `joints to 1 in.`; but `pack joints to 4 in. deep` says how deep.
        ("joints" | "widths" | "gaps" | "lengths" | "openings", "to")
            if stands_ungoverned(sentence, at - 1) && ends_or_is_wide(sentence, index) =>
        {
            finding(Relation::AtMost, at)
        }
        // `vertical shear to 15 mm`
        ("shear" | "movement" | "deflection" | "displacement" | "settlement", "to")
            if opens_with_movement(sentence, at - 1) && ends_or_is_wide(sentence, index) =>
        {
            finding(Relation::AtMost, at)
        }
        // `RH to 90 pct`
        ("rh" | "humidity", "to") => finding(Relation::AtMost, at),
        ("down", "to")
            if matches!(
                word(2),
                "covered"
                    | "permitted"
                    | "allowed"
                    | "accepted"
                    | "widths"
                    | "joints"
                    | "gaps"
                    | "openings"
                    | "thicknesses"
                    | "sizes"
                    | "depths"
                    | "densities"
            ) =>
        {
            finding(Relation::AtLeast, at.checked_sub(1)?)
        }
        ("down", "to")
            if matches!(
                sentence.amount(index)?.unit,
                measure::Unit::Celsius | measure::Unit::Fahrenheit
            ) =>
        {
            finding(Relation::AtLeast, at.checked_sub(1)?)
        }
        // `the sill may come down to 24 in.`
        ("down", "to")
            if matches!(word(2), "come" | "go" | "drop") && matches!(word(3), "may" | "can") =>
        {
            finding(Relation::AtLeast, at.checked_sub(3)?)
        }
        (_, "to") if ends_a_change(sentence, at).is_some() => {
            finding(ends_a_change(sentence, at)?, at - 1)
        }
        // `200 mm, reducible to 100 mm`, `shift may reach 4 in.`
        ("reducible", "to") => finding(Relation::AtLeast, at.checked_sub(1)?),
        ("may" | "can", "reach") => finding(Relation::AtMost, at.checked_sub(1)?),
        ("at", "least") | ("the", "earliest") | ("earliest", "after" | "at") => {
            finding(Relation::AtLeast, at.checked_sub(1)?)
        }
        // `may be reduced to 6 in.` sets the least, `may be widened to 6 in.` the most.
        (_, "to") if allowed_change(sentence, at).is_some() => {
            finding(allowed_change(sentence, at)?, at.checked_sub(1)?)
        }
        ("and", "including") if word(2) == "to" => finding(Relation::AtMost, at.checked_sub(3)?),
        (extreme, "as") if word(2) == "as" => {
            let relation = match extreme {
                "little" | "short" | "low" | "thin" | "narrow" | "small" | "few" | "close"
                | "near" | "shallow" => Relation::AtLeast,
                "much" | "long" | "high" | "thick" | "wide" | "large" | "many" | "far"
                | "great" | "deep" => Relation::AtMost,
                _ => return None,
            };
            finding(relation, at.checked_sub(2)?)
        }
        _ => exceed_by(sentence, at, floor),
    }
}

/// `limited to a hollow of 2 mm`
fn limited_to_a(sentence: &Sentence<'_>, first: usize) -> Option<usize> {
    let verb = first.checked_sub(5)?;
    let limited = sentence.is_any(verb, &["limited", "restricted"])
        && sentence.is_word(verb + 1, "to")
        && sentence.is_any(verb + 2, &["a", "an"])
        && sentence.is_word(verb + 4, "of");
    limited.then_some(verb)
}

/// Whether what is held to a size is a space or a movement, and no thing that may be held to its place.
fn is_of_an_opening(sentence: &Sentence<'_>, to: usize, floor: usize) -> bool {
    const REACH: usize = 6;
    const OPENINGS: &[&str] = &[
        "joint",
        "joints",
        "width",
        "gap",
        "gaps",
        "opening",
        "movement",
        "spacing",
        "deflection",
    ];
    sentence.has_any(floor.max(to.saturating_sub(REACH)), to, OPENINGS)
}

/// `limited to 1 in. and the rating to 2 hr`: the second goes on from the first, which its verb limits.
fn goes_on_from_a_limit(sentence: &Sentence<'_>, index: usize, to: usize) -> bool {
    const LONGEST: usize = 4;
    const LIMITED: &[&str] = &["limited", "restricted", "confined", "held", "kept"];
    let Some(before) = index
        .checked_sub(1)
        .and_then(|before| sentence.amount(before))
    else {
        return false;
    };
    let from = sentence.skip_parentheses(before.last);
    let from = from + usize::from(sentence.is_sign(from, ',') && sentence.is_word(from + 1, "and"));
    let named = (from + 1..to).all(|at| {
        sentence
            .token(at)
            .is_some_and(|token| token.word().is_some())
    });
    let joined =
        sentence.is_word(from, "and") && (from + 2..=from + 1 + LONGEST).contains(&to) && named;
    joined
        && before.first >= 2
        && sentence.is_word(before.first - 1, "to")
        && sentence.is_any(before.first - 2, LIMITED)
}

/// `we would limit movement to 19 percent`: the verb, where it isn't the noun of "the limit".
fn limiting_verb(sentence: &Sentence<'_>, to: usize, floor: usize) -> Option<usize> {
    const REACH: usize = 6;
    const MODALS: &[&str] = &["would", "should", "shall", "must", "to", "will", "we"];
    let verb = (floor.max(to.saturating_sub(REACH))..to)
        .rev()
        .take_while(|at| !sentence.is_stop(*at))
        .find(|at| {
            sentence.is_any(
                *at,
                &[
                    "limit",
                    "restrict",
                    "confine",
                    "limited",
                    "restricted",
                    "confined",
                ],
            )
        })?;
    let limited = sentence.is_any(verb, &["limited", "restricted", "confined"]);
    if limited {
        return (verb > 0 && sentence.is_any(verb - 1, &["have", "has", "had"])).then_some(verb);
    }
    let opens = verb == 0 || sentence.is_stop(verb - 1) || sentence.is_sign(verb - 1, '.');
    (opens || sentence.is_any(verb - 1, MODALS)).then_some(verb)
}

/// `may be reduced to 6 in.`, `may be cut back to`, `a reduction to 3 in. is allowed`: how far a change may go. "Shall be reduced to 6 in." says
/// what it becomes, and limits nothing.
fn allowed_change(sentence: &Sentence<'_>, to: usize) -> Option<Relation> {
    const DOWN: &[&str] = &[
        "reduced",
        "decreased",
        "lowered",
        "narrowed",
        "shortened",
        "thinned",
        "dropped",
    ];
    const UP: &[&str] = &[
        "increased",
        "raised",
        "extended",
        "widened",
        "lengthened",
        "enlarged",
    ];
    const REACH: usize = 8;
    let verb = if sentence.is_any(to.checked_sub(1)?, &["back", "down"])
        && sentence.is_any(to.checked_sub(2)?, &["cut", "brought", "taken", "set"])
    {
        to - 2
    } else {
        to - 1
    };
    let may = || {
        sentence.is_word(verb.saturating_sub(1), "be")
            && sentence.is_any(verb.saturating_sub(2), &["may", "can"])
    };
    let allowed = || {
        let stretch = (to + 1..to + 1 + REACH).take_while(|at| !sentence.is_stop(*at));
        stretch.into_iter().any(|at| {
            sentence.is_any(at, &["is", "are"])
                && sentence.is_any(
                    at + 1,
                    &[
                        "allowed",
                        "permitted",
                        "accepted",
                        "acceptable",
                        "admissible",
                    ],
                )
        })
    };
    let down = verb < to - 1 || sentence.is_any(verb, DOWN);
    if (down && may()) || (sentence.is_word(verb, "reduction") && allowed()) {
        Some(Relation::AtLeast)
    } else if (sentence.is_any(verb, UP) && may())
        || (sentence.is_word(verb, "increase") && allowed())
    {
        Some(Relation::AtMost)
    } else {
        None
    }
}

/// `the lap shall be raised to 1 in.`, `reduce the spacing to 300 mm`: what must be more becomes the least, what must be closer or less the most. A
/// depth that is reduced, or a spacing that is increased, becomes just that, and so does a time.
fn demanded_change(sentence: &Sentence<'_>, to: usize, floor: usize) -> Option<Relation> {
    const UP: &[&str] = &[
        "increased",
        "raised",
        "doubled",
        "deepened",
        "thickened",
        "increase",
        "raise",
        "double",
        "goes",
        "go",
        "rises",
        "rise",
    ];
    const DOWN: &[&str] = &[
        "reduced",
        "decreased",
        "lowered",
        "reduce",
        "decrease",
        "lower",
        "falls",
        "fall",
        "drops",
        "drop",
        "cut",
    ];
    // What is the worse for being more.
    const APART: &[&str] = &[
        "spacing",
        "spaced",
        "spacings",
        "centres",
        "centers",
        "interval",
        "intervals",
        "movement",
        "shear",
        "distance",
        "gap",
        "width",
        "height",
        "rating",
        "class",
        "time",
    ];
    const REACH: usize = 6;
    let verb = (floor.max(to.saturating_sub(REACH))..to)
        .rev()
        .take_while(|at| !sentence.is_sign(*at, ';') && !sentence.is_sign(*at, ':'))
        .find(|at| sentence.is_any(*at, UP) || sentence.is_any(*at, DOWN))?;
    let between_plain = (verb + 1..to).all(|at| {
        sentence.is_any(
            at,
            &["the", "a", "up", "back", "down", "its", "their", "each"],
        ) || sentence.is_any(at, APART)
            || sentence.is_sign(at, ',')
            || sentence.is_any(
                at,
                &[
                    "depth",
                    "thickness",
                    "lap",
                    "overlap",
                    "embedment",
                    "density",
                ],
            )
    });
    let start = (0..verb)
        .rev()
        .find(|at| sentence.is_sign(*at, ';'))
        .map_or(0, |at| at + 1);
    // "Where the joint width exceeds 2 in., increase to 4 in.": the case is no part of what is changed.
    let worse = (start..to).any(|at| sentence.is_any(at, APART) && !sentence.in_condition(at));
    let may = sentence.has_any(start, verb, &["may", "can", "not", "never"]);
    let timed = sentence.amounts.iter().any(|amount| {
        amount.first > to
            && amount.first <= to + 4
            && amount.unit.dimension() == measure::Dimension::Time
    });
    // `the packing goes down to 4 in. above the floor` says where it ends.
    let down = sentence.has_any(verb + 1, to, &["down", "back"]);
    if !between_plain || may || timed || down && sentence.is_any(verb, UP) {
        return None;
    }
    match (sentence.is_any(verb, UP), worse) {
        (true, false) => Some(Relation::AtLeast),
        (false, true) => Some(Relation::AtMost),
        _ => None,
    }
}

/// `only one of the two walls may be of board`, `only two splices are permitted in a bay`: no more than so many.
fn only_allowed(sentence: &Sentence<'_>, index: usize) -> Option<usize> {
    const REACH: usize = 8;
    let amount = sentence
        .amount(index)
        .filter(|amount| amount.unit == measure::Unit::Count)?;
    let only = amount
        .first
        .checked_sub(1)
        .filter(|at| sentence.is_word(*at, "only"))?;
    let mut stretch = (amount.last..amount.last + REACH).take_while(|at| !sentence.is_stop(*at));
    let allowed = stretch.any(|at| {
        sentence.is_any(at, &["may", "can"])
            || sentence.is_any(at, &["is", "are"])
                && sentence.is_any(at + 1, &["allowed", "permitted", "accepted", "admissible"])
    });
    allowed.then_some(only)
}

/// Whether a noun is nothing's object: "*fill* joints to 4 in." says how far they are filled.
fn stands_ungoverned(sentence: &Sentence<'_>, noun: usize) -> bool {
    noun == 0
        || sentence
            .token(noun - 1)
            .is_none_or(|token| token.word().is_none())
        || sentence.is_any(noun - 1, &["for", "in", "of", "all", "at"])
}

/// Whether what something has lasted by a time ends it: "expires after 24 months". What ends may end only by the stricter of two, and is denied by no "not".
fn ends_by_then(sentence: &Sentence<'_>, index: usize, after: usize, floor: usize) -> bool {
    const ENDS: &[&str] = &["lapses", "lapse", "expires", "expire"];
    const REACH: usize = 6;
    let calendar = sentence
        .amount(index)
        .is_some_and(|amount| amount.unit.dimension() == measure::Dimension::CalendarTime);
    let verb = (floor.max(after.saturating_sub(REACH))..after)
        .rev()
        .find(|at| sentence.is_any(*at, ENDS));
    calendar && verb.is_some_and(|verb| negation(sentence, verb + 1, floor).is_none())
}

/// Whether a movement opens its statement with nothing before it but the way it goes: "vertical shear".
fn opens_with_movement(sentence: &Sentence<'_>, noun: usize) -> bool {
    const WAYS: &[&str] = &[
        "vertical",
        "horizontal",
        "lateral",
        "longitudinal",
        "transverse",
        "in-plane",
        "out-of-plane",
        "differential",
        "relative",
    ];
    let start = (0..noun)
        .rev()
        .find(|at| !sentence.is_any(*at, WAYS))
        .map_or(0, |at| at + 1);
    start == 0 || sentence.is_stop(start - 1) || sentence.is_sign(start - 1, '.')
}

/// Whether nothing follows a number in its stretch but "wide".
fn ends_or_is_wide(sentence: &Sentence<'_>, index: usize) -> bool {
    sentence.amount(index).is_some_and(|amount| {
        let after = sentence.skip_parentheses(amount.last);
        sentence
            .token(after)
            .is_none_or(|token| token.word().is_none())
            || sentence.is_any(after, &["wide", "only", "may", "can"])
    })
}

/// The token before any articles and fillers that stand before an amount.
fn skip_articles(sentence: &Sentence<'_>, first: usize, floor: usize) -> Option<usize> {
    let mut at = first.checked_sub(1)?;
    while at > floor
        && sentence.is_any(
            at,
            &["a", "an", "the", "some", "same", "total", "of", "however"],
        )
        && first - at < 4
    {
        at -= 1;
    }
    Some(at)
}

/// `shall not exceed the box by more than` is read elsewhere; here `not exceed ... by 2 in.`
fn exceed_by(sentence: &Sentence<'_>, at: usize, floor: usize) -> Option<Finding> {
    if !sentence.is_word(at, "by") {
        return None;
    }
    let exceed = (floor..at)
        .rev()
        .take(8)
        .find(|at| sentence.is_any(*at, &["exceed", "exceeding"]))?;
    negation(sentence, exceed, floor).map(|from| Finding::sure(Relation::AtMost, from))
}
