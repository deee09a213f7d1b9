use measure::Dimension;

use super::counted_back::is_counted_back;
use super::denied::{carried_negation, denied_deviation, second_verb_denied};
use super::ruled_out::is_ruled_out;
use super::turned_down::{is_taken_away, is_turned_down};
use super::{Finding, Sentence};
use crate::conditions::not_yet;
use crate::model::Relation;

/// Comparatives that point up: a thing compared so is more than the number.
const UP: &[&str] = &[
    "more", "greater", "thicker", "wider", "deeper", "longer", "higher", "farther", "further",
    "larger", "heavier", "later", "taller", "denser", "bigger", "coarser", "older", "stronger",
    "steeper", "broader", "warmer", "hotter", "slower", "better", "damper", "wetter",
];
/// Comparatives that point down.
const DOWN: &[&str] = &[
    "less",
    "fewer",
    "thinner",
    "narrower",
    "shallower",
    "shorter",
    "lower",
    "closer",
    "smaller",
    "lighter",
    "sooner",
    "earlier",
    "nearer",
    "finer",
    "cooler",
    "colder",
    "slimmer",
    "faster",
    "younger",
    "drier",
];
/// Words that compare without "than".
const UP_ALONE: &[&str] = &[
    "over",
    "above",
    "exceeding",
    "exceeds",
    "exceed",
    "beyond",
    "pass",
    "passes",
    "surpass",
    "excess",
];
const DOWN_ALONE: &[&str] = &["under", "below"];
/// Words that turn a comparison round.
pub(crate) const NEGATIONS: &[&str] = &[
    "not",
    "no",
    "never",
    "nor",
    "neither",
    "nowhere",
    "cannot",
    "none",
    "nothing",
    "without",
    "don't",
    "don’t",
    "doesn't",
    "doesn’t",
    "won't",
    "won’t",
    "can't",
    "can’t",
    "mustn't",
    "mustn’t",
    "shouldn't",
    "shouldn’t",
    "isn't",
    "isn’t",
    "aren't",
    "aren’t",
];

/// How far before a comparison its negation may stand.
const REACH: usize = 14;

/// Whether a word compares upwards: "thicker".
pub(crate) fn compares_up(word: &str) -> bool {
    UP.contains(&word)
}

/// Whether a word compares downwards: "thinner".
pub(crate) fn compares_down(word: &str) -> bool {
    DOWN.contains(&word)
}

#[expect(
    clippy::too_many_lines,
    reason = "the wordings are asked for one after the other, each in a few lines"
)]
pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let first = sentence.amount(index)?.first;
    let floor = sentence.floor(index);
    let mut at = first.checked_sub(1)?;
    // `Depth of packing not less than: 100 mm`
    if sentence.is_sign(at, ':') && at > floor && sentence.is_word(at - 1, "than") {
        at -= 1;
    }
    // `not less than a total of 4 in.`, `of not over the 2 in.`
    while at > floor
        && (sentence.is_any(at, &["of", "a", "an", "the", "total", "about"])
            || sentence.is_sign(at, '+'))
        && at > first.saturating_sub(4)
    {
        at -= 1;
    }
    // `jointed no closer than every 900 mm`
    if at > floor && sentence.is_any(at, &["every", "each"]) && sentence.is_word(at - 1, "than") {
        at -= 1;
    }
    if let Some(finding) = not_before(sentence, index).or_else(|| kept_from(sentence, index)) {
        return Some(finding);
    }
    if let Some(from) = neither(sentence, at) {
        return Some(Finding::sure(Relation::Exactly, from));
    }
    if let Some(finding) = after_nor(sentence, at) {
        return Some(finding);
    }
    if is_placed(sentence, index, at, floor) || is_gone_past(sentence, at, floor) {
        return None;
    }
    let (relation, from) = above_or_below(sentence, index, at, floor)
        .or_else(|| than(sentence, at, floor))
        .or_else(|| than_plus(sentence, at, floor))
        .or_else(|| alone(sentence, at, first))?;
    if relation == Relation::AtLeast && sentence.is_word(from, "at") {
        return Some(Finding::sure(relation, from));
    }
    // "may be walked on after 3 days"
    let near = from.saturating_sub(7).max(floor);
    // "Paint after 72 hours."
    let told =
        sentence.is_any(0, &["paint", "overcoat", "recoat", "load", "walk", "sand"]) && near == 0;
    let allowed =
        sentence.is_word(from, "after") && (told || sentence.has_any(near, from, &["may", "can"]));
    if allowed {
        return Some(Finding::sure(Relation::AtLeast, from));
    }
    if matches!(sentence.word(from), "before" | "after") {
        return negation(sentence, from, floor)
            .and_then(|at| Some(Finding::sure(relation.negated()?, at)));
    }
    if let Some((relation, from)) = at_or(sentence, at) {
        return Some(Finding::sure(relation, from));
    }
    if let Some(negation) = second_verb_denied(sentence, index, from) {
        return Some(Finding::sure(relation.negated()?, negation));
    }
    let strict = matches!(relation, Relation::MoreThan | Relation::LessThan);
    if strict && is_taken_away(sentence, index) && !is_refused(sentence, index) {
        return None;
    }
    if strict
        && (is_refused(sentence, index)
            || is_ruled_out(sentence, index)
            || is_turned_down(sentence, index))
    {
        return Some(Finding::sure(relation.negated()?, from));
    }
    if let Some(negation) = sentence.forbidding(first) {
        return Some(Finding::sure(relation.negated()?, negation));
    }
    if strict && work_stops(sentence, index, from) {
        return Some(Finding::sure(relation.negated()?, from));
    }
    if let Some(negation) = negation(sentence, from, floor)
        .or_else(|| carried_negation(sentence, index, from, floor))
        .or_else(|| denied_deviation(sentence, from))
    {
        return Some(Finding::sure(relation.negated()?, negation));
    }
    if strict && names_a_case(sentence, index, from, floor) {
        return None;
    }
    // `The wall may be taller than 4 m provided ...` limits nothing.
    let free = strict
        && (from.saturating_sub(4).max(floor)..from).any(|at| {
            sentence.is_any(at, &["may", "can"]) && sentence.is_any(at + 1, &["be", "have"])
        });
    if free {
        return None;
    }
    let place_or_size = matches!(
        sentence.amount(index)?.unit.dimension(),
        Dimension::Length | Dimension::Count | Dimension::Gauge
    );
    if !place_or_size {
        return Some(Finding::sure(relation, from));
    }
    // `over 1 in. of packing` may be the preposition; without a negation, only a comparative with "than" is sure.
    let named =
        at > floor && sentence.is_any(at - 1, &["length", "width", "depth", "thickness", "height"]);
    let stays = at > floor && sentence.is_any(at - 1, &["stay", "stays", "remain", "remains"]);
    if named
        || stays
        || sentence.is_word(at, "than")
        || sentence.is_any(at, &["exceeding", "exceeds", "exceed", "excess"])
        || sentence.is_word(at, "to")
    {
        return Some(Finding::sure(relation, from));
    }
    None
}

