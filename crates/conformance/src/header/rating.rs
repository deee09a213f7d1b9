//! Whether the listing is rated as long as the barrier: "not less than the required rating of the element in or between
//! which the joint is installed" is how codes put it (IBC 715).

use listing::HeaderTopic;
use measure::{Number, Quantity, Unit, print};
use site::Barrier;

use super::{Context, Head};
use crate::assessment::{Assessment, Said};
use crate::condition::reason_of;
use crate::rating::{applicable, asked, of_barrier, of_joint};
use crate::verdict::{Reason, Verdict};

/// The listing's ratings against the barrier's, and the joint's own against it too.
pub(super) fn check<'a>(context: &Context<'a, '_>) -> Head<'a> {
    Head {
        id: "header/rating",
        property: Barrier::RATING,
        span: None,
        found: found(context),
    }
}

fn found<'a>(context: &Context<'a, '_>) -> Assessment<'a> {
    let header = &context.checklist.reading.header;
    let hours = |number: &Number| Quantity::new(*number, Unit::Hour);
    let ratings = joined(header.ratings_hr.iter().map(hours).map(print::trade));
    let barrier = match of_barrier(context.subject) {
        Ok(barrier) => barrier,
        Err(evidence) => {
            return Assessment::open(reason_of(evidence)).on(evidence.fact()).saying(
                "a rating at least as long as the barrier's",
                "The rating of the barrier isn't known, and the joint must be rated as long as it.",
            );
        }
    };
    let requirement = format!("a rating of at least {}", print::trade(barrier.rating));
    if let Ok(joint) = of_joint(context.subject)
        && joint
            .rating
            .compare(barrier.rating)
            .is_some_and(core::cmp::Ordering::is_lt)
    {
        let sentence = format!(
            "The joint is meant to be rated {}; its barrier is rated {}.",
            print::trade(joint.rating),
            print::trade(barrier.rating)
        );
        let margin = joint.rating.minus(barrier.rating);
        return Assessment::plain(Verdict::NotMet, Reason::Fails)
            .on(joint.fact)
            .saying(requirement, sentence)
            .with_margin(margin);
    }
    let asked = match asked(context.subject) {
        Ok(asked) => asked,
        Err((property, evidence)) => {
            return Assessment::open(reason_of(evidence))
                .on(evidence.fact())
                .asking(property)
                .saying(
                    requirement,
                    "The rating that the joint is meant to have can't be used.",
                );
        }
    };
    let longest = header.ratings_hr.iter().max().map(hours);
    let Some(longest) = longest else {
        return Assessment::open(Reason::ListingUnclear)
            .on(asked.fact)
            .saying(
                requirement,
                "No rating could be read from the head of the listing.",
            );
    };
    let margin = longest
        .to(asked.rating.unit)
        .and_then(|longest| longest.minus(asked.rating));
    let shortest = header.ratings_hr.iter().min().map(hours);
    let is_beyond_some = context.differs(HeaderTopic::Rating)
        && shortest.is_none_or(|shortest| {
            let order = asked.rating.compare(shortest);
            order.is_none_or(core::cmp::Ordering::is_gt)
        });
    match applicable(&header.ratings_hr, asked.rating) {
        Some(_) if is_beyond_some => Assessment::open(Reason::ListingUnclear)
            .on(asked.fact)
            .saying(
                requirement,
                format!(
                    "{} is asked for; the listing is rated {ratings}, but which of these holds here the head states by configuration or rating; see the items.",
                    print::trade(asked.rating)
                ),
            ),
        Some(applies) => {
            let sentence = format!(
                "{} is asked for; the listing is rated {ratings}, and its {} rating applies.",
                print::trade(asked.rating),
                print::trade(applies)
            );
            Assessment::plain(Verdict::Met, Reason::Holds)
                .on(asked.fact)
                .saying(requirement, sentence)
                .with_margin(
                    applies
                        .to(asked.rating.unit)
                        .and_then(|applies| applies.minus(asked.rating)),
                )
        }
        None => Assessment::plain(Verdict::NotMet, Reason::NotOffered)
            .on(asked.fact)
            .saying(
                requirement,
                format!(
                    "{} is asked for; the listing is rated {ratings}.",
                    print::trade(asked.rating)
                ),
            )
            .with_margin(margin),
    }
}

/// Words joined by commas and an "and".
pub(crate) fn joined(words: impl IntoIterator<Item = String>) -> String {
    let words: Vec<String> = words.into_iter().collect();
    match words.as_slice() {
        [] => "nothing".to_owned(),
        [one] => one.clone(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}

impl Assessment<'_> {
    /// The same with a margin, where it says something of its own.
    pub(super) fn with_margin(mut self, margin: Option<Quantity>) -> Self {
        if let crate::assessment::Detail::Said(said) = &mut self.detail {
            let Said { margin: place, .. } = said.as_mut();
            *place = margin;
        }
        self
    }

    /// The same with a note, where it says something of its own.
    pub(super) fn with_note(mut self, note: impl Into<String>) -> Self {
        if let crate::assessment::Detail::Said(said) = &mut self.detail {
            said.notes.push(note.into());
        }
        self
    }
}
