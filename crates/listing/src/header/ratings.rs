//! Times of the head that may be its ratings.

use measure::{Dimension, Number, Quantity, Unit};

use super::topic::{Topic, topic};
use crate::model::Span;
use crate::phrase::Amount;
use crate::rules::Sentence;

/// Hours of a head that are its ratings only where nothing better is stated.
#[derive(Default)]
pub(super) struct Found {
    /// Those that nothing names.
    pub(super) unnamed: Vec<Number>,
    /// Those of fire and more: FT, FH, FTH.
    pub(super) beyond_fire: Vec<Number>,
    /// Where those of heat or water alone stand, which are never the joint's.
    pub(super) by_heat: Vec<Span>,
}

/// The hours in a paragraph that nothing says what they are of.
pub(super) fn untold_times(sentence: &Sentence<'_>) -> Vec<(Number, Span)> {
    // `FLAMROLL 3H`, `SYSTEM 4417-H`
    let names = |amount: &Amount| {
        let words = amount.at.of(sentence.text);
        words.ends_with('H') && !words.contains(' ')
    };
    let untold = sentence.amounts.iter().filter(|amount| {
        let of_time = amount.unit.dimension() == Dimension::Time;
        let untold = matches!(topic(sentence, amount), None | Some(Topic::Unnamed));
        of_time && !names(amount) && untold
    });
    let hours = |amount: &Amount| {
        let hours = Quantity::new(amount.lo, amount.unit).to(Unit::Hour)?;
        Some((hours.number, sentence.source(amount.at)))
    };
    untold.filter_map(hours).collect()
}

/// Adds what may be a rating: no test of fire lasts for days.
pub(super) fn rating(amount: &Amount, ratings: &mut Vec<Number>) {
    const LONGEST: i32 = 6;
    for number in core::iter::once(amount.lo).chain(amount.hi) {
        if let Some(hours) = Quantity::new(number, amount.unit).to(Unit::Hour)
            && !ratings.contains(&hours.number)
            && !hours.number.is_zero()
            && hours.number <= Number::from(LONGEST)
        {
            ratings.push(hours.number);
        }
    }
}

/// Whether an amount is the minutes of a time in hours and minutes: `1 h 30 min`.
pub(super) fn is_end_of_hours(sentence: &Sentence<'_>, index: usize) -> bool {
    const HOUR: i32 = 60;
    let amounts = &sentence.amounts;
    let pair = index
        .checked_sub(1)
        .and_then(|before| Some((amounts.get(before)?, amounts.get(index)?)));
    pair.is_some_and(|(hours, minutes)| {
        let whole = hours.unit == Unit::Hour && hours.hi.is_none();
        let rest =
            minutes.unit == Unit::Minute && minutes.hi.is_none() && minutes.lo < Number::from(HOUR);
        let between = sentence.text.get(hours.at.end()..minutes.at.start());
        whole
            && rest
            && between.is_some_and(|between| !between.is_empty() && between.trim().is_empty())
    })
}

/// A time in hours with the minutes behind it.
pub(super) fn in_hours_and_minutes(sentence: &Sentence<'_>, index: usize) -> Option<Amount> {
    let hours = sentence.amounts.get(index)?;
    let minutes = sentence
        .amounts
        .get(index + 1)
        .filter(|_| is_end_of_hours(sentence, index + 1))?;
    let part = Quantity::new(minutes.lo, Unit::Minute).to(Unit::Hour)?;
    Some(Amount {
        lo: hours.lo.plus(part.number)?,
        ..hours.clone()
    })
}

/// Whether no joint is rated for so short a time.
pub(super) fn is_short(amount: &Amount) -> bool {
    const SHORTEST_MINUTES: i32 = 15;
    let minutes = Quantity::new(amount.lo, amount.unit).to(Unit::Minute);
    minutes.is_some_and(|minutes| minutes.number < Number::whole(SHORTEST_MINUTES))
}