/// `Spraying stops below 45 F`, `work is suspended below 40 F and above 100 F`: what is worked in is the rest.
fn work_stops(sentence: &Sentence<'_>, index: usize, from: usize) -> bool {
    const STOPS: &[&str] = &[
        "stop",
        "stops",
        "stopped",
        "cease",
        "ceases",
        "ceased",
        "halt",
        "halts",
        "halted",
        "suspended",
        "discontinued",
    ];
    let of_weather = sentence.amount(index).is_some_and(|amount| {
        matches!(
            amount.unit.dimension(),
            Dimension::Temperature | Dimension::Fraction
        )
    });
    let before = (from.saturating_sub(REACH)..from).rev();
    of_weather
        && before
            .take_while(|at| !sentence.is_stop(*at))
            .any(|at| sentence.is_any(at, STOPS))
}

/// `Joints narrower than 1/2 in. cannot be packed`, `sealant depth over 1 in. cracks`: what a sentence speaks of is no requirement, whatever it says of
/// it. What it would misread: a subject that is told apart only behind its number, "depth over 4 in. is required".
fn names_a_case(sentence: &Sentence<'_>, index: usize, from: usize, floor: usize) -> bool {
    const VERBS: &[&str] = &[
        "shall",
        "must",
        "should",
        "may",
        "can",
        "cannot",
        "will",
        "is",
        "are",
        "was",
        "were",
        "be",
        "do",
        "does",
        "has",
        "have",
        "had",
        "don't",
        "don’t",
        "doesn't",
        "doesn’t",
        "can't",
        "can’t",
        "need",
        "needs",
        "require",
        "requires",
        "fall",
        "falls",
        "lie",
        "lies",
        "stop",
        "stops",
        "call",
        "calls",
        "qualify",
        "qualifies",
        "count",
        "counts",
        "want",
        "wants",
        "get",
        "gets",
        "take",
        "takes",
        "void",
        "voids",
    ];
    let Some(amount) = sentence.amount(index) else {
        return false;
    };
    // A semicolon begins another statement.
    let start = (floor..from)
        .rev()
        .find(|at| sentence.is_sign(*at, ';'))
        .map(|at| at + 1);
    let start = start.or((floor == 0).then_some(0));
    // `While depth exceeds 4 in., density is ...`, `Given joints greater than 2 in., ...`
    let next = sentence.skip_parentheses(amount.last);
    let supposes = start.is_some_and(|start| opens_a_case(sentence, start))
        && (next..next + 4)
            .find(|at| sentence.is_stop(*at))
            .is_some_and(|at| sentence.is_sign(at, ','));
    if supposes {
        return true;
    }
    let opens = start.is_some_and(|start| {
        (start < from
            || start == from
                && (compares_up(sentence.word(from)) || compares_down(sentence.word(from))))
            && (start..from).all(|at| {
                !sentence.is_stop(at)
                    && !sentence.is_any(at, VERBS)
                    && !sentence.is_any(at, NEGATIONS)
            })
    });
    // What is counted stands behind its count.
    let counted = usize::from(amount.unit.dimension() == Dimension::Count);
    let next = sentence.skip_parentheses(amount.last) + counted;
    let mut behind = (next..amount.last + REACH).take_while(|at| {
        sentence.token(*at).is_some()
            && !sentence.is_stop(*at)
            && !sentence.is_any(*at, &["and", "but", "or"])
    });
    opens
        && (start.is_some_and(|start| start < from) && !may_follow(sentence, next)
            || behind.any(|at| sentence.is_any(at, VERBS)))
}

