//! What a sentence names by its size only to rule it out: "openings narrower than 1/2 in. *cannot be packed*", "joints wider than 4 in. *were not tested*",
//! "humidities over 85 percent *stop the work*".
//!
//! The predicate must end the statement: what "cannot be packed without clips" may be packed with them, and what does "not qualify for Option B" may be
//! built otherwise. Such sizes limit nothing, and are left to a person.

use super::Sentence;
use super::comparison_before::{NEGATIONS, compares_down, compares_up};

const BE: &[&str] = &["is", "are", "was", "were"];
/// Words that go before a comparison in the name of a thing: no verb, and nothing that leads elsewhere.
const SPEAKING: &[&str] = &[
    "shall", "must", "should", "may", "can", "will", "is", "are", "was", "were", "be", "do",
    "does", "has", "have", "had", "if", "where", "when", "unless", "except", "for", "with", "use",
    "only", "which", "that", "need", "needs",
];

/// Whether the number is one by which a sentence's subject is told apart, and the sentence says that such things are out.
pub(crate) fn is_ruled_out(sentence: &Sentence<'_>, index: usize) -> bool {
    tells_apart(sentence, index) && {
        let last = last_of_subject(sentence, index);
        is_ruled_out_at(sentence, last) || is_ruled_out_at(sentence, behind_state(sentence, last))
    }
}

/// The token behind words that only say of what a share is or in which state a number is taken, "before fire", "of its width": none that tells joints apart.
fn behind_state(sentence: &Sentence<'_>, at: usize) -> usize {
    const TIMES: &[&str] = &["before", "during", "after"];
    const STATES: &[&str] = &["fire", "exposure", "installation", "service", "use"];
    const SIZES: &[&str] = &["width", "depth", "thickness", "length", "size"];
    const ADJECTIVES: &[&str] = &["nominal", "design", "installed", "own", "initial", "joint"];
    let article = |at: usize| usize::from(sentence.is_any(at, &["the", "its", "their", "any"]));
    let noun = at + 1 + article(at + 1);
    if sentence.is_any(at, TIMES) && sentence.is_any(noun, STATES)
        || sentence.is_word(at, "in") && sentence.is_any(noun, &["service", "use", "direction"])
    {
        return noun + 1;
    }
    let size = noun + usize::from(sentence.is_any(noun, ADJECTIVES));
    if sentence.is_word(at, "of") && sentence.is_any(size, SIZES) {
        size + 1
    } else {
        at
    }
}

/// Whether the words before a number are a subject and a comparison, from the start of the sentence or behind another number of the same subject.
fn tells_apart(sentence: &Sentence<'_>, index: usize) -> bool {
    const FARTHEST: usize = 8;
    let Some(amount) = sentence.amount(index) else {
        return false;
    };
    // A semicolon begins another statement.
    let begins = (0..amount.first)
        .rev()
        .find(|at| sentence.is_sign(*at, ';'))
        .map_or(0, |at| at + 1);
    let start = index
        .checked_sub(1)
        .and_then(|before| sentence.amount(before))
        .map_or(0, |before| behind(sentence, before.last))
        .max(begins);
    let compared = |at: usize| {
        let word = sentence.word(at);
        compares_up(word)
            || compares_down(word)
            || sentence.is_any(
                at,
                &["over", "under", "above", "below", "exceeding", "beyond"],
            )
    };
    let relative = relative_clause(sentence, start, amount.first);
    let listed = start + usize::from(sentence.is_sign(start, ','));
    let plain = (listed..amount.first).all(|at| {
        let names = sentence.has_word(at);
        let tells = relative.is_some_and(|clause| clause <= at);
        names && (tells || !sentence.is_any(at, SPEAKING)) && !sentence.is_any(at, NEGATIONS)
    });
    let is_measured_by = (start.max(amount.first.saturating_sub(3))..amount.first).any(compared);
    let joined = start == begins
        || leads_on(sentence, start)
            && start + FARTHEST > amount.first
            && index
                .checked_sub(1)
                .is_some_and(|before| tells_apart(sentence, before));
    plain && is_measured_by && joined && (start > begins || !compared(start))
}

