use super::{Finding, Sentence, word_after};

const FASTENERS: &[&str] = &[
    "fastener",
    "fasteners",
    "screw",
    "screws",
    "bolt",
    "bolts",
    "anchor",
    "anchors",
    "pin",
    "pins",
    "nail",
    "nails",
    "staple",
    "staples",
    "rivet",
    "rivets",
    "dowel",
    "dowels",
];

/// How many words before the pair may name the fastener.
const FASTENER_REACH: usize = 4;

pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let (own, next) = (sentence.amount(index)?, sentence.amount(index + 1)?);
    let times = sentence.is_any(own.last, &["x", "by"]) || sentence.is_sign(own.last, '×');
    let pair = times
        && next.first == own.last + 1
        && own.unit == next.unit
        && sentence.is_bound(index + 1);
    // Of three sizes, the last is a thickness more often than not.
    let third = sentence.is_any(next.last, &["x", "by"])
        || sentence.is_sign(next.last, '×')
        || own.first > 0
            && (sentence.is_any(own.first - 1, &["x", "by"])
                || sentence.is_sign(own.first - 1, '×'));
    // `Fasteners 3/16 in. by 1-1/4 in. min.`: their diameter is what it is.
    let fastener = (0..own.first)
        .rev()
        .take(FASTENER_REACH)
        .any(|at| sentence.is_any(at, FASTENERS))
        || sentence.is_any(next.last, FASTENERS);
    let after = sentence.skip_parentheses(next.last);
    let closed = sentence.is_any(after, &["min", "minimum", "max", "maximum"]);
    (pair && !third && !fastener && closed)
        .then(|| word_after::read(sentence, index + 1))?
        .map(|finding| Finding {
            from: own.first,
            ..finding
        })
}