/// Whether words that only suppose something begin at a token.
fn opens_a_case(sentence: &Sentence<'_>, start: usize) -> bool {
    let event = sentence.is_word(start, "in")
        && sentence.is_any(start + 1, &["the", "any"])
        && sentence.is_any(start + 2, &["event", "case"]);
    let soon = sentence.is_word(start, "as") && sentence.is_word(start + 1, "soon");
    event
        || soon
        || sentence.is_any(
            start,
            &[
                "while",
                "given",
                "once",
                "upon",
                "assuming",
                "supposing",
                "with",
                "whenever",
                "should",
            ],
        )
}

/// Whether a word behind a number still tells of the number, and says of nothing what it does: "deep", "at the head", "required". A verb is any other.
#[expect(
    clippy::too_many_lines,
    reason = "the wordings are asked for one after the other, each in a few lines"
)]
fn may_follow(sentence: &Sentence<'_>, at: usize) -> bool {
    const TELLING: &[&str] = &[
        // what the number measures
        "deep",
        "thick",
        "thk",
        "wide",
        "high",
        "tall",
        "long",
        "apart",
        "thickness",
        "depth",
        "width",
        "height",
        "length",
        "density",
        "compression",
        "spacing",
        "on",
        "o.c",
        "o.c.",
        "oc",
        "center",
        "centers",
        "centre",
        "centres",
        "nominal",
        "nom",
        "min",
        "minimum",
        "max",
        "maximum",
        "total",
        "overall",
        "each",
        "wet",
        "dry",
        "clear",
        "net",
        "gross",
        "actual",
        "approx",
        "approximately",
        "or",
        "and",
        "but",
        "nor",
        "more",
        "less",
        "only",
        // where and when it holds
        "at",
        "in",
        "into",
        "of",
        "to",
        "from",
        "for",
        "with",
        "without",
        "within",
        "by",
        "over",
        "under",
        "above",
        "below",
        "beneath",
        "beyond",
        "behind",
        "between",
        "around",
        "along",
        "across",
        "through",
        "throughout",
        "against",
        "onto",
        "per",
        "as",
        "than",
        "when",
        "where",
        "wherever",
        "whenever",
        "if",
        "unless",
        "until",
        "while",
        "during",
        "after",
        "before",
        "except",
        "save",
        "both",
        "all",
        "every",
        "everywhere",
        "anywhere",
        "always",
        "measured",
        "required",
        "needed",
        "compressed",
        "uncompressed",
        "installed",
        "applied",
        "which",
        "that",
        "whichever",
        "plus",
        "x",
    ];
    sentence
        .token(at)
        .is_none_or(|token| token.word().is_none())
        || sentence.is_any(at, TELLING)
        || sentence.amount_at(at).is_some()
}

/// `neither more nor less than 2 in.`: that and nothing else.
fn neither(sentence: &Sentence<'_>, at: usize) -> Option<usize> {
    // `no more, no less than 2 in.`
    let parted = usize::from(
        at >= 5 && sentence.is_sign(at - 3, ',') && sentence.is_any(at - 2, &["no", "nor"]),
    );
    let from = at.checked_sub(4 + parted)?;
    let pair = |one: usize, other: usize| {
        sentence.is_any(one, UP) && sentence.is_any(other, DOWN)
            || sentence.is_any(one, DOWN) && sentence.is_any(other, UP)
    };
    let words = sentence.is_word(at, "than")
        && sentence.is_any(from, &["neither", "no", "not"])
        && (parted == 1 || sentence.is_any(at - 2, &["nor", "or"]));
    (words && pair(from + 1, at - 1)).then_some(from)
}