/// Whether a token leads to another subject of a list: `, and offsets larger than 1 in.`
fn leads_on(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.is_any(at, &["or", "and"]) || sentence.is_sign(at, ',')
}

/// Where a clause begins that tells a subject apart: "a joint *that is expected to open* more than 1/8 in.", "foils *which are* older than 12 months".
fn relative_clause(sentence: &Sentence<'_>, start: usize, first: usize) -> Option<usize> {
    const LONGEST: usize = 9;
    let that = (start + 1..first).find(|at| sentence.is_any(*at, &["that", "which"]))?;
    let told = sentence.is_any(
        that + 1,
        &["is", "are", "has", "have", "was", "were", "will", "may"],
    ) || (that + 1..first)
        .any(|at| compares_up(sentence.word(at)) || compares_down(sentence.word(at)));
    let subject = (start..that).all(|at| !sentence.is_any(at, SPEAKING));
    (told && subject && first - that <= LONGEST).then_some(that)
}

/// The token behind a number, its second value and the word for what it measures.
fn behind(sentence: &Sentence<'_>, last: usize) -> usize {
    let after = sentence.skip_parentheses(last);
    let measured = sentence.is_any(
        after,
        &[
            "wide", "deep", "thick", "long", "high", "width", "depth", "apart", "o.c", "oc",
        ],
    );
    after + usize::from(measured)
}

/// Where the subject ends, of which this and perhaps further numbers tell apart: `narrower than 1/2 in. or wider than 4 in.`, `over 2 in., and offsets larger than
/// 1 in.,`
fn last_of_subject(sentence: &Sentence<'_>, index: usize) -> usize {
    const MOST: usize = 4;
    let end = |index: usize| {
        let amount = sentence.amount(index);
        amount.map_or(0, |amount| behind(sentence, amount.last))
    };
    let mut last = end(index);
    for next in index + 1..index + MOST {
        if !leads_on(sentence, last) || !tells_apart(sentence, next) {
            break;
        }
        last = end(next);
    }
    // `over 2 in., and offsets larger than 1 in.,`
    let listed = last > end(index) || index > 0;
    last + usize::from(listed && sentence.is_sign(last, ','))
}

/// Whether a predicate that rules out begins at a token, and ends the statement.
fn is_ruled_out_at(sentence: &Sentence<'_>, at: usize) -> bool {
    let end = cannot_be(sentence, at)
        .or_else(|| does_not_qualify(sentence, at))
        .or_else(|| is_outside(sentence, at))
        .or_else(|| was_not_tested(sentence, at))
        .or_else(|| is_a_fault(sentence, at))
        .or_else(|| stops_work(sentence, at));
    end.is_some_and(|end| ends(sentence, end))
}

fn ends(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.token(at).is_none() || ['.', ';'].iter().any(|sign| sentence.is_sign(at, *sign))
}

/// `cannot be packed`, `can't be used`, `can not be sealed`
fn cannot_be(sentence: &Sentence<'_>, at: usize) -> Option<usize> {
    const DONE: &[&str] = &[
        "packed",
        "filled",
        "sealed",
        "used",
        "installed",
        "accepted",
        "built",
        "coated",
        "sprayed",
        "protected",
        "covered",
        "treated",
        "closed",
    ];
    let two = sentence.is_word(at, "can") && sentence.is_word(at + 1, "not");
    let be = at + 1 + usize::from(two);
    let cannot = two || sentence.is_any(at, &["cannot", "can't", "can’t"]);
    (cannot && sentence.is_word(be, "be") && sentence.is_any(be + 1, DONE)).then_some(be + 2)
}

/// `do not qualify`, `does not comply with this listing`
fn does_not_qualify(sentence: &Sentence<'_>, at: usize) -> Option<usize> {
    let two = sentence.is_any(at, &["do", "does"]) && sentence.is_word(at + 1, "not");
    let verb = at + 1 + usize::from(two);
    let denied = two || sentence.is_any(at, &["don't", "don’t", "doesn't", "doesn’t"]);
    let fails = denied && sentence.is_any(verb, &["qualify", "comply", "conform"]);
    fails.then(|| behind_the_listing(sentence, verb + 1, &["for", "with", "to", "under"]))
}

