//! One class code in a sentence, which says by its words what it is of.

use super::{ClassNumber, MINUTES};
use crate::model::Relation;
use crate::rules::Sentence;

/// One code in a sentence, where its words say that it is a class and hold for everything: `the class of the joint is EI 90`, `EI 60 at the
/// most`. What the class of a wall is, or for what it holds, isn't in the code.
pub(super) fn single(sentence: &Sentence<'_>, code: &ClassNumber) -> Option<ClassNumber> {
    const OF_CLASSES: &[&str] = &["class", "classes", "classified", "classification"];
    const STATED: &[&str] = &[
        "raised", "tested", "reaches", "achieved", "achieves", "being", "limited", "reduced",
        "falls", "drops", "becomes", "attains",
    ];
    const CONFINES: &[&str] = &[
        "for",
        "where",
        "when",
        "if",
        "unless",
        "with",
        "also",
        "line",
        "row",
        "then",
        "not",
        "other",
        "wall",
        "walls",
        "floor",
        "floors",
        "door",
        "doors",
        "partition",
        "slab",
    ];
    let all = sentence.tokens.len();
    let timed =
        code.property == Some("joint.rating") && MINUTES.iter().any(|minutes| code.lo == *minutes);
    let at_most = sentence.is_word(code.last, "at")
        && (sentence.is_word(code.last + 1, "most")
            || sentence.is_word(code.last + 1, "the") && sentence.is_word(code.last + 2, "most"));
    let at_most = at_most || is_limited(sentence, code.first);
    let alone = !sentence.has_any(0, all, CONFINES)
        && !sentence.has_any(code.last, all, &["to", "or", "and"]);
    let spoken_of = at_most || sentence.has_any(0, code.first, OF_CLASSES);
    let stated = sentence.has_any(0, code.first, STATED) || sentence.is_word(code.last, "applies");
    // `Class EI 180 requires a floor of ...`, `for the class EI 90 only`
    let case = sentence.is_any(code.last, &["requires", "needs", "only", "demands"]);
    (timed && !case && (spoken_of || stated)).then(|| ClassNumber {
        limit: at_most.then_some(Relation::AtMost),
        // What is said of other things, or for some cases only, is not the joint's rating.
        property: code.property.filter(|_| alone && spoken_of),
        ..code.clone()
    })
}

/// Whether a class is the most that the words before it allow: `not better than EI 60`, `is limited to EI 60`.
fn is_limited(sentence: &Sentence<'_>, first: usize) -> bool {
    let says = |words: &[&[&str]]| {
        first >= words.len()
            && (words.iter().enumerate())
                .all(|(at, word)| sentence.is_any(first - words.len() + at, word))
    };
    says(&[&["not"], &["better", "higher", "more"], &["than"]])
        || says(&[&["limited", "restricted"], &["to"]])
        || says(&[&["at"], &["most"]])
        || says(&[&["not"], &["exceed", "exceeding"]])
        || says(&[&["not"], &["to"], &["exceed"]])
}