/// `1-1/2 in. below the track, but no lower than 4 in.`: lower by a distance, which is more of it.
fn is_placed(sentence: &Sentence<'_>, index: usize, at: usize, floor: usize) -> bool {
    const REACH: usize = 12;
    // `no higher than 300 mm beneath it` says itself from where.
    let says_where = sentence.amount(index).is_some_and(|amount| {
        sentence.is_any(
            sentence.skip_parentheses(amount.last),
            &["below", "beneath", "above"],
        )
    });
    if says_where {
        return false;
    }
    let start = floor.saturating_sub(REACH);
    let placed = |place: &[&str]| {
        sentence.amounts.iter().any(|amount| {
            (start..at).contains(&amount.first)
                && sentence.is_any(sentence.skip_parentheses(amount.last), place)
        })
    };
    let past = |word: &str, place: &[&str]| {
        at > 0 && sentence.is_word(at, "than") && sentence.is_word(at - 1, word) && placed(place)
    };
    past("lower", &["below", "under", "beneath"]) || past("higher", &["above", "over"])
}

/// `no higher than 305 mm beneath the floor`: what is less high there lies deeper, and is more of that distance. So is what is later than a time before
/// something less of that time.
fn above_or_below(
    sentence: &Sentence<'_>,
    index: usize,
    at: usize,
    floor: usize,
) -> Option<(Relation, usize)> {
    let amount = sentence.amount(index)?;
    let below = sentence.is_any(
        sentence.skip_parentheses(amount.last),
        &["below", "beneath"],
    );
    let comparative = at
        .checked_sub(1)
        .filter(|_| sentence.is_word(at, "than") && at > floor)?;
    match sentence.word(comparative) {
        "higher" if below => Some((Relation::LessThan, comparative)),
        "lower" if below => Some((Relation::MoreThan, comparative)),
        "later" if is_counted_back(sentence, amount) => Some((Relation::LessThan, comparative)),
        "earlier" | "sooner" if is_counted_back(sentence, amount) => {
            Some((Relation::MoreThan, comparative))
        }
        _ => None,
    }
}

/// `not to exceed 1/360 of the span, nor 12 mm`: what is denied of one number is denied of the next.
fn after_nor(sentence: &Sentence<'_>, at: usize) -> Option<Finding> {
    if !sentence.is_word(at, "nor") {
        return None;
    }
    let lowest = at.saturating_sub(REACH);
    let comparison = (lowest..at)
        .rev()
        .take_while(|at| !sentence.is_sign(*at, ';'))
        .find(|at| {
            sentence.is_any(*at, &["exceed", "exceeds", "exceeding", "than"])
                || passes(sentence, *at)
        })?;
    let (relation, from) = if sentence.is_word(comparison, "than") {
        than(sentence, comparison, 0)?
    } else {
        (Relation::MoreThan, comparison)
    };
    negation(sentence, from, 0)?;
    Some(Finding::sure(relation.negated()?, at))
}

/// `not to pass span/360`: past a share of a length, which has no number of its own; what passes through or over something does another thing.
fn passes(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.is_any(at, &["pass", "passes", "surpass"])
        && (sentence.word(at + 1).starts_with("span") || sentence.amount_at(at + 1).is_some())
}

/// `go beyond 60 percent and you will tear it`: what would happen, which limits the other way.
fn is_gone_past(sentence: &Sentence<'_>, at: usize, floor: usize) -> bool {
    at > 0
        && negation(sentence, at, floor).is_none()
        && sentence.forbidding(at).is_none()
        && sentence.is_any(at, &["beyond", "over", "above", "under", "below", "past"])
        && sentence.is_any(
            at - 1,
            &[
                "go", "goes", "going", "get", "gets", "stray", "drop", "drops",
            ],
        )
}

/// `shall not be painted before it has stood for 36 hours`: it stands that long at least.
fn not_before(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    const REACH: usize = 8;
    let amount = sentence
        .amount(index)
        .filter(|amount| amount.unit.dimension() == Dimension::Time)?;
    let floor = sentence.floor(index);
    let before = (floor.max(amount.first.saturating_sub(REACH))..amount.first)
        .rev()
        .find(|at| sentence.is_any(*at, &["before", "until"]))?;
    let plain = (before + 1..amount.first).all(|at| {
        sentence.is_any(
            at,
            &[
                "it", "they", "has", "have", "had", "lapse", "of", "expiry", "end", "stood",
                "cured", "dried", "aged", "been", "for", "a", "the", "full", "lasted", "sat",
            ],
        )
    });
    // "It is forbidden to walk on the joint before the lapse of 7 days."
    let forbidden = || {
        (floor..before)
            .rev()
            .find(|at| sentence.is_any(*at, &["forbidden", "prohibited"]))
    };
    let negation = negation(sentence, before, floor)
        .or_else(forbidden)
        .filter(|_| plain)?;
    Some(Finding::sure(Relation::AtLeast, negation))
}

