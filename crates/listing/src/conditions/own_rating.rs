//! The rating that a part has itself: "2 hr fire rated, min 4-1/2 in. thick concrete", "The 1 hr rated shaft wall shall have". It is asked of the part whatever
//! the joint's rating is, and what follows it is said of every joint. "For 2 hr rated walls, ...", "2 hr rated walls: ..." and "2 hr rating, ..." are cases.

use crate::rules::Sentence;

/// Whether hours at the opening of a sentence say how a part is rated, and no other hours beside them make it one of several cases.
pub(super) fn is_of_the_part(
    sentence: &Sentence<'_>,
    first: usize,
    last: usize,
    hours: usize,
) -> bool {
    const MOST_WORDS: usize = 6;
    let article = sentence.is_any(0, &["the", "a", "an"]);
    let opens = first == usize::from(article);
    let rated = sentence.is_any(last, &["rated", "fire-rated"])
        || sentence.is_word(last, "fire") && sentence.is_word(last + 1, "rated");
    let alone = sentence
        .amounts
        .iter()
        .filter(|amount| super::rating::is_rating_time(amount))
        .count()
        == hours;
    let names = |at: &usize| {
        let word = sentence.has_word(*at);
        word && !says(sentence, *at)
    };
    let end = (last..last + MOST_WORDS).find(|at| !names(at));
    let goes_on = end.is_some_and(|at| sentence.is_sign(at, ',') || says(sentence, at));
    let several = end.is_some_and(|at| {
        sentence.is_any(
            at.saturating_sub(1),
            &[
                "walls",
                "floors",
                "joints",
                "assemblies",
                "systems",
                "partitions",
            ],
        )
    });
    opens && rated && alone && goes_on && !several
}

/// Whether a word says something of the part before it.
fn says(sentence: &Sentence<'_>, at: usize) -> bool {
    const VERBS: &[&str] = &[
        "shall",
        "must",
        "is",
        "are",
        "has",
        "have",
        "consists",
        "consisting",
        "having",
    ];
    sentence.is_any(at, VERBS)
}
