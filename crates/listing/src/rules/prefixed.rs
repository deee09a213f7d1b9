use super::Sentence;
use super::word_after::or_more;

/// Words that limit a number before them or behind them.
const LIMITS: &[&str] = &["min", "minimum", "max", "maximum"];

/// Whether every limit in the stretch of a number stands before its number: `MIN. DEPTH 1/2 IN. MAX. JOINT WIDTH 2 IN.` Two at least, each number with one,
/// and none left at the end.
pub(super) fn limits_precede(sentence: &Sentence<'_>, index: usize) -> bool {
    let Some(own) = sentence.amount(index) else {
        return false;
    };
    let parts = |at: usize| sentence.is_sign(at, ';');
    let start = (0..own.first)
        .rev()
        .find(|at| parts(*at))
        .map_or(0, |at| at + 1);
    let end = (own.last..sentence.tokens.len())
        .find(|at| parts(*at))
        .unwrap_or(sentence.tokens.len());
    let (mut pairs, mut limited, mut at) = (0, false, start);
    while at < end {
        if let Some(amount) = sentence
            .amount_at(at)
            .filter(|index| sentence.is_bound(*index))
            .and_then(|index| sentence.amount(index))
        {
            if !limited {
                return false;
            }
            limited = false;
            pairs += 1;
            at = amount.last.max(at + 1);
            continue;
        }
        if sentence.is_any(at, LIMITS) {
            if limited {
                return false;
            }
            limited = true;
        }
        // `4 in. or more` limits behind.
        if sentence.is_word(at, "or") && or_more(sentence.word(at + 1)).is_some() {
            return false;
        }
        at += 1;
    }
    pairs > 1 && !limited
}

/// Where the words behind a number end whose limits stand before: at the limit of the next.
pub(crate) fn ends_at_limit(sentence: &Sentence<'_>, index: usize) -> Option<usize> {
    let last = sentence.amount(index)?.last;
    let limit = (last..sentence.tokens.len()).find(|at| sentence.is_any(*at, LIMITS))?;
    limits_precede(sentence, index).then_some(limit)
}