/// `shall not be walked on for 24 hours`: it is kept from that for so long at least.
fn kept_from(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    const DISTURBED: &[&str] = &[
        "walked",
        "trafficked",
        "loaded",
        "disturbed",
        "touched",
        "wetted",
        "painted",
        "covered",
        "cycled",
        "stripped",
    ];
    let amount = sentence.amount(index).filter(|amount| {
        amount.unit.dimension() == Dimension::Time
            || amount.unit.dimension() == Dimension::CalendarTime
    })?;
    let floor = sentence.floor(index);
    let lead = amount.first.checked_sub(1).map(|at| {
        if sentence.is_any(at, &["a", "the", "first"]) {
            at.saturating_sub(1)
        } else {
            at
        }
    })?;
    // `shall not be coated when the slab has not aged 28 days`
    let forbidding = sentence.forbidding(amount.first);
    if let Some(negation) = forbidding.filter(|_| {
        (floor..amount.first).any(|at| not_yet(sentence, at).is_some_and(|end| end >= lead))
    }) {
        return Some(Finding::sure(Relation::AtLeast, negation));
    }
    // `once 2 h have passed`
    let passed = sentence.is_any(lead, &["once", "after"])
        && sentence.is_any(amount.last, &["have", "has"])
        && sentence.is_any(amount.last + 1, &["passed", "elapsed", "gone"]);
    if passed {
        return Some(Finding::sure(Relation::AtLeast, lead));
    }
    if let Some(told) = told_to_keep_off(sentence, floor, lead) {
        return Some(Finding::sure(Relation::AtLeast, told));
    }
    let verb = (floor..lead)
        .rev()
        .take(5)
        .find(|at| sentence.is_any(*at, DISTURBED))?;
    let denied = sentence.is_any(lead, &["for", "during"])
        && verb > 1
        && sentence.is_word(verb - 1, "be")
        && sentence.is_word(verb - 2, "not");
    denied.then(|| Finding::sure(Relation::AtLeast, verb - 2))
}

/// `Do not paint for 7 d`, `No traffic for 3 days`: the denial, where only what is kept off stands between it and "for".
fn told_to_keep_off(sentence: &Sentence<'_>, floor: usize, lead: usize) -> Option<usize> {
    const REACH: usize = 5;
    const OFF: &[&str] = &[
        "paint", "painting", "walk", "walking", "load", "loads", "loading", "disturb", "touch",
        "wet", "cover", "cycle", "strip", "open", "coat", "traffic",
    ];
    const BESIDE: &[&str] = &[
        "foot",
        "vehicle",
        "vehicular",
        "on",
        "the",
        "it",
        "or",
        "sealant",
        "seal",
        "joint",
        "coating",
    ];
    let denial = (floor..lead)
        .rev()
        .take(REACH)
        .find(|at| sentence.is_any(*at, &["not", "never", "no", "don't", "don’t"]))?;
    let told = sentence.is_any(denial, &["no", "never", "don't", "don’t"])
        || denial > 0 && sentence.is_word(denial - 1, "do");
    let off = (denial + 1..lead).any(|at| sentence.is_any(at, OFF));
    let plain =
        (denial + 1..lead).all(|at| sentence.is_any(at, OFF) || sentence.is_any(at, BESIDE));
    (sentence.is_word(lead, "for") && told && off && plain).then_some(denial)
}

