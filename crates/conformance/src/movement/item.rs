//! A movement that an item of a listing gives, against the movement needed.

use core::cmp::Ordering;

use listing::{Bound, Relation};
use measure::{Number, Quantity, Unit};

use super::Direction;
use super::share::{Length, Share};
use super::stricter::{Statement, stricter};
use crate::assessment::Detail;
use crate::assessment::{Assessment, Said};
use crate::evidence::{Evidence, evidence, quantities};
use crate::explain::requirement::of_bound;
use crate::offered;
use crate::subject::Case;
use crate::verdict::{Reason, Verdict};

/// What is offered against both statements of what is needed: `by_percentage` is what the percentage alone comes to.
pub(crate) fn against<'a>(
    bound: &Bound,
    direction: &Direction,
    by_percentage: Assessment<'a>,
    subject: &Case<'a>,
) -> Assessment<'a> {
    let length = match Length::of(direction, subject) {
        Length::NotStated => return by_percentage,
        Length::Zero(fact) => Statement {
            found: Assessment::plain(Verdict::Met, Reason::Holds)
                .on(fact)
                .saying(
                    of_bound(bound),
                    format!("No movement in {} is needed.", direction.words),
                ),
            percent: Some(Number::ZERO),
            fact: Some(fact),
            name: "length",
        },
        Length::Unusable(found) => Statement {
            fact: found.fact,
            found: *found,
            percent: None,
            name: "length",
        },
        Length::Share(share) => Statement {
            percent: Some(share.percent),
            fact: Some(share.fact),
            found: of_share(bound, *share),
            name: "length",
        },
    };
    let stated = evidence(direction.property, subject);
    if matches!(stated, Evidence::None) {
        return length.found;
    }
    let percentage = Statement {
        found: by_percentage,
        percent: stated
            .fact()
            .and_then(|fact| quantities(fact).filter_map(percent_of).max()),
        fact: stated.fact(),
        name: "percentage",
    };
    stricter(length, percentage)
}

fn percent_of(quantity: Quantity) -> Option<Number> {
    quantity.to(Unit::Percent).map(|percent| percent.number)
}

fn of_share<'a>(bound: &Bound, share: Share<'a>) -> Assessment<'a> {
    let limit = offered::as_limit(bound);
    let is_strict = limit.relation == Relation::LessThan;
    let Some(most) = limit.high().and_then(percent_of) else {
        let sentence = "What movement the listing gives couldn't be read.";
        let open = Assessment::open(Reason::ListingUnclear).on(share.fact);
        return share.weigh(open.saying(of_bound(bound), sentence));
    };
    let holds = |percent: Number| match percent.cmp(&most) {
        Ordering::Less => true,
        Ordering::Equal => !is_strict,
        Ordering::Greater => false,
    };
    let found = match (holds(share.between.low), holds(share.between.high)) {
        (true, true) => Assessment::plain(Verdict::Met, Reason::Holds),
        (false, _) if may_be_offered(bound, share.percent) => Assessment::open(Reason::Deviates),
        (false, _) => Assessment::plain(Verdict::NotMet, Reason::NotOffered),
        (true, false) => Assessment::open(Reason::TooClose),
    };
    let range = if found.reason == Reason::TooClose {
        share.range_words(Some(most))
    } else {
        String::new()
    };
    let sentence = format!(
        "{}{range}; the listing gives {}.",
        share.words(Some(most)),
        of_bound(bound)
    );
    let margin = most.minus(share.percent);
    let said = Said {
        requirement: of_bound(bound),
        sentence,
        margin: margin.map(|margin| Quantity::new(margin, Unit::Percent)),
        ..Said::default()
    };
    let found = found.on(share.fact);
    share.weigh(found.because(Detail::Said(Box::new(said))))
}

fn may_be_offered(bound: &Bound, percent: Number) -> bool {
    offered::may_be_offered(bound, Quantity::new(percent, Unit::Percent))
}
