//! Times that are counted back from something: "not later than 30 days *before* installation". What comes later there is less of that time, and what is
//! earlier is more of it.

use measure::Dimension;

use super::Sentence;
use crate::phrase::Amount;

/// Whether an amount is a time that something happens before another.
pub(super) fn is_counted_back(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    let time = matches!(
        amount.unit.dimension(),
        Dimension::Time | Dimension::CalendarTime
    );
    let next = sentence.skip_parentheses(amount.last);
    let ahead = sentence.is_word(next, "prior") && sentence.is_word(next + 1, "to")
        || sentence.is_word(next, "ahead") && sentence.is_word(next + 1, "of")
        || sentence.is_word(next, "in") && sentence.is_word(next + 1, "advance");
    time && (ahead || sentence.is_word(next, "before"))
}