/// `pails older than nine months shall be refused`, `depth less than 1/2 in. is refused`: what compares so must not be there. What is "removed"
/// is refused only for its age: fireproofing over 1 in. thick may be removed for other reasons.
#[expect(
    clippy::too_many_lines,
    reason = "the wordings are asked for one after the other, each in a few lines"
)]
pub(crate) fn is_refused(sentence: &Sentence<'_>, index: usize) -> bool {
    const USES: &[&str] = &["used", "installed", "accepted", "employed"];
    const REACH: usize = 11;
    const ADMITTED: &[&str] = &[
        "admissible",
        "permitted",
        "allowed",
        "acceptable",
        "permissible",
        "accepted",
    ];
    const PLACED: &[&str] = &["at", "next", "beside", "near", "save", "except", "anywhere"];
    /// What is not done to a thing too young: `Concrete younger than 28 days shall not be coated.`
    const WORKED: &[&str] = &[
        "coated", "sealed", "painted", "covered", "primed", "sprayed", "loaded", "drilled",
        "walked",
    ];
    const REFUSED: &[&str] = &[
        "refused",
        "rejected",
        "discarded",
        "thrown",
        "cause",
        "unacceptable",
        "inadmissible",
        "impermissible",
        "disallowed",
        "excluded",
        "prohibited",
        "forbidden",
    ];
    let Some(amount) = sentence.amount(index) else {
        return false;
    };
    // `keep wheel loads of more than 200 lb/ft off the joint`
    let kept_off = sentence.has_any(
        amount.first.saturating_sub(REACH),
        amount.first,
        &["keep", "kept"],
    ) && sentence.is_any(
        sentence.skip_parentheses(amount.last),
        &["off", "away", "out"],
    );
    if kept_off {
        return true;
    }
    if is_told_to_refuse(sentence, amount.first) {
        return true;
    }
    // `openings larger than 12 in. by 12 in. are excluded`
    let crossed = sentence
        .amount(index + 1)
        .filter(|next| next.first == amount.last + 1 && sentence.is_any(amount.last, &["by", "x"]));
    // `more than one butt per 1.5 m is not admissible`
    let on = sentence.amount(index + 1).filter(|next| {
        next.first > amount.last
            && next.first <= amount.last + 3
            && sentence.is_any(next.first - 1, &["per", "every"])
    });
    let last = crossed.or(on).map_or(amount.last, |next| next.last);
    let stretch = || {
        (last..last + REACH)
            .take_while(|at| !sentence.is_stop(*at) && sentence.amount_at(*at).is_none())
    };
    let aged = matches!(
        amount.unit.dimension(),
        Dimension::Time | Dimension::CalendarTime
    );
    // `Offcuts shorter than 300 mm shall not be used.`
    let unused = stretch().any(|at| {
        let modal = sentence.is_any(at, &["shall", "must", "may", "can"])
            && sentence.is_word(at + 1, "not")
            && sentence.is_word(at + 2, "be");
        // `Lengths shorter than 18 in. are not to be used.`
        let to_be = sentence.is_any(at, &["is", "are"])
            && sentence.is_word(at + 1, "not")
            && sentence.is_word(at + 2, "to")
            && sentence.is_word(at + 3, "be");
        let verb = if to_be { at + 4 } else { at + 3 };
        let worked = aged && sentence.is_any(verb, WORKED);
        let placed = sentence.is_word(verb, "placed") && sentence.is_any(verb + 1, PLACED);
        let ends = sentence
            .token(verb + 1)
            .is_none_or(|token| token.word().is_none())
            || sentence.is_any(verb + 1, &["save", "except", "anywhere"]);
        // `Strips shorter than 600 mm are not used save at the top.`
        let habit = sentence.is_any(at, &["is", "are"])
            && sentence.is_word(at + 1, "not")
            && sentence.is_any(at + 2, &["used", "installed", "employed"]);
        let habit_ends = habit
            && (sentence
                .token(at + 3)
                .is_none_or(|token| token.word().is_none())
                || sentence.is_any(at + 3, &["save", "except", "anywhere"]));
        // `Pipes larger than 2 in. shall not pass through the joint.`
        // `Pieces shorter than 8 in. don't count.`
        let useless = sentence.is_any(at, &["don't", "don’t", "doesn't", "doesn’t"])
            && sentence.is_any(at + 1, &["count", "pass", "qualify", "work"])
            || sentence.is_any(at, &["is", "are"])
                && sentence.is_any(at + 1, &["waste", "scrap", "useless"]);
        let passes = useless
            || sentence.is_any(at, &["shall", "must", "may"])
                && sentence.is_word(at + 1, "not")
                && sentence.is_any(at + 2, &["pass", "cross", "penetrate", "run"]);
        passes
            || habit_ends
            || (modal || to_be) && ((worked || sentence.is_any(verb, USES)) && ends || placed)
    });
    // `Coating older than 24 months, or kept outside 5 to 35 °C, shall not be used.`
    if unused || (aged && refused_with_others(sentence, last)) {
        return true;
    }
    let free = stretch()
        .any(|at| sentence.is_any(at, NEGATIONS) || sentence.is_any(at, &["may", "need", "can"]));
    // `more than one butt is not admissible`
    let not_admitted = stretch().any(|at| {
        sentence.is_any(at, &["is", "are"])
            && sentence.is_word(at + 1, "not")
            && sentence.is_any(at + 2, ADMITTED)
    });
    if not_admitted {
        return true;
    }
    let mut verbs = stretch().filter(|at| sentence.is_any(*at, &["be", "is", "are"]));
    !free
        && verbs.any(|be| {
            sentence.is_any(be + 1, REFUSED) || (aged && sentence.is_word(be + 1, "removed"))
        })
}

/// Whether what is too old is named beside another fault, between commas, before it is refused: `older than 24 months, or frozen, shall not be used`.
fn refused_with_others(sentence: &Sentence<'_>, last: usize) -> bool {
    const REACH: usize = 14;
    let listed = sentence.is_sign(last, ',') && sentence.is_word(last + 1, "or");
    let close = (last + 2..last + REACH).find(|at| sentence.is_sign(*at, ','));
    listed
        && close.is_some_and(|at| {
            let denied = sentence.is_any(at + 1, &["shall", "must", "may"])
                && sentence.is_word(at + 2, "not")
                && sentence.is_word(at + 3, "be");
            denied
                && sentence.is_any(
                    at + 4,
                    &["used", "installed", "applied", "placed", "employed"],
                )
        })
}