/// `fall outside this listing`, `are beyond the scope of this system`, `is excluded`
fn is_outside(sentence: &Sentence<'_>, at: usize) -> Option<usize> {
    if sentence.is_any(at, BE) && sentence.is_word(at + 1, "excluded") {
        return Some(behind_the_listing(sentence, at + 2, &["from"]));
    }
    let lies = sentence.is_any(at, &["fall", "falls", "lie", "lies", "is", "are"]);
    let out = lies && sentence.is_any(at + 1, &["outside", "beyond"]);
    let end = behind_the_listing(sentence, at + 1, &["outside", "beyond"]);
    (out && end > at + 2).then_some(end)
}

/// `were not tested`, `have not been evaluated`, `are not covered by this listing`
fn was_not_tested(sentence: &Sentence<'_>, at: usize) -> Option<usize> {
    const TESTED: &[&str] = &[
        "tested",
        "covered",
        "included",
        "qualified",
        "listed",
        "rated",
        "evaluated",
    ];
    let been = sentence.is_any(at, &["has", "have"]) && sentence.is_word(at + 2, "been");
    let said = been || sentence.is_any(at, BE);
    let verb = at + 2 + usize::from(been);
    let denied = said && sentence.is_word(at + 1, "not") && sentence.is_any(verb, TESTED);
    denied.then(|| behind_the_listing(sentence, verb + 1, &["by", "in", "under", "for"]))
}

/// `is a deficiency`, `are cause for rejection`
fn is_a_fault(sentence: &Sentence<'_>, at: usize) -> Option<usize> {
    const FAULTS: &[&str] = &[
        "deficiency",
        "deficiencies",
        "defect",
        "defects",
        "nonconformity",
        "nonconformities",
        "nonconformance",
        "fault",
        "faults",
        "failure",
        "failures",
        "reject",
        "rejects",
    ];
    let article = usize::from(sentence.is_any(at + 1, &["a", "an"]));
    let called = sentence.is_any(at, BE)
        || sentence.is_any(at, &["count", "counts"]) && sentence.is_word(at + 1, "as");
    let noun = at + 1 + usize::from(sentence.is_word(at + 1, "as")) + article;
    (called && sentence.is_any(noun, FAULTS)).then_some(noun + 1)
}

/// `stop the work`, `halts spraying`
fn stops_work(sentence: &Sentence<'_>, at: usize) -> Option<usize> {
    let stops = sentence.is_any(at, &["stop", "stops", "halt", "halts"]);
    let the = usize::from(sentence.is_any(at + 1, &["the", "all"]));
    let work = sentence.is_any(
        at + 1 + the,
        &["work", "spraying", "application", "installation"],
    );
    (stops && work).then_some(at + 2 + the)
}

/// The token behind `by this listing`, `outside the scope of the system`; the given one where nothing of that stands.
fn behind_the_listing(sentence: &Sentence<'_>, at: usize, prepositions: &[&str]) -> usize {
    const LISTINGS: &[&str] = &[
        "listing",
        "system",
        "design",
        "scope",
        "rating",
        "test",
        "tests",
        "report",
        "classification",
        "assessment",
        "certificate",
        "schedule",
        "letter",
        "judgement",
        "judgment",
        "document",
        "field",
        "application",
    ];
    let article = |at: usize| usize::from(sentence.is_any(at, &["this", "the"]));
    let noun = at + 1 + article(at + 1);
    if !sentence.is_any(at, prepositions) || !sentence.is_any(noun, LISTINGS) {
        return at;
    }
    let whose = noun + 2 + article(noun + 2);
    let of = sentence.is_word(noun + 1, "of") && sentence.is_any(whose, LISTINGS);
    if of { whose + 1 } else { noun + 1 }
}
