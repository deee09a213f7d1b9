//! A comparison that says which things a sentence speaks of, and asks nothing of them: `Joints narrower than 1/2 in. cannot be packed.`

use measure::Dimension;

use super::super::Sentence;
use super::negation::REACH;
use super::words::{NEGATIONS, compares_down, compares_up};

/// `Joints narrower than 1/2 in. cannot be packed`, `sealant depth over 1 in. cracks`: what a sentence speaks of is no requirement, whatever it says of
/// it. What it would misread: a subject that is told apart only behind its number, "depth over 4 in. is required".
pub(super) fn names_a_case(
    sentence: &Sentence<'_>,
    index: usize,
    from: usize,
    floor: usize,
) -> bool {
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
    !sentence.has_word(at) || sentence.is_any(at, TELLING) || sentence.amount_at(at).is_some()
}