/// `Reject any reading more than 10 percent under the nominal`: what compares so is to be refused.
fn is_told_to_refuse(sentence: &Sentence<'_>, first: usize) -> bool {
    const REFUSE: &[&str] = &["reject", "refuse", "discard"];
    const WHAT: &[&str] = &[
        "any", "all", "every", "each", "a", "an", "the", "those", "material", "pieces", "lengths",
        "bags", "pails",
    ];
    const REACH: usize = 8;
    (first.saturating_sub(REACH)..first)
        .rev()
        .take_while(|at| !sentence.is_stop(*at) && sentence.amount_at(*at).is_none())
        .any(|at| {
            let thrown = sentence.is_any(at, &["throw", "thrown"])
                && sentence.is_any(at + 1, &["away", "out"]);
            let refused = thrown || sentence.is_any(at, REFUSE) && sentence.is_any(at + 1, WHAT);
            refused && !(at > 0 && sentence.is_any(at - 1, NEGATIONS))
        })
}

/// `less than`, `closer to the edge than`, `greater than or equal to`, `equal to or greater than`.
fn than(sentence: &Sentence<'_>, at: usize, floor: usize) -> Option<(Relation, usize)> {
    // `not inferior to 60 kg/m³`
    if sentence.is_word(at, "to") && at > floor {
        match sentence.word(at - 1) {
            "inferior" => return Some((Relation::LessThan, at - 1)),
            "superior" => return Some((Relation::MoreThan, at - 1)),
            _ => {}
        }
    }
    let (than, or_equal) = if sentence.is_word(at, "to")
        && sentence.is_word(at.checked_sub(1)?, "equal")
        && sentence.is_word(at.checked_sub(2)?, "or")
    {
        (at.checked_sub(3)?, true)
    } else {
        (at, false)
    };
    if !sentence.is_word(than, "than") {
        return None;
    }
    let lowest = floor.max(than.saturating_sub(7));
    let comparative = (lowest..than)
        .rev()
        .find(|at| sentence.is_any(*at, UP) || sentence.is_any(*at, DOWN))?;
    let strict = if sentence.is_any(comparative, UP) {
        Relation::MoreThan
    } else {
        Relation::LessThan
    };
    let equal_before = comparative >= 3
        && sentence.is_word(comparative - 1, "or")
        && sentence.is_any(comparative - 2, &["to", "equal"]);
    let relation = match (or_equal || equal_before, strict) {
        (true, Relation::MoreThan) => Relation::AtLeast,
        (true, _) => Relation::AtMost,
        (false, strict) => strict,
    };
    Some((relation, comparative))
}

/// Whether what is "under" a share is compressed by it: `inserted under 25 percent compression`.
pub(super) fn is_held_under(sentence: &Sentence<'_>, under: usize) -> bool {
    let amount = sentence
        .amount_at(under + 1)
        .and_then(|index| sentence.amount(index));
    amount.is_some_and(|amount| {
        amount.unit == measure::Unit::Percent
            && sentence.is_any(
                amount.last,
                &["compression", "tension", "pressure", "precompression"],
            )
    })
}

/// `at or above 40 F`, `at or below 95 F`.
fn at_or(sentence: &Sentence<'_>, at: usize) -> Option<(Relation, usize)> {
    let or = at.checked_sub(1).filter(|or| sentence.is_word(*or, "or"))?;
    let from = or
        .checked_sub(1)
        .filter(|from| sentence.is_any(*from, &["at", "to", "equal"]))?;
    if sentence.is_any(at, &["above", "over"]) {
        Some((Relation::AtLeast, from))
    } else if sentence.is_any(at, &["below", "under"]) {
        Some((Relation::AtMost, from))
    } else {
        None
    }
}

/// `shorter than the width of the joint plus 1/2 in.`: what is added to the thing compared with.
fn than_plus(sentence: &Sentence<'_>, at: usize, floor: usize) -> Option<(Relation, usize)> {
    let plus = sentence.is_word(at, "plus") || sentence.is_sign(at, '+');
    // `at least as long as the wall is thick plus 1 in.`
    let as_at = plus
        .then(|| {
            (floor..at)
                .rev()
                .take(14)
                .find(|at| sentence.is_word(*at, "as") && sentence.is_word(at + 2, "as"))
        })
        .flatten();
    if let Some(least) = as_at
        .and_then(|at| at.checked_sub(2))
        .filter(|least| sentence.is_word(*least, "at") && sentence.is_word(least + 1, "least"))
    {
        return Some((Relation::AtLeast, least));
    }
    let than_at = plus.then(|| {
        (floor..at)
            .rev()
            .take(14)
            .find(|at| sentence.is_word(*at, "than"))
    })??;
    than(sentence, than_at, floor)
}

/// `over`, `under`, `exceeding` directly before the number.
fn alone(sentence: &Sentence<'_>, at: usize, first: usize) -> Option<(Relation, usize)> {
    if at + 1 != first
        && !sentence.is_any(at + 1, &["a", "the", "of"])
        && !sentence.is_sign(at + 1, '+')
    {
        return None;
    }
    let time = sentence
        .amounts
        .iter()
        .any(|amount| amount.first == first && amount.unit.dimension() == Dimension::Time);
    // `an excess of about 10 mm` is an amount; `in excess of 10 mm` compares.
    if sentence.is_word(at, "excess") && !(at > 0 && sentence.is_word(at - 1, "in")) {
        return None;
    }
    if sentence.is_any(at, UP_ALONE) || (time && sentence.is_word(at, "after")) {
        Some((Relation::MoreThan, at))
    } else if sentence.is_any(at, DOWN_ALONE) && !is_held_under(sentence, at)
        || (time && sentence.is_word(at, "before"))
    {
        Some((Relation::LessThan, at))
    } else {
        None
    }
}

/// The negation before words set between commas: `It shall not, except as paragraph 8 allows, be more than 6 in.`, `nor, where the sealant is used,
/// by more than 10 percent`.
fn denied_before_aside(sentence: &Sentence<'_>, comma: usize) -> Option<usize> {
    const REACH: usize = 14;
    if !sentence.is_sign(comma, ',') || !sentence.is_any(comma + 1, &["be", "by"]) {
        return None;
    }
    let opening = (comma.saturating_sub(REACH)..comma)
        .rev()
        .find(|at| sentence.is_sign(*at, ','))?;
    opening
        .checked_sub(1)
        .filter(|at| sentence.is_any(*at, NEGATIONS))
}

/// The negation that governs a comparison: before it in the same stretch of words, no number between.
pub(super) fn negation(sentence: &Sentence<'_>, comparison: usize, floor: usize) -> Option<usize> {
    let lowest = floor.max(comparison.saturating_sub(REACH));
    // Where a statement with a verb of its own begins behind an "and".
    let mut another = None;
    for at in (lowest..comparison).rev() {
        // `not only over 1 in. wide` denies nothing.
        if sentence.is_any(at, NEGATIONS) && sentence.is_any(at + 1, &["only", "just", "merely"]) {
            return None;
        }
        if sentence.is_any(at, NEGATIONS) {
            return another
                .is_none_or(|and| denies_a_subject(sentence, at, and))
                .then_some(at);
        }
        // `edges free of spalls deeper than 3/8 in.`
        if sentence.is_word(at, "free") && sentence.is_any(at + 1, &["of", "from"]) {
            return another.is_none().then_some(at);
        }
        if sentence.is_word(at, "and") && begins_anew(sentence, at + 1, comparison) {
            another = Some(at);
        }
        // "shall not, however, vary by more than": the word only steps in.
        let aside = sentence.is_sign(at, ',')
            && (sentence.is_word(at + 1, "however")
                || at > 0 && sentence.is_word(at - 1, "however"));
        if aside {
            continue;
        }
        if let Some(at) = denied_before_aside(sentence, at) {
            return Some(at);
        }
        if sentence.is_stop(at)
            || sentence.is_any(
                at,
                &["but", "unless", "except", "where", "when", "if", "until"],
            )
        {
            return None;
        }
    }
    None
}

/// Verbs of a statement.
const MODALS: &[&str] = &["shall", "must", "should", "will", "may", "can", "is", "are"];

/// Whether a statement or an order of its own stands between an "and" and a comparison: `shall not be omitted and shall be within 2 in.`, `do not cut
/// studs and place clips within 2 in.`
fn begins_anew(sentence: &Sentence<'_>, start: usize, comparison: usize) -> bool {
    const ORDERS: &[&str] = &[
        "place", "space", "locate", "install", "set", "fasten", "attach", "keep", "use", "apply",
        "provide", "start", "screw", "secure", "position", "put", "fit", "fix", "hold", "fill",
        "extend", "lap", "pack", "finish", "complete", "cover", "seal", "inspect",
    ];
    sentence.has_any(start, comparison, MODALS) || sentence.is_any(start, ORDERS)
}

/// Whether a denial stands in the subject that an "and" is part of: `no screw and clip shall be within 2 in.`
fn denies_a_subject(sentence: &Sentence<'_>, denial: usize, and: usize) -> bool {
    let of_a_verb = denial > 0
        && (sentence.is_any(denial - 1, MODALS) || sentence.is_any(denial - 1, &["do", "does"]))
        || denial == 0 && sentence.is_word(denial, "never");
    !of_a_verb
        && sentence.is_any(denial, &["no", "neither", "nor"])
        && !sentence.has_any(denial, and, MODALS)
}
